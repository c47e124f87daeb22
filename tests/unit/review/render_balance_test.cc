// The layout is withy's own; figures are put in by hand, inches worked in the comments, 1 in = 25.4 mm.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "withy/review/balance_text.h"

namespace withy {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

v1::Design DesignWithWeightsOf(const std::string& material) {
  v1::Design design;
  v1::Part& module = *design.mutable_handle()->add_parts();
  module.set_id("module");
  module.mutable_weights()->set_material(material);
  return design;
}

v1::Report ExampleReport() {
  v1::Report report;
  v1::BalanceReport& balance = *report.mutable_balance();
  balance.set_mass_g(211.5);
  balance.set_mass_plus_minus_g(2.3);
  balance.set_balance_with_reel_mm(317.5);  // 12 1/2 in
  balance.set_moment_about_hold_n_m(0.2);
  balance.set_moment_about_hold_plus_minus_n_m(0.006);
  balance.set_rests_on("parts");
  v1::CounterweightPlan& plan = *balance.mutable_counterweights();
  plan.set_part("module");
  plan.set_status("balanced");
  plan.set_count(3);
  plan.set_count_planned(3);
  plan.set_unit_mass_g(7.0874);
  plan.set_mass_g(21.2621);  // three quarter-ounces: 0.75 oz of 28.349523 g
  plan.set_moment_before_potting_n_m(0.0612);
  plan.set_stop_short_at_tip_g(3.2);
  plan.set_moment_after_n_m(0.0004);
  plan.set_moment_with_one_more_n_m(-0.012);
  plan.set_count_if_potting_ignored(4);
  plan.set_potting_ml(5.2);
  plan.set_potting_g(6.0);
  plan.set_confidence("one more or less");
  for (double g : {0.2, 92.4, 61.75, 0.3}) {
    v1::PlacedPart& part = *balance.add_parts();
    part.set_id("p" + std::to_string(static_cast<int>(g)));
    part.set_mass_g(g);
  }
  return report;
}

std::string Text(const v1::Report& report, const v1::Design& design = DesignWithWeightsOf("brass")) {
  return BalanceText("rod.txtpb", design, report, {.units = LengthUnits::kInch});
}

TEST(BalanceText, SaysWhereItBalancesAndWhatThatRestsOn) {
  const std::string text = Text(ExampleReport());
  EXPECT_THAT(text, HasSubstr("  rod                   211.5 ± 2.3 g\n"));
  EXPECT_THAT(text, HasSubstr("  balances at           12 1/2\" (317.5 mm) from the butt end\n"));
  EXPECT_THAT(text, HasSubstr("  about the hold        0.200 ± 0.006 N m, tip-heavy\n"));
  EXPECT_THAT(text, HasSubstr("  this rests on         the sum of its parts\n"));
}

TEST(BalanceText, SaysHowManyAndWhereToStop) {
  const std::string text = Text(ExampleReport());
  EXPECT_THAT(text, HasSubstr("  put in                3 counterweights of 7.09 g, 21.3 g in all\n"));
  EXPECT_THAT(text, HasSubstr("  stop at               0.061 N m, tip-heavy, before potting\n"));
  EXPECT_THAT(text, HasSubstr("3.2 g hung at the tip-top's ring"));
  EXPECT_THAT(text, HasSubstr("  after potting         0.000 N m, level\n"));
  EXPECT_THAT(text, HasSubstr("  with one more         0.012 N m, butt-heavy\n"));
  EXPECT_THAT(text, HasSubstr("  potting forgotten     it would have been 4\n"));
}

// 0.2 + 0.3 = 0.5 g.
TEST(BalanceText, ListsTheHeaviestFirstAndCountsWhatIsLight) {
  const std::string text = Text(ExampleReport());
  EXPECT_LT(text.find("92.40"), text.find("61.75"));
  EXPECT_THAT(text, HasSubstr("  - and 2 of less than 0.5 g, together 0.5 g: 'withy show' lists them\n"));
}

TEST(BalanceText, NamesWhatLiesInsideAThing) {
  v1::Report report;
  for (const char* at : {"handle.parts[cap]", "handle.parts[cap].bond", "tip_top", "tip_top.bond"}) {
    v1::PlacedPart& part = *report.mutable_balance()->add_parts();
    part.set_id(std::string(at).starts_with("tip") ? "tip" : "cap");
    part.set_at(at);
    part.set_mass_g(1);
  }
  EXPECT_THAT(Text(report),
              HasSubstr("  cap         1.00\n  cap bond    1.00\n  tip         1.00\n  tip bond    1.00\n"));
}

// Potted first, no trial weight comes before the potting.
TEST(BalanceText, OffersNoTrialOfWhatIsPottedFirst) {
  v1::Report report = ExampleReport();
  EXPECT_THAT(Text(report), HasSubstr("trial weights on the knife"));
  report.mutable_balance()->mutable_counterweights()->set_potted("first: on no scales then");
  EXPECT_THAT(Text(report), Not(HasSubstr("trial weights")));
  EXPECT_THAT(Text(report), HasSubstr("pot them last"));
}

TEST(BalanceText, WithNoneToPutInThereIsNowhereToStop) {
  v1::Report report = ExampleReport();
  v1::CounterweightPlan& plan = *report.mutable_balance()->mutable_counterweights();
  plan.set_count(0);
  plan.set_potted("last: balanced");
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("  put in                none\n"));
  for (const char* line : {"stop at", "hung at the tip-top", "after potting", "  potting  ", "last: balanced"}) {
    EXPECT_THAT(text, Not(HasSubstr(line)));
  }
  plan.set_status("no room");
  plan.set_confidence("sure");
  EXPECT_THAT(Text(report), Not(HasSubstr("sure within")));
}

TEST(BalanceText, SaysWhatCannotBeToldAndWhatWouldTellIt) {
  v1::Report report;
  v1::Unknown& unknown = *report.add_unknown();
  unknown.set_figure("balance.counterweights.count");
  unknown.set_measure("measure length and diameter of one counterweight");
  report.add_unknown()->set_figure("fit.overall_mm");
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("  - how many counterweights: measure length and diameter of one counterweight\n"));
  EXPECT_THAT(text, Not(HasSubstr("overall_mm")));
}

// 1000 g that balance 200 mm in front of the aim: 9.80665 x 1 kg x 0.2 m = 1.961 N m. At 0.4 mm, 0.004 N m, it balances.
TEST(BalanceText, SaysThatNothingWithinReasonBalancesIt) {
  v1::Report report;
  v1::BalanceReport& balance = *report.mutable_balance();
  balance.set_mass_with_reel_g(1000);
  balance.set_balance_with_reel_mm(1000);
  balance.set_aim_from_butt_mm(800);
  balance.set_aim("the holding point");
  EXPECT_THAT(Text(report), HasSubstr("Nothing alone brings it to the holding point (1.961 N m, tip-heavy)"));
  EXPECT_THAT(Text(report), HasSubstr("has a `cavity`"));
  balance.set_aim_from_butt_mm(999.6);
  EXPECT_THAT(Text(report), Not(HasSubstr("Without counterweights")));
  balance.set_aim_from_butt_mm(800);
  balance.add_instead()->set_text("A lighter reel.");
  EXPECT_THAT(Text(report), Not(HasSubstr("Nothing alone")));
}

TEST(BalanceText, WarnsOfLeadWhereThereIsLead) {
  EXPECT_THAT(Text(ExampleReport()), Not(HasSubstr("Lead")));
  EXPECT_THAT(Text(ExampleReport(), DesignWithWeightsOf("lead")), HasSubstr("Lead is poisonous"));
  EXPECT_THAT(Text(ExampleReport()), HasSubstr("Uncured epoxy"));
  v1::Report none = ExampleReport();
  none.mutable_balance()->clear_counterweights();
  EXPECT_THAT(Text(none, DesignWithWeightsOf("lead")), Not(HasSubstr("Mind")));
}

TEST(BalanceText, ReadsWhateverIsKnownWithinEightyColumns) {
  EXPECT_THAT(BalanceText("-", {}, {}, {}), HasSubstr("standard input"));
  v1::Report report = ExampleReport();
  report.mutable_balance()->add_instead()->set_text(
      "A butt that is 253 mm longer, as heavy per length as the part there, balances the rod without counterweights.");
  std::istringstream lines(Text(report, DesignWithWeightsOf("lead")));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(DisplayWidth(line), 80) << line;
}

}  // namespace
}  // namespace withy
