#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/units/format.h"

namespace withy::fit {
namespace {

constexpr Code kOverallLength = {
    .name = "fit/overall-length",
    .severity = Severity::kError,
    .summary = "The rod does not come out at the length ordered",
    .why =
        "Length that is cut off cannot be put back, and a handle that is glued does not move. Everything that "
        "sets the length is known before the cut.",
    .action =
        "Change the cut of the butt or the place of the blank in the handle. If the length is to stay, change "
        "the order.",
};

// 1/8 in (common practice, no source), where the order names no tolerance.
constexpr Length kTolerance = Length::Inches(0.125);

std::string MeasureFor(const View& view) {
  for (const Unknown& unknown : view.answers.unknowns) {
    if (unknown.figure == "fit.overall_length_mm") return unknown.measure;
  }
  for (const Unknown& unknown : view.rod.unknowns) {
    if (unknown.figure == "fit.overall_length_mm") return unknown.measure;
  }
  if (!view.rod.rest_measure.empty()) return view.rod.rest_measure;
  return "Measure the length of every section, the overlap of every joint and where the blank comes to rest in the "
         "handle.";
}

// "2209.8 mm (87\")": a rod is ordered in inches or in mm.
std::string Both(double mm) {
  return FormatMm(Length::Mm(mm), 1) + " (" + FormatInches(Length::Mm(mm), 16) + ")";
}

// With d the distance from the length ordered and U its uncertainty: meets where d + U is within the tolerance, misses
// where d - U is not, and cannot be told between the two.
void JudgeOverallLength(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.order.overall_length) return;
  const Known<Length>& ordered = *view.rod.order.overall_length;
  if (!view.answers.overall_m) {
    findings.push_back(CannotTell(kOverallLength, ordered.at,
                                  "whether the rod comes out at " + Both(ordered.value.mm()) + " is not known",
                                  MeasureFor(view)));
    return;
  }
  const double tolerance_mm = ordered.plus_minus ? *ordered.plus_minus * 1000 : kTolerance.mm();
  const double overall_mm = view.answers.overall_m->value() * 1000;
  const double uncertain_mm = view.answers.overall_m->plus_minus() * 1000;
  const double off_mm = std::abs(overall_mm - ordered.value.mm());
  // a micrometre: the same length in two units
  if (off_mm + uncertain_mm <= tolerance_mm + 1e-3) return;
  const std::vector<Number> numbers = {{"overall_length_mm", overall_mm},
                                       {"ordered_mm", ordered.value.mm()},
                                       {"tolerance_mm", tolerance_mm},
                                       {"plus_minus_mm", uncertain_mm}};
  const std::string figures = absl::StrFormat("%s, give or take %.1f, where %s is ordered, within %.1f mm",
                                              Both(overall_mm), uncertain_mm, Both(ordered.value.mm()), tolerance_mm);
  if (off_mm - uncertain_mm > tolerance_mm) {
    findings.push_back(MakeFinding(kOverallLength, ordered.at, "comes out at " + figures, numbers));
    return;
  }
  Finding finding =
      CannotTell(kOverallLength, ordered.at, "too uncertain to tell: " + figures,
                 "Measure what the length hangs on more closely, the blank and a dry fit before all, and give "
                 "`plus_minus` with it.");
  finding.numbers = numbers;
  findings.push_back(std::move(finding));
}

}  // namespace

std::vector<Rule<View>> LengthRules() {
  return {{&kOverallLength, JudgeOverallLength}};
}

}  // namespace withy::fit
