// Winding checks, reaming and arbors against a blank of 12 mm that gets thinner by 0.005 per mm.
#include "gtest/gtest.h"
#include "support/rod_of.h"
#include "withy/fit/fit.h"

namespace withy::testing {
namespace {

FitAnswers FitWith(const std::string& parts, const std::string& more = "") {
  const Rod rod =
      RodOf(R"(blank { sections { id: "s" length { mm: 2000 } taper { reading { diameter_plus_minus { mm: 0.02 } }
      stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
    handle { blank_butt_from_butt { mm: 0 } )" +
            parts + "}" + more);
  Inputs inputs = rod.inputs;
  return ComputeFit(rod, ComputeSections(rod, inputs));
}

const char kCheckAt400[] =
    R"(parts { id: "c" kind: "winding_check" length { mm: 4 } place { from_butt { mm: 380 } } })";

// At 380 mm the blank is 12 - 1.9 = 10.1 mm. Every half millimetre: 10.5 goes on and leaves 0.4; 10.0 stops where the
// blank is 10 mm thick, at 400 mm, 20 mm ahead, and 0.1 mm would have to be reamed.
TEST(WindingCheck, FromEveryHalfMillimetre) {
  const FitAnswers answers = FitWith(kCheckAt400);
  ASSERT_EQ(answers.winding_checks.size(), 1u);
  const WindingCheckFit& fit = answers.winding_checks[0];
  EXPECT_NEAR(fit.blank_m * 1000, 10.1, 1e-9);
  EXPECT_NEAR(*fit.bore_m * 1000, 10.5, 1e-9);
  EXPECT_NEAR(*fit.next_bore_m * 1000, 10, 1e-9);
  EXPECT_NEAR(*fit.next_stops_ahead_m * 1000, 20, 1e-6);
  EXPECT_NEAR(*fit.ream_m * 1000, 0.1, 1e-9);
}

// A bore that equals the blank goes on; of what is in stock nothing else is near.
TEST(WindingCheck, FromStockATieGoesOn) {
  const FitAnswers answers =
      FitWith(kCheckAt400, "shop { winding_check_bores: [{ mm: 9.1 }, { mm: 10.1 }, { mm: 12 }] }");
  const WindingCheckFit& fit = answers.winding_checks[0];
  EXPECT_NEAR(*fit.bore_m * 1000, 10.1, 1e-9);
  EXPECT_NEAR(*fit.next_stops_ahead_m * 1000, 200, 1e-6);  // 9.1 mm thick at 580 mm
}

TEST(WindingCheck, NothingInStockIsWideEnough) {
  const FitAnswers answers = FitWith(kCheckAt400, "shop { winding_check_bores: [{ mm: 9 }, { mm: 10 }] }");
  EXPECT_FALSE(answers.winding_checks[0].bore_m);
  EXPECT_NEAR(*answers.winding_checks[0].next_bore_m * 1000, 10, 1e-9);
}

// 60 mm of grip: at 0, 25.4, 50.8 and 60 mm, to the blank and 0.3 mm (common practice, no source).
TEST(ReamTable, BothEndsAndEveryInch) {
  const FitAnswers answers = FitWith(R"(parts { id: "g" kind: "grip" length { mm: 60 } fitting { reamed: true }
      bore { at { mm: 0 } diameter { mm: 6 } } })");
  ASSERT_EQ(answers.reaming.size(), 1u);
  const auto& rows = answers.reaming[0].rows;
  ASSERT_EQ(rows.size(), 4u);
  EXPECT_NEAR(rows[0].ream_m * 1000, 12.3, 1e-9);
  EXPECT_NEAR(rows[1].at_m * 1000, 25.4, 1e-9);
  EXPECT_NEAR(rows[1].ream_m * 1000, 12 - 0.127 + 0.3, 1e-9);
  EXPECT_NEAR(rows[3].at_m * 1000, 60, 1e-9);
  EXPECT_NEAR(rows[3].ream_m * 1000, 12, 1e-9);
  EXPECT_NEAR(*rows[3].bore_m * 1000, 6, 1e-9);
}

std::string Handle(int length_mm, double bore_mm, int neck_mm) {
  return R"(parts { id: "h" kind: "one_piece_handle" length { mm: )" + std::to_string(length_mm) +
         R"( } bore_known: "profile" bore { at { mm: 0 } diameter { mm: )" + std::to_string(bore_mm) +
         R"( } } seat { foot_center { mm: 40 } thread_length { mm: 30 })" +
         (neck_mm > 0 ? " neck { mm: " + std::to_string(neck_mm) + " }" : "") + " } }";
}

int CountOf(const FitAnswers& answers, ArborFit::Place place) {
  int count = 0;
  for (const ArborFit& arbor : answers.parts[0].proposed) count += arbor.place == place;
  return count;
}

// Common practice, no source: on a straight bore under the screw thread three arbors, on a shorter one two.
TEST(ProposedArbors, ThreeOnAStraightBoreTwoOnAShorterOne) {
  EXPECT_EQ(CountOf(FitWith(Handle(100, 15, 0)), ArborFit::Place::kScrewThread), 3);
  EXPECT_EQ(CountOf(FitWith(Handle(60, 15, 0)), ArborFit::Place::kScrewThread), 2);
}

// A straight bore of 300 mm has them at 5, 144 and 283 mm; a foot at 250 mm, 70 mm long, and a screw thread of 30 mm ahead
// of it reach from 215 to 315 mm.
TEST(ProposedArbors, UnderTheScrewThreadOnlyWhereItIs) {
  const FitAnswers answers = FitWith(R"(parts { id: "h" kind: "one_piece_handle" length { mm: 300 } bore_known: "profile"
      bore { at { mm: 0 } diameter { mm: 15 } } seat { foot_center { mm: 250 } thread_length { mm: 30 } fixed_hood: BUTT } })");
  EXPECT_EQ(CountOf(answers, ArborFit::Place::kScrewThread), 1);
  EXPECT_EQ(CountOf(answers, ArborFit::Place::kStraight), 2);
}

// Common practice, no source: and one at the neck. Straight under the screw thread, then wider to the mouth.
TEST(ProposedArbors, OneAtTheNeck) {
  const FitAnswers answers =
      FitWith(R"(parts { id: "h" kind: "one_piece_handle" length { mm: 200 } bore_known: "profile"
      bore { at { mm: 0 } diameter { mm: 14 } } bore { at { mm: 90 } diameter { mm: 14 } }
      bore { at { mm: 200 } diameter { mm: 16 } } seat { foot_center { mm: 40 } thread_length { mm: 50 } neck { mm: 190 } } })");
  EXPECT_EQ(CountOf(answers, ArborFit::Place::kScrewThread), 3);
  EXPECT_EQ(CountOf(answers, ArborFit::Place::kNeck), 1);
}

// A gap of 0.5 mm all round is not loose.
TEST(ProposedArbors, NoneWhereTheBlankIsNotLoose) {
  EXPECT_TRUE(FitWith(Handle(100, 12.4, 0)).parts[0].proposed.empty());
}

// Bore 14, blank 11.9 under the arbor's butt edge at 20 mm; 0.1 mm left all round: (14 - 11.9 - 0.2) / (2 x 0.13)
// = 7.3, so seven turns, 11.9 + 14 x 0.13 = 13.72 mm, and (14 - 13.72) / 2 = 0.14 mm is left.
TEST(Arbors, TurnsOfTape) {
  const FitAnswers answers =
      FitWith(R"(parts { id: "seat" kind: "reel_seat" length { mm: 100 } bore { at { mm: 0 } diameter { mm: 14 } }
      arbors { id: "a" kind: "tape" at { mm: 20 } length { mm: 10 } tape_thickness { mm: 0.13 } } })");
  const ArborFit& arbor = answers.parts[0].arbors[0];
  EXPECT_EQ(*arbor.turns, 7);
  EXPECT_NEAR(*arbor.outer_m * 1000, 13.72, 1e-9);
  EXPECT_NEAR(*arbor.gap_m * 1000, 0.14, 1e-9);
}

// The way to its place against the contact solved with the arbor laid over the shaft: bore 14 behind a mouth of 12.6,
// the arbor of 13.5 from 40 to 70 mm; with it on, the blank's face stays 160 mm further out than without.
TEST(Arbors, OneThatBindsHoldsTheBlankOut) {
  const FitAnswers answers =
      FitWith(R"(parts { id: "m" kind: "one_piece_handle" length { mm: 200 } bore_known: "profile"
      bore { at { mm: 0 } diameter { mm: 14 } } bore { at { mm: 120 } diameter { mm: 14 } }
      bore { at { mm: 120 } diameter { mm: 12.6 } } bore { at { mm: 200 } diameter { mm: 12.6 } }
      arbors { id: "a" kind: "turned" at { mm: 40 } length { mm: 30 } outer { mm: 13.5 } } })");
  const Profile bore({{0, 14}, {120, 14}, {120, 12.6}, {200, 12.6}});
  const Profile with_arbor({{0, 12}, {40, 11.8}, {40, 13.5}, {70, 13.5}, {70, 11.65}, {2000, 2}});
  const double out = Insertion({.bore = bore, .shaft = with_arbor}).RestAt(0) -
                     Insertion({.bore = bore, .shaft = Profile({{0, 12}, {2000, 2}})}).RestAt(0);
  EXPECT_NEAR(*answers.parts[0].arbors[0].held_out_m * 1000, out, 1e-6);
  EXPECT_NEAR(out, 160, 1e-9);
}

}  // namespace
}  // namespace withy::testing
