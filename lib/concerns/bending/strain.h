// Strain of the outermost fibre along a bent beam, and where it is largest.
#ifndef WITHY_BENDING_STRAIN_H_
#define WITHY_BENDING_STRAIN_H_

#include <vector>

#include "withy/bending/bending.h"

namespace withy::bending {

// |M| D / (2 EI) at a place, with D and EI of the piece before it and of the one after it: the larger. `outer_m` as
// BendingOf::outer_m.
double StrainAt(const Beam& beam, const std::vector<double>& outer_m, double s, double moment);

struct PeakStrain {
  double s = 0;  // from the clamp
  double strain = 0;
  std::size_t piece = 0;  // that it is in
};
// Over the whole beam, not at its points alone: the places are good to 1e-6 of the length. REQUIRES: shape has points.
PeakStrain PeakStrainOf(const Beam& beam, const std::vector<double>& outer_m, const Elastica& shape);

}  // namespace withy::bending

#endif  // WITHY_BENDING_STRAIN_H_
