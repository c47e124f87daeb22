#include <filesystem>

#include "absl/strings/str_cat.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "output.h"
#include "withy/plugin_host/plugin_cases.h"

namespace withy {
namespace {

namespace fs = std::filesystem;

constexpr Example kExamples[] = {
    {"withy plugin new my-rules --kind check", "a folder my-rules with a check and a first case"},
    {"withy plugin new my-list --kind exporter", "with an exporter"},
};

constexpr OptionSpec kOptions[] = {
    {"--kind", "KIND", "what it is to do: check (as without it), exporter, importer", Completes::kChoice,
     "check|exporter|importer"},
};

constexpr std::span<const OptionSpec> kGroups[] = {kOptions};

PluginEntry::Kind KindFrom(const Options& options) {
  std::string kind = options.Value("--kind", "check");
  if (kind == "exporter") return PluginEntry::Kind::kExporter;
  return kind == "importer" ? PluginEntry::Kind::kImporter : PluginEntry::Kind::kCheck;
}

// Makes the folders that `path` lies in.
absl::Status MakeFoldersFor(const fs::path& path) {
  std::error_code error;
  fs::create_directories(path.parent_path(), error);
  if (!error) return absl::OkStatus();
  return absl::UnavailableError(absl::StrCat(path.parent_path().string(), ": not made: ", error.message()));
}

absl::Status WriteFolder(const std::string& folder, const std::map<std::string, std::string>& files) {
  std::vector<FileToWrite> written;
  for (const auto& [name, bytes] : files) {
    fs::path path = fs::path(folder) / name;
    if (absl::Status status = MakeFoldersFor(path); !status.ok()) return status;
    written.push_back({path.string(), bytes});
  }
  return WriteFiles(written, Existing::kRefuse);
}

int Run(const Options& options, Io& io) {
  const std::string& folder = options.operands().front();
  absl::StatusOr<std::map<std::string, std::string>> files =
      PluginTemplate(KindFrom(options), fs::path(folder).filename().string());
  if (!files.ok()) {
    io.Complain(std::string(files.status().message()));
    return kUsage;
  }
  std::error_code error;
  if (fs::exists(folder, error)) {
    io.Complain(absl::StrCat(folder, ": exists already"), "take another name; a plugin is never written over");
    return kNoOutput;
  }
  if (absl::Status status = WriteFolder(folder, *files); !status.ok()) {
    io.Complain(std::string(status.message()));
    return kNoOutput;
  }
  io.Note(absl::StrCat("wrote ", folder, "; 'withy plugin test ", folder, "' runs its cases"));
  return kDone;
}

}  // namespace

const Command kPluginNew = {
    .name = "plugin new",
    .operands = "FOLDER",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kNothing,
    .summary = "Start a plugin: a folder with a first case",
    .details = "The last part of FOLDER is the plugin's name: lower-case letters, digits and '-'.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
