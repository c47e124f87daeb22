#include "design_input.h"

#include "absl/strings/match.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/strip.h"
#include "io.h"
#include "plugins.h"
#include "withy/review/findings_text.h"

namespace withy {
namespace {

constexpr OptionSpec kReadLimitOptions[] = {
    {.name = "--max-bytes", .value = "N", .summary = "largest input read (67108864)", .most = 1L << 40},
    {.name = "--max-depth", .value = "N", .summary = "deepest nesting read (64)", .most = 500},
    {.name = "--max-items", .value = "N", .summary = "most fields and list items read (1000000)", .most = 1L << 32},
};

void SayWhyUnreadable(const CheckedDesign& checked, Io& io) {
  for (const std::string& failure : checked.failures) io.Complain(absl::StrCat(checked.name, ": ", failure));
  for (const Finding& finding : checked.read.findings) {
    io.Err(FindingText(checked, finding, LengthUnits::kMm, io.err_style()));
  }
}

constexpr OptionSpec kUnitsOptions[] = {
    {"--units", "UNITS", "mm, inch, or design: what the design asks for (as without it)", Completes::kChoice,
     "mm|inch|design"},
};

}  // namespace

std::span<const OptionSpec> UnitsOptions() {
  return kUnitsOptions;
}

LengthUnits UnitsFrom(const Options& options, const v1::Design& design) {
  std::string units = options.Value("--units", "design");
  if (units == "design") return UnitsOf(design);
  return units == "inch" ? LengthUnits::kInch : LengthUnits::kMm;
}

std::span<const OptionSpec> ReadLimitOptions() {
  return kReadLimitOptions;
}

ReadLimits ReadLimitsFrom(const Options& options) {
  ReadLimits limits;
  limits.max_bytes = static_cast<std::size_t>(options.Number("--max-bytes", static_cast<long>(limits.max_bytes)));
  limits.max_depth = static_cast<int>(options.Number("--max-depth", limits.max_depth));
  limits.max_items = static_cast<std::size_t>(options.Number("--max-items", static_cast<long>(limits.max_items)));
  return limits;
}

CheckedDesign ReadChecked(const std::string& path, const Options& options) {
  CheckedDesign checked;
  checked.name = path;
  ReadLimits limits = ReadLimitsFrom(options);
  absl::StatusOr<std::string> bytes = ReadBytes(path, limits);
  if (!bytes.ok()) {
    absl::string_view why = bytes.status().message();
    absl::ConsumePrefix(&why, absl::StrCat(path, ": "));
    checked.failures.emplace_back(why);
    return checked;
  }
  checked.bytes = *bytes;
  checked.read = ReadDesign(path, *std::move(bytes), limits);
  return checked;
}

std::optional<CheckedDesign> ReadOnly(const std::string& path, const Options& options, Io& io) {
  CheckedDesign checked = ReadChecked(path, options);
  if (checked.read.document) return checked;
  SayWhyUnreadable(checked, io);
  NoteImporter(path, options, io);
  return std::nullopt;
}

std::optional<CheckedDesign> ReadReviewed(const std::string& path, const Options& options, Io& io,
                                          const ReviewOptions& review) {
  std::optional<CheckedDesign> checked = ReadOnly(path, options, io);
  if (checked) checked->review = ReviewDesign(checked->read, review);
  return checked;
}

void NoteImporter(const std::string& path, const Options& options, Io& io) {
  for (const FoundEntry& found : FindEntries(PluginEntry::Kind::kImporter, options, io)) {
    for (const std::string& extension : found.entry.extensions) {
      if (!absl::EndsWith(path, "." + extension)) continue;
      io.Note(absl::StrCat("what ends in .", extension, " is no design; 'withy import ", found.entry.name, " ", path,
                           "' makes one of it"));
      return;
    }
  }
}

void NoteErrors(const CheckedDesign& checked, Io& io) {
  int errors = VerdictOf(checked.review, Severity::kError).errors;
  if (errors > 0) io.Note(absl::StrCat(checked.name, " has ", Counted(errors, "error"), "; 'withy check' shows them"));
}

std::optional<Form> FormOfEnding(const std::string& path) {
  if (absl::EndsWith(path, ".txtpb")) return Form::kText;
  if (absl::EndsWith(path, ".json")) return Form::kJson;
  if (absl::EndsWith(path, ".binpb")) return Form::kBinary;
  return std::nullopt;
}

Form WantedForm(const Options& options, const std::string& path, Form otherwise) {
  std::string named = options.Value("--to");
  if (named == "text") return Form::kText;
  if (named == "json") return Form::kJson;
  if (named == "binary") return Form::kBinary;
  return FormOfEnding(path).value_or(otherwise);
}

}  // namespace withy
