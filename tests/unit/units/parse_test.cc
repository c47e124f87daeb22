#include "withy/units/parse.h"

#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <string>
#include <vector>

#include "withy/units/format.h"
#include "withy/units/unit.h"

namespace withy {
namespace {

struct LengthCase {
  std::string text;
  double number;
  std::string unit;
  double mm;
};

TEST(Parse, Lengths) {
  // Worked by hand: 1 in = 25.4 mm, 1 ft = 304.8 mm.
  const std::vector<LengthCase> cases = {
      {"7' 3 1/2\"", 87.5, "inch", 2222.5},
      {"7ft 3.5in", 87.5, "inch", 2222.5},
      {"2222.5 mm", 2222.5, "mm", 2222.5},
      {"12 3/16 in", 12.1875, "inch", 309.5625},
      {"5/64 in", 5, "in64", 1.984375},
      {"5.5/64 in", 5.5, "in64", 2.1828125},
      {"5.5/64\"", 5.5, "in64", 2.1828125},
      {"5.5 in64", 5.5, "in64", 2.1828125},
      {"1 5/64 in", 1.078125, "inch", 27.384375},
      {"3/16\"", 0.1875, "inch", 4.7625},
      {"17 cm", 170, "mm", 170},
      {"2.5 m", 2500, "mm", 2500},
      {"2.5m", 2500, "mm", 2500},
      {"9'", 108, "inch", 2743.2},
      {"9 feet", 108, "inch", 2743.2},
      {"6.75 ft", 81, "inch", 2057.4},
      {"6'-9\"", 81, "inch", 2057.4},
      {"6 ft. 9 in.", 81, "inch", 2057.4},
      {"6\u2032 9\u2033", 81, "inch", 2057.4},
      {"6\u2019 9 1\u20442\u201d", 81.5, "inch", 2070.1},
      {"6' 9''", 81, "inch", 2057.4},
      {"9''", 9, "inch", 228.6},
      {"3\u00bd in", 3.5, "inch", 88.9},
      {"3-1/2 in", 3.5, "inch", 88.9},
      {"\u00be in", 0.75, "inch", 19.05},
      {"  .5 MM ", 0.5, "mm", 0.5},
      {"5. mm", 5, "mm", 5},
      {"-2 mm", -2, "mm", -2},
      {"\u22122 mm", -2, "mm", -2},
      {"+2 mm", 2, "mm", 2},
      {"-1' 6\"", -18, "inch", -457.2},
      {"0 mm", 0, "mm", 0},
      {"1e-3 mm", 0.001, "mm", 0.001},
      {"87\u00a0in", 87, "inch", 2209.8},
      {"87 inches", 87, "inch", 2209.8},
  };
  for (const LengthCase& c : cases) {
    const auto parsed = ParseLength(c.text);
    ASSERT_TRUE(parsed.ok()) << c.text << ": " << parsed.status();
    EXPECT_EQ(parsed->number, c.number) << c.text;
    EXPECT_EQ(parsed->unit, c.unit) << c.text;
    EXPECT_DOUBLE_EQ(parsed->value.mm(), c.mm) << c.text;
  }
}

TEST(Parse, OtherKinds) {
  EXPECT_DOUBLE_EQ(ParseMass("1/4 oz")->value.grams(), 7.08738078125);  // 28.349523125 / 4
  EXPECT_EQ(ParseMass("1/4 oz")->number, 0.25);
  EXPECT_EQ(ParseMass("150 gr")->unit, "grain");
  EXPECT_DOUBLE_EQ(ParseMass("150 gr")->value.grams(), 9.7198365);  // 150 * 0.06479891
  EXPECT_EQ(ParseMass("150 g")->value.grams(), 150);
  EXPECT_EQ(ParseMass("0.2 kg")->number, 200);
  EXPECT_DOUBLE_EQ(ParseMass("1 lb")->value.grams(), 453.59237);
  EXPECT_EQ(ParseVolume("2.5 ml")->value.milliliters(), 2.5);
  EXPECT_DOUBLE_EQ(ParseVolume("1 fl oz")->value.milliliters(), 29.5735295625);
  EXPECT_EQ(ParseVolume("1 fl. oz.")->unit, "fl_oz");
  EXPECT_EQ(ParseAngle("-90 deg")->value.degrees(), -90);
  EXPECT_EQ(ParseAngle("180\u00b0")->value.degrees(), 180);
  EXPECT_DOUBLE_EQ(ParseForce("12 lb")->value.newtons(), 53.378659383126);  // 12 * 4.4482216152605
  EXPECT_DOUBLE_EQ(ParseForce("4 kg")->value.newtons(), 39.2266);           // 4 * 9.80665
  EXPECT_EQ(ParseForce("5 N")->unit, "n");
  EXPECT_EQ(ParseTemperature("72.5 F")->value.celsius(), 22.5);
  EXPECT_EQ(ParseTemperature("-5 \u00b0C")->value.celsius(), -5);
  EXPECT_EQ(ParseDuration("1.5 h")->value.seconds(), 5400);
  EXPECT_EQ(ParseDuration("1 1/2 days")->unit, "days");
  EXPECT_EQ(ParseDuration("24 days")->value.hours(), 576);
}

struct Refusal {
  std::string text;
  int column;
  std::string says;
};

void ExpectRefused(const Refusal& c) {
  const auto parsed = ParseLength(c.text);
  ASSERT_FALSE(parsed.ok()) << c.text;
  EXPECT_EQ(parsed.status().code(), absl::StatusCode::kInvalidArgument);
  const std::string message(parsed.status().message());
  EXPECT_TRUE(message.starts_with("column " + std::to_string(c.column) + ":")) << c.text << ": " << message;
  EXPECT_NE(message.find(c.says), std::string::npos) << c.text << ": " << message;
}

TEST(Parse, RefusalsSayWhereAndWhatToWrite) {
  for (const Refusal& c : std::vector<Refusal>{
           {"2,5 mm", 2, "write 2.5"},
           {",5 mm", 1, "write 0.5"},
           {"1,000 mm", 2, "write 1.000 (or 1000)"},
           {"7' 3,5\"", 5, "write 3.5"},
           {"87", 3, "87 mm or 87 in"},
           {"5.5/64", 7, "5.5/64 mm or 5.5/64 in"},
           {"", 1, "nothing"},
           {"   ", 4, "nothing"},
           {"mm", 1, "a number was expected"},
           {"nan mm", 1, "a number was expected"},
           {"inf mm", 1, "a number was expected"},
           {"-inf mm", 2, "a number was expected"},
           {"0x10 mm", 1, "decimal"},
           {"1e999 mm", 1, "too large"},
           {"1e308 m", 1, "too large"},
           {"1e-999 mm", 1, "too small"},
           {"12 g", 4, "is not a unit of a length"},
           {"12 mil", 4, "is not a unit of a length"},
           {"12 mm long", 7, "left over"},
           {"\u00bd mm\u2033", 5, "left over"},
           {"7' 3", 5, "followed by inches"},
           {"7' 3 mm", 6, "followed by inches"},
           {"7' 14\"", 4, "under 12"},
           {"7.5' 3\"", 6, "whole"},
           {"1/0 in", 4, "over zero"},
           {"--2 mm", 2, "a number was expected"},
           {"1/2/3 in", 4, "is not a unit"},
           {"12 mm\n", 6, "left over"},
       }) {
    ExpectRefused(c);
  }
}

TEST(Parse, AnyBytesAreReadOrRefused) {
  std::mt19937 random(11);
  const std::string alphabet = "0123456789.,/'\" -+eEmincftog\xc2\xbd\xe2\x80\xb2\x00z";
  for (int i = 0; i < 20000; ++i) {
    std::string text;
    for (int n = static_cast<int>(random() % 12); n > 0; --n) text += alphabet[random() % alphabet.size()];
    const auto parsed = ParseLength(text);
    if (parsed.ok()) {
      EXPECT_TRUE(std::isfinite(parsed->value.mm())) << text;
    }
  }
}

TEST(Parse, ReadsBackWhatFormatWrites) {
  std::mt19937_64 random(12);
  std::uniform_real_distribution<double> mm(-5000, 5000);
  for (int i = 0; i < 5000; ++i) {
    const Length length = Length::Mm(mm(random));
    // To the step that was printed: 1/16 in is 1.5875 mm, half of it 0.79375 mm; a half 64th is
    // 0.1984375 mm, half of it 0.09921875 mm; 1/8 in is 3.175 mm, half of it 1.5875 mm.
    EXPECT_NEAR(ParseLength(FormatFeetInches(length, 16))->value.mm(), length.mm(), 0.79375 + 1e-9);
    EXPECT_NEAR(ParseLength(FormatInches(length, 8))->value.mm(), length.mm(), 1.5875 + 1e-9);
    EXPECT_NEAR(ParseLength(FormatMm(length, 1))->value.mm(), length.mm(), 0.05 + 1e-9);
    EXPECT_NEAR(ParseLength(FormatIn64(length) + " in")->value.mm(), length.mm(), 0.09921875 + 1e-9);
    EXPECT_EQ(ParseLength(FormatShortest(length.mm()) + " mm")->value.mm(), length.mm());
  }
}

TEST(Units, AreFoundByTheSchemasNames) {
  ASSERT_NE(FindUnit("Length", "inch"), nullptr);
  EXPECT_DOUBLE_EQ(FindUnit("Length", "inch")->to_first(87), 2209.8);
  EXPECT_DOUBLE_EQ(FindUnit("Time", "days")->from_first(43200), 0.5);
  EXPECT_DOUBLE_EQ(FindUnit("Modulus", "msi")->to_first(1), 6.894757293168361);
  EXPECT_EQ(FindUnit("Length", "g"), nullptr);
  EXPECT_TRUE(UnitsOf("Money").empty());
  std::mt19937_64 random(13);
  std::uniform_real_distribution<double> value(-1e4, 1e4);
  for (const char* kind : {"Length", "Mass", "Volume", "Angle", "Force", "Modulus", "Density", "Temperature", "Time"}) {
    ASSERT_FALSE(UnitsOf(kind).empty()) << kind;
    EXPECT_EQ(UnitsOf(kind)[0].to_first(12.3), 12.3);
    for (const Unit& unit : UnitsOf(kind)) {
      for (int i = 0; i < 2000; ++i) {
        const double x = value(random);
        ASSERT_NEAR(unit.from_first(unit.to_first(x)), x, 1e-12 * (std::abs(x) + 40)) << kind << " " << unit.name;
      }
    }
  }
}

TEST(Parse, ByTheNameOfTheKind) {
  // 1 lb = 16 oz; as a force it has a unit of its own.
  EXPECT_EQ(ParseQuantity("Mass", "2 lb")->number, 32);
  EXPECT_EQ(ParseQuantity("Mass", "2 lb")->unit, "oz");
  EXPECT_EQ(ParseQuantity("Force", "2 lb")->unit, "lbf");
  EXPECT_EQ(ParseQuantity("Length", "2 lb").status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(ParseQuantity("Colour", "2 lb").status().code(), absl::StatusCode::kNotFound);
  for (const std::string_view kind : KindsInWords()) EXPECT_FALSE(UnitsOf(kind).empty()) << kind;
}

}  // namespace
}  // namespace withy
