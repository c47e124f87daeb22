// Counterweights in a bore and what they are potted in: how many fit, and their moments.
//
//   CounterweightStack stack({.mass_kg = 0.0071, .diameter_m = 0.0125, .length_m = 0.0068},
//                            {.start_m = 0.021, .length_m = 0.120, .diameter_m = 0.021, .cover_m = 0.003, .potting_kg_m3 = 1150});
//   stack.fit()                // 17
//   stack.Units(3).mass_kg     // 0.0213
//   stack.PottingVolume(3)     // 5.60e-6 m3
//
// Model. Units are cylinders with their axes along the rod, in layers from the room's butt-side end forward, as many side by
// side as the bore takes (circle_packing.h), full layers first; each is spread evenly over its layer. Potting fills the bore
// from there to `cover` beyond the foremost layer except where the units are, also the gaps of a layer that is not full;
// without units there is none. A layer fits where it and the cover fit. All on the axis, exact first and second moments
// (elementary statics). Ties: lengths 1e-9 m; a tie fits.
//
// Requires: finite values, diameter and length of a unit > 0, bore > 0, masses, cover and density >= 0. A room shorter than the
// cover holds nothing.
#ifndef WITHY_BONDING_COUNTERWEIGHT_STACK_H_
#define WITHY_BONDING_COUNTERWEIGHT_STACK_H_

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

class CounterweightStack {
 public:
  // No room is worked out for more than this many units.
  static constexpr int kMostUnits = 1'000'000;

  CounterweightStack(const CounterweightUnit& unit, const CounterweightRoom& room);

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

}  // namespace withy

#endif  // WITHY_BONDING_COUNTERWEIGHT_STACK_H_
