#include "bench_cuts.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "bench_text.h"
#include "withy/rod/saw.h"
#include "withy/units/format.h"

namespace withy {
namespace {

constexpr double kAsPlanned_mm = 25.4 / 16;  // cuts that differ by less are one cut to a tape measure
constexpr double kHardly_mm = 0.05;  // what no rule shows
constexpr std::size_t kFew = 5;
constexpr double kHair = 1e-6;  // of a step: rounding of what is a whole number of steps

double Given(const v1::Length& length, double otherwise_mm) {
  const std::optional<double> mm = MmOf(length);
  return mm && *mm > 0 ? *mm : otherwise_mm;
}

double KerfOf(const v1::Design& design) {
  return Given(design.shop().saw_kerf(), kUsualKerf.mm());
}

double StepsIn(double mm, double step_mm) {
  return std::floor(mm / step_mm + kHair);
}

// That take so much, the last of them small.
double FewestCuts(double total_mm, const CutLimits& limits) {
  return 1 + std::ceil(std::max(0.0, total_mm - limits.last_mm) / limits.largest_mm);
}

// How much longer the rod is at `cut_mm` than at the deeper `exact_mm`.
double LongerBy(const v1::CutPlan& plan, double cut_mm, double exact_mm) {
  const std::optional<double> at = OverallAt(plan, cut_mm), exact = OverallAt(plan, exact_mm);
  if (at && exact) return *at - *exact;
  return (exact_mm - cut_mm) * (plan.now().has_shorter_per_mm() ? plan.now().shorter_per_mm() : 1);
}

// The stage with `total_mm` off instead, so much less than planned.
v1::StagedCut Moved(const v1::CutPlan& plan, v1::StagedCut stage, double take_mm, double total_mm) {
  const double less_mm = stage.total_mm() - total_mm;
  const double longer_mm = LongerBy(plan, total_mm, stage.total_mm());
  stage.set_take_mm(take_mm);
  stage.set_total_mm(total_mm);
  if (stage.has_leave_mm()) stage.set_leave_mm(stage.leave_mm() + less_mm);
  if (stage.has_expect_mm()) stage.set_expect_mm(stage.expect_mm() + longer_mm);
  if (stage.has_expect_from_mm()) stage.set_expect_from_mm(stage.expect_from_mm() + longer_mm);
  if (stage.has_expect_to_mm()) stage.set_expect_to_mm(stage.expect_to_mm() + longer_mm);
  if (stage.has_overall_mm()) stage.set_overall_mm(stage.overall_mm() + longer_mm);
  // What is in the handle: the blank's length less what stands out of the mouth.
  if (stage.has_depth_mark_mm()) stage.set_depth_mark_mm(stage.depth_mark_mm() + less_mm - longer_mm);
  return stage;
}

// A cut in whole steps.
struct StepsOff {
  int stage = 0;
  double take = 0;
};

std::vector<BenchCut> Marked(const v1::CutPlan& plan, const std::vector<StepsOff>& cuts, double step_mm) {
  std::vector<BenchCut> marked;
  double steps = 0;
  for (const auto& [stage, take] : cuts) {
    steps += take;
    marked.push_back({Moved(plan, plan.stages(stage), take * step_mm, plan.cut_done_mm() + steps * step_mm), stage});
  }
  return marked;
}

}  // namespace

std::optional<double> OverallAt(const v1::CutPlan& plan, double cut_mm) {
  std::optional<double> overall;
  for (const v1::LengthAtCut& point : plan.lengths()) {
    if (point.cut_mm() > cut_mm + kHair) break;
    overall = point.overall_mm() - point.shorter_per_mm() * (cut_mm - point.cut_mm());
  }
  return overall;
}

CutLimits CutLimitsOf(const v1::Design& design) {
  const double last_mm = std::max(Given(design.shop().last_cut(), kUsualLastCut.mm()), KerfOf(design));
  return {std::max(Given(design.shop().largest_single_cut(), kUsualLargestCut.mm()), last_mm), last_mm};
}

std::vector<BenchCut> BenchCuts(const v1::CutPlan& plan, LengthUnits units, const CutLimits& limits) {
  const double step_mm = units == LengthUnits::kInch ? 25.4 / 16 : 1;
  const double largest = StepsIn(limits.largest_mm, step_mm), last = std::max(1.0, StepsIn(limits.last_mm, step_mm));
  std::vector<StepsOff> cuts;
  double steps = 0;  // taken so far
  for (int i = 0; i < plan.stages_size(); ++i) {
    double take = std::min(StepsIn(plan.stages(i).total_mm() - plan.cut_done_mm(), step_mm) - steps, largest);
    const bool small = i + 1 == plan.stages_size() && plan.stages(i).take_mm() <= limits.last_mm + step_mm;
    if (small) take = std::min(take, last);
    if (take < 1) continue;
    steps += take;
    cuts.push_back({i, take});
  }
  const bool left_out = !cuts.empty() && cuts.back().stage + 1 < plan.stages_size();
  if (left_out && cuts.back().take > last) {
    cuts.back().take -= last;
    cuts.push_back({cuts.back().stage, last});
  }
  return Marked(plan, cuts, step_mm);
}

bool CutIsMissing(const v1::CutPlan& plan) {
  if (plan.outcome() == "does not enter") return true;
  const bool left = plan.outcome() == "reached" && plan.cut_for_target_mm() - plan.cut_done_mm() > kHardly_mm;
  return left && plan.stages_size() == 0 && plan.verdict() != "meets";
}

std::string NoCutBecause(const v1::CutPlan& plan, const v1::Design& design) {
  if (plan.outcome() == "closed") return "the blank is glued in";
  if (plan.outcome() == "does not enter") {
    return absl::StrCat("the butt is thicker than the mouth of ", plan.host(), ", also when it is cut to that length");
  }
  if (plan.outcome() != "reached") return "";
  if (!CutIsMissing(plan)) return "what is to come off is off";
  const double left_mm = plan.cut_for_target_mm() - plan.cut_done_mm(), kerf_mm = KerfOf(design);
  const std::string to_come = absl::StrCat(FormatFixed(left_mm, 1), " mm are to come off, and ");
  if (left_mm >= FewestCuts(left_mm, CutLimitsOf(design)) * kerf_mm) {
    return absl::StrCat(to_come, "any cut might be too much");
  }
  return absl::StrCat(to_come, "the saw takes ", FormatFixed(kerf_mm, 1), " mm at each cut");
}

std::size_t ShownCuts(std::size_t cuts) {
  return cuts <= kFew ? cuts : kFew - 2;
}

std::string MoreCuts(std::size_t more) {
  return std::to_string(more) + " more, planned anew after each dry fit";
}

bool CutsAreToCome(const v1::CutPlan& plan) {
  const auto& stages = plan.stages();
  return !stages.empty() && stages.rbegin()->total_mm() - plan.cut_planned_mm() > kAsPlanned_mm;
}

}  // namespace withy
