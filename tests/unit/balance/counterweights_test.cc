// Counterweights worked by hand, and against every number tried with thin slices.
#include "withy/balance/counterweights.h"

#include <algorithm>
#include <cmath>
#include <random>

#include "gtest/gtest.h"

namespace withy {
namespace {

// 20.5 g m tip-heavy about 300 mm. Units of 20 g and 20 mm, 15 mm across, one behind the other from 20 mm in a bore of
// 20 mm: n have their centre at 20 + 10 n mm. Taped in, 4 take 20 x 4 x 240 = 19.2 g m and 5 take 23.0: 4. Potting of 1.15
// g/cm3 adds pi/4 (400 - 225) x 20 x 1.15e-3 = 3.1612 g to each: 3 take 17.371 and 4 take 22.235 g m: 3.
TEST(CountFor, PottingTakesThePlaceOfOne) {
  const CounterweightStack stack({0.020, 0.015, 0.020}, {.start_m = 0.020, .length_m = 0.120, .diameter_m = 0.020, .potting_kg_m3 = 1150});
  const MassProperties rod = PointMass(0.1, 0.3 + 0.205, 0);
  const CounterweightCount count = CountFor(stack, rod, 0.3);
  EXPECT_EQ(count.status, CounterweightStatus::kBalanced);
  EXPECT_EQ(count.n, 3);
  EXPECT_EQ(count.n_if_potting_ignored, 4);
  const double each = 20 + M_PI / 4 * 175 * 20 * 1.15e-3;
  EXPECT_NEAR(count.moment_before_potting_n_m, 9.80665 * (20500 - 15000) * 1e-6, 1e-12);
  EXPECT_NEAR(count.moment_after_n_m, 9.80665 * (20500 - each * 3 * 250) * 1e-6, 1e-12);
  EXPECT_NEAR(*count.moment_with_one_more_n_m, 9.80665 * (20500 - each * 4 * 240) * 1e-6, 1e-12);
}

TEST(CountFor, WhatIsPottedStays) {
  const CounterweightStack stack({0.020, 0.015, 0.020}, {.start_m = 0.020, .length_m = 0.120, .diameter_m = 0.020, .potting_kg_m3 = 1150});
  const MassProperties rod = PointMass(0.1, 0.3 + 0.205, 0);
  EXPECT_EQ(CountFor(stack, rod, 0.3, 2).n, 3);
  const CounterweightCount too_many = CountFor(stack, rod, 0.3, 4);
  EXPECT_EQ(too_many.status, CounterweightStatus::kButtHeavy);
  EXPECT_FALSE(too_many.n);
}

// A room of 120 mm from 20 mm on takes 6 of 20 mm, and the hold at 75 mm has 2 behind it; 50 g m are not to be had with
// them.
TEST(CountFor, OnlyWhatStandsBehindTheHoldIsOfUse) {
  const CounterweightStack stack({0.020, 0.019, 0.020}, {.start_m = 0.020, .length_m = 0.120, .diameter_m = 0.020});
  const CounterweightCount count = CountFor(stack, PointMass(0.1, 0.575, 0), 0.075);
  EXPECT_EQ(count.status, CounterweightStatus::kRoomLimited);
  EXPECT_EQ(count.n, 2);
  EXPECT_EQ(CountFor(stack, PointMass(0.1, 0.575, 0), 0.010).status, CounterweightStatus::kNoRoom);
  EXPECT_EQ(stack.fit(), 6);
}

// Level to the last digit counts as balanced.
TEST(CountFor, ATieBalances) {
  const CounterweightStack stack({0.020, 0.019, 0.020}, {.length_m = 0.120, .diameter_m = 0.020});
  const MassProperties rod = PointMass(0.1, 0.3 + 2 * 0.020 * 0.280 / 0.1, 0);  // two at 20 mm
  EXPECT_EQ(CountFor(stack, rod, 0.3).n, 2);
}

// Light units in heavy potting: one more in a layer raises the moment, so the largest n is not where it first falls below.
// Second method: units and potting in slices of 0.1 mm, every n tried.
TEST(CountFor, AgainstEveryNumberInThinSlices) {
  std::mt19937 random(20260322);
  std::uniform_real_distribution<double> in(0, 1);
  int balanced = 0;
  for (int round = 0; round < 60; ++round) {
    const double unit_length = 0.001 * (4 + static_cast<int>(in(random) * 16));
    const CounterweightUnit unit{0.0005 + 0.02 * in(random) * in(random), 0.004 + 0.008 * in(random), unit_length};
    const CounterweightRoom room{.start_m = 0.01 + 0.02 * in(random),
                                 .length_m = 0.05 + 0.15 * in(random),
                                 .diameter_m = 0.010 + 0.012 * in(random),
                                 .cover_m = 0.001 * static_cast<int>(in(random) * 20),
                                 .potting_kg_m3 = 900 + 900 * in(random)};
    const CounterweightStack stack(unit, room);
    const double hold = 0.32, rod_kg_m = 0.03 * in(random);
    const CounterweightCount count = CountFor(stack, PointMass(0.4, hold + rod_kg_m / 0.4, 0), hold);
    const auto area = [](double d) { return M_PI / 4 * d * d; };
    const double slice = 1e-4;
    const auto taken = [&](int n) {  // kg m, by slices
      const int k = std::max(stack.side_by_side(), 1);
      const int layers = (n + k - 1) / k;
      const int slices = static_cast<int>(std::lround((layers * unit.length_m + room.cover_m) / slice));
      double sum = 0;
      for (int i = 0; n > 0 && i < slices; ++i) {
        const double z = (i + 0.5) * slice;
        const int layer = static_cast<int>(z / unit.length_m);
        const int here = layer >= layers ? 0 : std::min(k, n - layer * k);
        const double per_m = here * unit.mass_kg / unit.length_m +
                             room.potting_kg_m3 * (area(room.diameter_m) - here * area(unit.diameter_m));
        sum += per_m * slice * (hold - room.start_m - z);
      }
      return sum;
    };
    int most = 0;
    for (int n = 0; n <= stack.fit(); ++n) {
      if (rod_kg_m - taken(n) >= 0) most = n;
    }
    ASSERT_EQ(count.n, most) << round;
    EXPECT_NEAR(count.moment_after_n_m, 9.80665 * (rod_kg_m - taken(most)), 1e-9) << round;
    balanced += count.status == CounterweightStatus::kBalanced && most > 0;
  }
  EXPECT_GT(balanced, 15);
}

}  // namespace
}  // namespace withy
