// Mass, balance and stiffness of tapered tubes and rods, in closed form per frustum.
//
//   std::vector<Frustum> tube = {{0, 1, 0.010, 0.003, 0.008, 0.0018}};     // metres
//   MassProperties p = PropertiesOf(tube, Shape::kTube, 1550);
//   p.mass_kg                        // 0.023276
//   p.Balance()                      // from s = 0
//   p.InertiaAbout(p.Balance())      // transverse, rotary term included
//
// A frustum runs from s0 to s1 along the axis; outer and inner diameter are linear in between (so the wall is, too). The
// sums are integrals of polynomials in s: A = pi/4 (D^2 - d^2) times 1, s, s^2, and the second moment of area pi/64 (D^4
// - d^4) times 1; elementary calculus, good to a few ulp. Hexagon across flats D: A = sqrt(3)/2 D^2, I = 5 sqrt(3)/144 D^4,
// the same about every axis (facts of plane geometry).
//
// Coordinates: s along the axis, h across it in the plane of bending, k across that plane.
#ifndef WITHY_SECTIONS_TUBE_H_
#define WITHY_SECTIONS_TUBE_H_

#include <optional>
#include <vector>

#include "withy/rod/blank.h"

namespace withy {

// Metres. Requires s0 <= s1, 0 <= inner <= outer.
struct Frustum {
  double s0 = 0, s1 = 0;
  double outer0 = 0, outer1 = 0;
  double inner0 = 0, inner1 = 0;  // 0 = solid
};

// Moments of a distribution of mass about the origin. They add; everything else follows from them.
struct MassProperties {
  double mass_kg = 0;
  double s_kg_m = 0;    // integral of s dm
  double h_kg_m = 0;    // integral of h dm
  double ss_kg_m2 = 0;  // integral of s^2 dm: the slender second moment about s = 0
  double hh_kg_m2 = 0;  // integral of h^2 dm: the cross-section's own rotary term
  double kk_kg_m2 = 0;  // integral of k^2 dm

  MassProperties& operator+=(const MassProperties& other);
  MassProperties operator*(double factor) const;
  // The same mass moved by `distance` along the axis.
  MassProperties Shifted(double distance_m) const;

  double Balance() const { return s_kg_m / mass_kg; }   // requires mass_kg > 0
  double Offset() const { return h_kg_m / mass_kg; }    // likewise
  double AxialInertia() const { return hh_kg_m2 + kk_kg_m2; }
  // About the axis across the plane of bending through (s, h = 0).
  double InertiaAbout(double s_m) const;
  // About the axis across the plane of bending through the centre of mass. Requires mass_kg > 0.
  double InertiaAtBalance() const;
  // Turning moment of the weight about s under standard gravity, in N m; positive = heavy towards +s.
  double StaticMomentAbout(double s_m) const;
};

// Of one frustum and of several.
MassProperties PropertiesOf(const Frustum& frustum, Shape shape, double density_kg_m3);
MassProperties PropertiesOf(const std::vector<Frustum>& frusta, Shape shape, double density_kg_m3);
// Of a mass spread evenly over [s0, s1] on the axis, without rotary term.
MassProperties UniformMass(double mass_kg, double s0_m, double s1_m);
// Of a point mass.
MassProperties PointMass(double mass_kg, double s_m, double offset_m);

// Cross-section: area, second moment about a transverse axis.
double AreaOf(Shape shape, double outer_m, double inner_m);
double SecondMomentOf(Shape shape, double outer_m, double inner_m);

// A cantilever clamped at its first frustum's s0 with a force of 1 N across its far end, small deflections (Euler and
// Bernoulli): deflection = integral of (L - s)^2 / EI ds, slope = integral of (L - s) / EI ds. Gauss and Legendre, 16
// points, on panels over which neither diameter nor wall changes by more than a quarter: relative error below 1e-12.
// Unset where EI falls to zero or the frusta are not joined end to end.
struct TipCompliance {
  double deflection_m_per_n = 0;
  double slope_rad_per_n = 0;
};
std::optional<TipCompliance> TipComplianceOf(const std::vector<Frustum>& frusta, Shape shape, double modulus_pa);

}  // namespace withy

#endif  // WITHY_SECTIONS_TUBE_H_
