#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "withy/document/print.h"
#include "withy/review/work_plan.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy plan casting-uncut.txtpb", "what to measure, cut, build, glue and balance, in order"},
    {"withy plan --units mm casting.txtpb", "lengths in mm alone"},
    {"withy plan --json fly.txtpb", "the steps as data (plan.proto)"},
};

constexpr OptionSpec kOptions[] = {
    {"--json", "", "print JSON (plan.proto)"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, UnitsOptions(), ReadLimitOptions()};

int Run(const Options& options, Io& io) {
  const std::string& path = options.operands().front();
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io);
  if (!checked) return kUnreadable;
  const v1::Design& design = checked->read.document->design;
  const v1::Report& report = checked->review.report;
  const LengthUnits units = UnitsFrom(options, design);
  io.Out(options.Has("--json") ? MessageToJson(PlanWork(design, report, units))
                               : PlanText(path, design, report, {.units = units, .style = io.out_style()}));
  NoteErrors(*checked, io);
  return kDone;
}

}  // namespace

const Command kPlan = {
    .name = "plan",
    .operands = "FILE",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "List the work in order: what is done, what is open, what each step closes",
    .details =
        "What the log says is done is marked so and not planned again. Each step says what can no longer be changed "
        "after "
        "it. Print it again after every entry in the log: the plan follows what was measured.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
