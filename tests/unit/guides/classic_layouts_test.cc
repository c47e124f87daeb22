// The trade's progressions against published positions.
//
// An arithmetic rule, D_n = n X + I n (n - 1) / 2 from the tip, first 4 in and eighth 60 in, gives 4 9 15 22 30 39 49
// 60 in (a builder's article and a general book on fly rods have the rule). A school task (International Baccalaureate,
// about 2011) gives the guides of a rod of 230 cm at 10, 23, 38, 55, 74, 96, 120, 149 cm from the tip, and as their
// quadratic 1.244 n^2 + 8.458 n + 0.839.
#include <cmath>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "withy/guides/placement.h"

namespace withy::testing {
namespace {

using ::testing::DoubleNear;
using ::testing::Pointwise;

const std::vector<double> kSchoolTask{10, 23, 38, 55, 74, 96, 120, 149};

TEST(ArithmeticRule, ThroughFourAndSixtyInches) {
  const ArithmeticRule rule = ArithmeticThrough(4, 60, 8);
  EXPECT_NEAR(rule.increment, 1, 1e-12);
  const std::vector<double> want{4, 9, 15, 22, 30, 39, 49, 60};
  for (int j = 1; j <= 8; ++j) EXPECT_NEAR(rule.DistanceAt(j), want[static_cast<std::size_t>(j - 1)], 1e-12);
}

// The published comparison: within 1.75 cm of every position.
TEST(ArithmeticRule, ThroughTheEndsOfTheSchoolTask) {
  const ArithmeticRule rule = ArithmeticThrough(kSchoolTask.front(), kSchoolTask.back(), 8);
  double worst = 0;
  for (int j = 1; j <= 8; ++j) {
    worst = std::max(worst, std::abs(rule.DistanceAt(j) - kSchoolTask[static_cast<std::size_t>(j - 1)]));
  }
  EXPECT_NEAR(worst, 1.75, 0.005);
}

// c n^2 + b n + a: I = 2 c, X = b + c, offset a.
TEST(FitArithmetic, TheSchoolTasksQuadratic) {
  const ArithmeticRule rule = FitArithmetic(kSchoolTask);
  EXPECT_NEAR(rule.increment / 2, 1.244, 5e-4);
  EXPECT_NEAR(rule.first - rule.increment / 2, 8.458, 5e-4);
  EXPECT_NEAR(rule.offset, 0.839, 5e-4);
}

TEST(FitArithmetic, GivesBackARule) {
  const ArithmeticRule rule = FitArithmetic({4, 9, 15, 22, 30, 39, 49, 60});
  EXPECT_NEAR(rule.first, 4, 1e-12);
  EXPECT_NEAR(rule.increment, 1, 1e-12);
  EXPECT_NEAR(rule.offset, 0, 1e-12);
}

// Two metres, guide 1 between 0.4 and 0.6: 1.5 m from the tip.
PlacementProblem TwoMetres(std::size_t guides) {
  PlacementProblem problem;
  problem.beam.pieces.push_back({0, 2, {1}, {}});
  problem.first_low_m = 0.4;
  problem.first_high_m = 0.6;
  problem.offsets_m.assign(guides, 0.01);
  return problem;
}

// Three guides from 0.3 m on 0.3 (1 + q + q^2) = 1.5 gives q = (sqrt(17) - 1) / 2 = 1.5615528.
TEST(ClassicLayouts, WorkedByHand) {
  const PlacementProblem problem = TwoMetres(3);
  EXPECT_THAT(EqualLayout(problem), Pointwise(DoubleNear(1e-12), std::vector<double>{0.5, 1, 1.5}));
  // 3 X + 3 I = 1.5 with X = 0.3: I = 0.2, so 0.3, 0.8, 1.5 from the tip.
  EXPECT_THAT(ArithmeticLayout(problem, 0.3), Pointwise(DoubleNear(1e-12), std::vector<double>{0.5, 1.2, 1.7}));
  const double ratio = (std::sqrt(17.0) - 1) / 2;
  EXPECT_THAT(GeometricLayout(problem, 0.3),
              Pointwise(DoubleNear(1e-12), std::vector<double>{0.5, 2 - 0.3 * (1 + ratio), 1.7}));
}

TEST(ClassicLayouts, OneGuideStandsInTheMiddleOfItsRoom) {
  for (const auto& layout :
       {ArithmeticLayout(TwoMetres(1)), GeometricLayout(TwoMetres(1)), EqualLayout(TwoMetres(1))}) {
    EXPECT_THAT(layout, Pointwise(DoubleNear(1e-12), std::vector<double>{0.5}));
  }
}

}  // namespace
}  // namespace withy::testing
