#include <algorithm>

#include "absl/strings/str_cat.h"
#include "bench_log.h"
#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "withy/document/print.h"
#include "withy/review/calibration.h"
#include "withy/review/calibration_text.h"
#include "withy/rod/resolve.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy calibrate bench.txtpb", "what the bench readings say of modulus, density and walls"},
    {"withy calibrate bench.txtpb --wall per-section", "one wall for each section"},
    {"withy calibrate bench.txtpb --write -o known.txtpb", "and put it into the design as estimates"},
};

constexpr OptionSpec kOptions[] = {
    {"--wall", "MODEL", "how the wall runs along a section: linear, per-section (one value)", Completes::kChoice,
     "linear|per-section"},
    {"--write", "", "put what was found into the design as estimates"},
    {"--by", "NAME", "who did it, for identity.changes"},
    {"-o,--output", "OUT", "write the design here instead of in place", Completes::kFile},
    {"--force", "", "replace OUT where it exists"},
    {"--json", "", "print JSON (Calibration of calibration.proto)"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, ReadLimitOptions()};

int StatusOf(const Identification& found) {
  const bool wrong = std::any_of(found.readings.begin(), found.readings.end(), [](const IdentifiedReading& reading) {
    return reading.rejected || reading.faulty;
  });
  if (wrong) return kFindings;
  switch (found.state) {
    case IdentificationState::kFound:
      return kDone;
    case IdentificationState::kContradictory:
      return kFindings;
    case IdentificationState::kNotEnough:
    case IdentificationState::kCannotTell:
      return kIncomplete;
  }
  return kOwnFault;
}

int Write(const Document& document, const Rod& rod, const Identification& found, const Options& options, Io& io) {
  const CalibrationMark mark = {.date = BenchDate(), .author = options.Value("--by")};
  const absl::StatusOr<std::string> bytes = WithCalibration(document, rod, found, mark);
  if (!bytes.ok()) {
    io.Complain(std::string(bytes.status().message()));
    return StatusOf(found) == kDone ? kNoOutput : StatusOf(found);
  }
  if (*bytes == document.bytes) {
    io.Complain(absl::StrCat(document.name, ": nothing changes: the design says what was found already"));
    if (!options.Has("--output")) return kDone;
  }
  return StoreDesign(document, *bytes, options, io);
}

int Run(const Options& options, Io& io) {
  for (std::string_view option : {"--by", "--output", "--force"}) {
    if (!options.Has(option) || options.Has("--write")) continue;
    io.Complain(absl::StrCat(std::string(option), " goes with --write"));
    return kUsage;
  }
  const std::string& path = options.operands().front();
  const std::optional<CheckedDesign> checked = ReadOnly(path, options, io);
  if (!checked) return kUnreadable;
  const Document& document = *checked->read.document;
  const Rod rod = Resolve(document);
  const bool one_wall = options.Value("--wall") == "per-section";
  const Identification found = IdentifyBlank(rod, one_wall ? WallModel::kPerSection : WallModel::kLinear);
  const v1::Calibration calibration = CalibrationOf(document.design, rod, found);
  if (options.Has("--write")) {
    if (const int status = Write(document, rod, found, options, io); status != kDone) return status;
  }
  PrintResult(options.Has("--json") ? MessageToJson(calibration)
                                    : CalibrationText(path, document.design, calibration, io.out_style()),
              options, options.Has("--write"), io);
  return StatusOf(found);
}

}  // namespace

const Command kCalibrate = {
    .name = "calibrate",
    .operands = "FILE",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "Find modulus, density and walls of the blank from bench readings",
    .details =
        "Rests on measured masses, balance points and diameters and on blank.bench: drops under hung weights, counted "
        "oscillations. What was measured of modulus, density and walls is held and never altered. One reading that "
        "does "
        "not fit the others is left out and named (exit status 1, as are readings that contradict each other or cannot be "
        "used as written); where "
        "the "
        "readings leave something open, what to read next is said (exit status 4). --write puts what was found into "
        "the "
        "design, source ESTIMATED, with its uncertainty, and an entry into identity.changes; nothing else is touched. "
        "The "
        "date is the clock's, or SOURCE_DATE_EPOCH.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
