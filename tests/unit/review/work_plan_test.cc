// The order of work, by hand-made reports: measure, cut, build, ream, prepare, glue, cure, wrap, balance, pot.
#include "withy/review/work_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <sstream>

namespace withy {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

v1::Design DesignPotting(const std::string& when) {
  v1::Design design;
  v1::Part& module = *design.mutable_handle()->add_parts();
  module.set_id("module");
  module.mutable_weights()->set_potted(when);
  module.mutable_weights()->set_material("lead");
  return design;
}

void AddJoint(v1::Report& report, const std::string& what, bool potting) {
  v1::GluedJoint& joint = *report.mutable_bonding()->add_joints();
  joint.set_what(what);
  joint.set_potting(potting);
  joint.set_adhesive("rod-epoxy");
}

v1::MixedBatch& AddBatch(v1::Report& report, const std::string& what) {
  v1::MixedBatch& batch = *report.mutable_bonding()->add_batches();
  batch.set_adhesive("rod-epoxy");
  batch.add_joints(what);
  batch.set_mix_ml(6);
  batch.set_resin_ml(3);
  batch.set_hardener_ml(3);
  batch.set_resin_g(3.6);
  batch.set_hardener_g(3.3);
  batch.set_working_minutes(20);
  batch.set_pot_life_minutes(52);
  batch.set_at_celsius(21);
  batch.set_set_minutes(414);  // 6.9 h
  return batch;
}

v1::Report ExampleReport() {
  v1::Report report;
  v1::FitReport& fit = *report.mutable_fit();
  v1::CutPlan& plan = *fit.mutable_cut_plan();
  plan.set_host("module");
  plan.set_measure("dry fit the handle on the uncut blank");
  v1::StagedCut& cut = *plan.add_stages();
  cut.set_take_mm(76.2);
  cut.set_total_mm(76.2);
  plan.set_cut_planned_mm(76.2);
  v1::FittedPart& part = *fit.add_parts();
  part.set_id("module");
  v1::FittedArbor& arbor = *part.add_arbors();
  arbor.set_id("arbor-neck");
  arbor.set_outer_mm(13.5);
  arbor.set_turns(5);
  v1::ReamTable& table = *fit.add_reaming();
  table.set_part("fore-grip");
  table.add_rows()->set_ream_mm(9.08);
  table.add_rows()->set_ream_mm(8.6);
  AddJoint(report, "grip", false);
  AddJoint(report, "module", true);
  AddBatch(report, "grip");
  AddBatch(report, "module").set_potting(true);
  report.mutable_guides()->add_guides();
  v1::CounterweightPlan& weights = *report.mutable_balance()->mutable_counterweights();
  weights.set_part("module");
  weights.set_count(3);
  weights.set_stop_short_at_tip_g(3.2);
  return report;
}

std::vector<std::string> Kinds(const v1::WorkPlan& plan) {
  std::vector<std::string> kinds;
  for (const v1::WorkStep& step : plan.steps()) kinds.push_back(step.kind());
  return kinds;
}

const v1::WorkStep& StepOf(const v1::WorkPlan& plan, const std::string& kind) {
  return *std::find_if(plan.steps().begin(), plan.steps().end(),
                       [&](const v1::WorkStep& step) { return step.kind() == kind; });
}

TEST(WorkPlan, PotsLast) {
  EXPECT_THAT(
      Kinds(PlanWork(DesignPotting("last"), ExampleReport(), LengthUnits::kInch)),
      ElementsAre("measure", "cut", "build", "ream", "prepare", "glue", "cure", "wrap", "balance", "pot", "cure"));
}

// 10 1/2 in = 266.7 mm.
TEST(WorkPlan, SaysWhereTheKnifeEdgeStands) {
  v1::Report report = ExampleReport();
  report.mutable_balance()->set_aim("the holding point");
  report.mutable_balance()->set_aim_from_butt_mm(266.7);
  const v1::WorkPlan plan = PlanWork(DesignPotting("last"), report, LengthUnits::kInch);
  EXPECT_THAT(StepOf(plan, "balance").details(),
              ::testing::Contains(HasSubstr("knife edge at the holding point, 10 1/2\" (266.7 mm) from the butt end: stop")));
}

// In the order of the batches, which has what is potted first before the part goes on; nothing is left to balance.
TEST(WorkPlan, OrPotsFirst) {
  v1::Report report = ExampleReport();
  report.mutable_bonding()->mutable_batches()->SwapElements(0, 1);
  EXPECT_THAT(Kinds(PlanWork(DesignPotting("first"), report, LengthUnits::kInch)),
              ElementsAre("measure", "cut", "build", "ream", "prepare", "pot", "cure", "glue", "cure", "wrap"));
}

// 6 ml as it is cut now and 9.3 ml after the cuts to come: both are said, and nothing where no more is to come.
TEST(WorkPlan, SaysWhatTheMixIsAfterTheCutsToCome) {
  v1::Report report = ExampleReport();
  report.mutable_bonding()->mutable_batches(0)->set_mix_after_cuts_ml(9.3);
  const auto details = [&] {
    const v1::WorkPlan plan = PlanWork({}, report, LengthUnits::kMm);
    std::string all;
    for (const std::string& detail : StepOf(plan, "glue").details()) all += detail + "\n";
    return all;
  };
  EXPECT_THAT(details(), Not(HasSubstr("as it is cut now")));
  report.mutable_fit()->mutable_cut_plan()->set_cut_planned_mm(0);
  EXPECT_THAT(details(), HasSubstr("That is for the blank as it is cut now. After the cuts to come it is about 9.3 ml: "
                                   "print this again then.\n"));
  report.mutable_bonding()->mutable_batches(0)->clear_mix_after_cuts_ml();
  EXPECT_THAT(details(), HasSubstr("After the cuts to come it is another amount"));
  report.mutable_bonding()->mutable_batches(0)->set_mix_after_cuts_ml(6);
  EXPECT_THAT(details(), Not(HasSubstr("as it is cut now")));
  EXPECT_THAT(PlanText("rod.txtpb", {}, report, {}), HasSubstr("mix after cuts\n"));
}

TEST(WorkPlan, SaysWhatProposedArborsWouldTake) {
  v1::Report report = ExampleReport();
  report.mutable_bonding()->mutable_joints(0)->set_at("handle.parts[grip]");
  report.mutable_bonding()->mutable_joints(0)->set_proposed_arbors_ml(2.13);
  report.mutable_bonding()->mutable_batches(0)->add_joint_at("handle.parts[grip]");
  EXPECT_THAT(PlanText("rod.txtpb", {}, report, {}), HasSubstr("The arbors that are proposed would take 2.1 ml"));
}

// Ten minutes of work and five to do it in: the joint is in no batch, and not for want of mixing.
TEST(WorkPlan, SaysWhyAJointIsInNoBatch) {
  v1::Report report;
  AddJoint(report, "grip", false);
  v1::GluedJoint& joint = *report.mutable_bonding()->mutable_joints(0);
  joint.set_volume_ml(2);
  joint.set_working_minutes(10);
  EXPECT_THAT(PlanText("rod.txtpb", {}, report, {}), HasSubstr("grip with rod-epoxy: nothing is mixed."));
  joint.set_pot_life_minutes(5);
  const std::string text = PlanText("rod.txtpb", {}, report, {});
  EXPECT_THAT(text, HasSubstr("grip with rod-epoxy: do not mix it yet. The work takes 10 min and it can be\n"
                              "     worked for 5 min"));
  EXPECT_THAT(text, Not(HasSubstr("nothing is mixed")));
}

TEST(WorkPlan, NothingKnownIsNothingToDo) {
  EXPECT_THAT(Kinds(PlanWork({}, {}, LengthUnits::kMm)), IsEmpty());
}

TEST(WorkPlan, EachStepSaysWhatItCloses) {
  const v1::WorkPlan plan = PlanWork(DesignPotting("last"), ExampleReport(), LengthUnits::kInch);
  EXPECT_EQ(StepOf(plan, "measure").closes(), "");
  EXPECT_EQ(StepOf(plan, "cut").closes(), "what is off is off");
  EXPECT_EQ(StepOf(plan, "ream").closes(), "a bore does not get narrower");
  EXPECT_EQ(StepOf(plan, "pot").closes(), "the balance");
}

TEST(WorkPlan, MixesByVolumeAndByMass) {
  const v1::WorkPlan plan = PlanWork(DesignPotting("last"), ExampleReport(), LengthUnits::kInch);
  EXPECT_THAT(StepOf(plan, "glue").details(),
              ElementsAre("Mix 6.0 ml: 3.0 ml of resin to 3.0 ml of hardener, or by weight 3.60 g to 3.30 g.",
                          "The work takes 20 min; there are 52 min at 21 C.", "Wipe what comes out while it is soft."));
  EXPECT_THAT(StepOf(plan, "cure").details(0), HasSubstr("after 6.9 h at 21 C"));
}

// Each caution once, where it first matters.
TEST(WorkPlan, SaysACautionOnce) {
  const v1::WorkPlan plan = PlanWork(DesignPotting("last"), ExampleReport(), LengthUnits::kInch);
  std::vector<std::string> cautions;
  for (const v1::WorkStep& step : plan.steps()) {
    cautions.insert(cautions.end(), step.cautions().begin(), step.cautions().end());
  }
  std::vector<std::string> once = cautions;
  std::sort(once.begin(), once.end());
  once.erase(std::unique(once.begin(), once.end()), once.end());
  EXPECT_EQ(once.size(), cautions.size());
  for (const char* word : {"warranty", "waste side", "fibre harms", "epoxy", "Solvent", "Lead", "sets early"}) {
    EXPECT_THAT(cautions, ::testing::Contains(HasSubstr(word)));
  }
}

TEST(WorkPlan, WhatTheLogClosedIsDone) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->mutable_cut_plan()->clear_stages();
  v1::ClosedFact& cut = *report.add_closed();
  cut.set_kind("cut");
  cut.set_what("blank");
  cut.set_at_end("butt");
  cut.set_amount_mm(76.2);
  v1::ClosedFact& reamed = *report.add_closed();
  reamed.set_kind("reamed");
  reamed.set_what("fore-grip");
  v1::ClosedFact& potted = *report.add_closed();
  potted.set_kind("potted");
  potted.set_what("module");
  const v1::WorkPlan plan = PlanWork(DesignPotting("last"), report, LengthUnits::kInch);
  EXPECT_TRUE(StepOf(plan, "cut").done());
  EXPECT_EQ(StepOf(plan, "cut").title(), "blank: 3\" (76.2 mm) cut off the butt");
  EXPECT_TRUE(StepOf(plan, "ream").done());
  EXPECT_THAT(Kinds(plan), Not(::testing::Contains("balance")));
}

// What is glued needs no preparing; what is not does.
TEST(WorkPlan, PreparesWhatIsStillToBeGlued) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->clear_cut_plan();
  report.mutable_bonding()->mutable_joints(0)->set_done(true);
  report.mutable_bonding()->mutable_batches()->DeleteSubrange(0, 1);
  EXPECT_THAT(Kinds(PlanWork(DesignPotting("last"), report, LengthUnits::kInch)),
              ElementsAre("build", "ream", "glue", "wrap", "balance", "pot", "cure"));
  AddJoint(report, "cap", false);
  EXPECT_THAT(Kinds(PlanWork(DesignPotting("last"), report, LengthUnits::kInch)),
              ElementsAre("build", "ream", "glue", "prepare", "glue", "wrap", "balance", "pot", "cure"));
}

// The module is glued in with what needs no mixing; that its counterweights are potted from a batch is another joint.
TEST(WorkPlan, GluedAndPottedAreTwoJointsOfOnePart) {
  v1::Report report = ExampleReport();
  AddJoint(report, "module", false);
  report.mutable_bonding()->mutable_joints(2)->set_volume_ml(2);
  const v1::WorkPlan plan = PlanWork(DesignPotting("last"), report, LengthUnits::kInch);
  EXPECT_TRUE(std::any_of(plan.steps().begin(), plan.steps().end(),
                          [](const v1::WorkStep& step) { return step.title() == "Glue module"; }));
}

// 40.2, 40.9 and 40.9 + 6 mm: the second stage is less than a millimetre and left out, the third keeps its number.
TEST(WorkPlan, NamesTheStageOfEachCut) {
  v1::Report report = ExampleReport();
  v1::CutPlan& cut_plan = *report.mutable_fit()->mutable_cut_plan();
  cut_plan.clear_stages();
  for (const double total : {40.2, 40.9, 46.9}) cut_plan.add_stages()->set_total_mm(total);
  const v1::WorkPlan plan = PlanWork({}, report, LengthUnits::kMm);
  std::vector<std::string> figures;
  for (const v1::WorkStep& step : plan.steps()) {
    if (step.kind() == "cut") figures.push_back(step.figures());
  }
  EXPECT_THAT(figures, ElementsAre("fit.cut_plan.stages[0]", "fit.cut_plan.stages[2]"));
}

// A thickness worked out for the blank before its cuts is not built to.
TEST(WorkPlan, WhatFollowsFromTheLastCutWaitsForIt) {
  v1::Report report = ExampleReport();
  EXPECT_THAT(StepOf(PlanWork({}, report, LengthUnits::kMm), "build").details(), ElementsAre(HasSubstr("to 13.50 mm")));
  report.mutable_fit()->mutable_cut_plan()->set_cut_planned_mm(0);
  const v1::WorkPlan plan = PlanWork({}, report, LengthUnits::kMm);
  EXPECT_THAT(StepOf(plan, "build").details(), ElementsAre(HasSubstr("print this again")));
  EXPECT_THAT(StepOf(plan, "ream").details(), ElementsAre(HasSubstr("print this again")));
}

TEST(PlanText, NumbersTheStepsWithinEightyColumns) {
  const std::string text = PlanText("rod.txtpb", DesignPotting("last"), ExampleReport(), {.units = LengthUnits::kInch});
  EXPECT_THAT(text, HasSubstr("  1. Measure what the length rests on\n     Dry fit the handle on the uncut blank.\n"
                              "  2. Take 3\" (76.2 mm) off the butt, dry fit\n"));
  EXPECT_THAT(text, HasSubstr(" 11. Let it cure standing upright\n"));
  EXPECT_THAT(text, HasSubstr("  rod-epoxy  grip"));
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(DisplayWidth(line), 80) << line;
}

TEST(PlanText, NeverCallsALoadSafe) {
  const std::string text = PlanText("rod.txtpb", DesignPotting("last"), ExampleReport(), {});
  EXPECT_THAT(text, HasSubstr("the blank's rating says\n    that."));
  EXPECT_THAT(text, Not(HasSubstr("safe")));
}

}  // namespace
}  // namespace withy
