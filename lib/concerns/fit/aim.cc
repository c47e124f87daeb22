// The length against the cut, and the cut for the length ordered.
#include <algorithm>
#include <cmath>

#include "plan_basis.h"
#include "withy/fit/cut_for_length.h"
#include "withy/fit/length_curve.h"

namespace withy::fit {
namespace {

constexpr double kSame_m = 1e-9;
constexpr double kInch_m = 0.0254;

// The law where it is no contact: it falls evenly and has no jump.
LengthOutcome EvenCutForLength(const RestLaw& law, double length_m, double limit_m) {
  LengthOutcome outcome;
  const double at_limit = law.LengthAt(limit_m).value;
  if (length_m < at_limit - kSame_m) {
    outcome.kind = LengthOutcome::Kind::kBeyondLimit;
    outcome.above = {at_limit, true};
    return outcome;
  }
  outcome.cut_m = std::min(law.LeastCut(length_m).value_or(limit_m), limit_m);
  return outcome;
}

// Half the band of the length, as a cut. Unset where the length hardly answers to a cut.
std::optional<double> CutPlusMinus(const RestLaw& law, double cut_m) {
  const RestLaw::Band band = law.LengthAt(cut_m);
  const double shorter = law.ShorterPer(cut_m);
  if (!(shorter > 1e-3)) return std::nullopt;
  return (band.high - band.low) / 2 / shorter;
}

void Reach(const PlanBasis& basis, double cut_m, CutPlan& plan) {
  plan.outcome = CutPlan::Outcome::kReached;
  plan.cut_for_target_m = std::max(cut_m, basis.done_m);
  plan.cut_for_target_plus_minus_m = CutPlusMinus(basis.law, *plan.cut_for_target_m);
}

void AimWithCut(const PlanBasis& basis, CutPlan& plan) {
  const double target_m = *basis.target_m;
  const Insertion* insertion = basis.law.insertion();
  const LengthOutcome found = insertion != nullptr ? CutForLength(*insertion, target_m, basis.limit_m)
                                                   : EvenCutForLength(basis.law, target_m, basis.limit_m);
  switch (found.kind) {
    case LengthOutcome::Kind::kBeyondLimit:
      plan.outcome = CutPlan::Outcome::kTargetTooShort;
      break;
    case LengthOutcome::Kind::kJump:
      plan.outcome = CutPlan::Outcome::kJump;
      break;
    default:
      if (insertion != nullptr && !insertion->At(found.cut_m.value_or(0)).enters) {
        plan.outcome = CutPlan::Outcome::kDoesNotEnter;
      } else {
        Reach(basis, found.cut_m.value_or(0), plan);
      }
      return;
  }
  if (found.below) plan.nearest_below_m = basis.Overall(found.below->length_m);
  if (found.above) plan.nearest_above_m = basis.Overall(found.above->length_m);
}

}  // namespace

void AimAtTarget(const PlanBasis& basis, CutPlan& plan) {
  const double now_m = basis.Now();
  if (basis.closed != nullptr) {
    plan.outcome = CutPlan::Outcome::kClosed;
    plan.closed_by = basis.closed->at;
    if (!basis.target_m) return;
    (now_m <= *basis.target_m ? plan.nearest_below_m : plan.nearest_above_m) = basis.Overall(now_m);
    return;
  }
  // not known where the butt then stands: no cut can be told
  if (!basis.target_m || !basis.Told(basis.done_m) || plan.contradicted) return;
  const double short_m = *basis.target_m - now_m;
  if (short_m <= kSame_m) return AimWithCut(basis, plan);
  if (short_m <= basis.tolerance_m) return Reach(basis, basis.done_m, plan);
  plan.outcome = CutPlan::Outcome::kTargetTooLong;
  plan.nearest_below_m = basis.Overall(now_m);
}

std::vector<LengthAtCut> LengthsOf(const PlanBasis& basis) {
  if (!basis.beyond_m) return {};
  std::vector<double> cuts = {basis.done_m, basis.limit_m};
  const Insertion* insertion = basis.law.insertion();
  if (insertion != nullptr) cuts = BendsOfLength(*insertion, basis.done_m, basis.limit_m);
  cuts.insert(cuts.end(), {basis.done_m, basis.limit_m});
  for (double inch = std::ceil(basis.done_m / kInch_m); inch * kInch_m < basis.limit_m; ++inch) {
    cuts.push_back(inch * kInch_m);
  }
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end(), [](double a, double b) { return b - a <= kSame_m; }), cuts.end());
  std::vector<LengthAtCut> lengths;
  for (const double cut : cuts) {
    if (!basis.Told(cut)) break;
    const double length_m = insertion != nullptr ? insertion->LengthAt(cut) : basis.law.LengthAt(cut).value;
    LengthAtCut at{cut, length_m + *basis.beyond_m, std::nullopt, basis.law.ShorterPer(cut)};
    const double before_m = insertion != nullptr && cut > basis.done_m ? insertion->LengthBefore(cut) : length_m;
    if (before_m > length_m + kSame_m) at.overall_before_m = before_m + *basis.beyond_m;
    lengths.push_back(at);
  }
  return lengths;
}

}  // namespace withy::fit
