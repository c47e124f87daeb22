// The nearest point: worked by hand, and by what every projection on a convex set obeys.
#include "nearest_point.h"

#include <random>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

using ::testing::DoubleNear;
using ::testing::ElementsAre;

// x + y <= 1 from (2, 1): along its normal to (1, 0). With y >= 0.5 as well, the corner (0.5, 0.5).
TEST(NearestPoint, WorkedByHand) {
  const HalfSpace below{{1, 1}, 1}, above{{0, -1}, -0.5};
  const auto edge = NearestPoint({below}, {2, 1}, 1e-12);
  ASSERT_TRUE(edge);
  EXPECT_THAT(*edge, ElementsAre(DoubleNear(1, 1e-12), DoubleNear(0, 1e-12)));
  const auto corner = NearestPoint({below, above}, {2, 1}, 1e-12);
  ASSERT_TRUE(corner);
  EXPECT_THAT(*corner, ElementsAre(DoubleNear(0.5, 1e-12), DoubleNear(0.5, 1e-12)));
  EXPECT_EQ(*NearestPoint({below}, {0, 0}, 1e-12), (std::vector<double>{0, 0}));
}

TEST(NearestPoint, Contradictions) {
  EXPECT_FALSE(NearestPoint({{{1}, 0}, {{-1}, -1}}, {3}, 1e-12));  // x <= 0 and x >= 1
  EXPECT_FALSE(NearestPoint({{{1, 1}, 1}, {{-1, 0}, -1}, {{0, -1}, -1}}, {0, 0}, 1e-12));  // x, y >= 1, x + y <= 1
  EXPECT_FALSE(NearestPoint({{{0, 0}, -1}}, {0, 0}, 1e-12));                               // 0 <= -1
}

// Projection theorem: no point y of the set has (wanted - x) . (y - x) > 0. Fifty places in a row from 0 to 1 whose
// gaps, the one to 1 included, never grow; y has even or arithmetically falling gaps, which do so by construction.
TEST(NearestPoint, ProjectsOnGapsThatNeverGrow) {
  constexpr std::size_t kPlaces = 50;
  std::vector<HalfSpace> spaces;
  for (std::size_t k = 0; k < kPlaces; ++k) {
    HalfSpace apart{std::vector<double>(kPlaces, 0.0), -0.005}, shrink{std::vector<double>(kPlaces, 0.0), 0};
    apart.normal[k] = 1;
    if (k + 1 < kPlaces) {
      apart.normal[k + 1] = -1;
      shrink.normal[k] = 1;
      shrink.normal[k + 1] = -2;
      if (k + 2 < kPlaces) shrink.normal[k + 2] = 1;
      if (k + 2 == kPlaces) shrink.most = -1;
      spaces.push_back(shrink);
    } else {
      apart.most = 1 - 0.005;
    }
    spaces.push_back(apart);
  }
  std::mt19937 random(5);
  std::uniform_real_distribution<double> anywhere(0, 1);
  for (int i = 0; i < 20; ++i) {
    std::vector<double> wanted(kPlaces);
    for (double& place : wanted) place = anywhere(random);
    const auto x = NearestPoint(spaces, wanted, 1e-9);
    ASSERT_TRUE(x);
    for (const HalfSpace& space : spaces) {
      double value = 0;
      for (std::size_t j = 0; j < kPlaces; ++j) value += space.normal[j] * (*x)[j];
      EXPECT_LE(value, space.most + 1e-9);
    }
    for (const double least : {0.005, 0.008, 0.01, 0.012, 0.015}) {
      for (const double growth : {0.0, 0.0001, 0.0003}) {
        double along = 0, from_tip = 0;
        for (std::size_t k = kPlaces; k-- > 0;) {
          from_tip += least + growth * static_cast<double>(kPlaces - 1 - k);
          along += (wanted[k] - (*x)[k]) * (1 - from_tip - (*x)[k]);
        }
        EXPECT_LE(along, 1e-6);
      }
    }
  }
}

}  // namespace
}  // namespace withy::testing
