// Staged cuts: as many as the bench allows at once, none of them past the shortest length that is to be expected.
#include <algorithm>

#include "plan_basis.h"
#include "withy/fit/staged_cuts.h"
#include "withy/rod/saw.h"

namespace withy::fit {
namespace {

// Of the reading of a dry fit that is still to come (common practice, no source).
constexpr double kReading_m = 0.001;
constexpr int kMostListed = 100;
constexpr double kSame_m = 1e-9;
constexpr double kLeastSure_m = 0.0005;  // a sure cut that no rule can mark is none (common practice, no source)

double Meters(const Maybe<Length>& known, Length otherwise) {
  return (known && known->value.meters() >= 0 ? known->value : otherwise).meters();
}

CutStages StagesOfShop(const Shop& shop) {
  CutStages stages{.kerf_m = Meters(shop.saw_kerf, kUsualKerf),
                   .largest_m = Meters(shop.largest_single_cut, kUsualLargestCut),
                   .last_m = Meters(shop.last_cut, kUsualLastCut)};
  stages.last_m = std::max(stages.last_m, stages.kerf_m);
  stages.largest_m = std::max(stages.largest_m, stages.last_m);
  return stages;
}

// The law once a dry fit after that cut has read what is expected of it.
RestLaw WithDryFit(const RestLaw& law, double cut_m) {
  RestLaw::Setup setup = law.setup();
  RestLaw::Seen seen;
  seen.cut_m = cut_m;
  seen.length_m = law.LengthAt(cut_m).value;
  seen.plus_minus_m = kReading_m;
  setup.seen.push_back(seen);
  return RestLaw(std::move(setup));
}

// The most, up to `take`, after which the rod can still come out at least at `floor`; less than nothing where no cut is
// sure. The low end of a band never rises with the cut.
double SureCut(const RestLaw& law, double at_m, double take_m, double floor_m) {
  if (law.LengthAt(at_m + take_m).low >= floor_m - kSame_m) return take_m;
  if (law.LengthAt(at_m).low < floor_m) return -1;
  double sure = 0, unsure = take_m;
  while (unsure - sure > 1e-7) {
    const double middle = (sure + unsure) / 2;
    (law.LengthAt(at_m + middle).low >= floor_m ? sure : unsure) = middle;
  }
  return sure;
}

// A rod that surely is as ordered is left as it is.
bool AlreadyMeets(const PlanBasis& basis) {
  const RestLaw::Band now = basis.law.LengthAt(basis.done_m);
  return now.low >= *basis.target_m - basis.tolerance_m && now.high <= *basis.target_m + basis.tolerance_m;
}

StagedCut StageOf(const PlanBasis& basis, const RestLaw& law, double at_m, double take_m) {
  StagedCut stage;
  stage.take_m = take_m;
  stage.total_m = at_m + take_m;
  stage.leave_m = law.blank_m() - stage.total_m;
  const RestLaw::Band band = law.LengthAt(stage.total_m);
  stage.expect_from_m = band.low;
  stage.expect_m = band.value;
  stage.expect_to_m = band.high;
  stage.overall_m = basis.Overall(band.value);
  stage.decides = law.from() != RestLaw::From::kThrough;
  if (basis.host != nullptr && basis.host->length) {
    stage.depth_mark_m = basis.host->length->value.meters() - law.RestAt(stage.total_m);
  }
  return stage;
}

}  // namespace

void PlanStages(const PlanBasis& basis, CutPlan& plan) {
  if (!plan.cut_for_target_m || plan.outcome != CutPlan::Outcome::kReached || AlreadyMeets(basis)) return;
  const CutStages stages = StagesOfShop(basis.rod.shop);
  const double floor_m = *basis.target_m - basis.tolerance_m;
  RestLaw law = basis.law;
  for (double at_m = basis.done_m; *plan.cut_for_target_m - at_m > kSame_m;) {
    const auto takes = StagedCuts(*plan.cut_for_target_m - at_m, stages);
    if (!takes || takes->empty()) return;  // less than the saw takes
    // of two the large one first, whatever the last may take
    const double wanted_m = std::max(takes->front(), takes->back());
    const double take_m = SureCut(law, at_m, wanted_m, floor_m);
    if (take_m < stages.kerf_m - kSame_m || take_m < std::min(wanted_m, kLeastSure_m)) {
      plan.no_sure_cut = plan.stages.empty();
      return;
    }
    plan.stages.push_back(StageOf(basis, law, at_m, take_m));
    at_m += take_m;
    if (plan.stages.size() >= kMostListed) return;
    if (law.from() != RestLaw::From::kThrough) law = WithDryFit(law, at_m);
  }
}

}  // namespace withy::fit
