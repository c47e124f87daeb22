#include "withy/fit/cut_for_length.h"

#include <gtest/gtest.h>

namespace withy {
namespace {

using Kind = LengthOutcome::Kind;

// A shoulder at 100 mm, 12 mm behind it and 16 mm ahead; the 14 mm butt, thinner by 0.005 per mm, stands on it until
// 400 mm are off and then goes to the rear end: 2100 - c before, 2000 - c from there on.
Insertion OnAShoulder() {
  return Insertion({.bore = Profile({{0, 0.012}, {0.1, 0.012}, {0.1, 0.016}, {0.25, 0.016}}),
                    .shaft = Profile({{0, 0.014}, {2, 0.004}})});
}

TEST(CutForLength, Reached) {
  const auto outcome = CutForLength(OnAShoulder(), 2.0, 0.45);
  EXPECT_EQ(outcome.kind, Kind::kReached);
  EXPECT_NEAR(outcome.cut_m.value(), 0.1, 1e-11);
  EXPECT_FALSE(outcome.below || outcome.above);
  EXPECT_EQ(CutForLength(OnAShoulder(), 2.1, 0.45).cut_m.value(), 0);  // as it is
  EXPECT_EQ(CutForLength(OnAShoulder(), 2.1, 0).cut_m.value(), 0);
}

TEST(CutForLength, LongerThanUncut) {
  const auto outcome = CutForLength(OnAShoulder(), 2.2, 0.45);
  EXPECT_EQ(outcome.kind, Kind::kLongerThanUncut);
  EXPECT_FALSE(outcome.cut_m || outcome.above);
  EXPECT_NEAR(outcome.below.value().length_m, 2.1, 1e-12);
  EXPECT_TRUE(outcome.below->attained);
}

TEST(CutForLength, AJumpLeavesTheLengthOut) {
  const auto outcome = CutForLength(OnAShoulder(), 1.65, 0.45);
  EXPECT_EQ(outcome.kind, Kind::kJump);
  EXPECT_NEAR(outcome.cut_m.value(), 0.4, 1e-12);
  EXPECT_NEAR(outcome.below.value().length_m, 1.6, 1e-12);
  EXPECT_TRUE(outcome.below->attained);
  EXPECT_NEAR(outcome.above.value().length_m, 1.7, 1e-12);
  EXPECT_FALSE(outcome.above->attained);  // come near to, but at 1700 it has passed
  EXPECT_EQ(CutForLength(OnAShoulder(), 1.6, 0.45).kind, Kind::kReached);
}

// An arbor from s = 50 to 80 that thickens from 13 to 14 mm and ends square, in a bore that has 14 mm at 200. Its front
// edge carries the blank, 200 + 1000 - 80 whatever is cut, until it is cut off itself.
TEST(CutForLength, TheLengthJustAboveAJumpMayBeHad) {
  const Insertion insertion(
      {.bore = Profile({{0, 0.010}, {0.3, 0.016}}),
       .shaft = Profile({{0, 0.008}, {0.05, 0.008}, {0.05, 0.013}, {0.08, 0.014}, {0.08, 0.008}, {1, 0.008}})});
  const auto outcome = CutForLength(insertion, 1.0, 0.5);
  EXPECT_EQ(outcome.kind, Kind::kJump);
  EXPECT_NEAR(outcome.cut_m.value(), 0.08, 1e-12);
  EXPECT_NEAR(outcome.below.value().length_m, 0.92, 1e-12);
  EXPECT_NEAR(outcome.above.value().length_m, 1.12, 1e-12);
  EXPECT_TRUE(outcome.above->attained);
}

TEST(CutForLength, BeyondTheLimit) {
  const auto outcome = CutForLength(OnAShoulder(), 1.5, 0.45);
  EXPECT_EQ(outcome.kind, Kind::kBeyondLimit);
  EXPECT_FALSE(outcome.cut_m || outcome.below);
  EXPECT_NEAR(outcome.above.value().length_m, 1.55, 1e-12);
  EXPECT_TRUE(outcome.above->attained);
  EXPECT_NEAR(CutForLength(OnAShoulder(), 2.09, 0).above.value().length_m, 2.1, 1e-12);  // none allowed
}

}  // namespace
}  // namespace withy
