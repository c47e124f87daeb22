// Cuts as they are marked: whole sixteenths or millimetres, down and never past. Worked by hand from 1 in = 25.4 mm, so
// 1/16 in = 1.5875 mm.
#include "bench_cuts.h"

#include <gtest/gtest.h>

#include <random>

#include "bench_text.h"

namespace withy {
namespace {

v1::CutPlan PlanOf(const std::vector<double>& totals_mm, double done_mm = 0) {
  v1::CutPlan plan;
  plan.set_cut_done_mm(done_mm);
  double before = done_mm;
  for (double total : totals_mm) {
    v1::StagedCut& stage = *plan.add_stages();
    stage.set_take_mm(total - before);
    stage.set_total_mm(total);
    stage.set_leave_mm(2209.8 - total);
    before = total;
  }
  return plan;
}

constexpr CutLimits kUsual = {.largest_mm = 76.2, .last_mm = 6.35};  // 3 in and 1/4 in
constexpr CutLimits kNoLimits = {.largest_mm = 1e6, .last_mm = 1e6};

// 72.8 mm are 45.86 sixteenths: 45, that is 2 13/16 in = 71.4375 mm. 145.6 mm are 91.72: 91, 46 more = 2 7/8 in. 152 mm
// are 95.75: 95, 4 more = 1/4 in; 95 sixteenths are 150.8125 mm, less than the 152 mm planned.
TEST(BenchCuts, RoundsTheTotalDownToSixteenths) {
  const auto cuts = BenchCuts(PlanOf({72.8, 145.6, 152}), LengthUnits::kInch, kUsual);
  ASSERT_EQ(cuts.size(), 3u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 71.4375);
  EXPECT_DOUBLE_EQ(cuts[1].cut.take_mm(), 73.025);
  EXPECT_DOUBLE_EQ(cuts[2].cut.take_mm(), 6.35);
  EXPECT_DOUBLE_EQ(cuts[2].cut.total_mm(), 150.8125);
  EXPECT_DOUBLE_EQ(cuts[2].cut.leave_mm(), 2209.8 - 150.8125);
}

TEST(BenchCuts, RoundsTheTotalDownToWholeMillimetres) {
  const auto cuts = BenchCuts(PlanOf({72.8, 145.6, 152}), LengthUnits::kMm, kUsual);
  ASSERT_EQ(cuts.size(), 3u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 72);
  EXPECT_DOUBLE_EQ(cuts[1].cut.take_mm(), 73);
  EXPECT_DOUBLE_EQ(cuts[2].cut.take_mm(), 6);  // 152 - 145 = 7 would be more than 1/4 in = 6.35 mm
}

// 3 in and 1/4 in are whole steps, whatever the last bit of their millimetres is.
TEST(BenchCuts, WhatIsAWholeStepStays) {
  const auto cuts = BenchCuts(PlanOf({3 * 25.4, 6 * 25.4, 6.25 * 25.4}), LengthUnits::kInch, kUsual);
  ASSERT_EQ(cuts.size(), 3u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 76.2);
  EXPECT_DOUBLE_EQ(cuts[1].cut.take_mm(), 76.2);
  EXPECT_DOUBLE_EQ(cuts[2].cut.take_mm(), 6.35);
}

// Counted from what is off, not from the blank as supplied: the tape lies at the face there now is.
TEST(BenchCuts, StepsBeginAtThePresentFace) {
  const auto cuts = BenchCuts(PlanOf({77.1}, 75.3), LengthUnits::kInch, kNoLimits);  // 1.8 mm: one sixteenth
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 1.5875);
  EXPECT_DOUBLE_EQ(cuts[0].cut.total_mm(), 75.3 + 1.5875);
}

// What rounding left over must not make a stage larger than the largest cut: 79.9 mm are 50.3 sixteenths, and the
// second stage would be 100.66 - 50 = 50; with 78 mm as the largest, 49 each.
TEST(BenchCuts, NoStageIsLargerThanTheLargestCut) {
  const auto cuts = BenchCuts(PlanOf({79.9, 159.8}), LengthUnits::kInch, {.largest_mm = 78, .last_mm = 78});
  ASSERT_EQ(cuts.size(), 2u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 49 * 1.5875);
  EXPECT_DOUBLE_EQ(cuts[1].cut.take_mm(), 49 * 1.5875);
}

TEST(BenchCuts, LessThanAStepIsNoCut) {
  EXPECT_TRUE(BenchCuts(PlanOf({1.5}), LengthUnits::kInch, kNoLimits).empty());
  EXPECT_TRUE(BenchCuts(PlanOf({0.9}), LengthUnits::kMm, kNoLimits).empty());
}

// 40.2, 40.9 and 90 mm are 40, 40 and 90 steps: the second stage is left out, the cuts are those of the first and third.
TEST(BenchCuts, NamesTheStageOfEachCut) {
  const auto cuts = BenchCuts(PlanOf({40.2, 40.9, 90}), LengthUnits::kMm, {.largest_mm = 76.2, .last_mm = 76.2});
  ASSERT_EQ(cuts.size(), 2u);
  EXPECT_EQ(cuts[0].stage, 0);
  EXPECT_EQ(cuts[1].stage, 2);
}

// The last stage, 70.2 to 70.8, is less than a step and left out: the one before it, 70 mm, would be the last. It is
// parted: 64 and then 6, the whole millimetres of 1/4 in.
TEST(BenchCuts, TheLastCutThatIsShownIsSmall) {
  const auto cuts = BenchCuts(PlanOf({70.2, 70.8}), LengthUnits::kMm, kUsual);
  ASSERT_EQ(cuts.size(), 2u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 64);
  EXPECT_DOUBLE_EQ(cuts[1].cut.take_mm(), 6);
  EXPECT_DOUBLE_EQ(cuts[1].cut.total_mm(), 70);
  EXPECT_EQ(cuts[1].stage, 0);
}

// 1/4 in and 3 in where the shop says nothing; a saw that takes 8 mm takes no less at last.
TEST(CutLimitsOf, TheShopsOrTheUsual) {
  v1::Design design;
  EXPECT_DOUBLE_EQ(CutLimitsOf(design).largest_mm, 76.2);
  EXPECT_DOUBLE_EQ(CutLimitsOf(design).last_mm, 6.35);
  design.mutable_shop()->mutable_last_cut()->set_mm(4);
  design.mutable_shop()->mutable_largest_single_cut()->set_inch(2);
  EXPECT_DOUBLE_EQ(CutLimitsOf(design).largest_mm, 50.8);
  EXPECT_DOUBLE_EQ(CutLimitsOf(design).last_mm, 4);
  design.mutable_shop()->mutable_saw_kerf()->set_mm(8);
  EXPECT_DOUBLE_EQ(CutLimitsOf(design).last_mm, 8);
}

// The law: 2400 mm uncut, 1.5 mm a mm. Cut 71.4375 instead of 72.8 mm: 1.3625 mm less off, 2.04375 mm longer. In the
// handle the blank is 1.3625 mm longer and the rod 2.04375 mm: 0.68125 mm less deep.
TEST(BenchCuts, WhatIsExpectedFollowsTheRoundedCut) {
  v1::CutPlan plan = PlanOf({72.8});
  v1::LengthAtCut& start = *plan.add_lengths();
  start.set_overall_mm(2400);
  start.set_shorter_per_mm(1.5);
  v1::StagedCut& stage = *plan.mutable_stages(0);
  stage.set_expect_mm(2280.8);
  stage.set_expect_from_mm(2278);
  stage.set_expect_to_mm(2284);
  stage.set_overall_mm(2290.8);
  stage.set_depth_mark_mm(180);
  const v1::StagedCut cut = BenchCuts(plan, LengthUnits::kInch, kNoLimits).front().cut;
  EXPECT_NEAR(cut.expect_mm(), 2280.8 + 2.04375, 1e-9);
  EXPECT_NEAR(cut.expect_from_mm(), 2278 + 2.04375, 1e-9);
  EXPECT_NEAR(cut.expect_to_mm(), 2284 + 2.04375, 1e-9);
  EXPECT_NEAR(cut.overall_mm(), 2290.8 + 2.04375, 1e-9);
  EXPECT_NEAR(cut.depth_mark_mm(), 180 - 0.68125, 1e-9);
}

// 2300 - 1.5 x 10 = 2285 just before 60 mm; there it falls to 2250 and goes on with slope 1.
TEST(OverallAt, FollowsTheLawAcrossAJump) {
  v1::CutPlan plan;
  v1::LengthAtCut& before = *plan.add_lengths();
  before.set_cut_mm(50);
  before.set_overall_mm(2300);
  before.set_shorter_per_mm(1.5);
  v1::LengthAtCut& jump = *plan.add_lengths();
  jump.set_cut_mm(60);
  jump.set_overall_mm(2250);
  jump.set_shorter_per_mm(1);
  EXPECT_FALSE(OverallAt(plan, 49));
  EXPECT_DOUBLE_EQ(*OverallAt(plan, 59), 2286.5);
  EXPECT_DOUBLE_EQ(*OverallAt(plan, 60), 2250);
  EXPECT_DOUBLE_EQ(*OverallAt(plan, 64), 2246);
}

// Whatever is planned: never past, never more in one cut, and less than a step short of what could be had.
TEST(BenchCuts, NeverPast) {
  std::mt19937 random(5);
  for (int i = 0; i < 2000; ++i) {
    const double done = static_cast<double>(random() % 1000) / 7;
    std::vector<double> totals;
    double total = done;
    for (unsigned stage = 0; stage < 1 + random() % 5; ++stage) {
      totals.push_back(total += 0.2 + static_cast<double>(random() % 7600) / 100);
    }
    for (LengthUnits units : {LengthUnits::kInch, LengthUnits::kMm}) {
      const double step = units == LengthUnits::kInch ? 1.5875 : 1;
      const auto cuts = BenchCuts(PlanOf(totals, done), units, {76.2, 76.2});
      double off = done;
      for (const auto& [cut, stage] : cuts) {
        EXPECT_LE(cut.total_mm(), totals[static_cast<std::size_t>(stage)] + 1e-5);
        off += cut.take_mm();
        EXPECT_NEAR(cut.total_mm(), off, 1e-9);
        EXPECT_LE(cut.take_mm(), 76.2 + 1e-6);
        EXPECT_NEAR(std::remainder(cut.take_mm(), step), 0, 1e-6);
      }
      EXPECT_LE(off, totals.back() + 1e-5);
      EXPECT_GT(off, totals.back() - step - 1e-9);
    }
  }
}

TEST(BenchCuts, ManyAreNotAllTold) {
  EXPECT_EQ(ShownCuts(0), 0u);
  EXPECT_EQ(ShownCuts(5), 5u);
  EXPECT_EQ(ShownCuts(11), 3u);
  EXPECT_EQ(MoreCuts(8), "8 more, planned anew after each dry fit");
}

TEST(BenchText, SaysInchesFirstAndMillimetresBeside) {
  EXPECT_EQ(BenchText(76.2, LengthUnits::kInch), "3\" (76.2 mm)");
  EXPECT_EQ(BenchText(76.2, LengthUnits::kMm), "76.2 mm");
  EXPECT_EQ(BenchText(std::nullopt, LengthUnits::kInch), "-");
  EXPECT_EQ(BenchText(2209.8, 6.4, LengthUnits::kInch), "87\" ± 1/4\" (2209.8 ± 6.4 mm)");
  EXPECT_EQ(BenchText(2209.8, 0.5, LengthUnits::kInch), "87\" ± 0.02\" (2209.8 ± 0.5 mm)");
}

// 2308.2 mm are 90.874 in, 14.0 sixteenths less a hair over 90 in: down to 90 13/16. 2311 mm are 90.984 in: up to 91.
TEST(BenchText, ABandIsRoundedOutward) {
  EXPECT_EQ(BenchRange(2308.2, 2311, LengthUnits::kInch), "90 13/16\" to 91\" (2308 to 2311 mm)");
  EXPECT_EQ(BenchRange(2308.2, 2311, LengthUnits::kMm), "2308 to 2311 mm");
  EXPECT_EQ(BenchRange(2311.4, 2311.4, LengthUnits::kInch), "91\" to 91\" (2311 to 2312 mm)");  // 91 in exactly
}

TEST(BenchText, TypesWhatACommandLineReads) {
  EXPECT_EQ(TypedLength(76.2, LengthUnits::kInch), "3 in");
  EXPECT_EQ(TypedLength(2.6875 * 25.4, LengthUnits::kInch), "2 11/16 in");
  EXPECT_EQ(TypedLength(72, LengthUnits::kMm), "72 mm");
}

// 70 mm that are sure and not yet the last cut of all stay whole.
TEST(BenchCuts, TheLastSureCutMayBeLarge) {
  const auto cuts = BenchCuts(PlanOf({70}), LengthUnits::kMm, kUsual);
  ASSERT_EQ(cuts.size(), 1u);
  EXPECT_DOUBLE_EQ(cuts[0].cut.take_mm(), 70);
}

// 160 mm in two cuts of a saw that takes 100 mm are 200 mm.
TEST(NoCutBecause, SaysWhyNoneIsPlanned) {
  v1::Design design;
  v1::CutPlan plan = PlanOf({});
  plan.set_outcome("reached");
  plan.set_cut_for_target_mm(0.01);
  EXPECT_EQ(NoCutBecause(plan, design), "what is to come off is off");
  plan.set_cut_for_target_mm(160);
  EXPECT_TRUE(CutIsMissing(plan));
  EXPECT_EQ(NoCutBecause(plan, design), "160.0 mm are to come off, and any cut might be too much");
  design.mutable_shop()->mutable_saw_kerf()->set_mm(100);
  EXPECT_EQ(NoCutBecause(plan, design), "160.0 mm are to come off, and the saw takes 100.0 mm at each cut");
  plan.set_outcome("does not enter");
  EXPECT_TRUE(CutIsMissing(plan));
  EXPECT_NE(NoCutBecause(plan, design).find("thicker than the mouth"), std::string::npos);
}

}  // namespace
}  // namespace withy
