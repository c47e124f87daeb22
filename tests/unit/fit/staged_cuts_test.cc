#include "withy/fit/staged_cuts.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <numeric>
#include <random>

namespace withy {
namespace {

using testing::DoubleNear;
using testing::ElementsAre;
using testing::IsEmpty;

auto Mm(double mm) {
  return DoubleNear(mm / 1000, 1e-12);
}

// 152 = 2 (at most 76.2) + 6.35 does not do with one stage before the last: 145.65 / 76.2 = 1.91. Two of 72.825.
TEST(StagedCuts, TheLastIsSmallAndTheOthersEqual) {
  const auto cuts = StagedCuts(0.152, {.kerf_m = 0.001, .largest_m = 0.0762, .last_m = 0.00635});
  EXPECT_THAT(cuts.value(), ElementsAre(Mm(72.825), Mm(72.825), Mm(6.35)));
}

TEST(StagedCuts, Ties) {
  const CutStages stages{.kerf_m = 0.001, .largest_m = 0.03, .last_m = 0.005};
  EXPECT_THAT(StagedCuts(0, stages).value(), IsEmpty());
  EXPECT_THAT(StagedCuts(0.005, stages).value(), ElementsAre(Mm(5)));
  EXPECT_THAT(StagedCuts(0.035, stages).value(), ElementsAre(Mm(30), Mm(5)));
  EXPECT_THAT(StagedCuts(0.0351, stages).value(), ElementsAre(Mm(15.05), Mm(15.05), Mm(5)));
  EXPECT_THAT(StagedCuts(0.001, stages).value(), ElementsAre(Mm(1)));  // the kerf alone
}

// Kerf 3, largest 5, last 4. 6.5 takes two stages; the first needs its kerf, so 3.5 are left for the last.
TEST(StagedCuts, EveryStageTakesAKerf) {
  const CutStages stages{.kerf_m = 0.003, .largest_m = 0.005, .last_m = 0.004};
  EXPECT_THAT(StagedCuts(0.0065, stages).value(), ElementsAre(Mm(3), Mm(3.5)));
  EXPECT_FALSE(StagedCuts(0.0045, stages));  // more than the last may take, less than two kerfs
  EXPECT_FALSE(StagedCuts(0.0029, stages));  // less than one
}

TEST(StagedCuts, TooManyStagesAreNone) {
  EXPECT_FALSE(StagedCuts(1, {.kerf_m = 0, .largest_m = 0, .last_m = 0}));
  EXPECT_FALSE(StagedCuts(1, {.kerf_m = 0, .largest_m = 1e-8, .last_m = 1e-8}));
}

// Against the conditions themselves, and no plan with one stage less meets them.
TEST(StagedCuts, RandomPlansMeetTheirConditions) {
  std::mt19937 engine(5);
  const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(engine); };
  int plans = 0;
  for (int i = 0; i < 5000; ++i) {
    const double kerf = between(0, 0.004), last = between(kerf, 0.02), largest = between(last, 0.05);
    const double total = between(0.0001, 0.2);
    const auto cuts = StagedCuts(total, {kerf, largest, last});
    const auto most = [&](double n) { return (n - 1) * largest + last; };
    int n = 1;
    while (most(n) < total) ++n;
    ASSERT_EQ(cuts.has_value(), n * kerf <= total) << i;
    if (!cuts) continue;
    ++plans;
    EXPECT_EQ(static_cast<int>(cuts->size()), n);
    EXPECT_NEAR(std::accumulate(cuts->begin(), cuts->end(), 0.0), total, 1e-12);
    EXPECT_LE(cuts->back(), last + 1e-9);
    for (double cut : *cuts) {
      EXPECT_GE(cut, kerf - 1e-9);
      EXPECT_LE(cut, largest + 1e-9);
    }
  }
  EXPECT_GT(plans, 4000);
}

}  // namespace
}  // namespace withy
