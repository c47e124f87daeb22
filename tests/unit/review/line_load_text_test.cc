// The layout is withy's own; places and inches are worked by hand in the comments from the figures that are set.
#include "line_load_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <sstream>

#include "withy/review/show_text.h"
#include "withy/review/terminal_text.h"

namespace withy {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

void AddRing(const char* id, double from_butt_mm, double turn_deg, double force_n, v1::StrungRod& strung) {
  v1::RingUnderLine& ring = *strung.add_rings();
  ring.set_id(id);
  ring.set_from_butt_mm(from_butt_mm);
  ring.set_blank_angle_deg(-7.6);
  ring.set_line_out_deg(-15.4);
  ring.set_turn_deg(turn_deg);
  ring.set_force_n(force_n);
}

void AddSpan(const char* from, const char* to, double clearance_mm, double at_mm, v1::StrungRod& strung) {
  v1::LineSpan& span = *strung.add_spans();
  span.set_from_ring(from);
  span.set_to_ring(to);
  span.set_clearance_mm(clearance_mm);
  span.set_clearance_at_mm(at_mm);
}

v1::Report Strung() {
  v1::Report report;
  v1::StrungRod& strung = *report.mutable_line_load()->add_cases();
  strung.set_id("lift");
  strung.set_state("bent");
  strung.set_reached(1);
  strung.set_tension_n(4.4129925);  // 450 g x 9.80665 m/s2
  strung.set_line_angle_deg(-90);
  strung.set_butt_angle_deg(45);
  strung.set_rings_stand("above");
  for (double at_mm : {300.0, 2200.0}) strung.add_at_mm(at_mm);
  strung.set_tip_drop_mm(586.9);
  strung.set_tip_drop_plus_minus_mm(86);
  strung.set_tip_angle_deg(-31);
  strung.set_tip_to_line_deg(59);
  strung.set_clamp_moment_n_m(7.11);
  strung.set_clamp_moment_plus_minus_n_m(0.05);
  strung.set_peak_strain_millistrain(3.39);
  strung.set_peak_at_mm(1788);  // 2200 - 1788 = 412 mm from the tip-top
  strung.set_tension_at_reel_n(4.4129925);
  strung.set_friction_loss_percent(0);
  strung.set_most_turned("g1");
  strung.set_most_turn_deg(14.3);
  strung.set_most_turn_plus_minus_deg(1.9);
  AddRing("g1", 1950, 14.3, 1.1, strung);  // 250 mm = 9.84 in, to an eighth 9 7/8
  AddRing("tip", 2200, 61.1, 4.49, strung);
  AddSpan("", "g1", 8.2, 700, strung);
  AddSpan("g1", "tip", 2.49, 2000, strung);  // 200 mm from the tip-top
  return report;
}

TEST(LineLoadText, EachLoad) {
  const std::string text = LineLoadText(Strung(), {.style = {.width = 1000}});
  EXPECT_THAT(text, HasSubstr("450 g (4.41 N) straight down; butt 45 deg above the horizontal\n"));
  EXPECT_THAT(text, HasSubstr("586.9 ± 86.0 mm below the line straight on from the butt; tip points 31 deg below the "
                              "horizontal, 59 deg from the line beyond it\n"));
  EXPECT_THAT(text, HasSubstr("7.11 ± 0.05 N m\n"));
  EXPECT_THAT(text, HasSubstr("412.0 mm from the tip-top: strain 3.39 thousandths\n"));
  EXPECT_THAT(text, HasSubstr("g1, 14.3 ± 1.9 deg\n"));
  EXPECT_THAT(text, HasSubstr("2.49 mm, 200.0 mm from the tip-top, between g1 and tip\n"));
  EXPECT_THAT(text, HasSubstr("none is written: none counted\n"));
}

// Pulled back at the hand: -133 is 43 past straight down, 228 is 138 past straight up.
TEST(LineLoadText, ATipThatPointsBack) {
  v1::Report report = Strung();
  v1::StrungRod& strung = *report.mutable_line_load()->mutable_cases(0);
  strung.set_line_angle_deg(-133);
  strung.set_tip_angle_deg(228);
  strung.set_tip_drop_mm(-495.3);
  const std::string text = LineLoadText(report, {.style = {.width = 1000}});
  EXPECT_THAT(text, HasSubstr("4.41 N, pointing back, 43 deg past straight down; butt"));
  EXPECT_THAT(text, HasSubstr("495.3 ± 86.0 mm above the line straight on from the butt; tip points back, 138 deg past "
                              "straight up, 59 deg"));
}

TEST(LineLoadText, RingByRing) {
  const std::string text = LineLoadText(Strung(), {});
  EXPECT_THAT(text, ::testing::ContainsRegex("g1 +250.0 +9 7/8\" +-7.6 +-15.4 +14.3 +1.10\n"));
  EXPECT_THAT(text, ::testing::ContainsRegex("tip +0.0 +0\" +-7.6 +-15.4 +61.1 +4.49\n"));
}

TEST(LineLoadText, ALineInTheBlankAndFriction) {
  v1::Report report = Strung();
  v1::StrungRod& strung = *report.mutable_line_load()->mutable_cases(0);
  strung.mutable_spans(0)->set_clearance_mm(-1.5);
  strung.set_friction_loss_percent(12.34);
  strung.set_tension_at_reel_n(3.87);
  const std::string text = LineLoadText(report, {.style = {.width = 1000}});
  EXPECT_THAT(text,
              HasSubstr("none: kept straight it would cut 1.50 mm into the blank, 1500.0 mm from the tip-top, between "
                        "the reel and g1\n"));
  EXPECT_THAT(text, HasSubstr("12.3 % of the pull; 3.87 N are left at the reel\n"));
}

TEST(LineLoadText, CautionsForALoadedRod) {
  EXPECT_THAT(LineLoadText(Strung(), {.style = {.width = 1000}}), HasSubstr("nobody stands in line with it"));
}

TEST(LineLoadText, RingsBelowSayWhatTheNumberIs) {
  v1::Report report = Strung();
  EXPECT_THAT(LineLoadText(report, {}), Not(HasSubstr("rings below")));
  report.mutable_line_load()->mutable_cases(0)->set_rings_stand("below");
  EXPECT_THAT(LineLoadText(report, {}), HasSubstr("rings below"));
}

TEST(LineLoadText, ALoadThatFoldsOrCannotBeTold) {
  v1::Report report = Strung();
  v1::StrungRod& strung = *report.mutable_line_load()->mutable_cases(0);
  strung.set_state("several");
  strung.set_reached(0.597);
  EXPECT_THAT(LineLoadText(report, {.style = {.width = 1000}}), HasSubstr("folds: beyond 59 % of it"));
  v1::StrungRod none;
  none.set_id("far");
  none.set_state("cannot tell");
  strung = none;
  EXPECT_THAT(LineLoadText(report, {.style = {.width = 1000}}),
              HasSubstr("how it bends under this load cannot be told"));
}

TEST(LineLoadText, NothingAskedNothingSaid) {
  v1::Report report;
  EXPECT_THAT(LineLoadText(report, {}), IsEmpty());
  v1::Unknown& unknown = *report.add_unknown();
  unknown.set_figure("line_load");
  unknown.set_measure("measure how high the ring of 'g3' stands");
  EXPECT_THAT(LineLoadText(report, {}), HasSubstr("cannot be told: measure how high the ring of 'g3' stands"));
}

TEST(LineLoadText, FitsEightyColumns) {
  for (const LengthUnits units : {LengthUnits::kMm, LengthUnits::kInch}) {
    std::istringstream lines(LineLoadText(Strung(), {.units = units}));
    for (std::string line; std::getline(lines, line);) EXPECT_LE(DisplayWidth(line), 80) << line;
  }
}

}  // namespace
}  // namespace withy
