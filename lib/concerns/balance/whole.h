// A weighing of the whole rod, and what it does to the sum of its parts.
#ifndef WITHY_BALANCE_WHOLE_H_
#define WITHY_BALANCE_WHOLE_H_

#include <optional>

#include "contributions.h"

namespace withy {

// What everything counted adds up to; unset where something's mass or place is not known.
struct Sums {
  std::optional<Uncertain> mass_kg;
  std::optional<Uncertain> moment_kg_m;  // about the butt end
};
Sums SumOf(const Collection& all);

// The whole on the scales, without reel.
struct Whole {
  int weighing = -1;  // in Rod::weighings
  Uncertain mass_kg;
  std::optional<Uncertain> moment_kg_m;  // where its balance point was measured
};
// The latest weighing of the whole that holds; unset where there is none, or it was with a reel of unknown mass.
std::optional<Whole> WholeOf(const Rod& rod, Collection& all);

// Fixes the sums of `all` by the whole: adds what was not counted, lets the parts give way, and returns what the sums
// then are. `before` is SumOf(all).
Sums FitWhole(const Rod& rod, const Whole& whole, const Sums& before, Collection& all);

}  // namespace withy

#endif  // WITHY_BALANCE_WHOLE_H_
