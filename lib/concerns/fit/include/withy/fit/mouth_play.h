// Play of a blank in its handle, and where it lets the tip point.
//
//   TipOffAxis({{0.10, 0.00005}, {0.30, 0.0005}}, 2.2)  // 0.005725: half a millimetre at the mouth is 5.7 mm at the
//   tip
#ifndef WITHY_FIT_MOUTH_PLAY_H_
#define WITHY_FIT_MOUTH_PLAY_H_

#include <optional>
#include <vector>

#include "withy/rod/rod.h"

namespace withy {

// Half of what is between bore and blank at a place along the bore's axis, >= 0; metres.
struct HalfGap {
  double z_m = 0, half_m = 0;
};

// How far to one side of the bore's axis a straight, stiff blank can point at `tip_z_m`, ahead of all gaps.
//
// Derivation. The blank's axis is a line y(z) = a + b z with |y| <= h at every gap h(z). Of all such lines the one that
// lies furthest out at the tip leans on one wall at some place u and on the other at some place l behind it:
//   y(tip) = h_u + (h_u + h_l) (tip - u) / (u - l),
// and, being the greatest value of a linear program in two unknowns, it is the least of these over all pairs l < u. h
// is linear between corners, so the corners suffice. With no play at the butt and p across the mouth, a depth of d in:
// p/2 (1 + ahead / d). Own derivation. Requires: two gaps in different places (1e-6 m apart) at least, else 0.
double TipOffAxis(const std::vector<HalfGap>& gaps, double tip_z_m);

struct MouthPlay {
  double play_m = 0;                 // at the host's front mouth, both sides together, no arbors and no adhesive
  std::optional<double> off_axis_m;  // at the tip, to each side
  std::optional<double> off_axis_with_arbors_m;  // the same with `arbors`; unset = none of them is on the blank
  double ahead_m = 0;                // from the mouth to the tip end of the blank
};

// An arbor of the host, along its bore from the host's own butt end; metres.
struct ArborInBore {
  double from_m = 0, to_m = 0, outer_m = 0;
};

// With the butt cut as planned. Unset where the blank rests in no handle, or its bore is not known up to the mouth.
std::optional<MouthPlay> MouthPlayOf(const Rod& rod, const std::vector<ArborInBore>& arbors = {});

}  // namespace withy

#endif  // WITHY_FIT_MOUTH_PLAY_H_
