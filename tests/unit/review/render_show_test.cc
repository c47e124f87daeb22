// The layout is withy's own; inch figures are worked by hand in the comments from 1 in = 25.4 mm.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "withy/review/show_text.h"

namespace withy {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

v1::Design ExampleDesign() {
  v1::Design design;
  design.mutable_identity()->set_name("Reed\x1b[2Jbank");
  design.mutable_intent()->set_technique("casting");
  v1::Part& cap = *design.mutable_handle()->add_parts();
  cap.set_id("cap");
  cap.set_kind("butt_cap");
  return design;
}

v1::Report ExampleReport() {
  v1::Report report;
  report.set_design_digest("sha256:00");
  v1::FitReport& fit = *report.mutable_fit();
  fit.set_overall_length_mm(2209.8);  // 87 in = 7 ft 3 in
  fit.set_overall_length_plus_minus_mm(1.2);
  fit.set_short_of_target_mm(3.2);
  v1::FittedPart& part = *fit.add_parts();
  part.set_id("cap");
  part.set_start_mm(0);
  part.set_length_mm(9);
  part.set_clearance_mm(-0.1);
  v1::PlacedGuide& guide = *report.mutable_guides()->add_guides();
  guide.set_id("g1");
  guide.set_from_tip_mm(101.6);  // 4 in
  v1::Assumption& assumption = *report.add_assumptions();
  assumption.set_at("blank.sections[blank].wall");
  assumption.set_used("1.0 mm");
  assumption.set_why("the wall is not known");
  v1::Unknown& unknown = *report.add_unknown();
  unknown.set_figure("balance.mass_g");
  unknown.set_measure("weigh the blank");
  return report;
}

TEST(ShowText, SaysLengthsInBothUnits) {
  std::string text = ShowText("rod.txtpb", ExampleDesign(), ExampleReport(), {});
  EXPECT_THAT(text, HasSubstr("  overall length        2209.8 ± 1.2 mm, 7' 3\"\n"));
  EXPECT_THAT(text, HasSubstr("  against the order     3.2 mm shorter than ordered\n"));
}

// 3.2 mm is an eighth; 0.5 mm is less than half a sixteenth (0.79 mm) and is not called 0".
TEST(ShowText, SmallDifferencesAreNotRoundedAway) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->set_short_of_target_mm(-0.5);
  std::string text = ShowText("rod.txtpb", ExampleDesign(), report, {.units = LengthUnits::kInch});
  EXPECT_THAT(text, HasSubstr("  against the order     0.5 mm longer than ordered\n"));
}

// 2.00 mm is 5.04/64 in: a tube of 5/64 does not go over it, so it is not called that.
TEST(ShowText, TipTubeAndPlacesOfBlankAndRing) {
  v1::Report report = ExampleReport();
  report.mutable_sections()->add_sections()->set_id("blank");
  report.mutable_sections()->set_tip_diameter_mm(2);
  report.mutable_fit()->set_tip_tube_clearance_mm(-0.03);
  report.mutable_fit()->set_blank_butt_mm(166.5);
  report.mutable_fit()->set_tip_ring_mm(2206);
  std::string text = ShowText("rod.txtpb", ExampleDesign(), report, {});
  EXPECT_THAT(text, HasSubstr("  tip diameter          2.00 mm, 5.04/64 in\n"));
  EXPECT_THAT(text, HasSubstr("  tip-top tube          0.03 mm smaller than the blank at its mouth\n"));
  EXPECT_THAT(text, HasSubstr("  blank's butt face     166.5 mm from the butt end\n"));
  EXPECT_THAT(text, HasSubstr("  tip-top's ring        2206.0 mm from the butt end\n"));
}

TEST(ShowText, TablesLeaveOutColumnsWithoutFigures) {
  std::string text = ShowText("rod.txtpb", ExampleDesign(), ExampleReport(), {});
  EXPECT_THAT(text, HasSubstr("  part  kind      from mm  to mm  clearance mm\n"
                              "  cap   butt_cap      0.0    9.0         -0.10\n"));
  EXPECT_THAT(text, HasSubstr("  guide  from tip-top mm  in\n"
                              "  g1               101.6  4\"\n"));
}

TEST(ShowText, InchesAlongTheRod) {
  v1::Report report = ExampleReport();
  report.mutable_fit()->mutable_parts(0)->set_start_mm(304.8);  // 12 in; 12 in + 9 mm = 12.354 in, nearest 1/16: 12 3/8
  std::string text = ShowText("rod.txtpb", ExampleDesign(), report, {.units = LengthUnits::kInch});
  EXPECT_THAT(text, HasSubstr("  part  kind      from in    to in  clearance mm\n"
                              "  cap   butt_cap      12\"  12 3/8\"         -0.10\n"));
  EXPECT_THAT(text, HasSubstr("1/8\" shorter than ordered"));  // 3.2 mm = 0.126 in
}

TEST(ShowText, ListsWhatWasAssumedAndWhatIsNotKnown) {
  std::string text = ShowText("rod.txtpb", ExampleDesign(), ExampleReport(), {});
  EXPECT_THAT(text, HasSubstr("Assumed\n  blank.sections[blank].wall\n      1.0 mm: the wall is not known\n"));
  EXPECT_THAT(text, HasSubstr("  balance.mass_g\n      weigh the blank\n"));
}

TEST(ShowText, FitsEightyColumnsAndSendsNothingRaw) {
  std::string text = ShowText("rod.txtpb", ExampleDesign(), ExampleReport(), {});
  EXPECT_THAT(text, Not(HasSubstr("\x1b")));
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);) EXPECT_LE(DisplayWidth(line), 80) << line;
}

TEST(ShowText, ADesignThatKnowsNothing) {
  EXPECT_EQ(ShowText("-", {}, {}, {}), "A rod without a name\nstandard input\n");
}

}  // namespace
}  // namespace withy
