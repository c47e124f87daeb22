#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::guides {
namespace {

constexpr Code kNoTipTop = {
    .name = "guides/no-tip-top",
    .severity = Severity::kWarning,
    .summary = "There are guides, and no tip-top",
    .why = "The line has to leave by something, and every guide is counted from the tip-top's ring.",
    .action = "Add `tip_top`, with its tube in 64ths of an inch as it is sold.",
};

void JudgeNoTipTop(const View& view, std::vector<Finding>& findings) {
  if (view.rod.guides.empty() || view.rod.tip_top) return;
  findings.push_back(MakeFinding(kNoTipTop, FieldPath().Field("guides"), "the rod has guides and no tip-top"));
}

// Largest diameter of the blank that a tip-top's tube has to go over.
std::optional<double> ThickestUnderTube(const View& view) {
  const Blank& blank = view.rod.blank;
  if (blank.outer.empty() || !blank.length_m) return std::nullopt;
  const double tip = blank.length_m->value();
  const Maybe<Length>& tube = view.rod.tip_top->tube_length;
  const double reach = tube ? std::clamp(tube->value.meters(), 0.0, tip) : 0;
  return blank.outer.Max(tip - reach, tip);
}

// Tubes are sold in half 64ths of an inch. The smallest that goes over `diameter`.
double HalfStepOver(Length diameter) {
  return std::ceil(2 * diameter.in64() - 1e-6) / 2;
}

constexpr Code kTipTubeSmall = {
    .name = "guides/tip-tube-small",
    .severity = Severity::kError,
    .summary = "The tip-top's tube does not go over the tip of the blank",
    .why = "A tube that is forced splits the tip, and a tip that is sanded to fit breaks there.",
    .action = "Take the half step that is suggested, or the next above where the tip is coated.",
};

void JudgeTipTubeSmall(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.tip_top || view.rod.blank.sections.empty()) return;
  const std::optional<double> tip_m = ThickestUnderTube(view);
  const Maybe<Length>& tube = view.rod.tip_top->tube_bore;
  if (!tip_m || !tube) {
    findings.push_back(CannotTell(
        kTipTubeSmall, tube ? tube->at : view.rod.tip_top->at, "whether the tip-top goes over the tip is not known",
        tube ? "Measure the diameter of the blank at its tip."
             : "Measure the bore of the tip-top's tube, with the shank of a drill if need be."));
    return;
  }
  const double room_m = tube->value.meters() - *tip_m;
  const double uncertain_m = view.fit.tip_tube_clearance_m ? view.fit.tip_tube_clearance_m->plus_minus() : 0;
  if (room_m >= uncertain_m - 1e-8) return;
  const std::vector<Number> numbers = {{"tube_bore_in64", tube->value.in64()},
                                       {"tip_mm", *tip_m * 1000},
                                       {"suggested_in64", HalfStepOver(Length::Meters(*tip_m))}};
  const std::string figures =
      absl::StrFormat("%.2f/64 in (%.2f mm) on %.2f mm of blank", tube->value.in64(), tube->value.mm(), *tip_m * 1000);
  if (room_m < -uncertain_m - 1e-8) {
    findings.push_back(MakeFinding(kTipTubeSmall, tube->at, "a tube of " + figures, numbers));
    return;
  }
  Finding finding = CannotTell(kTipTubeSmall, tube->at, "too close to tell: a tube of " + figures,
                               "Try it on, or measure tip and tube with a micrometer.");
  finding.numbers = numbers;
  findings.push_back(std::move(finding));
}

constexpr Code kTipTubeLoose = {
    .name = "guides/tip-tube-loose",
    .severity = Severity::kWarning,
    .summary = "The tip-top's tube is more than one half step too wide",
    .why =
        "A loose tip-top stands crooked and is held by glue alone; the tip-top takes more knocks than any other "
        "guide.",
    .action = "Take the half step that is suggested, or build the tip up with wrapping thread.",
};

void JudgeTipTubeLoose(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.tip_top || !view.rod.tip_top->tube_bore) return;
  const std::optional<double> tip_m = ThickestUnderTube(view);
  if (!tip_m) return;
  const Known<Length>& tube = *view.rod.tip_top->tube_bore;
  const double fitting = HalfStepOver(Length::Meters(*tip_m));
  // one half step more is what a coated tip takes (common practice, no source); a twentieth is a label's rounding in mm
  if (tube.value.in64() <= fitting + 0.5 + 0.05) return;
  findings.push_back(
      MakeFinding(kTipTubeLoose, tube.at,
                  absl::StrFormat("a tube of %.2f/64 in (%.2f mm) on %.2f mm of blank", tube.value.in64(),
                                  tube.value.mm(), *tip_m * 1000),
                  {{"tube_bore_in64", tube.value.in64()}, {"tip_mm", *tip_m * 1000}, {"suggested_in64", fitting}}));
}

}  // namespace

std::vector<Rule<View>> TipRules() {
  return {{&kNoTipTop, JudgeNoTipTop}, {&kTipTubeSmall, JudgeTipTubeSmall}, {&kTipTubeLoose, JudgeTipTubeLoose}};
}

}  // namespace withy::guides
