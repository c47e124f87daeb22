// Figures of a report as a person reads them; expected texts written by hand.
#include "figure_value.h"

#include <gtest/gtest.h>

#include <string>

namespace withy {
namespace {

std::string Readable(double value, std::optional<double> plus_minus, const std::string& unit) {
  return ReadableFigure({.told = true, .value = value, .plus_minus = plus_minus, .unit = unit});
}

TEST(FigureValue, TwoDigitsOfTheUncertaintyShow) {
  EXPECT_EQ(Readable(2210.36, 1.5875, "mm"), "2210.4 ± 1.6 mm");
  EXPECT_EQ(Readable(61.74988, 0.0845, "g"), "61.750 ± 0.085 g");  // 0.0845 is kept as 0.08450000000000000067
  EXPECT_EQ(Readable(0.19987, 0.0057, "N m"), "0.1999 ± 0.0057 N m");
  EXPECT_EQ(Readable(900, 35, "mm"), "900.0 ± 35.0 mm");
}

TEST(FigureValue, WithoutUncertaintyWhatTheBenchReads) {
  EXPECT_EQ(Readable(12.8675, std::nullopt, "mm"), "12.87 mm");
  EXPECT_EQ(Readable(2038.35, std::nullopt, "mm"), "2038.3 mm");  // 2038.35 is kept as 2038.3499999999999
  EXPECT_EQ(Readable(0.0050, std::nullopt, "mm"), "0.0050 mm");
  EXPECT_EQ(Readable(0, std::nullopt, "mm"), "0.00 mm");
  EXPECT_EQ(Readable(3, std::nullopt, ""), "3");
  EXPECT_EQ(Readable(7, std::nullopt, "min"), "7 min");
}

TEST(FigureValue, UnitsAreThoseOfTheName) {
  EXPECT_EQ(UnitSuffix("moment_about_hold_n_m"), "n_m");
  EXPECT_EQ(UnitSuffix("ei_n_m2"), "n_m2");
  EXPECT_EQ(UnitSuffix("inertia_at_balance_kg_m2"), "kg_m2");
  EXPECT_EQ(UnitSuffix("mass_g"), "g");
  EXPECT_EQ(UnitSuffix("train_costs_hz"), "hz");
  EXPECT_EQ(UnitSuffix("peak_strain_millistrain"), "millistrain");
  EXPECT_EQ(UnitSuffix("strain_energy_j"), "j");
  EXPECT_EQ(UnitSuffix("pieces"), "");
  EXPECT_EQ(UnitSuffix("count_if_potting_ignored"), "");
}

TEST(FigureValue, AnUncertaintyAndItsFigureNameEachOther) {
  EXPECT_EQ(PlusMinusName("moment_after_n_m"), "moment_after_plus_minus_n_m");
  EXPECT_EQ(WithoutPlusMinus("moment_after_plus_minus_n_m"), "moment_after_n_m");
  EXPECT_EQ(WithoutPlusMinus("mass_g"), "mass_g");
}

TEST(FigureValue, ReadFromAReportByItsPath) {
  v1::Report report;
  report.mutable_fit()->set_overall_length_mm(2210.36);
  report.mutable_fit()->set_overall_length_plus_minus_mm(1.5875);
  auto& section = *report.mutable_sections()->add_sections();
  section.set_id("butt");
  for (const double outer : {12.0, 9.0, 2.0}) section.add_outer_mm(outer);
  const auto at = [&report](const char* path) { return ReadableFigure(FigureAt(report, *FieldPath::Parse(path))); };
  EXPECT_EQ(at("fit.overall_length_mm"), "2210.4 ± 1.6 mm");
  EXPECT_EQ(at("sections.sections[butt].outer_mm"), "12.00 to 2.00 mm, 3 values");
  EXPECT_EQ(at("sections.sections[0].outer_mm[1]"), "9.00 mm");
  EXPECT_FALSE(FigureAt(report, *FieldPath::Parse("sections.sections[0].outer_mm[3]")).told);
  EXPECT_FALSE(FigureAt(report, *FieldPath::Parse("balance.mass_g")).told);
  EXPECT_EQ(at("fit.cut_plan.jump_near"), "no");
}

}  // namespace
}  // namespace withy
