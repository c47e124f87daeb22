#include "withy/sections/distribution.h"

#include <algorithm>

namespace withy {

std::vector<Frustum> Distribution::Frusta(double from, double to, double outer_m, double wall_m) const {
  std::vector<double> at = {from, to};
  const auto add = [&](double x) {
    if (x > from && x < to) at.push_back(x);
  };
  for (const Profile::Knot& knot : section_.outer.knots()) add(knot.x);
  for (const Profile::Knot& knot : section_.wall.knots()) add(knot.x);
  add(section_.SolidFrom());
  std::sort(at.begin(), at.end());
  at.erase(std::unique(at.begin(), at.end()), at.end());

  const double solid_from = section_.SolidFrom();
  const auto inner_at = [&](double x, double outer, Profile::Limit limit, bool solid) {
    if (!hollow() || solid) return 0.0;
    const double wall = section_.wall.empty() ? ratio_ * outer : section_.wall.At(x, limit);
    return std::max(0.0, outer - 2 * (wall + wall_m));
  };
  std::vector<Frustum> frusta;
  for (std::size_t i = 0; i + 1 < at.size(); ++i) {
    const bool solid = at[i] >= solid_from;
    Frustum f{at[i], at[i + 1]};
    f.outer0 = std::max(0.0, section_.outer.At(f.s0, Profile::Limit::kRight) + outer_m);
    f.outer1 = std::max(0.0, section_.outer.At(f.s1, Profile::Limit::kLeft) + outer_m);
    f.inner0 = inner_at(f.s0, f.outer0, Profile::Limit::kRight, solid);
    f.inner1 = inner_at(f.s1, f.outer1, Profile::Limit::kLeft, solid);
    frusta.push_back(f);
  }
  return frusta;
}

MassProperties Distribution::Weigh(const std::vector<Frustum>& frusta) const {
  const double solid_from = section_.SolidFrom();
  MassProperties sum;
  for (const Frustum& f : frusta) {
    sum += PropertiesOf(f, section_.shape, f.s0 >= solid_from ? splice_density_ : density_);
  }
  return sum;
}

MassProperties Distribution::Properties(double from, double to, double outer_m, double wall_m) const {
  return Weigh(Frusta(from, to, outer_m, wall_m));
}

double Distribution::SolidMass(double from, double to) const {
  double sum = 0;
  for (Frustum f : Frusta(from, std::min(to, std::max(from, section_.SolidFrom())))) {
    f.inner0 = f.inner1 = 0;
    sum += PropertiesOf(f, section_.shape, density_).mass_kg;
  }
  return sum;
}

double Distribution::SpliceMass(double from, double to) const {
  const double start = std::max(from, section_.SolidFrom());
  return start < to ? Properties(start, to).mass_kg : 0;
}

std::vector<double> Distribution::Stiffness(const std::vector<Frustum>& frusta) const {
  const double solid_from = section_.SolidFrom();
  std::vector<double> stiffness;
  for (std::size_t i = 0; i < frusta.size(); ++i) {
    const Frustum& f = frusta[i];
    const auto& modulus = f.s0 >= solid_from ? section_.splice_modulus_pa : section_.modulus_pa;
    if (!modulus || !(modulus->value > 0)) return {};
    stiffness.push_back(modulus->value * SecondMomentOf(section_.shape, f.outer0, f.inner0));
    if (i + 1 == frusta.size()) {
      stiffness.push_back(modulus->value * SecondMomentOf(section_.shape, f.outer1, f.inner1));
    }
  }
  return stiffness;
}

}  // namespace withy
