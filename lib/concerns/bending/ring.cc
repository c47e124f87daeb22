#include "ring.h"

#include <cmath>

#include "withy/numerics/modes.h"

namespace withy::bending {

Ringing RingingOf(const LoadedBeam& rod, std::size_t things) {
  Ringing ringing;
  const Modes modes = ModesOf(rod.blank.beam, 3);
  if (!modes.why.empty() || modes.frequency_hz.size() < 3) return ringing;
  ringing.frequency_hz = modes.frequency_hz;
  // d(f)/f = (share of stiffness x d(EI)/EI - share of mass x dm/m) / 2.
  Uncertain change;
  for (std::size_t i = 0; i < rod.blank.beam.pieces.size(); ++i) {
    change = change + rod.blank.stiffness_change[i] * Uncertain(modes.share_of_stiffness[0][i]) -
             rod.blank.mass_change[i] * Uncertain(modes.share_of_own_mass[0][i]);
  }
  ringing.share_of_thing.assign(things, 0);
  for (std::size_t i = 0; i < rod.mass_change.size(); ++i) {
    change = change - rod.mass_change[i] * Uncertain(modes.share_of_mass[0][i]);
    ringing.share_of_thing[rod.thing_of_mass[i]] += modes.share_of_mass[0][i];
  }
  ringing.first_hz = Uncertain(modes.frequency_hz[0]) * (Uncertain(1) + change / 2);
  return ringing;
}

double LossOf(double frequency_hz, double share) {
  return frequency_hz * (1 / std::sqrt(1 - share) - 1);
}

}  // namespace withy::bending
