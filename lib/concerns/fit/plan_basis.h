// What a cut plan rests on.
#ifndef WITHY_FIT_PLAN_BASIS_H_
#define WITHY_FIT_PLAN_BASIS_H_

#include <optional>
#include <vector>

#include "withy/fit/cut_plan.h"
#include "withy/rod/rod.h"

namespace withy::fit {

struct PlanBasis {
  const Rod& rod;
  const RestLaw& law;
  const Part* host = nullptr;  // that the blank comes to rest in; null = it runs through
  const Section& butt;
  double done_m = 0, planned_m = 0, limit_m = 0;
  std::optional<double> host_start_m = {};  // from the butt end; 0 without a host
  std::optional<double> beyond_m = {};      // as CutPlan::beyond_m
  std::optional<double> target_m = {};      // as a dry fit reads it
  double tolerance_m = 0;
  const Closed* closed = nullptr;  // what has glued the blank in

  // Whether the law tells where the butt stands at this cut: of a bore that is known only in part it may not.
  bool Told(double cut_m) const { return law.from() != RestLaw::From::kContact || law.KnownAt(cut_m); }
  // As it is cut now, as a dry fit reads it. What is glued is where it was glued, whatever the law says of another try.
  double Now() const {
    const bool glued = closed != nullptr && planned_m <= done_m && rod.overall_m && rod.tip_top && beyond_m;
    return glued ? rod.overall_m->value() - *beyond_m : law.LengthAt(done_m).value;
  }
  std::optional<double> Overall(double length_m) const {
    return beyond_m ? std::optional<double>(length_m + *beyond_m) : std::nullopt;
  }
};

std::optional<PlanBasis> PlanBasisOf(const Rod& rod);

// At every cut where the length bends or jumps, at each whole inch between, and at both ends: what is off, and the
// limit. Empty without overall lengths.
std::vector<LengthAtCut> LengthsOf(const PlanBasis& basis);

// Fills in outcome, cut_for_target, nearest lengths.
void AimAtTarget(const PlanBasis& basis, CutPlan& plan);

// Fills in stages and no_sure_cut, towards cut_for_target.
void PlanStages(const PlanBasis& basis, CutPlan& plan);

// With what is off by now; with all cuts as planned.
Resting RestingNow(const PlanBasis& basis);
Resting RestingAsPlanned(const PlanBasis& basis);
std::vector<DryFitSeen> DryFitsOf(const PlanBasis& basis);
std::optional<TipLever> TipLeverOf(const PlanBasis& basis);

// After all else of the plan is known.
std::vector<Remedy> RemediesOf(const PlanBasis& basis, const CutPlan& plan);

}  // namespace withy::fit

#endif  // WITHY_FIT_PLAN_BASIS_H_
