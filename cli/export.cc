#include <filesystem>

#include "absl/strings/str_cat.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "output.h"
#include "plugins.h"
#include "withy/plugin_host/wanted.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy export cut-sheet casting.txtpb -o sheets", "write the cut sheet into the folder sheets"},
    {"withy export --list", "what can be exported"},
    {"withy export cut-sheet --help", "the settings of one exporter"},
};

constexpr OptionSpec kOptions[] = {
    {"-o,--output", "DIR",
     "folder to write into, made if missing (the current one); - is standard output, for one file", Completes::kFolder},
    {.name = "--set", .value = "NAME=VALUE", .summary = "a setting of the exporter (repeatable)", .repeatable = true},
    {"--list", "", "list the exporters"},
    {"--force", "", "replace files that exist"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, PluginOptions(), ReadLimitOptions()};
constexpr auto kExporter = PluginEntry::Kind::kExporter;

// "casting" of "designs/casting.txtpb".
std::string StemOf(const std::string& path) {
  return path == "-" ? "design" : std::filesystem::path(path).stem().string();
}

int WriteInto(const std::string& folder, const std::vector<OutputFile>& files, bool force, Io& io) {
  std::error_code error;
  std::filesystem::create_directories(folder, error);
  if (error) {
    io.Complain(absl::StrCat(folder, ": no folder to write into: ", error.message()));
    return kNoOutput;
  }
  std::vector<FileToWrite> written;
  for (const OutputFile& file : files)
    written.push_back({(std::filesystem::path(folder) / file.name).string(), file.bytes});
  absl::Status status = WriteFiles(written, force ? Existing::kReplace : Existing::kRefuse);
  if (!status.ok()) {
    io.Complain(std::string(status.message()));
    return kNoOutput;
  }
  for (const FileToWrite& file : written) io.Note("wrote " + file.path);
  return kDone;
}

int Write(const std::vector<OutputFile>& files, const Options& options, Io& io) {
  std::string folder = options.Value("--output", ".");
  if (folder != "-") return WriteInto(folder, files, options.Has("--force"), io);
  if (files.size() != 1) {
    io.Complain(absl::StrCat("standard output takes one file, and these are ", files.size()), "name a folder with -o");
    return kNoOutput;
  }
  return Deliver("-", files.front().bytes, false, false, io);
}

int ExportOne(const FoundEntry& found, const std::string& path, const Options& options, Io& io) {
  absl::StatusOr<OptionValues> values = SetValues(found, options);
  if (!values.ok()) {
    io.Complain(std::string(values.status().message()));
    return kUsage;
  }
  PluginHost host = PluginHostFrom(options);
  const ReviewOptions review = ReviewOptionsFrom(FindPlugins(options), host, nullptr);  // failures are told already
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io, review);
  if (!checked) return kUnreadable;
  AddWanted(found.entry, *checked->read.document, review, checked->review.report);
  PluginSubject subject{checked->read.document->design, checked->review.rod, checked->review.report};
  absl::StatusOr<std::vector<OutputFile>> files =
      host.Export(found.plugin, found.entry.name, StemOf(path), *values, subject);
  if (!files.ok()) return PluginFailed(files.status(), io);
  NoteErrors(*checked, io);
  return Write(*files, options, io);
}

int Run(const Options& options, Io& io) {
  if (options.Has("--list")) {
    io.Out(EntryList(FindEntries(kExporter, options, io)));
    return kDone;
  }
  if (options.operands().size() != 2) {
    io.Complain("export needs an exporter and a design: withy export NAME FILE",
                "'withy export --list' names the exporters");
    return kUsage;
  }
  absl::StatusOr<FoundEntry> found = FindEntry(kExporter, options.operands()[0], options, io);
  if (!found.ok()) {
    io.Complain(std::string(found.status().message()), "'withy export --list' names the exporters");
    return kUsage;
  }
  return ExportOne(*found, options.operands()[1], options, io);
}

int MoreHelp(const Options& options, Io& io) {
  return HelpForEntry(kExporter, options, io);
}

}  // namespace

const Command kExport = {
    .name = "export",
    .operands = "NAME FILE",
    .least_operands = 0,
    .most_operands = 2,
    .completes = Completes::kExporter,
    .summary = "Write files made from a design: cut sheets, lists",
    .details = "All files of one export appear, or none. No file is replaced unless --force is given.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
    .more_help = MoreHelp,
};

}  // namespace withy
