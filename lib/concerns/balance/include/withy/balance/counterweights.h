// How many counterweights go into the butt so that the rod stays just tip-heavy, the adhesive they are potted in
// counted.
//
//   CounterweightCount count = CountFor(stack, rod_with_reel, 0.267);
//   *count.n                            // stop here: one more, potted, would make the rod butt-heavy
//   stack.Potting(*count.n).mass_kg     // acts behind the hand as well
//
// What units and potting add is the stack's (withy/bonding/counterweight_stack.h). Of the room only what lies behind
// the hold is of use: in front of it units work against. Ties: moments 1e-12 N m, lengths 1e-9 m; a tie balances, and
// fits.
#ifndef WITHY_BALANCE_COUNTERWEIGHTS_H_
#define WITHY_BALANCE_COUNTERWEIGHTS_H_

#include <optional>

#include "withy/bonding/counterweight_stack.h"
#include "withy/sections/tube.h"

namespace withy {

enum class CounterweightStatus { kBalanced, kRoomLimited, kNoRoom, kButtHeavy };

struct CounterweightCount {
  CounterweightStatus status = CounterweightStatus::kButtHeavy;
  std::optional<int> n;                    // unset = butt-heavy without any
  std::optional<int> n_if_potting_ignored;  // likewise
  double moment_without_n_m = 0;           // all positive = tip-heavy
  double moment_before_potting_n_m = 0;    // n units, no potting; the last three without meaning where n is unset
  double moment_after_n_m = 0;
  std::optional<double> moment_with_one_more_n_m;  // potted; unset where no more fit
};
// `without` is everything else on the rod, reel included. n = the largest that fits behind the hold with a moment after
// potting >= 0, and at least `least` (those that are potted already and stay; 0 = none). Cost linear in the number that
// fits.
CounterweightCount CountFor(const CounterweightStack& stack, const MassProperties& without, double hold_m, int least = 0);

}  // namespace withy

#endif  // WITHY_BALANCE_COUNTERWEIGHTS_H_
