// Where the length bends and jumps, against the shapes of plane geometry and against a fine grid.
#include "withy/fit/length_curve.h"

#include <random>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy {
namespace {

using ::testing::DoubleNear;
using ::testing::ElementsAre;

// Shaft 12 mm, thinner by 0.005 per unit. A shoulder of 11.6 at 100 facing the mouth: the face stands on it until it is
// 11.6 thick, at a cut of 80; there the length falls by 100. From the mouth side on it is wide enough.
TEST(BendsOfLength, AShoulderIsOneJump) {
  const Insertion insertion(
      {.bore = Profile({{0, 11.6}, {100, 11.6}, {100, 12.2}, {300, 12.2}}), .shaft = Profile({{0, 12}, {2000, 2}})});
  EXPECT_THAT(BendsOfLength(insertion, 0, 400), ElementsAre(DoubleNear(80, 1e-6)));
}

// A bore that widens by 0.01 per unit from 11 at its rear end, then straight 12.5 from 150 on. The face is 12 thick: it
// stops at 100. It comes to the rear end, the stop, when it is 11 thick, at a cut of 200: up to there one unit of cut
// takes 1 + 0.005 / 0.01 = 1.5 off, from there on 1.
TEST(BendsOfLength, TheFaceComesToTheStop) {
  const Insertion insertion(
      {.bore = Profile({{0, 11}, {150, 12.5}, {300, 12.5}}), .shaft = Profile({{0, 12}, {2000, 2}})});
  EXPECT_THAT(BendsOfLength(insertion, 0, 400), ElementsAre(DoubleNear(200, 1e-6)));
  EXPECT_NEAR(insertion.LengthAt(0), 2100, 1e-9);
  EXPECT_NEAR(insertion.LengthAt(200), 1800, 1e-9);
}

// Second method: between two bends the length lies on a straight line, tried on a fine grid of random shapes.
TEST(BendsOfLength, BetweenThemTheLengthIsStraight) {
  std::mt19937 random(7);
  std::uniform_real_distribution<double> bore(10, 14), thinner(0, 0.6);
  for (int round = 0; round < 60; ++round) {
    std::vector<Profile::Knot> rings, stations;
    for (int i = 0; i <= 6; ++i) rings.push_back({i * 50.0, bore(random)});
    rings.insert(rings.begin() + 3, {100.0, bore(random)});  // a jump
    double diameter = 13;
    for (int i = 0; i <= 10; ++i, diameter -= thinner(random)) stations.push_back({i * 100.0, diameter});
    const Insertion insertion({.bore = Profile(rings), .shaft = Profile(stations)});
    std::vector<double> bends = BendsOfLength(insertion, 0, 600);
    bends.insert(bends.begin(), 0);
    bends.push_back(600);
    for (std::size_t i = 1; i < bends.size(); ++i) {
      const double from = bends[i - 1], to = bends[i];
      if (to - from < 1e-3) continue;
      const double at_from = insertion.LengthAt(from), at_to = insertion.LengthBefore(to);
      for (double share = 0.05; share < 1; share += 0.1) {
        ASSERT_NEAR(insertion.LengthAt(from + share * (to - from)), at_from + share * (at_to - at_from), 1e-6)
            << "round " << round << " between " << from << " and " << to;
      }
    }
  }
}

}  // namespace
}  // namespace withy
