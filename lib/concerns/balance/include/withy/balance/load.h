// What lies along a rod, as moments of its mass: slender, all of it on the axis (the section's own rotary term is nothing
// beside that of the rod's length).
//
//   MassProperties rod = Tube({0, 1, 0.010, 0.003, 0.008, 0.0018}, 1550);  // metres, kg/m3
//   rod += Film({0.5, 0.53, 0.0065, 0.0064}, 0.0002, 1120);
//   rod += PointMass(0.208, 0.235, 0);                                     // the reel
//   LoadState state = StateOf(rod, 0.27);
//   state.moment_n_m                                                       // positive = tip-heavy
//
// x from the butt end of the rod to the tip. Everything is in the sums of m, m x and m x^2, exact per item; overlapping
// items add. Points and evenly spread masses are `PointMass` and `UniformMass` of withy/sections/tube.h.
#ifndef WITHY_BALANCE_LOAD_H_
#define WITHY_BALANCE_LOAD_H_

#include "withy/sections/tube.h"

namespace withy {

// A tube with outer diameter and wall linear in x: section pi w (D - w).
MassProperties Tube(const Frustum& tube, double density_kg_m3);

// Diameters under the film, linear over [x0, x1]; metres.
struct Surface {
  double x0 = 0, x1 = 0;
  double diameter0 = 0, diameter1 = 0;
};
// A film on it, `thickness_m` on the radius: section pi f (D + f).
MassProperties Film(const Surface& under, double thickness_m, double density_kg_m3);

// Held at a point.
struct LoadState {
  double mass_kg = 0;
  double balance_m = 0;                // requires mass > 0
  double moment_n_m = 0;               // g sum m (x - hold), standard gravity; positive = tip-heavy
  double inertia_about_hold_kg_m2 = 0;  // about the transverse axis through the hold
  double inertia_at_balance_kg_m2 = 0;  // and through the balance point
};
LoadState StateOf(const MassProperties& load, double hold_m);

}  // namespace withy

#endif  // WITHY_BALANCE_LOAD_H_
