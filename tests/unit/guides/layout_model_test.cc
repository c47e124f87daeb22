// What the search goes by: slopes against differences of layouts.
#include "layout_model.h"

#include <cmath>

#include "gtest/gtest.h"
#include "placement_rods.h"

namespace withy::testing {
namespace {

TEST(LayoutModel, SlopesAgreeWithDifferences) {
  constexpr double kStep = 1e-4;  // m; central differences are then good to some 1e-6 rad/m
  PlacementProblem problem = OnTop(4);
  problem.cases[1].weight = 1.5;
  problem.cases[1].clearance_m.reset();
  const std::vector<double> places{0.55, 1.02, 1.41, 1.77};
  LayoutSolver solver(problem);
  const std::optional<LayoutModel> here = solver.ModelAt(places);
  ASSERT_TRUE(here);
  ASSERT_EQ(here->turns.size(), 10u);   // two cases of four guides and the tip-top's entry
  ASSERT_EQ(here->missing.size(), 5u);  // five spans of the case that asks for clearance
  for (std::size_t j = 0; j < places.size(); ++j) {
    std::vector<double> ahead = places, behind = places;
    ahead[j] += kStep;
    behind[j] -= kStep;
    const auto after = solver.ModelAt(ahead), before = solver.ModelAt(behind);
    ASSERT_TRUE(after && before);
    const auto slope = [](const Answer& a, const Answer& b) { return (a.value - b.value) / (2 * kStep); };
    for (std::size_t i = 0; i < here->turns.size(); ++i) {
      EXPECT_NEAR(here->turns[i].slopes[j], slope(after->turns[i], before->turns[i]), 2e-5) << i << ", " << j;
    }
    for (std::size_t i = 0; i < here->missing.size(); ++i) {
      EXPECT_NEAR(here->missing[i].slopes[j], slope(after->missing[i], before->missing[i]), 2e-5) << i << ", " << j;
    }
    EXPECT_NEAR(here->r.slopes[j], slope(after->r, before->r), 2e-5) << j;
  }
}

TEST(LayoutModel, ForetellsTheCostOfASmallMove) {
  const PlacementProblem problem = OnTop(4);
  LayoutSolver solver(problem);
  const std::vector<double> places{0.55, 1.02, 1.41, 1.77}, moved{0.55 + 1e-4, 1.02, 1.41 - 2e-4, 1.77};
  const std::optional<LayoutModel> here = solver.ModelAt(places);
  ASSERT_TRUE(here);
  EXPECT_NEAR(here->CostAt({1e-4, 0, -2e-4, 0}), CostOf(solver.Evaluate(moved)), 1e-6);
  EXPECT_NEAR(here->CostAt({0, 0, 0, 0}), CostOf(here->layout), 1e-12);
}

// Warm or cold, the same layout.
TEST(LayoutSolver, DoesNotDependOnWhatItSolvedBefore) {
  const PlacementProblem problem = OnTop(4);
  LayoutSolver solver(problem);
  solver.Evaluate({0.8, 0.9, 1.0, 1.1});
  const Layout warm = solver.Evaluate({0.55, 1.02, 1.41, 1.77}),
               cold = EvaluateLayout(problem, {0.55, 1.02, 1.41, 1.77});
  EXPECT_NEAR(warm.j, cold.j, 1e-7);
  EXPECT_NEAR(warm.r, cold.r, 1e-7);
  EXPECT_EQ(solver.solves(), 4);
}

}  // namespace
}  // namespace withy::testing
