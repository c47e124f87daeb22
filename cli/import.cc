#include "absl/strings/str_cat.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "output.h"
#include "plugins.h"
#include "withy/review/findings_text.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy import taper-csv taper.csv -o measured.txtpb", "a design from a calliper table"},
    {"withy import --list", "what can be imported"},
    {"withy import taper-csv --help", "the settings of one importer"},
};

constexpr OptionSpec kOptions[] = {
    {"-o,--output", "OUT", "where to (standard output)", Completes::kFile},
    {"--to", "FORM", "text, json or binary (by OUT's ending, else text)", Completes::kChoice, "text|json|binary"},
    {.name = "--set", .value = "NAME=VALUE", .summary = "a setting of the importer (repeatable)", .repeatable = true},
    {"--list", "", "list the importers"},
    {"--force", "", "replace OUT where it exists"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, PluginOptions(), ReadLimitOptions()};
constexpr auto kImporter = PluginEntry::Kind::kImporter;

// What the importer remarked on, shown beside the lines of what it read.
void ShowRemarks(const std::string& path, const std::string& bytes, const std::vector<Finding>& findings, Io& io) {
  CheckedDesign checked;
  checked.name = path;
  checked.bytes = bytes;
  for (const Finding& finding : findings) io.Err(FindingText(checked, finding, LengthUnits::kMm, io.err_style()));
}

int ImportOne(const FoundEntry& found, const std::string& path, const Options& options, Io& io) {
  absl::StatusOr<OptionValues> values = SetValues(found, options);
  if (!values.ok()) {
    io.Complain(std::string(values.status().message()));
    return kUsage;
  }
  absl::StatusOr<std::string> bytes = ReadBytes(path, ReadLimitsFrom(options));
  if (!bytes.ok()) {
    io.Complain(std::string(bytes.status().message()));
    return kUnreadable;
  }
  absl::StatusOr<PluginHost::ImportResult> result =
      PluginHostFrom(options).Import(found.plugin, found.entry.name, path, *bytes, *values);
  if (!result.ok()) return PluginFailed(result.status(), io);
  ShowRemarks(path, *bytes, result->findings, io);
  std::string output = options.Value("--output");
  Form form = WantedForm(options, output, Form::kText);
  return Deliver(output, WriteDesign(result->design, form), form == Form::kBinary, options.Has("--force"), io);
}

int Run(const Options& options, Io& io) {
  if (options.Has("--list")) {
    io.Out(EntryList(FindEntries(kImporter, options, io)));
    return kDone;
  }
  if (options.operands().size() != 2) {
    io.Complain("import needs an importer and a file: withy import NAME FILE",
                "'withy import --list' names the importers");
    return kUsage;
  }
  absl::StatusOr<FoundEntry> found = FindEntry(kImporter, options.operands()[0], options, io);
  if (!found.ok()) {
    io.Complain(std::string(found.status().message()), "'withy import --list' names the importers");
    return kUsage;
  }
  return ImportOne(*found, options.operands()[1], options, io);
}

int MoreHelp(const Options& options, Io& io) {
  return HelpForEntry(kImporter, options, io);
}

}  // namespace

const Command kImport = {
    .name = "import",
    .operands = "NAME FILE",
    .least_operands = 0,
    .most_operands = 2,
    .completes = Completes::kImporter,
    .summary = "Make a design from a file of another kind: calliper tables",
    .details = "",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
    .more_help = MoreHelp,
};

}  // namespace withy
