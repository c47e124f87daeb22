#include "withy/fit/length_verdict.h"

#include <gtest/gtest.h>

namespace withy {
namespace {

// Bore taper 0.02, blank taper 0.005, 15 mm butt: after 40 mm of cut the butt face rests at 240 mm, length 2200, and a
// diameter off by x moves it by x / 0.02 = 50 x.
Insertion ConeInCone() {
  return Insertion({.bore = Profile({{0, 0.010}, {0.3, 0.016}}), .shaft = Profile({{0, 0.015}, {2, 0.005}})});
}

// u of the diameters: sqrt(0.03^2 + 0.04^2) = 0.05 mm, times 50: 2.5 mm. With 6 mm of the blank's own length: 6.5 mm.
TEST(LengthVerdict, Band) {
  const auto band = LengthBandAt(ConeInCone(), 0.04, {.blank_diameter_m = 3e-5, .bore_diameter_m = 4e-5});
  EXPECT_NEAR(band.length_m, 2.2, 1e-12);
  EXPECT_NEAR(band.per_diameter.thicker, 50, 1e-8);
  EXPECT_NEAR(band.u_m, 0.0025, 1e-12);
  EXPECT_NEAR(band.with_thinner_m, 2.195, 1e-12);
  EXPECT_NEAR(band.with_thicker_m, 2.205, 1e-12);
  EXPECT_FALSE(band.jump);
  EXPECT_NEAR(LengthBandAt(ConeInCone(), 0.04, {3e-5, 4e-5, 6e-3}).u_m, 0.0065, 1e-12);
}

TEST(LengthVerdict, ThreeValues) {
  const auto band = LengthBandAt(ConeInCone(), 0.04, {3e-5, 4e-5, 0});  // 2200 +/- 5
  EXPECT_EQ(JudgeLength(band, 2.2, 0.005), LengthVerdict::kMeets);      // a tie
  EXPECT_EQ(JudgeLength(band, 2.201, 0.005), LengthVerdict::kCannotTell);
  EXPECT_EQ(JudgeLength(band, 2.2, 0.004), LengthVerdict::kCannotTell);
  EXPECT_EQ(JudgeLength(band, 2.21, 0.005), LengthVerdict::kCannotTell);  // 10 off less 5: may just be
  EXPECT_EQ(JudgeLength(band, 2.211, 0.005), LengthVerdict::kMisses);
  EXPECT_EQ(JudgeLength(band, 2.189, 0.005), LengthVerdict::kMisses);
}

// On a shoulder nothing moves for a small change, but the butt is 0.05 mm too thick to pass: within 2 u = 0.1 mm the
// rod may be 100 mm shorter. At u = 0.02 mm it cannot.
TEST(LengthVerdict, AJumpHidesBesideASmoothPoint) {
  const Insertion insertion({.bore = Profile({{0, 0.012}, {0.1, 0.012}, {0.1, 0.016}, {0.25, 0.016}}),
                             .shaft = Profile({{0, 0.014}, {2, 0.004}})});
  const auto band = LengthBandAt(insertion, 0.39, {3e-5, 4e-5, 0});
  EXPECT_EQ(band.u_m, 0);
  EXPECT_EQ(JudgeLength(band, 1.71, 0.001), LengthVerdict::kMeets);  // first order sees nothing of it
  EXPECT_TRUE(band.jump);
  EXPECT_NEAR(band.with_thinner_m, 1.61, 1e-12);
  EXPECT_FALSE(LengthBandAt(insertion, 0.39, {2e-5, 0, 0}).jump);
}

}  // namespace
}  // namespace withy
