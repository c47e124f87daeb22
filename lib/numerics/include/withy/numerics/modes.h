// How a clamped beam rings: its lowest natural frequencies in bending.
//
//   Modes modes = ModesOf(beam, 3);
//   modes.frequency_hz[0];                              // of the first
//
// Euler and Bernoulli, clamped at s = 0, free at the other end, small oscillations about the straight beam; no gravity, no
// rotary inertia, no shear. Masses move across the axis only. Cost linear in the number of pieces.
#ifndef WITHY_NUMERICS_MODES_H_
#define WITHY_NUMERICS_MODES_H_

#include <string>
#include <vector>

#include "withy/numerics/beam.h"

namespace withy {

struct Modes {
  std::string why;                         // what is wrong with the beam; empty = all well
  std::vector<double> frequency_hz;        // lowest first
  // Of each mode, of each of Beam::masses: its share of the kinetic energy, 0 to 1.
  std::vector<std::vector<double>> share_of_mass;
  // Of each mode, of each piece: its share of the potential energy and of the kinetic energy.
  std::vector<std::vector<double>> share_of_stiffness, share_of_own_mass;
};

// `count` of 1 to 10. By Rayleigh's quotient d(f)/f = (share_of_stiffness d(EI)/EI - share_of_mass d(m)/m) / 2, to first order.
Modes ModesOf(const Beam& beam, int count);

}  // namespace withy

#endif  // WITHY_NUMERICS_MODES_H_
