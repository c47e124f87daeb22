// How much adhesive goes between a bore and what is glued into it: exact volumes of piecewise linear profiles.
//
//   BondGap gap{.bore = Profile({{0, 0.012}}), .inner = Profile({{0, 0.0117}}), .from_m = 0, .to_m = 0.1};
//   BondVolume volume = VolumeOf(gap);
//   volume.gap_m      // 0.00015: on the radius, half the difference of the diameters
//   *volume.gross_m3  // 0.558e-6
//
// Volumes are those of frusta, pi/12 l (a^2 + a b + b^2) per linear piece, bore less inner. Between two knots the section is
// quadratic in the coordinate and its first moment cubic: Simpson's rule integrates both without error, and the product
// (bore - inner)(bore + inner) loses no digits where the gap is thin.
#ifndef WITHY_BONDING_JOINT_VOLUME_H_
#define WITHY_BONDING_JOINT_VOLUME_H_

#include <optional>
#include <vector>

#include "withy/numerics/profile.h"

namespace withy {

// A ring around the inner thing that takes room from the adhesive: an arbor. Rings do not overlap.
struct BondRing {
  double from_m = 0;
  double width_m = 0;     // > 0
  double diameter_m = 0;  // outer
};

// Diameters over one coordinate, metres. Requires: profiles not empty, from <= to.
struct BondGap {
  Profile bore;
  Profile inner;          // outer diameter of what is glued in: the blank
  double from_m = 0, to_m = 0;
  std::vector<BondRing> rings;
};

struct RingInBond {
  double volume_m3 = 0;    // that it displaces within the bond; negative where it is thinner than what it is on
  bool fits = true;        // inner <= ring <= bore over its whole width, also outside the bond; a tie fits
  double clearance_m = 0;  // to the bore where that is narrowest over the whole width, on the radius; negative = too wide
};

struct BondVolume {
  // Smallest gap on the radius. Zero or less (within kSameDiameter_m on the diameter): bore and inner touch.
  double gap_m = 0;
  std::optional<double> gross_m3;  // without regard to rings; unset where bore and inner touch
  std::vector<RingInBond> rings;   // as given
  double rings_m3 = 0;             // their sum
  std::optional<double> net_m3;    // gross less rings; unset also where a ring does not fit
  std::optional<double> center_m;  // of the net volume; unset where that is unset or not positive
};

// Diameters that differ by no more are the same.
inline constexpr double kSameDiameter_m = 1e-14;

BondVolume VolumeOf(const BondGap& gap);

// Lateral surface of a profile over [from, to]: of each frustum pi/2 (d0 + d1) times its slant. Shoulders are left out.
double SurfaceOf(const Profile& diameter, double from_m, double to_m);

// A fillet: a ring whose section is a right triangle with its legs on the cylinder and on the face, by Pappus' theorem.
// Outside: on a cylinder of that diameter, pointing outwards, pi b h (d/2 + h/3). Inside: in a bore, pointing inwards,
// pi b h (d/2 - h/3).
struct Fillet {
  double diameter_m = 0;
  double radial_m = 0;  // leg h
  double axial_m = 0;   // leg b
};
double FilletOutside(const Fillet& fillet);
double FilletInside(const Fillet& fillet);

}  // namespace withy

#endif  // WITHY_BONDING_JOINT_VOLUME_H_
