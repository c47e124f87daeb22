// Frequencies of whole rods against published eigenvalues, and what a mass on them costs.
#include <cmath>
#include <numbers>

#include "bench_rod.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

// lambda^2 sqrt(EI / m L^4) / 2 pi.
double Hertz(double eigenvalue, const Cone& cone, double density) {
  const double area = std::numbers::pi / 4 * cone.butt_m * cone.butt_m;
  const double stiffness = cone.modulus_pa * std::numbers::pi / 64 * std::pow(cone.butt_m, 4);
  return eigenvalue * std::sqrt(stiffness / (density * area)) / (cone.length_m * cone.length_m) /
         (2 * std::numbers::pi);
}

// Of 1500 kg/m3: solid cone pi/12 L (D^2 + D d + d^2).
Cone Heavy(double ratio) {
  Cone cone{2, 0.01, 0.01 * ratio};
  cone.mass_g = 1e3 * 1500 * std::numbers::pi / 12 * 2 * 1e-4 * (1 + ratio + ratio * ratio);
  return cone;
}

// Uniform: 3.5160, 22.0345, 61.697 (every textbook of vibrations); a solid cone by its butt, first mode: 5.823 at a
// quarter, 6.196 at a fifth (after Mabie and Rogers 1972).
TEST(RingingOf, PublishedEigenvalues) {
  const Cone uniform = Heavy(1);
  const BendingAnswers answers = BendingAnswersOf(DesignOf(uniform, ""));
  ASSERT_TRUE(answers.bare);
  ASSERT_EQ(answers.bare->frequency_hz.size(), 3u);
  const double eigenvalues[] = {3.5160, 22.0345, 61.697};
  for (int i = 0; i < 3; ++i) {
    EXPECT_NEAR(answers.bare->frequency_hz[i] / Hertz(eigenvalues[i], uniform, 1500), 1, 2e-5) << i;
  }
  for (const auto& [ratio, eigenvalue] : {std::pair{0.25, 5.823}, {0.2, 6.196}, {0.5, 4.625}}) {
    const Cone cone = Heavy(ratio);
    const BendingAnswers tapered = BendingAnswersOf(DesignOf(cone, ""));
    EXPECT_NEAR(tapered.bare->frequency_hz[0] / Hertz(eigenvalue, cone, 1500), 1, 1e-4) << ratio;
  }
}

OnTheBlank Ring(const std::string& id, double at_m, double grams) {
  return {id, FieldPath().Field("guides").Item(id, 0), at_m, 0, Uncertain(grams / 1000), id};
}

std::string WithGuides(const Cone& cone) {
  return DesignOf(cone, "") + "guides { id: 'g1' } guides { id: 'g2' }";
}

// What each of two rings costs, against solving anew without it.
TEST(RingingOf, LossesAreThoseOfSolvingAnew) {
  const std::string design = WithGuides(Heavy(0.25));
  const OnTheBlank g1 = Ring("g1", 1.2, 2), g2 = Ring("g2", 1.8, 0.3);
  const BendingAnswers both = BendingAnswersOf(design, {g1, g2});
  ASSERT_TRUE(both.finished);
  ASSERT_EQ(both.losses.size(), 2u);
  const double with = both.finished->frequency_hz[0];
  const double without_g1 = BendingAnswersOf(design, {g2}).finished->frequency_hz[0];
  const double without_g2 = BendingAnswersOf(design, {g1}).finished->frequency_hz[0];
  EXPECT_EQ(both.losses[0].id, "g1");
  EXPECT_NEAR(both.losses[0].hz, without_g1 - with, 0.02 * (without_g1 - with));
  EXPECT_NEAR(both.losses[1].hz, without_g2 - with, 0.04 * (without_g2 - with));
  EXPECT_GE(both.losses[1].hz, without_g2 - with);
  EXPECT_NEAR(*both.train_costs_hz, both.bare->frequency_hz[0] - with, 1e-12);
}

// Wraps on a guide count with it.
TEST(RingingOf, AWrapCountsWithItsGuide) {
  const std::string design = WithGuides(Heavy(0.25));
  OnTheBlank wrap = Ring("g2", 1.8, 0.1);
  wrap.id = "w";
  const BendingAnswers apart = BendingAnswersOf(design, {Ring("g2", 1.8, 0.3), wrap});
  const BendingAnswers together = BendingAnswersOf(design, {Ring("g2", 1.8, 0.4)});
  ASSERT_EQ(apart.losses.size(), 1u);
  EXPECT_NEAR(apart.losses[0].hz, together.losses[0].hz, 1e-9);
}

// A grip of 200 mm around the clamp: half of it is ahead, and weighs there as it lies. Static moment of 40 g at 50 mm.
TEST(RingingOf, OfAThingAcrossTheClampThePartAheadCounts) {
  const std::string design = DesignOf(Heavy(1), "", 500);
  const OnTheBlank grip{"grip", FieldPath().Field("handle"), 0.5, 0.2, Uncertain(0.080), ""};
  const OnTheBlank behind{"cap", FieldPath().Field("handle"), 0.1, 0.1, std::nullopt, ""};
  const BendingAnswers answers = BendingAnswersOf(design, {grip, behind});
  ASSERT_TRUE(answers.finished);
  double mass = 0, moment = 0, second = 0;
  for (const BeamMass& m : answers.finished->beam.masses) {
    mass += m.mass_kg;
    moment += m.mass_kg * m.s;
    second += m.mass_kg * m.s * m.s;
  }
  EXPECT_NEAR(mass, 0.040, 1e-12);
  EXPECT_NEAR(moment, 0.040 * 0.05, 1e-12);
  EXPECT_NEAR(second, 0.040 * 0.1 * 0.1 / 3, 1e-12);  // of a rod of 100 mm about its end
}

TEST(RingingOf, WithoutAMassOnItTheFinishedRodCannotBeTold) {
  OnTheBlank guide = Ring("g1", 1.2, 2);
  guide.mass_kg.reset();
  const BendingAnswers answers = BendingAnswersOf(WithGuides(Heavy(0.25)), {guide});
  EXPECT_TRUE(answers.bare);
  EXPECT_FALSE(answers.finished);
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_EQ(answers.unknowns[0].figure, "bending.finished");
  EXPECT_EQ(answers.unknowns[0].measure, "weigh g1");
}

}  // namespace
}  // namespace withy::testing
