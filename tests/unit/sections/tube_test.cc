// Closed forms against plane and solid geometry, and against quadrature as a second method.
#include "withy/sections/tube.h"

#include <cmath>
#include <functional>
#include <numbers>

#include "gtest/gtest.h"

namespace withy {
namespace {

constexpr double kPi = std::numbers::pi;

// Integral of f over [a, b]: Gauss and Legendre, 5 points, exact for polynomials up to degree 9 (a frustum needs 6).
double Gauss(double a, double b, const std::function<double(double)>& f) {
  const double x[] = {0, 0.5384693101056831, 0.9061798459386640};
  const double w[] = {0.5688888888888889, 0.4786286704993665, 0.2369268850561891};
  const double middle = (a + b) / 2, half = (b - a) / 2;
  double sum = w[0] * f(middle);
  for (int i = 1; i < 3; ++i) sum += w[i] * (f(middle - half * x[i]) + f(middle + half * x[i]));
  return sum * half;
}

double Lerp(double a, double b, double t) { return a + t * (b - a); }

// Solid frustum 10 -> 14 mm, 200 mm long: volume pi/12 L (D^2 + D d + d^2) = 22 828.907 mm3, centre of gravity
// L/4 (D^2 + 2 D d + 3 d^2) / (D^2 + D d + d^2) = 88.9908 mm from the large end.
TEST(PropertiesOf, SolidFrustum) {
  const MassProperties p = PropertiesOf(Frustum{0, 0.2, 0.014, 0.010, 0, 0}, Shape::kSolidRound, 1000);
  EXPECT_NEAR(p.mass_kg * 1e6, 22828.907, 5e-4);  // 1000 kg/m3: mm3 are mg
  EXPECT_NEAR(p.Balance() * 1000, 88.9908, 5e-5);
}

// Tube 10/8 -> 3/1.8 over 1000 mm: pi/12 * 1000 * ((100 + 30 + 9) - (64 + 14.4 + 3.24)) = 15 016.813 mm3, at 1.55 g/cm3
// 23.276 g.
TEST(PropertiesOf, TubeFrustum) {
  const MassProperties p = PropertiesOf(Frustum{0, 1, 0.010, 0.003, 0.008, 0.0018}, Shape::kTube, 1550);
  EXPECT_NEAR(p.mass_kg * 1e9 / 1550, 15016.813, 5e-4);
  EXPECT_NEAR(p.mass_kg * 1000, 23.276, 5e-4);
}

// A solid cylinder's textbook moments: m L^2/3 + m r^2/4 about the end, m L^2/12 + m r^2/4 about the middle, m r^2/2 along.
TEST(PropertiesOf, CylinderHasItsTextbookInertia) {
  const double length = 0.5, radius = 0.01, density = 2700;
  const MassProperties p =
      PropertiesOf(Frustum{0, length, 2 * radius, 2 * radius, 0, 0}, Shape::kSolidRound, density);
  const double mass = density * kPi * radius * radius * length;
  EXPECT_NEAR(p.InertiaAbout(0), mass * (length * length / 3 + radius * radius / 4), 1e-14);
  EXPECT_NEAR(p.InertiaAtBalance(), mass * (length * length / 12 + radius * radius / 4), 1e-14);
  EXPECT_NEAR(p.AxialInertia(), mass * radius * radius / 2, 1e-16);
}

TEST(PropertiesOf, AgreesWithQuadrature) {
  const Frustum f{0.3, 1.7, 0.0125, 0.0018, 0.0104, 0.0008};
  const auto outer = [&](double s) { return Lerp(f.outer0, f.outer1, (s - f.s0) / (f.s1 - f.s0)); };
  const auto inner = [&](double s) { return Lerp(f.inner0, f.inner1, (s - f.s0) / (f.s1 - f.s0)); };
  const auto area = [&](double s) { return kPi / 4 * (std::pow(outer(s), 2) - std::pow(inner(s), 2)); };
  const double density = 1600;
  const MassProperties p = PropertiesOf(f, Shape::kTube, density);
  const auto integral = [&](const std::function<double(double)>& g) { return density * Gauss(f.s0, f.s1, g); };
  EXPECT_NEAR(p.mass_kg / integral(area), 1, 1e-13);
  EXPECT_NEAR(p.s_kg_m / integral([&](double s) { return s * area(s); }), 1, 1e-13);
  EXPECT_NEAR(p.ss_kg_m2 / integral([&](double s) { return s * s * area(s); }), 1, 1e-13);
  const double rotary = integral([&](double s) { return kPi / 64 * (std::pow(outer(s), 4) - std::pow(inner(s), 4)); });
  EXPECT_NEAR(p.hh_kg_m2 / rotary, 1, 1e-12);
}

// T. Smithwick's straight split-cane taper (published essay): hexagon 0.363 in across flats at the butt, 0.075 at the tip,
// 96 in long: 4.562 in3 = 74.76 cm3, at 1.15 g/cm3 85.97 g. By hand: sqrt(3)/2 * 96/3 * (0.363^2 + 0.363*0.075 + 0.075^2).
TEST(PropertiesOf, SolidHexagon) {
  const double inch = 0.0254;
  const MassProperties p =
      PropertiesOf(Frustum{0, 96 * inch, 0.363 * inch, 0.075 * inch, 0, 0}, Shape::kSolidHexagon, 1150);
  EXPECT_NEAR(p.mass_kg * 1000, 85.97, 0.005);
}

// Regular hexagon across flats d: A = 0.866 025 d^2, I = 0.060 140 65 d^4. Round tubes: I of 10/8 is 289.812 mm4, of 12/10
// 527.002, of 4/2.5 10.6489.
TEST(CrossSection, HasItsTextbookArea) {
  EXPECT_NEAR(AreaOf(Shape::kSolidHexagon, 1, 0), 0.866025, 5e-7);
  EXPECT_NEAR(SecondMomentOf(Shape::kSolidHexagon, 1, 0), 0.06014065, 5e-9);
  EXPECT_NEAR(SecondMomentOf(Shape::kTube, 10, 8), 289.812, 5e-4);
  EXPECT_NEAR(SecondMomentOf(Shape::kTube, 12, 10), 527.002, 5e-4);
  EXPECT_NEAR(SecondMomentOf(Shape::kTube, 4, 2.5), 10.6489, 5e-5);
}

TEST(MassProperties, MovesAndAdds) {
  // 2 kg at 1 m and 1 kg spread over [3, 6]: first moment 2 + 4.5; second 2 + (9 + 18 + 36)/3 = 23.
  MassProperties p = PointMass(2, 1, 0);
  p += UniformMass(1, 3, 6);
  EXPECT_DOUBLE_EQ(p.Balance(), 6.5 / 3);
  EXPECT_DOUBLE_EQ(p.InertiaAbout(0), 23);
  const MassProperties moved = p.Shifted(2);
  EXPECT_DOUBLE_EQ(moved.Balance(), 6.5 / 3 + 2);
  EXPECT_NEAR(moved.InertiaAtBalance(), p.InertiaAtBalance(), 1e-12);
  EXPECT_NEAR(moved.InertiaAbout(2), 23, 1e-12);
}

// Cone under a tip load, small deflections: 64 P L^3 / (3 pi E d_tip d_butt^3), derived from integral s^2 / d^4 (textbook
// mechanics of materials).
TEST(TipComplianceOf, Cone) {
  const double length = 2.1, butt = 0.012, modulus = 1e11;
  for (const double tip : {0.012, 0.002, 0.0002, 0.0000012}) {
    const auto compliance = TipComplianceOf({{0, length, butt, tip, 0, 0}}, Shape::kSolidRound, modulus);
    ASSERT_TRUE(compliance) << tip;
    const double deflection = 64 * std::pow(length, 3) / (3 * kPi * modulus * tip * std::pow(butt, 3));
    EXPECT_NEAR(compliance->deflection_m_per_n / deflection, 1, 1e-12) << tip;
  }
}

// A uniform cantilever turns by L^2 / 2EI and drops by L^3 / 3EI under 1 N.
TEST(TipComplianceOf, UniformInTwoPieces) {
  const auto compliance = TipComplianceOf({{0, 0.4, 0.01, 0.01, 0.008, 0.008}, {0.4, 1, 0.01, 0.01, 0.008, 0.008}},
                                          Shape::kTube, 1e11);
  ASSERT_TRUE(compliance);
  const double stiffness = 1e11 * kPi / 64 * (1e-8 - 0.4096e-8);
  EXPECT_NEAR(compliance->slope_rad_per_n * 2 * stiffness, 1, 1e-13);
  EXPECT_NEAR(compliance->deflection_m_per_n * 3 * stiffness, 1, 1e-13);
}

TEST(TipComplianceOf, SaysNothingOfWhatHasNoStiffness) {
  EXPECT_FALSE(TipComplianceOf({}, Shape::kTube, 1e11));
  EXPECT_FALSE(TipComplianceOf({{0, 1, 0.01, 0, 0, 0}}, Shape::kTube, 1e11));          // runs out to a point
  EXPECT_FALSE(TipComplianceOf({{0, 1, 0.01, 0.01, 0, 0}}, Shape::kTube, 0));
  EXPECT_FALSE(TipComplianceOf({{0, 1, 0.01, 0.01, 0, 0}, {1.5, 2, 0.01, 0.01, 0, 0}}, Shape::kTube, 1e11));  // a gap
}

}  // namespace
}  // namespace withy
