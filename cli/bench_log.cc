#include "bench_log.h"

#include <cstdlib>
#include <ctime>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "design_input.h"
#include "exit_status.h"
#include "file_lock.h"
#include "io.h"
#include "output.h"
#include "withy/document/append.h"

namespace withy {
namespace {

constexpr OptionSpec kRecordingOptions[] = {
    {"--note", "TEXT", "a remark on what is recorded"},
    {"--by", "NAME", "who did it"},
    {"-o,--output", "OUT", "write the design with the new entries here instead of in place", Completes::kFile},
    {"--force", "", "record what is refused; replace OUT where it exists"},
};

// The time that a build which must be repeatable sets (reproducible-builds.org, SOURCE_DATE_EPOCH), in UTC. False where
// there is none, or none of this calendar.
bool FixedTime(std::tm* parts) {
  const char* text = std::getenv("SOURCE_DATE_EPOCH");
  long long seconds = 0;
  if (!text || !absl::SimpleAtoi(text, &seconds)) return false;
  const auto time = static_cast<std::time_t>(seconds);
  return gmtime_r(&time, parts) && parts->tm_year >= 0 && parts->tm_year < 8100;
}

// To the minute, by the bench's own clock unless the time is set.
std::string EntryDate() {
  std::tm parts{};
  if (!FixedTime(&parts)) {
    const std::time_t now = std::time(nullptr);
    localtime_r(&now, &parts);
  }
  char text[32];
  return {text, std::strftime(text, sizeof text, "%Y-%m-%dT%H:%M", &parts)};
}

// "e12, e13"
std::string Sign(std::vector<v1::Entry>& entries, const v1::Design& design, const Options& options) {
  v1::Design numbered = design;
  std::vector<std::string> ids;
  for (v1::Entry& entry : entries) {
    entry.set_id(NextEntryId(numbered));
    entry.set_date(EntryDate());
    entry.set_by(options.Value("--by"));
    *numbered.add_log() = entry;
    ids.push_back(entry.id());
  }
  if (!entries.empty()) entries.back().set_note(options.Value("--note"));
  return absl::StrJoin(ids, ", ");
}

int Refused(const std::vector<Refusal>& refusals, const Options& options, Io& io) {
  bool stands = false;
  for (const Refusal& refusal : refusals) {
    if (refusal.may_be_forced && options.Has("--force")) {
      io.Note("recorded all the same: " + refusal.message);
      continue;
    }
    io.Complain("not recorded: " + refusal.message, refusal.help);
    stands = true;
  }
  return stands ? kFindings : kDone;
}

// Under one name only: the other names of the file would keep a log without the entry, and somebody would cut by it.
bool HasOtherNames(const std::string& path, const FileLock& lock, const Options& options, Io& io) {
  if (lock.names() < 2 || options.Has("--force")) return false;
  io.Complain(absl::StrCat(path, ": not written: the file has ", lock.names(), " names (hard links)"),
              "the others would keep the log as it was; write with -o, or with --force part this name from them");
  return true;
}

// In place, unless somebody else wrote the file meanwhile or is about to.
int WriteBack(const std::string& path, const std::string& before, const std::string& after, const Options& options,
              Io& io) {
  constexpr char kAgain[] = "run the command again";
  const absl::StatusOr<FileLock> lock = FileLock::Take(path);
  if (!lock.ok()) {
    io.Complain(std::string(lock.status().message()), absl::IsUnavailable(lock.status()) ? kAgain : "");
    return kNoOutput;
  }
  const absl::StatusOr<std::string> now = ReadBytes(path, ReadLimitsFrom(options));
  if (!now.ok() || *now != before) {
    io.Complain(path + ": not written: the file was changed meanwhile", kAgain);
    return kNoOutput;
  }
  if (HasOtherNames(path, *lock, options, io)) return kNoOutput;
  if (absl::Status status = WriteFiles({{path, after}}, Existing::kReplace); !status.ok()) {
    io.Complain(std::string(status.message()));
    return kNoOutput;
  }
  return kDone;
}

// The design as it will be read from now on. Unset: it is beyond the limits of reading.
std::optional<CheckedDesign> Reviewed(const std::string& name, std::string bytes, const Options& options) {
  CheckedDesign checked{.name = name, .bytes = std::move(bytes)};
  checked.read = ReadDesign(name, checked.bytes, ReadLimitsFrom(options));
  if (!checked.read.document) return std::nullopt;
  checked.review = ReviewDesign(checked.read);
  return checked;
}

template <typename Text, typename Parse>
bool ReadQuantity(const Options& options, std::string_view option, Io& io, Parse parse, std::optional<Text>* quantity) {
  if (!options.Has(option)) return true;
  absl::StatusOr<Text> read = parse(options.Value(option));
  if (!read.ok()) {
    io.Complain(absl::StrCat(std::string(option), ": ", read.status().message()));
    return false;
  }
  *quantity = *std::move(read);
  return true;
}

double InUnit(const LengthText& length, std::string_view unit) {
  if (unit == "inch") return length.value.inches();
  return unit == "in64" ? length.value.in64() : length.value.mm();
}

}  // namespace

std::span<const OptionSpec> RecordingOptions() {
  return kRecordingOptions;
}

bool ReadLength(const Options& options, std::string_view option, Io& io, std::optional<LengthText>* length) {
  return ReadQuantity(options, option, io, ParseLength, length);
}

bool ReadMass(const Options& options, std::string_view option, Io& io, std::optional<MassText>* mass) {
  return ReadQuantity(options, option, io, ParseMass, mass);
}

bool ReadAngle(const Options& options, std::string_view option, Io& io, std::optional<AngleText>* angle) {
  return ReadQuantity(options, option, io, ParseAngle, angle);
}

v1::Length MeasuredLength(const LengthText& length, const std::optional<LengthText>& plus_minus) {
  v1::Length to;
  if (length.unit == "inch") {
    to.set_inch(length.number);
  } else if (length.unit == "in64") {
    to.set_in64(length.number);
  } else {
    to.set_mm(length.number);
  }
  if (plus_minus) {
    to.set_plus_minus(plus_minus->unit == length.unit ? plus_minus->number : InUnit(*plus_minus, length.unit));
  }
  to.set_source(v1::Source::MEASURED);
  return to;
}

v1::Mass MeasuredMass(const MassText& mass) {
  v1::Mass to;
  if (mass.unit == "oz") {
    to.set_oz(mass.number);
  } else if (mass.unit == "grain") {
    to.set_grain(mass.number);
  } else {
    to.set_g(mass.number);
  }
  to.set_source(v1::Source::MEASURED);
  return to;
}

v1::Angle MeasuredAngle(const AngleText& angle) {
  v1::Angle to;
  to.set_deg(angle.number);
  to.set_source(v1::Source::MEASURED);
  return to;
}

int StoreDesign(const Document& document, const std::string& bytes, const Options& options, Io& io) {
  const std::string& path = options.operands().front();
  const std::string output = options.Value("--output", path);
  return options.Has("--output") || output == "-"
             ? Deliver(output, bytes, document.form == Form::kBinary, options.Has("--force"), io)
             : WriteBack(output, document.bytes, bytes, options, io);
}

std::string BenchDate() { return EntryDate().substr(0, 10); }

int Record(std::vector<v1::Entry> entries, const BenchReadings& readings, const Options& options, Io& io,
           CheckedDesign& checked) {
  const Document& document = *checked.read.document;
  const std::string ids = Sign(entries, document.design, options);
  const LengthUnits units = UnitsFrom(options, document.design);
  const std::vector<Refusal> refusals = RefusalsOf(document.design, checked.review.report, readings, units);
  if (int status = Refused(refusals, options, io)) return status;
  absl::StatusOr<std::string> bytes = AppendLog(document, entries);
  if (!bytes.ok()) {
    io.Complain(std::string(bytes.status().message()));
    return kNoOutput;
  }
  std::optional<CheckedDesign> after = Reviewed(checked.name, *std::move(bytes), options);
  if (!after) {
    io.Complain("not recorded: with the new entries the design is beyond what is read", "raise --max-bytes or --max-items");
    return kNoOutput;
  }
  const int first_new = document.design.log_size();
  if (refusals.empty()) {  // else it is said already what is wrong, and was to be recorded all the same
    if (int status = Refused(ContradictionsOf(*after, first_new), options, io)) return status;
  }
  if (int status = StoreDesign(document, after->bytes, options, io)) return status;
  checked = *std::move(after);
  const std::string output = options.Value("--output", checked.name);
  io.Note(absl::StrCat("recorded ", ids, output == "-" ? "" : " in " + output));
  for (const std::string& remark : RemarksOn(checked, first_new)) io.Note(remark);
  return kDone;
}

void PrintResult(const std::string& text, const Options& options, bool recorded, Io& io) {
  const bool design_went_out = recorded && options.Value("--output", options.operands().front()) == "-";
  if (design_went_out) {
    io.Err(text);
  } else {
    io.Out(text);
  }
}

}  // namespace withy
