#include "withy/fit/tape_arbor.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace withy {
namespace {

// 16 - 12 - 2 x 0.1 = 3.8 mm of room, 0.2 per turn: 19 turns, exactly.
TEST(TapeArbor, TurnsThatLeaveTheGap) {
  const auto arbor = TapeArborOf({.blank_m = 0.012, .bore_m = 0.016, .tape_m = 0.0001, .gap_m = 0.0001});
  EXPECT_EQ(arbor.turns, 19);
  EXPECT_NEAR(arbor.built_m, 0.0158, 1e-15);
  EXPECT_NEAR(arbor.gap_left_m, 0.0001, 1e-15);
  EXPECT_TRUE(arbor.gap_kept);
  EXPECT_NEAR(arbor.concentric_m, std::numbers::pi * 19 * 0.0139, 1e-15);
  const auto thicker = TapeArborOf({0.012, 0.016, 0.00011, 0.0001});  // 3.8 / 0.22 = 17.3
  EXPECT_EQ(thicker.turns, 17);
  EXPECT_NEAR(thicker.gap_left_m, (0.016 - 0.012 - 34 * 0.00011) / 2, 1e-15);
}

// The spiral walked in a hundred thousand chords.
TEST(TapeArbor, LengthIsTheArcOfTheSpiral) {
  const double blank = 0.009, tape = 0.0004;
  const auto arbor = TapeArborOf({blank, 0.0125, tape, 0.0001});
  ASSERT_EQ(arbor.turns, 4);
  constexpr int kChords = 100000;
  double length = 0, x = blank / 2, y = 0;
  for (int i = 1; i <= kChords; ++i) {
    const double theta = 2 * std::numbers::pi * arbor.turns * i / kChords;
    const double r = blank / 2 + tape * theta / (2 * std::numbers::pi);
    length += std::hypot(r * std::cos(theta) - x, r * std::sin(theta) - y);
    x = r * std::cos(theta), y = r * std::sin(theta);
  }
  EXPECT_NEAR(arbor.tape_length_m, length, 1e-9);
  EXPECT_GT(arbor.tape_length_m, arbor.concentric_m);
}

TEST(TapeArbor, NoRoomNoTurns) {
  const auto tight = TapeArborOf({0.012, 0.0121, 0.0001, 0.0001});  // 0.05 a side, 0.1 wanted
  EXPECT_EQ(tight.turns, 0);
  EXPECT_EQ(tight.tape_length_m, 0);
  EXPECT_NEAR(tight.gap_left_m, 0.00005, 1e-15);
  EXPECT_FALSE(tight.gap_kept);
  EXPECT_LT(TapeArborOf({0.012, 0.011, 0.0001, 0}).gap_left_m, 0);
  EXPECT_EQ(TapeArborOf({0.012, 0.016, 0, 0}).turns, 0);
  EXPECT_EQ(TapeArborOf({0.012, 0.016, 1e-300, 0}).turns, kMostTurns);
}

// Cone in cone: bore taper 0.02, blank taper 0.005, at rest at 240 after 40 mm of cut. At z = 270: s = 40 + 30 = 70,
// blank 15 - 0.35, bore 10 + 5.4.
TEST(TapeArbor, Station) {
  const Insertion insertion({.bore = Profile({{0, 0.010}, {0.3, 0.016}}), .shaft = Profile({{0, 0.015}, {2, 0.005}})});
  const auto station = StationAt(insertion, 0.04, 0.27);
  ASSERT_TRUE(station);
  EXPECT_NEAR(station->shaft_s_m, 0.07, 1e-12);
  EXPECT_NEAR(station->shaft_m, 0.01465, 1e-14);
  EXPECT_NEAR(station->bore_m, 0.0154, 1e-14);
  EXPECT_FALSE(StationAt(insertion, 0.04, 0.239));
  EXPECT_TRUE(StationAt(insertion, 0.04, 0.24));
  EXPECT_TRUE(StationAt(insertion, 0.04, 0.3));
  EXPECT_FALSE(StationAt(insertion, 0.04, 0.301));
}

// At a jump of the bore the side towards the mouth; at the mouth there is only the other one.
TEST(TapeArbor, StationAtAJump) {
  const Insertion insertion({.bore = Profile({{0, 0.012}, {0.1, 0.012}, {0.1, 0.016}, {0.25, 0.016}, {0.25, 0.02}}),
                             .shaft = Profile({{0, 0.01}, {2, 0.004}})});
  EXPECT_EQ(StationAt(insertion, 0, 0.1).value().bore_m, 0.016);
  EXPECT_EQ(StationAt(insertion, 0, 0.25).value().bore_m, 0.016);
}

}  // namespace
}  // namespace withy
