#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"
#include "withy/document/print.h"
#include "withy/review/show_text.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy show casting.txtpb", "lengths, places, masses, balance"},
    {"withy show --units inch fly.txtpb", "lengths along the rod in inches"},
    {"withy show --json surf.txtpb", "the report as data (report.proto)"},
};

constexpr OptionSpec kOptions[] = {
    {"--json", "", "print JSON (report.proto)"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, UnitsOptions(), PluginOptions(), ReadLimitOptions()};

int Run(const Options& options, Io& io) {
  const std::string& path = options.operands().front();
  bool failed = false;
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io, ReviewOptionsFrom(options, io, &failed));
  if (!checked) return kUnreadable;
  const v1::Design& design = checked->read.document->design;
  if (options.Has("--json")) {
    io.Out(MessageToJson(checked->review.report));
  } else {
    io.Out(
        ShowText(path, design, checked->review.report, {.units = UnitsFrom(options, design), .style = io.out_style()}));
  }
  NoteErrors(*checked, io);
  return failed ? kIncomplete : kDone;
}

}  // namespace

const Command kShow = {
    .name = "show",
    .operands = "FILE",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kDesign,
    .summary = "Show what follows from a design: lengths, places, masses, balance",
    .details =
        "Diameters are in mm and masses in grams always. A figure that could not be told is shown as '-'; the last "
        "part of the output says what to measure. The part before lists what had to be assumed.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
