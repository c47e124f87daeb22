#include "withy/review/why.h"

#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "withy/document/print.h"
#include "withy/review/placement.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy why fit.overall_length_mm casting.txtpb", "what the finished length rests on, and how surely"},
    {"withy why balance.parts[module].mass_g casting.txtpb", "one item of a list, by its id or its number from 0"},
    {"withy why balance casting.txtpb", "every figure about balance, to choose one from"},
    {"withy why --depth 4 --json balance.mass_g surf.txtpb", "opened further, as data (why.proto)"},
};

constexpr OptionSpec kOptions[] = {
    {.name = "--depth", .value = "N", .summary = "levels of inputs to open (2)", .most = 20},
    {"--json", "", "print JSON (why.proto)"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, ReadLimitOptions()};

int Run(const Options& options, Io& io) {
  const std::string& figure = options.operands()[0];
  const std::string& path = options.operands()[1];
  std::optional<CheckedDesign> checked = ReadReviewed(path, options, io);
  if (!checked) return kUnreadable;
  // What a review leaves out, since it takes long.
  if (figure.starts_with("placement")) AddPlacement(*checked->read.document, {}, checked->review.report);
  const WhyOptions how{.depth = static_cast<int>(options.Number("--depth", WhyOptions().depth))};
  const absl::StatusOr<v1::WhyReport> why = Why(*checked->read.document, checked->review.report, figure, how);
  if (!why.ok()) {
    io.Complain(std::string(why.status().message()),
                "'withy why fit FILE' names those about fit; so do sections, "
                "bonding, guides, wraps, balance");
    return kUsage;
  }
  io.Out(options.Has("--json") ? MessageToJson(*why) : WhyText(*why, io.out_style()));
  NoteErrors(*checked, io);
  return kDone;
}

}  // namespace

const Command kWhy = {
    .name = "why",
    .operands = "FIGURE FILE",
    .least_operands = 2,
    .most_operands = 2,
    .completes = Completes::kFigure,
    .summary = "Open a figure of the report into its inputs, formula, sources and uncertainty",
    .details =
        "FIGURE is a path in the report, as 'withy show --json' has it. Below it stand the formula, in brackets where "
        "the formula is from, and what went in, down to the fields of the design with their line in the file. Shares "
        "are those of the variance, to first order, of inputs that state an uncertainty. A part of the report, like "
        "balance, is answered with all figures in it.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
