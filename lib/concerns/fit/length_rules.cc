#include <cmath>

#include "absl/strings/str_format.h"
#include "both_units.h"
#include "rules.h"

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

constexpr char kMeasureAll[] =
    "measure the length of every section, the overlap of every joint and where the blank comes to rest in the handle";

// What is still to come off, where that gives the length; empty where it does not.
std::string CutThatMends(const std::optional<CutPlan>& plan) {
  if (!plan || plan->outcome != CutPlan::Outcome::kReached || plan->stages.empty() || !plan->cut_for_target_m) return "";
  return absl::StrFormat(
      "Take %s off the butt, in stages with a dry fit after each: 'withy trim FILE' plans them. Or enter the cut in "
      "`blank.cuts`.",
      Both(Length::Meters(*plan->cut_for_target_m - plan->done_m)));
}

// The verdict is that of the cut plan (withy/fit/cut_plan.h).
void JudgeOverallLength(const View& view, std::vector<Finding>& findings) {
  if (!view.answers.verdict || view.answers.verdict == LengthVerdict::kMeets) return;
  const Known<Length>& ordered = *view.rod.order.overall_length;
  if (!view.answers.overall_m) {
    findings.push_back(CannotTell(kOverallLength, ordered.at,
                                  "whether the rod comes out at " + Both(ordered.value) + " is not known",
                                  view.answers.measure.empty() ? kMeasureAll : view.answers.measure));
    return;
  }
  const double tolerance_mm = LengthTolerance(view.rod) * 1000;
  const double overall_mm = view.answers.overall_m->value() * 1000;
  const double uncertain_mm = view.answers.overall_m->plus_minus() * 1000;
  const std::vector<Number> numbers = {{"overall_length_mm", overall_mm},
                                       {"ordered_mm", ordered.value.mm()},
                                       {"tolerance_mm", tolerance_mm},
                                       {"plus_minus_mm", uncertain_mm}};
  const std::string figures =
      absl::StrFormat("%s, give or take %.1f, where %s is ordered, within %.1f mm", Both(Length::Mm(overall_mm)),
                      uncertain_mm, Both(ordered.value), tolerance_mm);
  if (view.answers.verdict == LengthVerdict::kMisses) {
    findings.push_back(MakeFinding(kOverallLength, ordered.at, "comes out at " + figures, numbers));
    if (const std::string cut = CutThatMends(view.answers.cut); !cut.empty()) findings.back().help = cut;
    return;
  }
  const bool jump = std::abs(overall_mm - ordered.value.mm()) + uncertain_mm <= tolerance_mm;
  Finding finding =
      CannotTell(kOverallLength, ordered.at,
                 (jump ? "the butt may pass a shoulder beside its place: " : "too uncertain to tell: ") + figures,
                 view.answers.measure);
  finding.numbers = numbers;
  findings.push_back(std::move(finding));
}

}  // namespace

std::vector<Rule<View>> LengthRules() {
  return {{&kOverallLength, JudgeOverallLength}};
}

}  // namespace withy::fit
