// How the mass of one section lies along it, for any stretch of it: from outer diameters and walls, where walls are given,
// inferred or assumed.
#ifndef WITHY_SECTIONS_DISTRIBUTION_H_
#define WITHY_SECTIONS_DISTRIBUTION_H_

#include <vector>

#include "withy/rod/rod.h"
#include "withy/sections/tube.h"

namespace withy {

// Wall over outer diameter where nothing is known of the wall: common practice 0.05 to 0.2, no source. The way the mass
// lies along the section does not depend on it, as long as it is one ratio.
inline constexpr double kAssumedWallRatio = 0.1;

class Distribution {
 public:
  // Requires a section whose outer profile is known and whose shape is one of the three.
  Distribution(const Section& section, double density_kg_m3, double splice_density_kg_m3)
      : section_(section), density_(density_kg_m3), splice_density_(splice_density_kg_m3) {}

  bool hollow() const { return section_.shape == Shape::kTube; }
  bool wall_given() const { return !hollow() || !section_.wall.empty(); }
  // Wall over outer diameter, used where no wall is given.
  void SetWallRatio(double ratio) { ratio_ = ratio; }

  // The stretch [from, to] as supplied. `outer_m` and `wall_m` are added to every diameter and wall. Linear in the number
  // of stations (times the logarithm for looking up).
  std::vector<Frustum> Frusta(double from, double to, double outer_m = 0, double wall_m = 0) const;
  // Of frusta made here.
  MassProperties Weigh(const std::vector<Frustum>& frusta) const;
  // Its mass, s as supplied.
  MassProperties Properties(double from, double to, double outer_m = 0, double wall_m = 0) const;
  // The hollow part of the stretch, were it solid: what the wall ratio is inferred from.
  double SolidMass(double from, double to) const;
  // The solid tip's share of the mass of the stretch.
  double SpliceMass(double from, double to) const;
  // Of each frustum's ends, of frusta made here; empty where a modulus is not known.
  std::vector<double> Stiffness(const std::vector<Frustum>& frusta) const;

 private:
  const Section& section_;
  double density_, splice_density_;
  double ratio_ = kAssumedWallRatio;
};

}  // namespace withy

#endif  // WITHY_SECTIONS_DISTRIBUTION_H_
