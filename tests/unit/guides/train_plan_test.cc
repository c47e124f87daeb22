// From a rod to its placement problem: loads, limits, what stays. All numbers worked by hand in the comments.
#include "withy/guides/train_plan.h"

#include <cmath>
#include <numbers>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_replace.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/rod_of.h"
#include "withy/guides/train_stock.h"
#include "withy/sections/sections.h"

namespace withy::testing {
namespace {

using ::testing::HasSubstr;

constexpr double kDegree = std::numbers::pi / 180;

// A blank of 2000 mm, the same all along, flush with the butt end; a grip to 300 mm and a nut on it that travels to 325
// mm; the reel's foot at 150 mm. Ring of the tip-top 2 mm beyond the blank, its tube 10 mm long: what it takes begins
// at 1990 mm.
constexpr char kRod[] = R"(
  intent { technique: "TECHNIQUE" holding_point_from_butt { mm: 200 }
    reel { foot_center_from_butt { mm: 150 } side: SIDE spool_axis_height { mm: 60 } spool_lip_from_foot_center { mm: 0 } }
    INTENT }
  LOADS
  blank { sections { id: "s" length { mm: 2000 } modulus { gpa: 100 } density { g_per_cm3: 1.5 }
    taper { stations { at { mm: 0 } outer { mm: 8 } wall { mm: 1 } }
            stations { at { mm: 2000 } outer { mm: 8 } wall { mm: 1 } } } } }
  handle { blank_butt_from_butt { mm: 0 }
    parts { id: "grip" kind: "grip" place { from_butt { mm: 0 } } length { mm: 300 } }
    parts { id: "nut" kind: "locking_nut" on: "grip" loose: true place { from_butt { mm: 290 } } length { mm: 20 } travel { mm: 15 } }
    PARTS }
  guide_models { id: "two" form: "double_foot" ring_outer { mm: 12 } ring_height { mm: 16 } foot_length { mm: 15 } mass { g: 2 } }
  guide_models { id: "one" form: "single_foot" ring_outer { mm: 6 } ring_height { mm: 8 } foot_length { mm: 9 } mass { g: 0.3 } }
  guide_models { id: "light" form: "single_foot" ring_outer { mm: 6 } ring_height { mm: 8 } foot_length { mm: 9 } mass { g: 0.2 } }
  guides { id: "g1" model: "two" from_tip { mm: 1102 } }
  guides { id: "g2" model: "one" from_tip { mm: 602 } G2 }
  guides { id: "g3" model: "one" from_tip { mm: 202 } }
  tip_top { id: "tip" tube_length { mm: 10 } ring_outer { mm: 6 } ring_height { mm: 5 } end_beyond_tube { mm: 5 }
    ring_center_beyond_tube { mm: 2 } }
  wraps { id: "w" kind: "guide" on: ["g1", "g2"] beyond_foot { mm: 6 } }
  LOG)";

struct Written {
  std::string technique = "casting", side = "ABOVE", intent, loads = R"(load_cases { id: "lift" lifted { g: 500 } })",
              parts, g2, log;
};

Rod RodWith(const Written& written) {
  return RodOf(absl::StrReplaceAll(kRod, {{"TECHNIQUE", written.technique},
                                          {"SIDE", written.side},
                                          {"INTENT", written.intent},
                                          {"LOADS", written.loads},
                                          {"PARTS", written.parts},
                                          {"G2", written.g2},
                                          {"LOG", written.log}}));
}

BendingAnswers BendingOfRod(const Rod& rod) {
  Inputs inputs = rod.inputs;
  return ComputeBending(rod, ComputeSections(rod, inputs), {}, inputs);
}

// The butt guide 400 to 900 mm from the reel's foot.
TrainWishes Wishes() {
  TrainWishes wishes;
  wishes.practice.butt_guide_from_reel = UsualRange{0.4, 0.9, "this test", ""};
  return wishes;
}

TrainPlan PlanFor(const Written& written) {
  const Rod rod = RodWith(written);
  const absl::StatusOr<TrainPlan> plan = PlanTrain(rod, BendingOfRod(rod), Wishes());
  if (plan.ok()) return *plan;
  ADD_FAILURE() << plan.status();
  return {};
}

std::string WhyNot(const Written& written) {
  const Rod rod = RodWith(written);
  return std::string(PlanTrain(rod, BendingOfRod(rod), Wishes()).status().message());
}

// Six of 20 to 20.5 N in one direction differ by less than a tenth: of these the heaviest. The seventh pulls 2 N, 30
// degrees further: two are left, and none is added.
TEST(TrainPlan, OfManyLikeLoadsOneIsTakenAndTheLightOneKept) {
  std::string loads;
  for (const char* n : {"20.0", "20.1", "20.2", "20.3", "20.4", "20.5"}) {
    absl::StrAppend(&loads, "load_cases { id: \"l", n, "\" tension { n: ", n, " } line_angle { deg: 90 } }\n");
  }
  absl::StrAppend(&loads, "load_cases { id: \"light\" tension { n: 2 } line_angle { deg: 120 } }");
  const TrainPlan plan = PlanFor({.loads = loads});
  ASSERT_EQ(plan.problem.cases.size(), 2u);
  EXPECT_DOUBLE_EQ(plan.problem.cases[0].tension_n, 20.5);
  EXPECT_DOUBLE_EQ(plan.problem.cases[1].tension_n, 2);
}

TEST(TrainPlan, RefusedLoadsAreNotReplacedByAssumedOnes) {
  for (const char* pull : {"n: -5", "n: 0", "n: 1e300"}) {
    const std::string why = WhyNot({.intent = "line { strength { n: 60 } }",
                                    .loads = absl::StrCat("load_cases { id: \"l\" tension { ", pull, " } }")});
    EXPECT_THAT(why, HasSubstr("load_cases[l]")) << pull;
  }
}

// The foot at 150 mm and the butt guide at most 900 mm from it: 1050 mm from the butt end.
TEST(TrainPlan, ARefusedLoadBesideOthersIsNamed) {
  const TrainPlan plan = PlanFor({.loads = R"(load_cases { id: "a" tension { n: 9 } } load_cases { id: "b" })"});
  EXPECT_THAT(plan.notes.front(), HasSubstr("load_cases[b]"));
}

TEST(TrainPlan, LoadsHeldAheadOfTheButtGuideAreLeftOut) {
  constexpr char kFar[] = "load_cases { id: \"far\" tension { n: 9 } clamp_from_butt { mm: 1900 } }";
  EXPECT_THAT(WhyNot({.loads = kFar}), HasSubstr("load_cases[far].clamp_from_butt"));
  const TrainPlan plan = PlanFor({.loads = absl::StrCat(kFar, "load_cases { id: \"lift\" tension { n: 4 } }")});
  for (const TrainLoad& load : plan.loads) EXPECT_LE(load.as_load_case.load_n->value, 4) << load.as_load_case.id;
}

TEST(TrainPlan, LinesBeyondHalfATurnAreNamed) {
  EXPECT_THAT(WhyNot({.loads = "load_cases { id: \"l\" tension { n: 9 } line_angle { deg: 200 } }"}),
              HasSubstr("load_cases[l].line_angle"));
}

TEST(TrainPlan, WhatIsTurnedAboutTheBlankIsSaid) {
  const TrainPlan plan = PlanFor({.g2 = "angle { deg: 90 }"});
  ASSERT_EQ(plan.problem.turned.size(), 3u);
  EXPECT_NEAR(plan.problem.turned[1], 90 * kDegree, 1e-12);
  EXPECT_THAT(plan.notes, ::testing::Contains(HasSubstr("does not roll")));
  EXPECT_THAT(PlanFor({}).notes, ::testing::Not(::testing::Contains(HasSubstr("does not roll"))));
}

// 500 g x 9.80665 m/s2 = 4.903325 N straight down, of a level butt 90 degrees; 0.22 and 0.55 of it 1.0787315
// and 2.69682875 N.
TEST(TrainLoads, OneLoadIsTheFullOneOfThree) {
  const TrainPlan plan = PlanFor({});
  ASSERT_EQ(plan.problem.cases.size(), 3u);
  const double pulls[] = {1.0787315, 2.69682875, 4.903325};
  const char* ids[] = {"light", "middle", "lift"};
  for (int c = 0; c < 3; ++c) {
    EXPECT_EQ(plan.problem.cases[c].id, ids[c]);
    EXPECT_NEAR(plan.problem.cases[c].tension_n, pulls[c], 1e-9);
    EXPECT_NEAR(plan.problem.cases[c].phi, 90 * kDegree, 1e-12);
    EXPECT_EQ(plan.problem.cases[c].weight, 1);
    EXPECT_EQ(plan.problem.cases[c].clearance_m, 0.0);  // rings on top
  }
  EXPECT_THAT(plan.notes.front(), HasSubstr("0.22 and 0.55"));
}

// The lift of 4.9 N is no full load of a line of 60 N: a third of it, 20 N square to the butt, is; 0.22 and 0.55 of that
// are 4.4 and 11 N. A blank that is rated for 45 N counts instead.
TEST(TrainLoads, AThirdOfTheLineIsTheFullLoadWhereItIsMore) {
  Rod rod = RodWith({});
  rod.order.line_strength_n = 60;
  auto plan = PlanTrain(rod, BendingOfRod(rod), Wishes());
  ASSERT_TRUE(plan.ok()) << plan.status();
  ASSERT_EQ(plan->problem.cases.size(), 4u);
  const double pulls[] = {4.4, 11, 4.903325, 20};
  for (int c = 0; c < 4; ++c) EXPECT_NEAR(plan->problem.cases[c].tension_n, pulls[c], 1e-9) << c;
  EXPECT_THAT(plan->notes.front(), HasSubstr("20.0 N"));
  rod.blank.rated_line_max_n = 45;
  plan = PlanTrain(rod, BendingOfRod(rod), Wishes());
  ASSERT_TRUE(plan.ok()) << plan.status();
  EXPECT_NEAR(plan->problem.cases[3].tension_n, 15, 1e-9);
  rod.order.line_strength_n = 16;
  plan = PlanTrain(rod, BendingOfRod(rod), Wishes());
  ASSERT_TRUE(plan.ok()) << plan.status();
  EXPECT_EQ(plan->problem.cases.size(), 3u);
}

TEST(TrainLoads, TwoThatDifferAreEnough) {
  const TrainPlan plan = PlanFor({.loads = R"(load_cases { id: "a" tension { n: 2 } line_angle { deg: 90 } }
    load_cases { id: "b" tension { n: 2.1 } line_angle { deg: 120 } } load_cases { id: "c" lifted { g: 900 } at_tip: true })"});
  ASSERT_EQ(plan.problem.cases.size(), 2u);
  EXPECT_NEAR(plan.problem.cases[1].phi, 120 * kDegree, 1e-12);
}

TEST(TrainLoads, TwoThatAreOneAreFilledUp) {
  const TrainPlan plan = PlanFor({.loads = R"(load_cases { id: "a" tension { n: 2 } line_angle { deg: 90 } }
    load_cases { id: "b" tension { n: 2.1 } line_angle { deg: 92 } })"});
  EXPECT_EQ(plan.problem.cases.size(), 4u);
}

// 0.06 of 4.903325 N = 0.2941995 N along the butt; no clearance asked for below.
TEST(TrainLoads, AFixedSpoolGetsAStraightPull) {
  const TrainPlan plan = PlanFor({.technique = "spinning", .side = "BELOW"});
  ASSERT_EQ(plan.problem.cases.size(), 4u);
  const PlacementCase& straight = plan.problem.cases.back();
  EXPECT_EQ(straight.id, "straight");
  EXPECT_NEAR(straight.tension_n, 0.2941995, 1e-9);
  EXPECT_EQ(straight.phi, 0);
  EXPECT_EQ(straight.weight, 3);
  EXPECT_FALSE(straight.clearance_m);
  EXPECT_EQ(plan.problem.side, -1);
}

TEST(TrainLoads, NoLoadCaseTakesAThirdOfTheLine) {
  const TrainPlan plan = PlanFor({.intent = "line { strength { n: 30 } }", .loads = ""});
  ASSERT_EQ(plan.problem.cases.size(), 3u);
  EXPECT_NEAR(plan.problem.cases.back().tension_n, 10, 1e-12);
  EXPECT_NEAR(plan.problem.cases.back().phi, 90 * kDegree, 1e-12);
}

TEST(TrainLoads, NothingKnownIsSaid) {
  EXPECT_THAT(WhyNot({.loads = ""}), HasSubstr("load_cases"));
}

// Counted from where the rod is held, 200 mm: the ring of the tip-top at 2002 - 200 = 1802 mm. Thread 6 mm beyond feet
// of 15 and 9 mm; g3 has no wrap: 4 mm. g1 to g2 (its foot to the butt): 21 + 15 = 36; g2 to g3: 0 + 13; g3 to the
// tip-top: 0 + 12, the tube from 1990 to the ring at 2002.
TEST(TrainLimits, FeetAndThreadKeepGuidesApart) {
  const TrainPlan plan = PlanFor({});
  EXPECT_NEAR(plan.clamp_m, 0.2, 1e-12);
  EXPECT_NEAR(plan.problem.beam.length(), 1.802, 1e-9);
  ASSERT_EQ(plan.problem.least_gaps_m.size(), 3u);
  EXPECT_NEAR(plan.problem.least_gaps_m[0], 0.036, 1e-9);
  EXPECT_NEAR(plan.problem.least_gaps_m[1], 0.013, 1e-9);
  EXPECT_NEAR(plan.problem.least_gaps_m[2], 0.012, 1e-9);
  EXPECT_NEAR(plan.problem.last_high_m, 1.79, 1e-9);
  // Half of 8 mm and the ring's height; where they stand: 2002 - 1102 - 200 = 700 mm from the hold.
  EXPECT_NEAR(plan.problem.offsets_m[0], 0.020, 1e-12);
  EXPECT_NEAR(plan.problem.offsets_m[2], 0.012, 1e-12);
  EXPECT_NEAR(plan.problem.tip_offset_m, 0.005, 1e-12);
  EXPECT_NEAR(plan.problem.reel_s_m, -0.05, 1e-12);
}

// Usual: 150 + 400 = 550 to 1050 mm from the butt end, 350 to 850 mm from the hold.
TEST(TrainLimits, TheButtGuideStandsWhereItUsuallyDoes) {
  const TrainPlan plan = PlanFor({});
  EXPECT_NEAR(plan.problem.first_low_m, 0.35, 1e-9);
  EXPECT_NEAR(plan.problem.first_high_m, 0.85, 1e-9);
  EXPECT_EQ(plan.first_low_by, Obstacle::kReel);
}

// A fore grip to 700 mm: foot and thread of g1, 21 mm, ahead of it: 721 - 200 = 521 mm. The nut's way to 325 mm is
// behind that.
TEST(TrainLimits, AHandleFurtherForwardPushesItOn) {
  const TrainPlan plan =
      PlanFor({.parts = R"(parts { id: "fore" kind: "grip" place { from_butt { mm: 400 } } length { mm: 300 } })"});
  EXPECT_NEAR(plan.problem.first_low_m, 0.521, 1e-9);
  EXPECT_EQ(plan.first_low_by, Obstacle::kHandle);
}

// A keeper from 600 to 620 mm: no ring of g1 from 600 - 21 to 620 + 21, none of g2 (foot to the butt) from 600 to 620 +
// 15; less the hold at 200 mm.
TEST(TrainLimits, AHookKeeperTakesItsStretch) {
  const TrainPlan plan =
      PlanFor({.parts = R"(parts { id: "k" kind: "hook_keeper" place { from_butt { mm: 600 } } length { mm: 20 } })"});
  EXPECT_NEAR(plan.problem.first_low_m, 0.35, 1e-9);  // it is no end of the handle
  ASSERT_EQ(plan.problem.closed[0].size(), 1u);
  EXPECT_NEAR(plan.problem.closed[0][0].from_m, 0.379, 1e-9);
  EXPECT_NEAR(plan.problem.closed[0][0].to_m, 0.441, 1e-9);
  EXPECT_NEAR(plan.problem.closed[1][0].from_m, 0.400, 1e-9);
  EXPECT_NEAR(plan.problem.closed[1][0].to_m, 0.435, 1e-9);
  EXPECT_EQ(plan.taken[0].by, Obstacle::kKeeper);
}

// 2002 - 602 - 200 = 1200 mm from the hold.
TEST(TrainLimits, WhatIsLockedOrWrappedStays) {
  const TrainPlan open = PlanFor({});
  EXPECT_FALSE(open.problem.locked_m[1]);
  const TrainPlan locked = PlanFor({.g2 = "locked: true"});
  EXPECT_NEAR(locked.problem.locked_m[1].value(), 1.2, 1e-9);
  EXPECT_FALSE(locked.problem.locked_m[0]);
  const TrainPlan wrapped = PlanFor({.log = R"(log { id: "e1" done { step: "wrapped" what: "w" } })"});
  EXPECT_TRUE(wrapped.problem.locked_m[0] && wrapped.problem.locked_m[1]);  // w is on both
  EXPECT_FALSE(wrapped.problem.locked_m[2]);
  const TrainPlan placed = PlanFor({.log = R"(log { id: "e1" placed { what: "g3" place { from_tip { mm: 302 } } } })"});
  EXPECT_NEAR(placed.problem.locked_m[2].value(), 1.5, 1e-9);
}

// 602 and 598 mm from the tip-top: 4 mm, and no two rings come nearer than 10 mm.
TEST(TrainLimits, LockedTooCloseIsNotPossible) {
  const Written written{
      .g2 = R"(locked: true } guides { id: "beside" model: "one" from_tip { mm: 598 } locked: true)"};
  const TrainProposal proposal = ProposeTrain(RodWith(written), PlanFor(written), {.grid_m = 0.002});
  EXPECT_FALSE(proposal.feasible);
  EXPECT_THAT(proposal.why, HasSubstr("'g2' stays 4.0 mm from 'beside'"));
}

TEST(TrainLimits, WhatIsNotKnownIsSaid) {
  EXPECT_THAT(WhyNot({.technique = "surf", .side = "UNSPECIFIED"}), HasSubstr("side"));
  const Rod rod = RodOf(R"(blank { sections { id: "s" length { mm: 2000 } } })");
  EXPECT_THAT(std::string(PlanTrain(rod, BendingOfRod(rod), {}).status().message()), HasSubstr("guides"));
}

// y(s) / y(L) = (3 L s^2 - s^3) / (2 L^3) of a uniform cantilever (beam tables): at half its length 5/16.
// Compared like with like: each layout with the offsets of its own places, and not those of the proposal's. Blank from
// 8 mm at the butt to 3 mm at 2000 mm; ring of the butt guide 16 mm above its surface, of the others 8 mm.
TEST(TrainProposal, LayoutsComparedHaveTheOffsetsOfTheirPlaces) {
  const Rod rod =
      RodOf(absl::StrReplaceAll(kRod, {{"TECHNIQUE", "casting"},
                                       {"SIDE", "BELOW"},
                                       {"INTENT", ""},
                                       {"LOADS", R"(load_cases { id: "lift" lifted { g: 50 } })"},
                                       {"PARTS", ""},
                                       {"G2", ""},
                                       {"LOG", ""},
                                       {"at { mm: 2000 } outer { mm: 8 }", "at { mm: 2000 } outer { mm: 3 }"}}));
  const absl::StatusOr<TrainPlan> plan = PlanTrain(rod, BendingOfRod(rod), Wishes());
  ASSERT_TRUE(plan.ok()) << plan.status();
  const TrainProposal proposal = ProposeTrain(rod, *plan, {.grid_m = 0.002});
  ASSERT_TRUE(proposal.proposed && proposal.other_rule && proposal.one_fewer && proposal.one_more) << proposal.why;
  for (const auto& layout : {proposal.proposed, proposal.other_rule, proposal.one_fewer, proposal.one_more}) {
    const std::vector<double>& s_m = layout->layout.s_m;
    ASSERT_EQ(layout->offsets_m.size(), s_m.size());
    for (std::size_t k = 0; k < s_m.size(); ++k) {
      const double blank_mm = 8 - 5 * (plan->clamp_m + s_m[k]) / 2;
      EXPECT_NEAR(layout->offsets_m[k] * 1000, (k == 0 ? 16 : 8) + blank_mm / 2, 1e-6) << s_m.size() << ", " << k;
    }
  }
}

TEST(TrainStock, ShapeOfAUniformBeamUnderATipLoad) {
  Beam beam;
  beam.pieces.push_back({0, 2, {30}, {0.05}});
  const std::vector<double> shape = TipLoadShape(beam, {0, 1, 2});
  EXPECT_NEAR(shape[0], 0, 1e-12);
  EXPECT_NEAR(shape[1], 5.0 / 16, 1e-5);
  EXPECT_NEAR(shape[2], 1, 1e-12);
}

StockModel ModelOf(const Rod& rod, const std::string& guide, double ring_mm, double mass_g, int count) {
  StockModel model;
  model.guide = *rod.FindGuide(guide);
  model.guide.model = absl::StrCat("ring", ring_mm, "-", mass_g);
  model.guide.ring_outer->value = Length::Mm(ring_mm);
  model.guide.mass->value = Mass::Grams(mass_g);
  model.count = count;
  return model;
}

// Of two models alike but for their mass the lighter one goes on; where there are too few of it, next to the tip. Rings
// do not grow towards the tip: the one large one comes first.
TEST(TrainStock, LeastMassNearTheTip) {
  const Rod rod = RodWith({});
  const TrainPlan plan = PlanFor({});
  const auto chosen = ChooseFromStock(
      rod, plan, {}, {ModelOf(rod, "g3", 6, 0.3, 3), ModelOf(rod, "g3", 6, 0.2, 1), ModelOf(rod, "g1", 12, 2, 1)});
  ASSERT_TRUE(chosen.ok()) << chosen.status();
  EXPECT_EQ(chosen->guides[2].model, "ring6-0.2");
  EXPECT_EQ(chosen->guides[1].model, "ring6-0.3");
  EXPECT_GE(chosen->guides[0].ring_outer->value.mm(), chosen->guides[1].ring_outer->value.mm());
  EXPECT_EQ(chosen->guides[2].id, "g3");
}

TEST(TrainStock, TooFewOrNotDescribedIsSaid) {
  const Rod rod = RodWith({});
  const TrainPlan plan = PlanFor({});
  EXPECT_FALSE(ChooseFromStock(rod, plan, {}, {ModelOf(rod, "g3", 6, 0.3, 2)}).ok());
  StockModel bare = ModelOf(rod, "g3", 6, 0.3, 3);
  bare.guide.ring_height.reset();
  EXPECT_THAT(std::string(ChooseFromStock(rod, plan, {}, {bare}).status().message()), HasSubstr("ring_height"));
}

}  // namespace
}  // namespace withy::testing
