// How many counterweights go into the butt so that the rod stays just tip-heavy, the adhesive they are potted in counted.
//
//   Stack stack({.mass_kg = 0.0071, .diameter_m = 0.0125, .length_m = 0.0068},
//               {.start_m = 0.021, .length_m = 0.120, .diameter_m = 0.021, .cover_m = 0.003, .potting_kg_m3 = 1150});
//   CounterweightCount count = CountFor(stack, rod_with_reel, 0.267);
//   *count.n                            // stop here: one more, potted, would make the rod butt-heavy
//   stack.Potting(*count.n).mass_kg     // acts behind the hand as well
//
// Model. Units are cylinders with their axes along the rod, in layers from the room's butt-side end forward, as many side by
// side as the bore takes (circle_packing.h), full layers first; each is spread evenly over its layer. Potting fills the bore
// from there to `cover` beyond the foremost layer except where the units are, also the gaps of a layer that is not full;
// without units there is none. A layer fits where it and the cover fit. All on the axis, exact first and second moments
// (elementary statics). Ties: lengths 1e-9 m, moments 1e-12 N m; a tie fits, and balances.
//
// Requires: finite values, unit mass, diameter and length > 0, bore > 0, cover and density >= 0, and the room behind the
// hold. A length of the room below the cover holds nothing.
#ifndef WITHY_BALANCE_COUNTERWEIGHTS_H_
#define WITHY_BALANCE_COUNTERWEIGHTS_H_

#include <optional>

#include "withy/sections/tube.h"

namespace withy {

// One unit of stock. SI.
struct CounterweightUnit {
  double mass_kg = 0, diameter_m = 0, length_m = 0;
};

// The room for them: from its butt-side end forward.
struct CounterweightRoom {
  double start_m = 0;        // from the butt end of the rod
  double length_m = 0;       // free, as far as the blank's butt face
  double diameter_m = 0;
  double cover_m = 0;        // of potting, beyond the foremost unit
  double potting_kg_m3 = 0;  // cured
};

class Stack {
 public:
  // No room is worked out for more than this many units.
  static constexpr int kMostUnits = 1'000'000;

  Stack(const CounterweightUnit& unit, const CounterweightRoom& room);

  int side_by_side() const { return side_by_side_; }  // 0 = wider than the bore
  int fit() const { return fit_; }                    // how many fit
  const CounterweightUnit& unit() const { return unit_; }
  const CounterweightRoom& room() const { return room_; }
  // Of n units; n >= 0, also more than fit. With side_by_side() = 0 they are taken one behind the other.
  int Layers(int n) const;
  double EndOf(int n) const;  // front face of the foremost layer, from the butt end of the rod
  MassProperties Units(int n) const;
  MassProperties Potting(int n) const;
  double PottingVolume(int n) const;  // m3

 private:
  MassProperties Spread(int n, double one_kg) const;

  CounterweightUnit unit_;
  CounterweightRoom room_;
  int side_by_side_ = 0, fit_ = 0;
};

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
// `without` is everything else on the rod, reel included. n = the largest that fits with a moment after potting >= 0, and at
// least `least` (those that are potted already and stay; 0 = none). Cost linear in the number that fits.
CounterweightCount CountFor(const Stack& stack, const MassProperties& without, double hold_m, int least = 0);

}  // namespace withy

#endif  // WITHY_BALANCE_COUNTERWEIGHTS_H_
