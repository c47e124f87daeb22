// A weighed total of several things fixes their sum and leaves the things adjustable.
#ifndef WITHY_SECTIONS_TOTAL_H_
#define WITHY_SECTIONS_TOTAL_H_

#include <vector>

#include "withy/numerics/uncertain.h"

namespace withy {

// One thing on the scales, by what is known of it without the total.
struct Weighed {
  Uncertain mass_kg;
  bool measured = false;  // does not give way
};

struct TotalFit {
  Uncertain misfit;               // total less sum, before anything gave way
  bool gave_way = false;          // false: everything was measured, or the total is less than what was
  std::vector<Uncertain> ratios;  // fitted over known mass, one for each; empty where nothing gave way
};

// Least squares with the sum exact: what was not measured takes the misfit, each in proportion to the square of its
// uncertainty. Quadratic in the number of things.
TotalFit FitTotal(const std::vector<Weighed>& things, const Uncertain& total_kg);

}  // namespace withy

#endif  // WITHY_SECTIONS_TOTAL_H_
