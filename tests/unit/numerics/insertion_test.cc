// Hand-worked contacts. All numbers are millimetres: the tests scale to metres, the unit of the ties.
#include "withy/numerics/insertion.h"

#include <gtest/gtest.h>

#include <optional>
#include <vector>

namespace withy {
namespace {

using Touch = Insertion::Touch;

Profile Scaled(std::vector<Profile::Knot> knots_mm) {
  for (auto& knot : knots_mm) knot = {knot.x / 1000, knot.y / 1000};
  return Profile(std::move(knots_mm));
}

Insertion Of(std::vector<Profile::Knot> bore_mm, std::vector<Profile::Knot> shaft_mm, double clearance_mm = 0,
             double stop_mm = 0) {
  return Insertion({Scaled(std::move(bore_mm)), Scaled(std::move(shaft_mm)), clearance_mm / 1000, stop_mm / 1000});
}

// Bore 10 mm at the rear to 16 mm at the mouth over 300 mm: it narrows by 0.02 per mm. Blank 15 mm at the butt, thinner
// by 0.005 per mm over 2000 mm. The butt edge touches where the bore is 15 mm: z = (15 - 10) / 0.02 = 250. After a cut
// of 40 the butt is 14.8 mm: z = 240. Each mm of cut lets it 0.005 / 0.02 = 0.25 mm deeper, so the length falls by 1.25
// mm. A blank thicker by x stops 1 / 0.02 = 50 x earlier.
TEST(Insertion, ConeInCone) {
  const Insertion insertion = Of({{0, 10}, {300, 16}}, {{0, 15}, {2000, 5}});
  EXPECT_NEAR(insertion.RestAt(0), 0.250, 1e-12);
  EXPECT_NEAR(insertion.LengthAt(0), 2.250, 1e-12);
  const auto state = insertion.At(0.040);
  EXPECT_NEAR(state.rest, 0.240, 1e-12);
  EXPECT_NEAR(state.length, 0.240 + 1.960, 1e-12);
  EXPECT_NEAR(state.depth, 0.060, 1e-12);
  EXPECT_TRUE(state.enters);
  EXPECT_NEAR(state.slope_before.value(), -1.25, 1e-10);
  EXPECT_NEAR(state.slope_after, -1.25, 1e-10);
  EXPECT_EQ(state.jump, 0);
  ASSERT_EQ(state.contacts.size(), 1u);
  EXPECT_EQ(state.contacts[0].touch, Touch::kTaper);
  EXPECT_NEAR(state.contacts[0].z_lo, 0.240, 1e-12);
  EXPECT_NEAR(state.contacts[0].s_lo, 0.040, 1e-12);
  EXPECT_NEAR(insertion.SensitivityAt(0.040).thicker, 50, 1e-8);
  EXPECT_NEAR(insertion.SensitivityAt(0.040).thinner, 50, 1e-8);
  // 2200 = 2250 - 1.25 c: c = 40.
  EXPECT_NEAR(insertion.LeastCut(2.200).value(), 0.040, 1e-11);
  EXPECT_FALSE(insertion.At(0).slope_before);
}

// The clearance is that of both sides together: 0.2 mm of it stop the same blank 0.2 / 0.02 = 10 mm earlier.
TEST(Insertion, ClearanceIsOnTheDiameter) {
  const Insertion insertion = Of({{0, 10}, {300, 16}}, {{0, 15}, {2000, 5}}, 0.2);
  EXPECT_NEAR(insertion.RestAt(0), 0.260, 1e-12);
  EXPECT_NEAR(insertion.Thicker(0.0001).RestAt(0), 0.265, 1e-12);
}

// A shoulder at 100: 12 mm behind it, 16 mm ahead. The butt, 14 mm and thinner by 0.005 per mm, stands on it until it
// measures 12 mm, after (14 - 12) / 0.005 = 400 mm. At that cut it passes and goes to the rear end at once.
TEST(Insertion, ButtOnAStep) {
  const Insertion insertion = Of({{0, 12}, {100, 12}, {100, 16}, {250, 16}}, {{0, 14}, {2000, 4}});
  const auto on = insertion.At(0.150);
  EXPECT_NEAR(on.rest, 0.100, 1e-12);
  EXPECT_NEAR(on.slope_before.value(), -1, 1e-12);
  EXPECT_NEAR(on.slope_after, -1, 1e-12);
  ASSERT_EQ(on.contacts.size(), 1u);
  EXPECT_EQ(on.contacts[0].touch, Touch::kStep);
  EXPECT_EQ(insertion.SensitivityAt(0.150).thicker, 0);

  const auto passing = insertion.At(0.400);
  EXPECT_NEAR(passing.rest, 0, 1e-12);
  EXPECT_NEAR(passing.jump, 0.100, 1e-12);
  EXPECT_NEAR(insertion.LengthBefore(0.400), 1.700, 1e-12);  // 100 + 2000 - 400
  EXPECT_NEAR(passing.length, 1.600, 1e-12);                 // the lower value belongs to the jump
  ASSERT_EQ(passing.contacts.size(), 1u);
  EXPECT_EQ(passing.contacts[0].touch, Touch::kStop);
  EXPECT_NEAR(insertion.LeastCut(1.650).value(), 0.400, 1e-12);  // no cut gives 1650
  // At 390 the butt is 12.05 mm: 0.05 mm too thick. A blank thinner by that passes and jumps by 100 mm.
  EXPECT_NEAR(insertion.LargestJump(0.390, -0.0001, 0.0001), 0.100, 1e-9);
  EXPECT_EQ(insertion.LargestJump(0.390, -0.00004, 0.0001), 0);
}

// A bulge of 13 mm at s = 200 is held where the bore has 13 mm, z = 150: the butt face is 200 - c behind that, and the
// length does not change with the cut: 150 + 2000 - 200.
TEST(Insertion, FlankAheadOfTheButtCarries) {
  const Insertion insertion = Of({{0, 10}, {300, 16}}, {{0, 6}, {150, 6}, {200, 13}, {250, 6}, {2000, 4}}, 0, 0);
  const auto state = insertion.At(0.060);
  EXPECT_NEAR(state.length, 1.950, 1e-12);
  EXPECT_NEAR(state.rest, 0.010, 1e-12);
  EXPECT_EQ(state.slope_before.value(), 0);
  EXPECT_EQ(state.slope_after, 0);
  ASSERT_EQ(state.contacts.size(), 1u);
  EXPECT_EQ(state.contacts[0].touch, Touch::kTaper);
  EXPECT_NEAR(state.contacts[0].z_lo, 0.150, 1e-12);
  EXPECT_NEAR(state.contacts[0].s_lo, 0.200, 1e-12);
}

// The same taper in both: 0.02 per mm from s = 0 to 100 and in the bore. Blank 12 to 14 mm, so it lies from the bore's
// 12 mm, z = 100, to its 14 mm, z = 200, in one contact, though the bore has a knot between.
TEST(Insertion, ParallelFacesTouchOverAnInterval) {
  const Insertion insertion = Of({{0, 10}, {150, 13}, {300, 16}}, {{0, 12}, {100, 14}, {2000, 4}});
  const auto state = insertion.At(0.030);
  EXPECT_NEAR(state.rest, 0.130, 1e-12);
  ASSERT_EQ(state.contacts.size(), 1u);
  EXPECT_NEAR(state.contacts[0].z_lo, 0.130, 1e-12);
  EXPECT_NEAR(state.contacts[0].z_hi, 0.200, 1e-12);
  EXPECT_NEAR(state.contacts[0].s_lo, 0.030, 1e-12);
  EXPECT_NEAR(state.contacts[0].s_hi, 0.100, 1e-12);
}

// A lip of 12 mm at the mouth, 290 to 300, before a cavity of 16 mm: the 13 mm butt stands on the mouth though there is
// room behind. Cut to 12 mm, after 1 / 0.005 = 200 mm, it goes through to the stop at 20.
TEST(Insertion, NothingJumpsPastAnObstruction) {
  const Insertion insertion = Of({{0, 16}, {290, 16}, {290, 12}, {300, 12}}, {{0, 13}, {2000, 3}}, 0, 20);
  const auto state = insertion.At(0);
  EXPECT_NEAR(state.rest, 0.300, 1e-12);
  EXPECT_FALSE(state.enters);
  ASSERT_EQ(state.contacts.size(), 1u);
  EXPECT_EQ(state.contacts[0].touch, Touch::kStep);
  EXPECT_NEAR(insertion.RestAt(0.200), 0.020, 1e-12);
  EXPECT_NEAR(insertion.At(0.200).jump, 0.280, 1e-12);
}

// A touch that does not block is not a contact: 12 mm in 12 mm all along slides to the stop.
TEST(Insertion, ATieFits) {
  const Insertion insertion = Of({{0, 12}, {300, 12}}, {{0, 12}, {2000, 12}}, 0, 50);
  const auto state = insertion.At(0.100);
  EXPECT_EQ(state.rest, 0.050);
  ASSERT_EQ(state.contacts.size(), 1u);
  EXPECT_EQ(state.contacts[0].touch, Touch::kStop);
  EXPECT_NEAR(insertion.Thicker(1e-6).RestAt(0.100), 0.300, 1e-12);  // and a micrometre more does not
}

// An arbor built on the shaft, 14 mm from s = 50 to 80 with square ends, in a bore that has 14 mm at z = 200: its rear
// edge is held there, so the face is at 150 less what is cut. Within the arbor the cut face itself is held, -1 per mm;
// past it the bare 8 mm go to the stop.
TEST(Insertion, JumpsOfTheShaft) {
  const Insertion insertion = Of({{0, 10}, {300, 16}}, {{0, 8}, {50, 8}, {50, 14}, {80, 14}, {80, 8}, {1000, 8}}, 0, 0);
  EXPECT_NEAR(insertion.RestAt(0.020), 0.170, 1e-12);
  EXPECT_EQ(insertion.At(0.020).slope_after, 0);
  EXPECT_NEAR(insertion.RestAt(0.060), 0.200, 1e-12);
  EXPECT_NEAR(insertion.At(0.060).slope_after, -1, 1e-12);
  EXPECT_EQ(insertion.RestAt(0.080), 0);
  EXPECT_NEAR(insertion.At(0.080).jump, 0.200, 1e-12);
}

// Knots at one place but for a hair are a jump, not a slope of a million: the shoulder of ButtOnAStep.
TEST(Insertion, KnotsThatTieMakeAJump) {
  const Insertion insertion =
      Of({{0, 12}, {100, 12}, {100 + 1e-10, 16}, {250, 16}}, {{0, 14}, {1e-300, 14}, {2000, 4}});
  const auto state = insertion.At(0.150);
  EXPECT_NEAR(state.rest, 0.100, 1e-9);
  EXPECT_EQ(state.slope_after, -1);
  ASSERT_EQ(state.contacts.size(), 1u);
  EXPECT_EQ(state.contacts[0].touch, Touch::kStep);
}

// A length that no cut below the shaft's own length gives.
TEST(Insertion, NoCutGivesLessThanTheStop) {
  const Insertion insertion = Of({{0, 12}, {300, 12}}, {{0, 10}, {2000, 10}}, 0, 50);
  EXPECT_NEAR(insertion.LeastCut(0.060).value(), 1.990, 1e-12);
  EXPECT_FALSE(insertion.LeastCut(0.049));
  EXPECT_EQ(insertion.LeastCut(2.050).value(), 0);
  EXPECT_EQ(insertion.LeastCut(9).value(), 0);
}

// Common practice, no source: an 87 in blank in a one-piece handle that adds 6 in while the butt stands on its step,
// cut twice 3 in, comes out at 87 in; a handle with 1 in less overlap, so that it adds 7 in, brings an 81 in blank to
// 88 in.
TEST(Insertion, OnePieceHandles) {
  constexpr double kInch = 25.4;
  const auto handle = [&](double added, double blank) {
    return Of({{0, 8}, {added * kInch, 8}, {added * kInch, 15}, {14 * kInch, 15}}, {{0, 14}, {blank * kInch, 2}});
  };
  const double inch_m = kInch / 1000;
  EXPECT_NEAR(handle(6, 87).LengthAt(0) / inch_m, 93, 1e-9);
  EXPECT_NEAR(handle(6, 87).LengthAt(3 * inch_m) / inch_m, 90, 1e-9);
  EXPECT_NEAR(handle(6, 87).LengthAt(6 * inch_m) / inch_m, 87, 1e-9);
  EXPECT_NEAR(handle(6, 87).LeastCut(87 * inch_m).value() / inch_m, 6, 1e-9);
  EXPECT_NEAR(handle(7, 81).LengthAt(0) / inch_m, 88, 1e-9);
}

}  // namespace
}  // namespace withy
