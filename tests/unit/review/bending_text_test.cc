// The layout is withy's own; places, weights and inches are worked by hand in the comments from the figures that are
// set.
#include "bending_text.h"

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

v1::BentShape Lift() {
  v1::BentShape bent;
  bent.set_id("lift");
  bent.set_state("bent");
  bent.set_reached(1);
  bent.set_load_n(4.4129925);  // 450 g x 9.80665 m/s2
  bent.set_load_angle_deg(-90);
  bent.set_butt_angle_deg(45);
  for (double at_mm : {300.0, 2200.0}) bent.add_at_mm(at_mm);
  bent.set_tip_drop_mm(582.6);
  bent.set_tip_drop_plus_minus_mm(111.5);
  bent.set_tip_angle_deg(-33);
  bent.set_clamp_moment_n_m(7.53);
  bent.set_clamp_moment_plus_minus_n_m(0.04);
  bent.set_peak_strain_millistrain(3.39);
  bent.set_peak_strain_plus_minus_millistrain(0.37);
  bent.set_peak_at_mm(1788);  // 2200 - 1788 = 412 mm from the tip
  bent.set_strain_energy_j(1.386);
  return bent;
}

v1::Report Bending() {
  v1::Report report;
  v1::BendingReport& bending = *report.mutable_bending();
  bending.set_modulus_from("estimated");
  v1::BendingOf& finished = *bending.mutable_finished();
  finished.set_clamp_mm(300);
  finished.set_free_length_mm(1900);
  *finished.add_cases() = Lift();
  for (double hz : {6.79, 19.52, 42.07}) finished.add_frequency_hz(hz);
  finished.set_frequency_plus_minus_hz(0.69);
  v1::PowerReading& power = *finished.mutable_power();
  power.set_load_g(88);
  power.set_load_plus_minus_g(9);
  power.set_coins(35.2);  // 88 / 2.5
  power.set_tip_angle_deg(70.9);
  power.set_action("fast");
  power.set_line_number(4.24);
  v1::BendingOf& bare = *bending.mutable_bare();
  bare.mutable_power()->set_load_g(86);
  bare.add_frequency_hz(7.99);
  bending.set_train_costs_hz(1.2);  // 7.99 - 6.79
  const std::pair<const char*, double> kLosses[] = {{"g1", 0.01}, {"g8", 0.15}, {"g9", 0.21}, {"tip", 0.29}};
  for (const auto& [id, hz] : kLosses) {
    v1::FrequencyLoss& loss = *bending.add_losses();
    loss.set_id(id);
    loss.set_hz(hz);
  }
  return report;
}

TEST(BendingText, EachLoadWithWhereTheRodWorksHardest) {
  const std::string text = BendingText(Bending(), {});
  EXPECT_THAT(text, HasSubstr("How it bends and rings\n"));
  EXPECT_THAT(text, HasSubstr("450 g (4.41 N) straight down at the tip; butt 45 deg"));
  EXPECT_THAT(text, HasSubstr("582.6 ± 111.5 mm; tip points 33 deg below the"));
  EXPECT_THAT(text, HasSubstr("7.53 ± 0.04 N m\n"));
  EXPECT_THAT(text, HasSubstr("412.0 mm from the tip: strain 3.39 ± 0.37 thousandths\n"));
  EXPECT_THAT(text, HasSubstr("1.39 J\n"));
}

// Loads may be held elsewhere than the rod otherwise is; said only where they are.
TEST(BendingText, ALoadThatIsHeldElsewhere) {
  v1::Report report = Bending();
  v1::BentShape& bent = *report.mutable_bending()->mutable_finished()->mutable_cases(0);
  bent.set_clamp_mm(300);
  EXPECT_THAT(BendingText(report, {}), Not(HasSubstr("held for this at")));
  bent.set_clamp_mm(325);
  EXPECT_THAT(BendingText(report, {}), HasSubstr("  held for this at    325.0 mm\n"));
}

// 412 mm = 16.22 in, to a sixteenth 16 1/4; 300 mm = 11.81 in, 11 13/16.
TEST(BendingText, PlacesInInches) {
  const std::string text = BendingText(Bending(), {.units = LengthUnits::kInch});
  EXPECT_THAT(text, HasSubstr("16 1/4\" from the tip"));
  EXPECT_THAT(text, HasSubstr("11 13/16\" from the butt end"));
}

TEST(BendingText, FinishedBesideBare) {
  const std::string text = BendingText(Bending(), {});
  EXPECT_THAT(text, ::testing::ContainsRegex("weight for a third drop +86 g +88 ± 9 g\n"));
  EXPECT_THAT(text, HasSubstr("third drop: of the free length, from the sag under its own weight\n"));
  EXPECT_THAT(text, ::testing::ContainsRegex("in coins of 2.50 g +- +35\n"));
  EXPECT_THAT(text, ::testing::ContainsRegex("line number +- +4.2\n"));
  EXPECT_THAT(text, HasSubstr("by a straight line through 20 published points"));
  EXPECT_THAT(text, ::testing::ContainsRegex("first frequency +7.99 Hz +6.79 ± 0.69 Hz\n"));
  EXPECT_THAT(text, HasSubstr("1.20 Hz of the first frequency; the dearest: tip 0.29,"));
  EXPECT_THAT(text, HasSubstr("g9 0.21, g8 0.15 Hz\n"));
  EXPECT_THAT(text, Not(HasSubstr("g1 ")));
}

// Only where the published points reach is there a number, and then what it is made by is said.
TEST(BendingText, NoLineNumberNoWordOfIt) {
  v1::Report report = Bending();
  report.mutable_bending()->mutable_finished()->mutable_power()->clear_line_number();
  EXPECT_THAT(BendingText(report, {}), Not(HasSubstr("line number")));
}

// Down to whole percent: 50.446 % is not 51.
TEST(BendingText, ALoadThatFoldsTheRodIsSaidInPlainWords) {
  v1::Report report = Bending();
  v1::BentShape& bent = *report.mutable_bending()->mutable_finished()->mutable_cases(0);
  bent.set_state("several");
  bent.set_reached(0.50946);
  std::string text = BendingText(report, {.style = {.width = 1000}});
  EXPECT_THAT(text, HasSubstr("folds: beyond 50 % of it more than one shape holds the load"));
  bent.set_state("none");
  text = BendingText(report, {.style = {.width = 1000}});
  EXPECT_THAT(text, HasSubstr("folds: beyond 50 % of it no shape near by holds the load"));
  bent.set_peak_strain_millistrain(0);
  EXPECT_THAT(BendingText(report, {}), HasSubstr("nowhere: it is straight"));
}

// Turned by more than a right angle from level: -110 is 20 past straight down.
TEST(BendingText, ATipThatPointsBack) {
  v1::Report report = Bending();
  report.mutable_bending()->mutable_finished()->mutable_cases(0)->set_tip_angle_deg(-110);
  EXPECT_THAT(BendingText(report, {.style = {.width = 1000}}), HasSubstr("tip points back, 20 deg past straight down"));
}

TEST(BendingText, AssumedModulusSaysWhatToMeasure) {
  v1::Report report = Bending();
  report.mutable_bending()->set_modulus_from("assumed");
  EXPECT_THAT(BendingText(report, {.style = {.width = 1000}}), HasSubstr("hang a known weight from the blank"));
}

TEST(BendingText, NothingToldIsOneLineWithWhatToMeasure) {
  v1::Report report;
  EXPECT_THAT(BendingText(report, {}), IsEmpty());
  v1::Unknown& unknown = *report.add_unknown();
  unknown.set_figure("bending");
  unknown.set_measure("weigh the blank");
  EXPECT_THAT(BendingText(report, {}), HasSubstr("  - how it bends cannot be told: weigh the blank\n"));
}

TEST(BendingText, CautionOnlyWithALoad) {
  v1::Report report = Bending();
  EXPECT_THAT(BendingText(report, {.style = {.width = 1000}}), HasSubstr("breaks without warning"));
  report.mutable_bending()->mutable_finished()->clear_cases();
  EXPECT_THAT(BendingText(report, {}), Not(HasSubstr("breaks")));
}

TEST(BendingText, ReadsIn80Columns) {
  v1::Report report = Bending();
  report.mutable_bending()->mutable_finished()->mutable_cases(0)->set_state("several");
  std::istringstream lines(BendingText(report, {}));
  for (std::string line; std::getline(lines, line);) EXPECT_LE(DisplayWidth(line), 80) << line;
}

}  // namespace
}  // namespace withy
