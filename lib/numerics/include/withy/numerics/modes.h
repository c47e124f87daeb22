// How a clamped beam rings: its lowest natural frequencies in bending.
//
//   Modes modes = ModesOf(beam, 3);
//   modes.frequency_hz[0];                              // of the first
//
// Euler and Bernoulli, clamped at s = 0, free at the other end, small oscillations about the straight beam; no gravity,
// no rotary inertia, no shear. Masses move across the axis only. A cone may run out to a point at the free end, with no
// mass on it. Cost linear in the number of pieces. Each frequency is approached from above (Rayleigh and Ritz);
// relative error below 1e-9 where no piece tapers by more than 1 : 10 in diameter.
#ifndef WITHY_NUMERICS_MODES_H_
#define WITHY_NUMERICS_MODES_H_

#include <string>
#include <vector>

#include "withy/numerics/beam.h"

namespace withy {

struct Modes {
  // What is wrong: with the beam, with `count`, or that too little of the beam has mass to ring in so many ways. Then
  // nothing else is filled in. Empty = all well.
  std::string why;
  std::vector<double> frequency_hz;  // lowest first
  // Of each mode, of each of Beam::masses: its share of the kinetic energy, 0 to 1.
  std::vector<std::vector<double>> share_of_mass;
  // Of each mode, of each piece: its share of the potential energy and of the kinetic energy.
  std::vector<std::vector<double>> share_of_stiffness, share_of_own_mass;
};

// `count` of 1 to 10. By Rayleigh's quotient d(f)/f = (share_of_stiffness d(EI)/EI - share_of_mass d(m)/m) / 2, to
// first order.
Modes ModesOf(const Beam& beam, int count);

}  // namespace withy

#endif  // WITHY_NUMERICS_MODES_H_
