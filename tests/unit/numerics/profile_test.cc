#include "withy/numerics/profile.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>
#include <vector>

namespace withy {
namespace {

using Limit = Profile::Limit;

TEST(Profile, HandWorkedValues) {
  const Profile taper({{0, 13.46}, {76.2, 13.21}, {2209.8, 2.06}});
  EXPECT_NEAR(taper.At(38.1), 13.335, 1e-12);  // half way: (13.46 + 13.21) / 2
  EXPECT_EQ(taper.At(76.2), 13.21);
  EXPECT_EQ(taper.At(-5), 13.46);  // the end value holds beyond the ends
  EXPECT_EQ(taper.At(3000), 2.06);
  EXPECT_EQ(taper.begin(), 0);
  EXPECT_EQ(taper.end(), 2209.8);
}

TEST(Profile, AJumpHasTwoLimits) {
  const Profile bore({{0, 8}, {50, 8}, {50, 10}, {100, 12}});
  EXPECT_EQ(bore.At(50, Limit::kLeft), 8);
  EXPECT_EQ(bore.At(50, Limit::kRight), 10);
  EXPECT_EQ(bore.At(75), 11);
  EXPECT_EQ(bore.Min(0, 100), 8);
  EXPECT_EQ(bore.Min(50, 100), 10);  // at the lower bound only the right limit counts
  EXPECT_EQ(bore.Max(0, 50), 8);     // at the upper bound only the left
  EXPECT_EQ(bore.Max(50, 50), 10);   // at a single place both
  EXPECT_EQ(bore.Min(50, 50), 8);
}

// The definition, knot by knot, as slowly as it reads.
double SlowAt(const std::vector<Profile::Knot>& knots, double x, Limit limit) {
  std::vector<Profile::Knot> here;
  for (const auto& knot : knots) {
    if (knot.x == x) here.push_back(knot);
  }
  if (!here.empty()) return limit == Limit::kLeft ? here.front().y : here.back().y;
  if (x < knots.front().x) return knots.front().y;
  for (std::size_t i = 1; i < knots.size(); ++i) {
    if (x < knots[i].x) {
      const auto &a = knots[i - 1], &b = knots[i];
      return (a.y * (b.x - x) + b.y * (x - a.x)) / (b.x - a.x);
    }
  }
  return knots.back().y;
}

std::vector<Profile::Knot> RandomKnots(std::mt19937& random) {
  std::vector<Profile::Knot> knots;
  const int count = 1 + static_cast<int>(random() % 8);
  for (int i = 0; i < count; ++i)
    knots.push_back({static_cast<double>(random() % 6), static_cast<double>(random() % 20)});
  std::stable_sort(knots.begin(), knots.end(), [](const auto& a, const auto& b) { return a.x < b.x; });
  return knots;
}

TEST(Profile, AgreesWithTheDefinition) {
  std::mt19937 random(7);
  for (int round = 0; round < 2000; ++round) {
    const auto knots = RandomKnots(random);
    const Profile profile(knots);
    for (double x = -1; x <= 7; x += 0.25) {
      ASSERT_NEAR(profile.At(x, Limit::kLeft), SlowAt(knots, x, Limit::kLeft), 1e-12);
      ASSERT_NEAR(profile.At(x, Limit::kRight), SlowAt(knots, x, Limit::kRight), 1e-12);
      ASSERT_NEAR(profile.Shifted(2).At(x + 2), profile.At(x), 1e-12);
    }
  }
}

TEST(Profile, ExtremesAgreeWithSampling) {
  std::mt19937 random(8);
  for (int round = 0; round < 2000; ++round) {
    const auto knots = RandomKnots(random);
    const Profile profile(knots);
    const double a = -1 + 0.25 * (random() % 32), b = a + 0.25 + 0.25 * (random() % 16);
    // All knots stand at whole numbers, so samples at quarters meet every knot.
    double low = profile.At(a, Limit::kRight), high = low;
    for (double x = a; x <= b; x += 0.25) {
      if (x > a)
        low = std::min(low, SlowAt(knots, x, Limit::kLeft)), high = std::max(high, SlowAt(knots, x, Limit::kLeft));
      if (x < b)
        low = std::min(low, SlowAt(knots, x, Limit::kRight)), high = std::max(high, SlowAt(knots, x, Limit::kRight));
    }
    // Three knots at one place: the one between the limits is met by neither.
    bool spike = false;
    for (std::size_t i = 2; i < knots.size(); ++i) spike |= knots[i - 2].x == knots[i].x;
    if (spike) continue;
    ASSERT_NEAR(profile.Min(a, b), low, 1e-12);
    ASSERT_NEAR(profile.Max(a, b), high, 1e-12);
    const Profile slice = profile.Slice(a, b);
    ASSERT_EQ(slice.begin(), a);
    ASSERT_EQ(slice.end(), b);
    for (double x = a; x <= b; x += 0.25) {
      if (x > a) {
        ASSERT_NEAR(slice.At(x, Limit::kLeft), SlowAt(knots, x, Limit::kLeft), 1e-12);
      }
      if (x < b) {
        ASSERT_NEAR(slice.At(x, Limit::kRight), SlowAt(knots, x, Limit::kRight), 1e-12);
      }
    }
  }
}

// By definition: a jump within reach is taken, of two the nearer; a bend and a jump that is further off are not.
TEST(Profile, OntoJump) {
  const Profile profile({{0, 1}, {1, 1}, {1, 2}, {1.5, 2}, {1.75, 2}, {1.75, 3}, {3, 4}});
  EXPECT_EQ(profile.OntoJump(0.75, 0.25), 1);
  EXPECT_EQ(profile.OntoJump(1.125, 0.25), 1);
  EXPECT_EQ(profile.OntoJump(1.5, 0.5), 1.75);
  EXPECT_EQ(profile.OntoJump(1.5, 0.125), 1.5);
  EXPECT_EQ(profile.OntoJump(3, 0.25), 3);
}

}  // namespace
}  // namespace withy
