#include "withy/balance/load.h"

namespace withy {

MassProperties Tube(const Frustum& tube, double density_kg_m3) {
  MassProperties slender = PropertiesOf(tube, Shape::kTube, density_kg_m3);
  slender.hh_kg_m2 = slender.kk_kg_m2 = 0;
  return slender;
}

// (D + 2 f)^2 - D^2 = 4 f (D + f).
MassProperties Film(const Surface& under, double thickness_m, double density_kg_m3) {
  return Tube({under.x0, under.x1, under.diameter0 + 2 * thickness_m, under.diameter1 + 2 * thickness_m, under.diameter0,
               under.diameter1},
              density_kg_m3);
}

LoadState StateOf(const MassProperties& load, double hold_m) {
  return {load.mass_kg, load.Balance(), load.StaticMomentAbout(hold_m), load.InertiaAbout(hold_m), load.InertiaAtBalance()};
}

}  // namespace withy
