#include "withy/sections/tube.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "withy/units/quantity.h"

namespace withy {
namespace {

double AreaFactor(Shape shape) {
  return shape == Shape::kSolidHexagon ? std::numbers::sqrt3 / 2 : std::numbers::pi / 4;
}
double SecondMomentFactor(Shape shape) {
  return shape == Shape::kSolidHexagon ? 5 * std::numbers::sqrt3 / 144 : std::numbers::pi / 64;
}

// Mean of x^4 where x runs evenly from a to b: (b^5 - a^5) / (5 (b - a)) without the division.
double MeanOfFourthPower(double a, double b) {
  return (a * a * a * a + a * a * a * b + a * a * b * b + a * b * b * b + b * b * b * b) / 5;
}

}  // namespace

MassProperties& MassProperties::operator+=(const MassProperties& other) {
  mass_kg += other.mass_kg;
  s_kg_m += other.s_kg_m;
  h_kg_m += other.h_kg_m;
  ss_kg_m2 += other.ss_kg_m2;
  hh_kg_m2 += other.hh_kg_m2;
  kk_kg_m2 += other.kk_kg_m2;
  return *this;
}

MassProperties MassProperties::operator*(double factor) const {
  return {mass_kg * factor,  s_kg_m * factor,   h_kg_m * factor,
          ss_kg_m2 * factor, hh_kg_m2 * factor, kk_kg_m2 * factor};
}

MassProperties MassProperties::Shifted(double distance_m) const {
  MassProperties moved = *this;
  moved.s_kg_m += mass_kg * distance_m;
  moved.ss_kg_m2 += 2 * distance_m * s_kg_m + distance_m * distance_m * mass_kg;
  return moved;
}

double MassProperties::InertiaAbout(double s_m) const { return Shifted(-s_m).ss_kg_m2 + hh_kg_m2; }

double MassProperties::InertiaAtBalance() const { return InertiaAbout(Balance()) - mass_kg * Offset() * Offset(); }

double MassProperties::StaticMomentAbout(double s_m) const { return kStandardGravity * (s_kg_m - mass_kg * s_m); }

MassProperties PropertiesOf(const Frustum& f, Shape shape, double density_kg_m3) {
  const double length = f.s1 - f.s0;
  // D^2 - d^2 = a0 + a1 u + a2 u^2 with u from 0 to 1 along the frustum.
  const double outer_step = f.outer1 - f.outer0;
  const double inner_step = f.inner1 - f.inner0;
  const double a0 = (f.outer0 - f.inner0) * (f.outer0 + f.inner0);
  const double a1 = 2 * (f.outer0 * outer_step - f.inner0 * inner_step);
  const double a2 = (outer_step - inner_step) * (outer_step + inner_step);
  const double area = density_kg_m3 * AreaFactor(shape) * length;
  MassProperties p;
  p.mass_kg = area * (a0 + a1 / 2 + a2 / 3);
  p.s_kg_m = area * length * (a0 / 2 + a1 / 3 + a2 / 4);
  p.ss_kg_m2 = area * length * length * (a0 / 3 + a1 / 4 + a2 / 5);
  p.hh_kg_m2 = density_kg_m3 * SecondMomentFactor(shape) * length *
               (MeanOfFourthPower(f.outer0, f.outer1) - MeanOfFourthPower(f.inner0, f.inner1));
  p.kk_kg_m2 = p.hh_kg_m2;
  return p.Shifted(f.s0);
}

MassProperties PropertiesOf(const std::vector<Frustum>& frusta, Shape shape, double density_kg_m3) {
  MassProperties sum;
  for (const Frustum& frustum : frusta) sum += PropertiesOf(frustum, shape, density_kg_m3);
  return sum;
}

MassProperties UniformMass(double mass_kg, double s0_m, double s1_m) {
  const double square = (s0_m * s0_m + s0_m * s1_m + s1_m * s1_m) / 3;
  return {mass_kg, mass_kg * (s0_m + s1_m) / 2, 0, mass_kg * square, 0, 0};
}

MassProperties PointMass(double mass_kg, double s_m, double offset_m) {
  return {mass_kg, mass_kg * s_m, mass_kg * offset_m, mass_kg * s_m * s_m, mass_kg * offset_m * offset_m, 0};
}

double AreaOf(Shape shape, double outer_m, double inner_m) {
  return AreaFactor(shape) * (outer_m - inner_m) * (outer_m + inner_m);
}

double SecondMomentOf(Shape shape, double outer_m, double inner_m) {
  return SecondMomentFactor(shape) * (outer_m - inner_m) * (outer_m + inner_m) *
         (outer_m * outer_m + inner_m * inner_m);
}

namespace {

// Abscissae and weights of 16-point Gauss and Legendre quadrature on [-1, 1], the positive half (Abramowitz and Stegun,
// table 25.4).
struct Node {
  double x, w;
};
constexpr std::array<Node, 8> kNodes = {{{0.0950125098376374402, 0.1894506104550684963},
                                         {0.2816035507792589132, 0.1826034150449235889},
                                         {0.4580167776572273863, 0.1691565193950025382},
                                         {0.6178762444026437484, 0.1495959888165767321},
                                         {0.7554044083550030339, 0.1246289712555338720},
                                         {0.8656312023878317439, 0.0951585116824927848},
                                         {0.9445750230732325761, 0.0622535239386478929},
                                         {0.9894009349916499326, 0.0271524594117540949}}};

struct Flexibility {
  double first = 0, second = 0;  // integrals of (L - s) / EI and (L - s)^2 / EI
};

double Lerp(double a, double b, double t) { return a + t * (b - a); }

void AddPanel(const Frustum& f, double t0, double t1, Shape shape, double modulus_pa, double end, Flexibility& sum) {
  const double half = (t1 - t0) / 2;
  const double middle = (t0 + t1) / 2;
  const double length = f.s1 - f.s0;
  for (const Node& node : kNodes) {
    for (const double x : {-node.x, node.x}) {
      const double t = middle + half * x;
      const double arm = end - Lerp(f.s0, f.s1, t);
      const double stiffness =
          modulus_pa * SecondMomentOf(shape, Lerp(f.outer0, f.outer1, t), Lerp(f.inner0, f.inner1, t));
      const double weight = node.w * half * length / stiffness;
      sum.first += weight * arm;
      sum.second += weight * arm * arm;
    }
  }
}

// The next panel's end: neither diameter nor wall may change by more than a quarter of what it is at t. Both are linear in
// t and positive at both ends, so the number of panels grows with the logarithm of their ratio.
double PanelEnd(const Frustum& f, double t) {
  double step = 1;
  const auto limit = [&](double a, double b) {
    const double here = Lerp(a, b, t);
    if (a != b) step = std::min(step, 0.2 * here / std::abs(b - a));
  };
  limit(f.outer0, f.outer1);
  limit(f.outer0 - f.inner0, f.outer1 - f.inner1);
  return t + step;
}

}  // namespace

std::optional<TipCompliance> TipComplianceOf(const std::vector<Frustum>& frusta, Shape shape, double modulus_pa) {
  if (frusta.empty() || !(modulus_pa > 0)) return std::nullopt;
  constexpr int kMostPanels = 10'000;  // a ratio of diameters of 1e9 needs some hundred
  const double end = frusta.back().s1;
  Flexibility sum;
  double reached = frusta.front().s0;
  for (const Frustum& f : frusta) {
    const bool stiff = SecondMomentOf(shape, f.outer0, f.inner0) > 0 && SecondMomentOf(shape, f.outer1, f.inner1) > 0;
    if (!stiff || std::abs(f.s0 - reached) > 1e-9) return std::nullopt;
    int panels = 0;
    for (double t = 0; t < 1;) {
      const double next = std::min(1.0, PanelEnd(f, t));
      if (!(next > t) || ++panels > kMostPanels) return std::nullopt;
      AddPanel(f, t, next, shape, modulus_pa, end, sum);
      t = next;
    }
    reached = f.s1;
  }
  if (!std::isfinite(sum.second)) return std::nullopt;
  return TipCompliance{sum.second, sum.first};
}

}  // namespace withy
