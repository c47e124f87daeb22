#include "absl/strings/str_cat.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy plugin list", "the plugins of this machine and what each can do"},
    {"withy plugin list --plugin house-rules", "one that is not installed, too"},
};

const std::span<const OptionSpec> kGroups[] = {PluginOptions()};

std::string_view KindName(PluginEntry::Kind kind) {
  switch (kind) {
    case PluginEntry::Kind::kCheck: return "check";
    case PluginEntry::Kind::kExporter: return "exporter";
    case PluginEntry::Kind::kImporter: return "importer";
  }
  return "";
}

std::string PluginText(const PluginSource& plugin, const PluginInfo& info, const TextStyle& style) {
  std::string text = absl::StrCat(Painted(Visible(info.name), Ink::kStrong, style), " ", Visible(info.version), ", ",
                                  Visible(info.license), ": ", Visible(info.summary), "\n  ",
                                  plugin.built_in ? "built in" : Visible(plugin.path), "\n");
  for (const PluginEntry& entry : info.entries) {
    absl::StrAppend(&text, "  ", PaddedRight(KindName(entry.kind), 8), "  ", Visible(entry.name), ": ",
                    Visible(entry.summary), "\n");
  }
  return text;
}

int Run(const Options& options, Io& io) {
  FoundPlugins found = FindPlugins(options);
  PluginHost host = PluginHostFrom(options);
  for (const PluginSource& plugin : found.plugins) {
    absl::StatusOr<PluginInfo> info = host.Describe(plugin);
    if (info.ok()) {
      io.Out(PluginText(plugin, *info, io.out_style()));
    } else {
      found.failures.emplace_back(info.status().message());
    }
  }
  for (const std::string& failure : found.failures) io.Complain(failure);
  io.Note(UserPluginFolder().empty() ? "no plugin folder: neither XDG_DATA_HOME nor HOME is set"
                                     : absl::StrCat("plugins are looked for in ", UserPluginFolder()));
  return found.failures.empty() ? kDone : kIncomplete;
}

}  // namespace

const Command kPluginList = {
    .name = "plugin list",
    .operands = "",
    .least_operands = 0,
    .most_operands = 0,
    .completes = Completes::kNothing,
    .summary = "List plugins, and what each can do",
    .details = "",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
