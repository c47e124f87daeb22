// Play at the mouth and where the tip points, worked by hand.
#include "withy/fit/mouth_play.h"

#include <string>

#include "gtest/gtest.h"
#include "support/rod_of.h"
#include "withy/fit/fit.h"

namespace withy::testing {
namespace {

// 0.05 mm of room on a side at the butt, 0.5 mm at the mouth 200 mm on, the tip 1.9 m ahead of the mouth:
// 0.5 + (0.5 + 0.05) x 1900 / 200 = 5.725 mm.
TEST(TipOffAxis, LeansOnMouthAndButt) {
  EXPECT_NEAR(TipOffAxis({{0.10, 0.00005}, {0.30, 0.0005}}, 2.2) * 1000, 5.725, 1e-9);
}

// No play at the butt and p across the mouth, d in: p / 2 (1 + ahead / d) = 0.25 x (1 + 1900 / 200).
TEST(TipOffAxis, PivotsOnATightButt) {
  EXPECT_NEAR(TipOffAxis({{0.10, 0}, {0.30, 0.00025}}, 2.2) * 1000, 0.25 * 10.5, 1e-9);
}

// A neck in between that is tighter than the line from the butt to the mouth decides: at 250 mm 0.1 mm to a side. With
// the butt: 0.1 + 0.15 x 1950 / 150 = 2.05 mm.
TEST(TipOffAxis, ATightPlaceInBetweenCounts) {
  EXPECT_NEAR(TipOffAxis({{0.10, 0.00005}, {0.25, 0.0001}, {0.30, 0.0005}}, 2.2) * 1000, 2.05, 1e-9);
}

// Blank 12 mm, thinner by 0.005 per mm, in a bore of 12.1 mm at 100 of 200 mm and 15 mm at the mouth: 3.5 mm of play
// (see tests/faulty/fit/off-axis.txtpb).
TEST(MouthPlay, OfARod) {
  const Rod rod = RodOf(R"(
    blank { sections { id: "b" length { mm: 2000 } taper { reading { diameter_plus_minus { mm: 0.02 } }
      stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
    handle { parts { id: "m" kind: "one_piece_handle" length { mm: 200 } bore_known: "profile"
      bore { at { mm: 0 } diameter { mm: 11.9 } } bore { at { mm: 100 } diameter { mm: 12.1 } }
      bore { at { mm: 200 } diameter { mm: 15 } } } })");
  const auto play = MouthPlayOf(rod);
  ASSERT_TRUE(play);
  EXPECT_NEAR(play->play_m * 1000, 3.5, 1e-9);
  EXPECT_NEAR(play->ahead_m * 1000, 1900, 1e-6);
  EXPECT_NEAR(*play->off_axis_m * 1000, 35.95, 1e-6);
}

// The same with an arbor of 14.6 mm from 190 to 200 mm, where the bore is 14.71 and 15 mm: 0.055 and 0.2 mm to a side. The
// blank stands at 100 mm with 0.05 mm to a side and leans on the arbor's rear edge: 0.055 + 0.105 x 1910 / 90 mm at the
// tip. An arbor behind the butt face is on no blank.
TEST(MouthPlay, OfARodWithArbors) {
  const Rod rod = RodOf(R"(
    blank { sections { id: "b" length { mm: 2000 } taper { reading { diameter_plus_minus { mm: 0.02 } }
      stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
    handle { parts { id: "m" kind: "one_piece_handle" length { mm: 200 } bore_known: "profile"
      bore { at { mm: 0 } diameter { mm: 11.9 } } bore { at { mm: 100 } diameter { mm: 12.1 } }
      bore { at { mm: 200 } diameter { mm: 15 } } } })");
  EXPECT_NEAR(*MouthPlayOf(rod, {{0.190, 0.200, 0.0146}})->off_axis_with_arbors_m * 1000, 0.055 + 0.105 * 1910 / 90,
              1e-6);
  EXPECT_NEAR(*MouthPlayOf(rod, {{0.190, 0.200, 0.0146}})->off_axis_m * 1000, 35.95, 1e-6);
  EXPECT_FALSE(MouthPlayOf(rod, {{0.020, 0.040, 0.0110}})->off_axis_with_arbors_m);
}

// A butt of 13 mm on a shoulder from 10 to 14 mm, d before the mouth of a 14 in handle: half a millimetre to a side there,
// and at the mouth half of 14 - (13 - 11 d / 81) mm. Wherever the shoulder is, inches are no round metres, and with a cap
// behind the handle they are added up once more. At 7 in: 0.975 + 1.475 x 74 / 7 = 16.6 mm.
TEST(MouthPlay, OfAButtOnAShoulder) {
  for (const double cap_in : {0.0, 0.7}) {
    for (const double step_in : {3.0, 4.0, 5.0, 6.0, 6.7, 7.0, 8.3, 11.0}) {
      const auto inch = [](double value) { return " { inch: " + std::to_string(value) + " } "; };
      const std::string cap =
          cap_in > 0 ? "parts { id: \"cap\" kind: \"butt_cap\" length" + inch(cap_in) + "}" : std::string();
      const Rod rod = RodOf(R"(blank { sections { id: "b" length { inch: 81 } taper {
        reading { diameter_plus_minus { mm: 0.02 } } stations { at { mm: 0 } outer { mm: 13 } }
        stations { at { inch: 81 } outer { mm: 2 } } } } } handle { )" +
                            cap + R"(parts { id: "m" kind: "one_piece_handle" length { inch: 14 } bore_known: "profile"
        bore { at { mm: 0 } diameter { mm: 10 } } bore { at)" +
                            inch(step_in) + "diameter { mm: 10 } } bore { at" + inch(step_in) +
                            "diameter { mm: 14 } } bore { at { inch: 14 } diameter { mm: 14 } } } }");
      const auto play = MouthPlayOf(rod);
      ASSERT_TRUE(play && play->off_axis_m) << step_in;
      const double depth_in = 14 - step_in, half_mm = (14 - (13 - 11 * depth_in / 81)) / 2;
      EXPECT_NEAR(*play->off_axis_m * 1000, half_mm + (half_mm + 0.5) * (81 - depth_in) / depth_in, 1e-3) << step_in;
      const FitAnswers answers = ComputeFit(rod, SectionsAnswers());
      ASSERT_TRUE(answers.parts.back().clearance_m) << step_in;
      EXPECT_NEAR(*answers.parts.back().clearance_m * 1000, 1, 1e-3) << step_in;
    }
  }
}

}  // namespace
}  // namespace withy::testing
