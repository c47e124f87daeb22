// Weighings of the whole rod, also half built, and what they do to the sum of its parts.
#ifndef WITHY_BALANCE_WHOLE_H_
#define WITHY_BALANCE_WHOLE_H_

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "contributions.h"
#include "weights_in.h"

namespace withy {

// What everything counted adds up to; unset where something's mass or place is not known. With `shares`, as all.things, so
// much of each; of what has no share neither need be known.
Sums SumOf(const Collection& all);
Sums SumOf(const Collection& all, const std::vector<double>& shares);

// Counterweights that had been potted in other parts than `part` by the time of the weighing.
std::uint32_t PottedElsewhere(const Rod& rod, const WholeWeighing& weighing, std::string_view part);

struct FixedSums {
  Sums sums;                              // of everything in `all.things`
  int whole = -1;                         // in Rod::wholes: the one whose mass was used; -1 = none
  std::optional<Uncertain> remainder_kg;  // of that one: weighed less the sum of what was on, before the parts gave way
  RestsOn rests_on = RestsOn::kParts;
};

// Fixes the sums of `all`, which holds all but the counterweights, by the latest weighing of the whole that still holds; where
// that lacks mass or balance point, by the latest before it that has it, first. What was on the scales is fixed: adds what
// was not counted, lets parts give way. What was not on then comes on top as it is reckoned; reel and counterweights that
// were on are taken off.
FixedSums FixByWholes(const Rod& rod, const WeightsIn& weights, Collection& all);

}  // namespace withy

#endif  // WITHY_BALANCE_WHOLE_H_
