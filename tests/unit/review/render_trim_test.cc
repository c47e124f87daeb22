// The layout is withy's own; figures are put in by hand and their inches worked in the comments, 1 in = 25.4 mm.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "withy/review/trim_text.h"

namespace withy {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

v1::Design ExampleDesign() {
  v1::Design design;
  design.mutable_identity()->set_name("Reedbank");
  design.mutable_intent()->mutable_overall_length()->set_inch(87);
  design.mutable_intent()->mutable_overall_length()->set_plus_minus(0.25);
  return design;
}

// Uncut: 2397.8 mm, falling by 1.2 mm a mm. Planned: 3 in and 1/4 in off.
v1::Report ExampleReport() {
  v1::Report report;
  report.mutable_sections()->add_sections()->set_id("blank");
  v1::FitReport& fit = *report.mutable_fit();
  fit.set_overall_length_mm(2209.8);
  fit.set_overall_length_plus_minus_mm(6.35);
  fit.set_short_of_target_mm(-3.2);
  fit.set_rest_from("contact");
  v1::CutPlan& plan = *fit.mutable_cut_plan();
  plan.set_host("module");
  plan.set_verdict("cannot tell");
  plan.set_measure("dry fit the handle on the uncut blank");
  plan.mutable_now()->set_shorter_per_mm(1.2);
  plan.add_lengths()->set_overall_mm(2397.8);
  plan.mutable_lengths(0)->set_shorter_per_mm(1.2);
  v1::StagedCut& first = *plan.add_stages();
  first.set_take_mm(76.2);
  first.set_total_mm(76.2);
  first.set_leave_mm(2133.6);         // 84 in
  first.set_expect_from_mm(2305.05);  // 90 3/4 in
  first.set_expect_to_mm(2311.4);     // 91 in
  first.set_depth_mark_mm(177.8);     // 7 in
  first.set_decides(true);
  v1::StagedCut& last = *plan.add_stages();
  last.set_take_mm(6.35);
  last.set_total_mm(82.55);
  return report;
}

std::string Text(const v1::Report& report, LengthUnits units = LengthUnits::kInch, bool color = false) {
  return TrimText("rod.txtpb", ExampleDesign(), report, {.units = units, .style = {.color = color}});
}

TEST(TrimText, SaysTheVerdictAndWhatSettlesIt) {
  const std::string text = Text(ExampleReport());
  EXPECT_THAT(text, HasSubstr("  ordered               87\" ± 1/4\" (2209.8 ± "));
  EXPECT_THAT(text, HasSubstr("  verdict               cannot tell\n"));
  EXPECT_THAT(text, HasSubstr("  to settle it          dry fit the handle on the uncut blank\n"));
}

TEST(TrimText, SaysWhereTheBlankRestsAndWhatStopsIt) {
  v1::Report report = ExampleReport();
  v1::CutPlan& plan = *report.mutable_fit()->mutable_cut_plan();
  plan.clear_cut_planned_mm();
  v1::Resting& planned = *plan.mutable_planned();
  planned.set_butt_mm(152.4);
  v1::Contact& contact = *planned.add_contacts();
  contact.set_kind("step");
  contact.set_from_mm(152.4);  // 6 in
  contact.set_bore_mm(12.6);
  planned.set_depth_mm(203.2);  // 8 in
  planned.set_shorter_per_mm(1.2);
  plan.set_tighter_than_read_mm(-0.014);
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("  known from            worked out: bore against taper\n"
                              "  butt face             6\" (152.4 mm) from the butt end\n"
                              "    stopped by          butt face on a shoulder, 6\" (152.4 mm) from the butt\n"
                              "                        end, bore 12.60 mm\n"
                              "    depth in handle     8\" (203.2 mm) from its mouth\n"
                              "    1 mm more off       takes 1.20 mm off the rod\n"
                              "  dry fits say          blank and bore are 0.014 mm looser than read\n"));
}

// What is and what is to be never stand on one line, nor one beside the other without a name.
TEST(TrimText, SaysNowAndAsPlannedApart) {
  v1::Report report = ExampleReport();
  v1::CutPlan& plan = *report.mutable_fit()->mutable_cut_plan();
  plan.set_cut_planned_mm(76.2);
  plan.mutable_now()->clear_shorter_per_mm();
  plan.mutable_now()->set_butt_mm(203.2);
  plan.mutable_now()->set_depth_mm(152.4);
  plan.mutable_planned()->set_butt_mm(152.4);
  plan.mutable_planned()->set_depth_mm(203.2);
  EXPECT_THAT(Text(report), HasSubstr("  butt face now         8\" (203.2 mm) from the butt end\n"
                                      "    depth in handle     6\" (152.4 mm) from its mouth\n"
                                      "  butt face as planned  6\" (152.4 mm) from the butt end\n"
                                      "    depth in handle     8\" (203.2 mm) from its mouth\n"));
}

TEST(TrimText, SaysEachCutAsTheBenchDoesIt) {
  EXPECT_THAT(Text(ExampleReport()), HasSubstr("  1. take 3\" (76.2 mm), leave 84\" (2133.6 mm) of blank\n"
                                               "     tape the depth mark at 7\" (177.8 mm) from the new butt face\n"
                                               "     dry fit: expect 90 3/4\" to 91\" (2305 to 2312 mm)\n"
                                               "     this dry fit decides what comes after it\n"
                                               "     withy trim rod.txtpb --cut '3 in' --overall 'what you read'\n"
                                               "  2. take 1/4\" (6.3 mm)\n"));
  EXPECT_THAT(Text(ExampleReport(), LengthUnits::kMm), HasSubstr("  1. take 76.0 mm, leave 2133.8 mm of blank\n"));
}

// A blank that runs through the handle is not tried on.
TEST(TrimText, WithoutAHostThereIsNoDryFit) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->mutable_cut_plan()->clear_host();
  EXPECT_THAT(Text(report), Not(HasSubstr("dry fit: expect")));
  EXPECT_THAT(Text(report), HasSubstr("withy trim rod.txtpb --cut '3 in'\n"));
}

TEST(TrimText, WarnsOfTheWarrantyBeforeTheFirstCutOnly) {
  v1::Report report = ExampleReport();
  EXPECT_THAT(Text(report), HasSubstr("ends its warranty"));
  report.mutable_fit()->mutable_cut_plan()->set_cut_done_mm(10);
  EXPECT_THAT(Text(report), Not(HasSubstr("warranty")));
  EXPECT_THAT(Text(report), HasSubstr("waste side"));
  report.mutable_fit()->mutable_cut_plan()->clear_stages();
  EXPECT_THAT(Text(report), Not(HasSubstr("Mind")));
}

TEST(TrimText, NamesTheEntryThatClosesAThing) {
  v1::Report report = ExampleReport();
  v1::ClosedFact& cut = *report.add_closed();
  cut.set_kind("cut");
  cut.set_what("blank");
  cut.set_at_end("butt");
  cut.set_amount_mm(171.45);  // 6 3/4 in
  cut.set_at("log[e9].cut");
  v1::ClosedFact& glued = *report.add_closed();
  glued.set_kind("glued");
  glued.set_what("module");
  glued.set_at("log[e12].glued");
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("  blank   6 3/4\" (171.4 mm) cut off the butt  log[e9]\n"));
  EXPECT_THAT(text, HasSubstr("  module  glued                               log[e12]\n"));
}

TEST(TrimText, ShowsWhatEachDryFitImplies) {
  v1::Report report = ExampleReport();
  v1::DryFitSeen& seen = *report.mutable_fit()->mutable_cut_plan()->add_dry_fits();
  seen.set_at("log[e4].fit");
  seen.set_cut_mm(0);
  seen.set_read_mm(2397.125);      // 94 3/8 in
  seen.set_expected_mm(2397.825);  // 0.7 mm more
  seen.set_tighter_mm(-0.014);
  EXPECT_THAT(Text(report), HasSubstr("  log[e4]   0\"  94 3/8\"   94 3/8\"       -0.7      -0.014\n"));
}

TEST(TrimText, SaysWhatCanBeHadWhereTheLengthCannot) {
  v1::Report report = ExampleReport();
  v1::CutPlan& plan = *report.mutable_fit()->mutable_cut_plan();
  plan.set_outcome("jump");
  plan.set_nearest_below_mm(2184.4);  // 86 in
  plan.set_nearest_above_mm(2235.2);  // 88 in
  v1::Remedy& remedy = *plan.add_remedies();
  remedy.set_text("Order a rod of 88 in.");
  remedy.set_blocked_by("log[e12].glued");
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("no cut gives it: the length jumps past"));
  EXPECT_THAT(text, HasSubstr("  nearest longer        88\" (2235.2 mm)\n  nearest shorter       86\" (2184.4 mm)\n"));
  EXPECT_THAT(text, HasSubstr("  - Order a rod of 88 in.\n"));
}

// It belongs to the reason: a way out that is open is not closed by anything.
TEST(TrimText, NamesOnceWhatClosedTheLength) {
  v1::Report report = ExampleReport();
  v1::CutPlan& plan = *report.mutable_fit()->mutable_cut_plan();
  plan.set_outcome("closed");
  plan.set_verdict("misses");
  for (const char* way : {"Cut 26.2 mm off the tip.", "Take 'module' off again.", "Agree on 88 in."}) {
    v1::Remedy& remedy = *plan.add_remedies();
    remedy.set_text(way);
    remedy.set_blocked_by("log[e12].glued");
  }
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("  why                   the blank is glued in (log[e12])\n"));
  EXPECT_THAT(text, HasSubstr("  - Agree on 88 in.\n"));
  EXPECT_EQ(text.find("log[e12]"), text.rfind("log[e12]"));
}

TEST(TrimText, SaysWhereNoWindingCheckInStockIsWideEnough) {
  v1::Report report = ExampleReport();
  v1::WindingCheckFit& check = *report.mutable_fit()->add_winding_checks();
  check.set_part("front");
  check.set_blank_mm(12.17);
  check.set_next_bore_mm(12);
  check.set_ream_mm(0.17);
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("  winding check  blank      take bore  next down  or ream by\n"
                              "  front          12.17  none in stock      12.00        0.17\n"));
}

TEST(TrimText, TellsPlayWithTheArborsToo) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->set_mouth_play_mm(1.95);
  report.mutable_fit()->set_tip_off_axis_mm(17.2);
  report.mutable_fit()->set_tip_off_axis_with_arbors_mm(2.1);
  const std::string text = Text(report);
  EXPECT_THAT(text, HasSubstr("1.95 mm without arbors: the tip can point 17 mm off the\n"));
  EXPECT_THAT(text, HasSubstr("    with its arbors     the tip can point 2 mm off the axis\n"));
}

TEST(TrimText, OffersTheTipOnlyWhereTheOrderIsNotMet) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->mutable_cut_plan()->mutable_tip()->set_cut_mm(25.4);
  report.mutable_fit()->mutable_cut_plan()->mutable_tip()->set_tube_in64(6);
  report.mutable_fit()->mutable_cut_plan()->mutable_tip()->set_tip_diameter_mm(2.3);
  EXPECT_THAT(Text(report), HasSubstr("  off the tip           1\" (25.4 mm) would give the length\n"
                                      "  tip then              2.30 mm, tip-top tube 6/64 in\n"));
  report.mutable_fit()->mutable_cut_plan()->set_verdict("meets");
  EXPECT_THAT(Text(report), Not(HasSubstr("off the tip")));
}

// A report with nothing in it still reads; one with everything stays in 80 columns, with and without colour.
TEST(TrimText, ReadsWhateverIsKnown) {
  EXPECT_THAT(TrimText("-", {}, {}, {}), HasSubstr("no length is ordered"));
}

TEST(TrimText, StaysWithinEightyColumns) {
  v1::Report report = ExampleReport();
  v1::FittedPart& part = *report.mutable_fit()->add_parts();
  part.set_id("one-piece-handle");
  v1::FittedArbor& arbor = *part.add_arbors();
  arbor.set_proposed(true);
  arbor.set_start_mm(1249.4);
  arbor.set_length_mm(10);
  arbor.set_blank_mm(12.54);
  arbor.set_bore_mm(13.6);
  arbor.set_outer_mm(13.32);
  arbor.set_turns(13);
  arbor.set_tape_length_mm(1220);
  arbor.set_gap_mm(0.14);
  arbor.set_place("screw thread");
  std::istringstream lines(Text(report));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(DisplayWidth(line), 80) << line;
  EXPECT_THAT(Text(report, LengthUnits::kInch, /*color=*/true), HasSubstr("\x1b[1;35mcannot tell\x1b[0m\n"));
  EXPECT_THAT(Text(report), Not(HasSubstr("\x1b")));
}

}  // namespace
}  // namespace withy
