// The coin-deflection method against its published points and cones of known proportion.
#include <cmath>
#include <numbers>

#include "bench_rod.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

constexpr double kDeg = std::numbers::pi / 180;

// 20 points of a printed table of coins of 3.92 g: grams and number. The straight line meets each within 0.08.
TEST(LineNumberFor, MeetsThePublishedPoints) {
  const double points[][2] = {{39.20, 1.2},  {43.12, 1.5},  {47.04, 1.7},  {50.96, 2.0},  {54.88, 2.2},
                              {78.40, 3.6},  {82.32, 3.9},  {86.24, 4.1},  {90.16, 4.3},  {94.08, 4.6},
                              {117.60, 6.0}, {121.52, 6.2}, {125.44, 6.4}, {129.36, 6.7}, {133.28, 6.9},
                              {156.80, 8.0}, {160.72, 8.2}, {164.64, 8.4}, {168.56, 8.5}, {172.48, 8.7}};
  for (const auto& [grams, number] : points) {
    ASSERT_TRUE(LineNumberFor(grams / 1000)) << grams;
    EXPECT_NEAR(*LineNumberFor(grams / 1000), number, 0.08) << grams;
  }
}

TEST(LineNumberFor, SaysNothingBeyondThePublishedPoints) {
  EXPECT_FALSE(LineNumberFor(0.0389));
  EXPECT_FALSE(LineNumberFor(0.1731));
  EXPECT_FALSE(LineNumberFor(std::nan("")));
  EXPECT_TRUE(LineNumberFor(0.039));
  EXPECT_TRUE(LineNumberFor(0.173));
}

// Published classes: below 59 slow, 59 to 63 moderate, 63 to 66 moderate fast, above fast.
TEST(ActionFor, FollowsTheClasses) {
  EXPECT_STREQ(ActionFor(58.9 * kDeg), "slow");
  EXPECT_STREQ(ActionFor(59.1 * kDeg), "moderate");
  EXPECT_STREQ(ActionFor(63.1 * kDeg), "moderate fast");
  EXPECT_STREQ(ActionFor(66.1 * kDeg), "fast");
}

// Solid cones at a drop of a third of their length, converged to five figures by another method: tip over butt
// diameter, P L^2 / EI of the butt, angle of the tip in degrees. The first line is the uniform rod, 29.33 degrees
// at 1.13134.
TEST(PowerOf, ConesDropByAThird) {
  const double table[][3] = {{1.0, 1.1313, 29.3}, {0.75, 0.8637, 32.6}, {0.5, 0.5988, 38.9},
                             {0.4, 0.4948, 43.5}, {0.3, 0.3937, 50.8},  {0.25, 0.3452, 56.2},
                             {0.2, 0.2992, 63.4}, {0.15, 0.2572, 72.9}, {0.1, 0.2209, 83.7}};
  for (const auto& [ratio, load, angle] : table) {
    const Cone cone{2, 0.01, 0.01 * ratio};
    const BendingAnswers answers = BendingAnswersOf(DesignOf(cone, ""));
    ASSERT_TRUE(answers.bare && answers.bare->power) << ratio;
    const double stiffness = 100e9 * std::numbers::pi / 64 * 1e-8;
    EXPECT_NEAR(answers.bare->power->load_kg.value() * 9.80665 * 4 / stiffness, load, 6e-5) << ratio;
    EXPECT_NEAR(answers.bare->power->tip_angle / kDeg, angle, 0.06) << ratio;
  }
}

// A published straight taper of split cane: 96 in, 0.075 in across flats at the tip, 0.003 in more with every inch,
// described as a moderate rod for line 6. Worked out apart: P L^2 / EI = 0.30505 at a drop of a third, 62.3
// degrees; 37.6 coins and line 4.6 at 6 million psi, 50.2 coins and line 6.4 at 8 million.
TEST(PowerOf, AStraightTaperOfSplitCane) {
  constexpr double kInch = 0.0254, kMsi = 6.894757293168e9;
  struct Row {
    double msi, coins, line;
  };
  for (const auto& [msi, coins, line] : {Row{6, 37.6, 4.6}, Row{8, 50.2, 6.4}}) {
    Cone cane{96 * kInch, 0.363 * kInch, 0.075 * kInch, 0, 0, msi * kMsi};
    cane.solid = "solid_hexagon";
    const BendingAnswers answers = BendingAnswersOf(DesignOf(cane, ""));
    ASSERT_TRUE(answers.bare && answers.bare->power);
    const Power& power = *answers.bare->power;
    const double stiffness = cane.modulus_pa * 0.06014065 * std::pow(cane.butt_m, 4);
    EXPECT_NEAR(power.load_kg.value() * 9.80665 * cane.length_m * cane.length_m / stiffness, 0.30505, 6e-6);
    EXPECT_NEAR(power.tip_angle / kDeg, 62.3, 0.06);
    EXPECT_STREQ(ActionFor(power.tip_angle), "moderate");
    EXPECT_NEAR(power.coins, coins, 0.06);
    EXPECT_NEAR(*power.line_number, line, 0.06);
  }
}

}  // namespace
}  // namespace withy::testing
