#include <algorithm>
#include <cmath>
#include <string>

#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/units/format.h"

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

// Largest diameter of the blank that the tip-top's tube has to go over.
std::optional<double> ThickestUnderTube(const View& view) {
  if (!view.fit.under_tip_tube_m) return std::nullopt;
  return view.fit.under_tip_tube_m->value();
}

// Tubes are sold in half 64ths of an inch. The smallest that goes over `diameter`.
double HalfStepOver(Length diameter) {
  return std::ceil(2 * diameter.in64() - 1e-6) / 2;
}

// A tube as it is sold; one that was measured and is no half step with its decimals.
std::string SizeOf(Length tube) {
  const double halves = 2 * tube.in64();
  if (std::abs(halves - std::round(halves)) < 0.02) return FormatIn64(tube) + " in";
  return absl::StrFormat("%.2f/64 in", tube.in64());
}

// "a tube of 5/64 in (1.98 mm) on 2.15 mm of blank; 5.5/64 in goes over it"
std::string Figures(Length tube, double tip_m, const char* what_the_next_does) {
  return absl::StrFormat("a tube of %s (%.2f mm) on %.2f mm of blank; %s in %s", SizeOf(tube), tube.mm(), tip_m * 1000,
                         FormatIn64(Length::In64(HalfStepOver(Length::Meters(tip_m)))), what_the_next_does);
}

// Rows out of order leave the blank without diameters; they are told as such.
bool RowsOutOfOrder(const Section& section) {
  const std::vector<Station>& rows = section.taper.stations;
  return std::adjacent_find(rows.begin(), rows.end(), [](const Station& a, const Station& b) {
           return a.at && b.at && *b.at < *a.at;
         }) != rows.end();
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
  if (!tip_m && std::any_of(view.rod.blank.sections.begin(), view.rod.blank.sections.end(), RowsOutOfOrder)) return;
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
  const std::string figures = Figures(tube->value, *tip_m, "goes over it");
  if (room_m < -uncertain_m - 1e-8) {
    findings.push_back(MakeFinding(kTipTubeSmall, tube->at, figures, numbers));
    return;
  }
  Finding finding = CannotTell(kTipTubeSmall, tube->at, "too close to tell: " + figures,
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
      MakeFinding(kTipTubeLoose, tube.at, Figures(tube.value, *tip_m, "would do"),
                  {{"tube_bore_in64", tube.value.in64()}, {"tip_mm", *tip_m * 1000}, {"suggested_in64", fitting}}));
}

}  // namespace

std::vector<Rule<View>> TipRules() {
  return {{&kNoTipTop, JudgeNoTipTop}, {&kTipTubeSmall, JudgeTipTubeSmall}, {&kTipTubeLoose, JudgeTipTubeLoose}};
}

}  // namespace withy::guides
