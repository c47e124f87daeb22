// The length ordered from the other end.
#include <algorithm>
#include <cmath>

#include "plan_basis.h"

namespace withy::fit {

std::optional<TipLever> TipLeverOf(const PlanBasis& basis) {
  const Blank& blank = basis.rod.blank;
  if (!basis.target_m || !basis.Told(basis.done_m) || blank.outer.empty()) return std::nullopt;
  const double cut_m = basis.Now() - *basis.target_m;
  const double tip_m = blank.outer.end() - cut_m;
  if (!(cut_m > 1e-9) || !(tip_m > blank.outer.begin())) return std::nullopt;
  TipLever lever;
  lever.cut_m = cut_m;
  lever.tip_m = blank.outer.At(tip_m, Profile::Limit::kLeft);
  const double now_m = blank.outer.At(blank.outer.end(), Profile::Limit::kLeft);
  if (now_m > 0 && lever.tip_m > 0) lever.stiffer = std::pow(lever.tip_m / now_m, 3);
  if (basis.rod.tip_top && lever.tip_m > 0) {
    const auto& tube = basis.rod.tip_top->tube_length;
    const double reach_m = tube ? std::clamp(tube->value.meters(), 0.0, tip_m - blank.outer.begin()) : 0;
    const double thickest_m = blank.outer.Max(tip_m - reach_m, tip_m);
    // a tie goes on
    lever.tube_in64 = std::ceil(Length::Meters(thickest_m).in64() * 2 - 1e-9) / 2;
  }
  return lever;
}

}  // namespace withy::fit
