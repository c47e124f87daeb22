// Adhesive between bore and blank against published figures, frusta by the book, and thin slices.
#include "withy/bonding/joint_volume.h"

#include <cmath>
#include <numbers>
#include <random>

#include "gtest/gtest.h"

namespace withy {
namespace {

constexpr double kPi = std::numbers::pi;

Profile Straight(double diameter_m) {
  return Profile({{0, diameter_m}});
}

// 12.0 mm bore on 11.7 mm tube, 100 mm long: 0.15 mm all round, pi/4 (144 - 136.89) 100 = 558.4 mm3.
TEST(BondVolume, StraightTube) {
  const BondVolume volume = VolumeOf({Straight(0.012), Straight(0.0117), 0, 0.1, {}});
  EXPECT_NEAR(volume.gap_m, 0.00015, 1e-12);
  EXPECT_NEAR(*volume.gross_m3 * 1e9, kPi / 4 * 7.11 * 100, 1e-6);
  EXPECT_NEAR(*volume.net_m3 * 1e6, 0.558, 0.0005);
  EXPECT_NEAR(*volume.center_m, 0.05, 1e-12);
}

// Frustum 10 to 14 mm over 200 mm: 22 828.907 mm3, balancing 88.9908 mm from the large end, lateral 7540.199 mm2 (solid
// geometry); less a rod of 2 mm, pi x 200 mm3 that balances in the middle.
TEST(BondVolume, Frustum) {
  const Profile cone({{0, 0.010}, {0.2, 0.014}});
  const BondVolume volume = VolumeOf({cone, Straight(0.002), 0, 0.2, {}});
  const double inner = kPi * 200;
  EXPECT_NEAR(*volume.gross_m3 * 1e9, 22828.907 - inner, 0.001);
  const double center = (22828.907 * (200 - 88.9908) - inner * 100) / (22828.907 - inner);
  EXPECT_NEAR(*volume.center_m * 1000, center, 0.0002);
  EXPECT_NEAR(SurfaceOf(cone, 0, 0.2) * 1e6, 7540.199, 0.001);
}

// The gap is smallest just before the shoulder: (14.2 - 12.6) / 2, not (15.8 - 12.6) / 2.
TEST(BondVolume, AJumpCountsFromBothSides) {
  const Profile bore({{0, 0.014}, {0.05, 0.0142}, {0.05, 0.0158}, {0.1, 0.0158}});
  const Profile blank({{0, 0.0124}, {0.05, 0.0130}, {0.1, 0.0124}});
  EXPECT_NEAR(VolumeOf({bore, blank, 0, 0.1, {}}).gap_m, (0.0142 - 0.0130) / 2, 1e-12);
  // a bond that begins at the shoulder sees only what is inside it
  EXPECT_NEAR(VolumeOf({bore, blank, 0.05, 0.1, {}}).gap_m, (0.0158 - 0.0130) / 2, 1e-12);
}

TEST(BondVolume, NothingIsToldWhereTheyTouch) {
  const Profile bore({{0, 0.012}, {0.1, 0.014}});
  for (const double blank_m : {0.012, 0.0125}) {
    const BondVolume volume = VolumeOf({bore, Straight(blank_m), 0, 0.1, {{0.05, 0.01, 0.0128}}});
    EXPECT_FALSE(volume.gross_m3 || volume.net_m3 || volume.center_m) << blank_m;
    EXPECT_EQ(volume.rings.size(), 1u);
  }
}

// A ring of 15 mm, 10 mm wide, on 12 mm: pi/4 (225 - 144) 10 = 636.17 mm3; half of it outside the bond takes half.
TEST(BondVolume, Rings) {
  const BondVolume volume = VolumeOf(
      {Straight(0.0152), Straight(0.012), 0, 0.1, {{0.02, 0.01, 0.015}, {0.095, 0.01, 0.015}, {0.2, 0.01, 0.015}}});
  EXPECT_NEAR(volume.rings[0].volume_m3 * 1e9, kPi / 4 * 81 * 10, 1e-6);
  EXPECT_NEAR(volume.rings[1].volume_m3 * 1e9, kPi / 4 * 81 * 5, 1e-6);
  EXPECT_EQ(volume.rings[2].volume_m3, 0);
  EXPECT_NEAR(volume.rings[0].clearance_m, 0.0001, 1e-12);
  EXPECT_NEAR(*volume.gross_m3 - *volume.net_m3, volume.rings_m3, 1e-18);
}

TEST(BondVolume, ARingThatDoesNotFitLeavesNothingToTell) {
  const Profile bore({{0, 0.013}, {0.1, 0.015}});
  const BondVolume wide = VolumeOf({bore, Straight(0.0115), 0, 0.1, {{0.02, 0.01, 0.0135}}});
  EXPECT_FALSE(wide.rings[0].fits);
  EXPECT_NEAR(wide.rings[0].clearance_m, (0.0134 - 0.0135) / 2, 1e-12);  // narrowest at its butt edge
  EXPECT_TRUE(wide.gross_m3);
  EXPECT_FALSE(wide.net_m3);
  const BondVolume thin = VolumeOf({bore, Straight(0.0115), 0, 0.1, {{0.02, 0.01, 0.011}}});
  EXPECT_FALSE(thin.rings[0].fits);
  EXPECT_LT(thin.rings[0].volume_m3, 0);
  EXPECT_TRUE(VolumeOf({bore, Straight(0.0115), 0, 0.1, {{0, 0.01, 0.013}}}).rings[0].fits) << "a tie";
}

// Against thin slices (midpoint rule), on random profiles with shoulders.
TEST(BondVolume, RandomProfilesAgainstSlices) {
  std::mt19937 engine(11);
  const auto between = [&](double a, double b) { return std::uniform_real_distribution<double>(a, b)(engine); };
  const auto profile = [&](double low, double high) {
    std::vector<Profile::Knot> knots;
    for (const double x : {0.0, 0.03, 0.07, 0.1}) {
      knots.push_back({x, between(low, high)});
      if (between(0, 1) < 0.4) knots.push_back({x, between(low, high)});
    }
    return Profile(knots);
  };
  for (int i = 0; i < 200; ++i) {
    const BondGap gap{
        profile(0.0145, 0.016), profile(0.012, 0.0135), between(0, 0.04), between(0.05, 0.1), {{0.041, 0.008, 0.0141}}};
    const BondVolume volume = VolumeOf(gap);
    double sum = 0, moment = 0;
    constexpr int kSlices = 20000;
    const double step = (gap.to_m - gap.from_m) / kSlices;
    for (int k = 0; k < kSlices; ++k) {
      const double z = gap.from_m + (k + 0.5) * step;
      const double inner = z >= 0.041 && z < 0.049 ? 0.0141 : gap.inner.At(z);
      const double slice = kPi / 4 * (gap.bore.At(z) * gap.bore.At(z) - inner * inner) * step;
      sum += slice;
      moment += slice * z;
    }
    ASSERT_TRUE(volume.net_m3);
    EXPECT_NEAR(*volume.net_m3 / sum, 1, 2e-4) << i;
    EXPECT_NEAR(*volume.center_m, moment / sum, 1e-5) << i;
  }
}

// Cylinders of the triangle, one inside the other: at radius r the fillet is b (1 - (r - d/2) / h) long.
TEST(Fillet, AgainstShells) {
  const Fillet fillet{0.0125, 0.0015, 0.004};
  double outside = 0, inside = 0;
  constexpr int kShells = 100000;
  for (int i = 0; i < kShells; ++i) {
    const double up = (i + 0.5) / kShells;
    const double shell = 2 * kPi * fillet.axial_m * (1 - up) * fillet.radial_m / kShells;
    outside += shell * (fillet.diameter_m / 2 + up * fillet.radial_m);
    inside += shell * (fillet.diameter_m / 2 - up * fillet.radial_m);
  }
  EXPECT_NEAR(FilletOutside(fillet) / outside, 1, 1e-8);
  EXPECT_NEAR(FilletInside(fillet) / inside, 1, 1e-8);
}

}  // namespace
}  // namespace withy
