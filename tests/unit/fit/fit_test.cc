// Lengths, clearances and pieces, worked by hand.
#include "withy/fit/fit.h"

#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

FitAnswers FitOfRod(const Rod& rod) {
  Inputs inputs = rod.inputs;
  return ComputeFit(rod, ComputeSections(rod, inputs));
}

// Blank 2000 mm, 12 to 2 mm: 0.005 mm per mm.
const char kRod[] = R"(
intent { overall_length { mm: 2010 } }
blank { sections { id: "s" length { mm: 2000 plus_minus: 1 } taper { reading { diameter_plus_minus { mm: 0.02 } }
  stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
tip_top { tube_bore { in64: 5.5 } end_beyond_tube { mm: 4 } }
)";

std::string WithHandleText(const std::string& parts) {
  return std::string(kRod) + "handle { parts { id: \"cap\" kind: \"butt_cap\" length { mm: 5 } }" + parts + "}";
}

Rod WithHandle(const std::string& parts) { return RodOf(WithHandleText(parts)); }

// 5 + 2000 + 4 = 2009: 1 mm short.
TEST(ComputeFit, OverallLengthAndTarget) {
  const FitAnswers answers = FitOfRod(WithHandle(""));
  EXPECT_NEAR(answers.overall_m->value() * 1000, 2009, 1e-9);
  EXPECT_NEAR(answers.overall_m->plus_minus() * 1000, 1, 1e-9);
  EXPECT_NEAR(answers.short_of_target_m->value() * 1000, 1, 1e-9);
  EXPECT_EQ(*answers.pieces, 1);
  EXPECT_NEAR(answers.packed_length_m->value() * 1000, 2009, 1e-9);
}

// A tube of 5.5/64 in is 2.1828 mm wide (5.5 x 25.4 / 64); the tip is 2 mm.
TEST(ComputeFit, TipTube) {
  const FitAnswers answers = FitOfRod(WithHandle(""));
  EXPECT_NEAR(answers.tip_tube_clearance_m->value() * 1000, 0.1828, 5e-5);
  EXPECT_NEAR(answers.tip_tube_clearance_m->plus_minus() * 1000, 0.02, 1e-9);
}

// A tube 20 mm long ends where the blank is 2 + 20 x 0.005 = 2.1 mm thick: 2.1828 - 2.1 = 0.0828.
TEST(ComputeFit, TipTubeIsJudgedAtItsMouth) {
  std::string rod = WithHandleText("");
  rod.replace(rod.find("end_beyond_tube"), 0, "tube_length { mm: 20 } ");
  const FitAnswers answers = FitOfRod(RodOf(rod));
  EXPECT_NEAR(answers.tip_tube_clearance_m->value() * 1000, 0.0828, 5e-5);
  EXPECT_NEAR(answers.tip_tube_clearance_m->plus_minus() * 1000, 0.02, 1e-9);
}

// A grip from 5 to 205 mm over the blank's first 200 mm: 12 mm thick at its butt, 11 at its tip side. A straight bore of
// 12.3 is closest at the butt; a bore that narrows from 13 to 11.2 is closest at the tip side.
TEST(ComputeFit, ClearanceIsTheLeastAlongThePart) {
  const FitAnswers answers = FitOfRod(WithHandle(R"(
    parts { id: "straight" length { mm: 200 } bore { at { mm: 0 } diameter { mm: 12.3 } } }
    parts { id: "narrowing" length { mm: 200 } place { from_butt { mm: 5 } }
      bore { at { mm: 0 } diameter { mm: 13 } } bore { at { mm: 200 } diameter { mm: 11.2 } } }
    parts { id: "tight" length { mm: 200 } place { from_butt { mm: 5 } } bore { at { mm: 0 } diameter { mm: 11.5 } } })"));
  EXPECT_NEAR(*answers.parts[1].blank_at_start_m * 1000, 12, 1e-9);
  EXPECT_NEAR(*answers.parts[1].blank_at_tip_side_m * 1000, 11, 1e-9);
  EXPECT_NEAR(*answers.parts[1].clearance_m * 1000, 0.3, 1e-9);
  EXPECT_NEAR(*answers.parts[1].clearance_at_m * 1000, 5, 1e-9);
  EXPECT_NEAR(*answers.parts[2].clearance_m * 1000, 0.2, 1e-9);
  EXPECT_NEAR(*answers.parts[2].clearance_at_m * 1000, 205, 1e-9);
  EXPECT_NEAR(*answers.parts[3].clearance_m * 1000, -0.5, 1e-9);
  EXPECT_NEAR(*answers.parts[3].most_stretch, 12 / 11.5, 1e-12);
}

// A shoulder at 100 mm: 20 mm behind, 12.4 in front. The blank's butt face (at 105 of the rod, 12 mm) stands on it, and
// only the bore in front of it counts.
TEST(ComputeFit, AButtFaceMayRestOnAShoulder) {
  const Rod rod = RodOf(std::string(kRod) + R"(handle { blank_butt_from_butt { mm: 100 }
    parts { id: "module" kind: "one_piece_handle" length { mm: 300 }
      bore { at { mm: 0 } diameter { mm: 10 } } bore { at { mm: 100 } diameter { mm: 10 } }
      bore { at { mm: 100 } diameter { mm: 12.4 } } bore { at { mm: 300 } diameter { mm: 12.4 } } } })");
  const FitAnswers answers = FitOfRod(rod);
  EXPECT_NEAR(*answers.parts[0].clearance_m * 1000, 0.4, 1e-9);
  EXPECT_FALSE(answers.parts[0].blank_at_start_m);  // no blank there
}

// Plugs of 12.5 and 12.1 went 40 and 160 mm into the mouth of a part of 200 mm: the bore is 12.1 at 40 and 12.5 at 160
// from its butt, and nothing is known outside. Blank there: 11.8 and 11.2.
TEST(ComputeFit, BetweenPlugsOnly) {
  const FitAnswers answers = FitOfRod(WithHandle(R"(
    parts { id: "deep" length { mm: 200 } plugs { plug { mm: 12.5 } depth { mm: 40 } }
      plugs { plug { mm: 12.1 } depth { mm: 160 } } })"));
  EXPECT_NEAR(*answers.parts[1].clearance_m * 1000, 0.3, 1e-9);
  EXPECT_NEAR(*answers.parts[1].clearance_at_m * 1000, 45, 1e-9);
}

TEST(ComputeFit, OfAMouthOnlyTheMouthIsJudged) {
  const FitAnswers answers = FitOfRod(WithHandle(R"(
    parts { id: "m" length { mm: 200 } bore_known: "mouth" bore { at { mm: 200 } diameter { mm: 11.1 } } })"));
  EXPECT_NEAR(*answers.parts[1].clearance_m * 1000, 0.1, 1e-9);
}

TEST(ComputeFit, Arbors) {
  const FitAnswers answers = FitOfRod(WithHandle(R"(
    parts { id: "seat" length { mm: 100 } bore { at { mm: 0 } diameter { mm: 14 } }
      arbors { id: "a" at { mm: 20 } length { mm: 10 } } })"));
  EXPECT_NEAR(*answers.parts[1].arbors[0].blank_m * 1000, 12 - 0.005 * 20, 1e-9);  // its thicker end
  EXPECT_NEAR(*answers.parts[1].arbors[0].bore_m * 1000, 14, 1e-9);
}

// Two sections of 1000 mm with a spigot that stands 60 mm out of the lower one; cap 5 mm: 1065 against 1004.
TEST(ComputeFit, TheLongestPiece) {
  const Rod rod = RodOf(R"(
    blank { sections { id: "a" length { mm: 1000 } } sections { id: "b" length { mm: 1000 } }
      joints { kind: "spigot" lower: "a" upper: "b" gap { mm: 3 } spigot { fixed_in: "a" standing_out { mm: 60 } } } }
    handle { parts { id: "cap" kind: "butt_cap" length { mm: 5 } } }
    tip_top { end_beyond_tube { mm: 4 } })");
  const FitAnswers answers = FitOfRod(rod);
  EXPECT_EQ(*answers.pieces, 2);
  EXPECT_NEAR(answers.packed_length_m->value() * 1000, 1065, 1e-9);
  EXPECT_NEAR(answers.overall_m->value() * 1000, 5 + 2003 + 4, 1e-9);
}

TEST(ComputeFit, WhatIsUnknownSaysWhatToMeasure) {
  const FitAnswers answers = FitOfRod(RodOf(R"(
    blank { sections { id: "s" length { mm: 2000 } } } tip_top { tube_bore { mm: 2 } })"));
  EXPECT_FALSE(answers.overall_m);
  ASSERT_FALSE(answers.unknowns.empty());
  EXPECT_EQ(answers.unknowns[0].figure, "fit.overall_length_mm");
  EXPECT_NE(answers.unknowns[0].measure.find("end_beyond_tube"), std::string::npos);
}

}  // namespace
}  // namespace withy::testing
