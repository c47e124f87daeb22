#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_replace.h"
#include "embedded.h"
#include "plain_text.h"
#include "withy/plugin_host/plugin_cases.h"

namespace withy {

using namespace plugin;

absl::StatusOr<std::map<std::string, std::string>> PluginTemplate(PluginEntry::Kind kind, std::string_view name) {
  if (!IsSlug(name)) {
    return absl::InvalidArgumentError(absl::StrCat(
        "'", AsPlainLine(name), "' cannot name a plugin: lower-case letters, digits and '-', beginning with a letter"));
  }
  const std::string_view folder = kind == PluginEntry::Kind::kCheck      ? "check/"
                                  : kind == PluginEntry::Kind::kExporter ? "exporter/"
                                                                         : "importer/";
  std::map<std::string, std::string> files;
  for (const EmbeddedFile& file : EmbeddedTemplates()) {
    if (file.file.substr(0, folder.size()) != folder) continue;
    auto named = [&](std::string_view text) {
      return absl::StrReplaceAll(std::string(text), {{"PLUGIN-NAME", std::string(name)}});
    };
    files[named(file.file.substr(folder.size()))] = named(file.text);
  }
  return files;
}

}  // namespace withy
