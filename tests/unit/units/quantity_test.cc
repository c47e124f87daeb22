#include "withy/units/quantity.h"

#include <gtest/gtest.h>
#include <rapidjson/document.h>

#include <cmath>
#include <fstream>
#include <functional>
#include <map>
#include <random>
#include <sstream>
#include <string>
#include <vector>

namespace withy {
namespace {

// The published definitions (international yard and pound agreement, NIST SP 811), with their own sources named in the
// file.
std::map<std::string, double> PublishedConstants() {
  std::ifstream file(WITHY_SOURCE_DIR "/tests/reference/public/U_units_constants.json");
  std::stringstream text;
  text << file.rdbuf();
  rapidjson::Document json;
  json.Parse(text.str().c_str());
  std::map<std::string, double> constants;
  if (json.HasParseError()) return constants;
  for (const auto& constant : json["constants"].GetArray()) {
    constants[constant["name"].GetString()] = constant["value"].GetDouble();
  }
  return constants;
}

TEST(Quantity, ConstantsAreThePublishedOnes) {
  // What one of each published unit is by the library's doors.
  const std::map<std::string, double> ours = {
      {"standard_gravity_m_s2", kStandardGravity},
      {"pound_kg", Mass::Pounds(1).kilograms()},
      {"ounce_avoirdupois_kg", Mass::Ounces(1).kilograms()},
      {"grain_kg", Mass::Grains(1).kilograms()},
      {"inch_m", Length::Inches(1).meters()},
      {"foot_m", Length::Feet(1).meters()},
      {"pound_force_N", Force::PoundsForce(1).newtons()},
      {"psi_Pa", Modulus::Msi(1e-6).pascals()},
      {"ounce_force_N", Force::PoundsForce(1.0 / 16).newtons()},
      {"grains_per_pound", Mass::Pounds(1).grains()},
  };
  const auto published = PublishedConstants();
  ASSERT_FALSE(published.empty());
  for (const auto& [name, value] : published) {
    ASSERT_TRUE(ours.contains(name)) << name;
    EXPECT_NEAR(ours.at(name) / value, 1, 4e-16) << name;
  }
}

TEST(Quantity, HandWorkedValues) {
  EXPECT_DOUBLE_EQ(Length::Inches(87).mm(), 2209.8);                      // 87 * 25.4
  EXPECT_DOUBLE_EQ(Length::In64(5.5).mm(), 2.1828125);                    // 5.5 / 64 * 25.4
  EXPECT_DOUBLE_EQ(Length::Feet(9).mm(), 2743.2);                         // 9 * 304.8
  EXPECT_DOUBLE_EQ(Volume::FluidOunces(1).milliliters(), 29.5735295625);  // 231 in3 / 128 = 231 * 16.387064 ml / 128
  EXPECT_DOUBLE_EQ(Volume::CubicMm(2500).milliliters(), 2.5);
  EXPECT_DOUBLE_EQ(Angle::Degrees(90).radians(), std::acos(0.0));
  EXPECT_DOUBLE_EQ(Force::WeightOf(Mass::Grams(100)).newtons(), 0.980665);
  EXPECT_DOUBLE_EQ(Force::KilogramsForce(4).newtons(), 39.2266);
  EXPECT_NEAR(Modulus::Msi(33).gigapascals(), 227.52699, 1e-5);  // 33 * 6.894757293
  EXPECT_DOUBLE_EQ(Density::GramsPerCm3(1.55).kilograms_per_m3(), 1550);
  EXPECT_DOUBLE_EQ(Temperature::Fahrenheit(72.5).celsius(), 22.5);  // 40.5 * 5 / 9
  EXPECT_DOUBLE_EQ(Temperature::Fahrenheit(-40).celsius(), -40);
  EXPECT_DOUBLE_EQ(Duration::Days(1.5).hours(), 36);
}

TEST(Quantity, IsAVectorSpace) {
  const Length a = Length::Mm(30), b = Length::Mm(4);
  EXPECT_EQ((a + b).mm(), 34);
  EXPECT_EQ((a - b * 2).mm(), 22);
  EXPECT_EQ((0.5 * a / 3).mm(), 5);
  EXPECT_EQ(a / b, 7.5);
  EXPECT_EQ((-a).mm(), -30);
  EXPECT_LT(b, a);
  Length sum;
  sum += a;
  sum -= b;
  EXPECT_EQ(sum, Length::Mm(26));
}

struct Door {
  std::string name;
  std::function<double(double)> there_and_back;
};

const std::vector<Door>& Doors() {
  static const std::vector<Door> doors = {
      {"mm", [](double x) { return Length::Mm(x).mm(); }},
      {"m", [](double x) { return Length::Meters(x).meters(); }},
      {"cm", [](double x) { return Length::Centimeters(x).centimeters(); }},
      {"inch", [](double x) { return Length::Inches(x).inches(); }},
      {"ft", [](double x) { return Length::Feet(x).feet(); }},
      {"in64", [](double x) { return Length::In64(x).in64(); }},
      {"g", [](double x) { return Mass::Grams(x).grams(); }},
      {"kg", [](double x) { return Mass::Kilograms(x).kilograms(); }},
      {"oz", [](double x) { return Mass::Ounces(x).ounces(); }},
      {"lb", [](double x) { return Mass::Pounds(x).pounds(); }},
      {"grain", [](double x) { return Mass::Grains(x).grains(); }},
      {"ml", [](double x) { return Volume::Milliliters(x).milliliters(); }},
      {"l", [](double x) { return Volume::Liters(x).liters(); }},
      {"mm3", [](double x) { return Volume::CubicMm(x).cubic_mm(); }},
      {"fl_oz", [](double x) { return Volume::FluidOunces(x).fluid_ounces(); }},
      {"deg", [](double x) { return Angle::Degrees(x).degrees(); }},
      {"rad", [](double x) { return Angle::Radians(x).radians(); }},
      {"n", [](double x) { return Force::Newtons(x).newtons(); }},
      {"lbf", [](double x) { return Force::PoundsForce(x).pounds_force(); }},
      {"kgf", [](double x) { return Force::KilogramsForce(x).kilograms_force(); }},
      {"gpa", [](double x) { return Modulus::Gigapascals(x).gigapascals(); }},
      {"pa", [](double x) { return Modulus::Pascals(x).pascals(); }},
      {"msi", [](double x) { return Modulus::Msi(x).msi(); }},
      {"g_per_cm3", [](double x) { return Density::GramsPerCm3(x).grams_per_cm3(); }},
      {"kg_per_m3", [](double x) { return Density::KilogramsPerM3(x).kilograms_per_m3(); }},
      {"seconds", [](double x) { return Duration::Seconds(x).seconds(); }},
      {"minutes", [](double x) { return Duration::Minutes(x).minutes(); }},
      {"hours", [](double x) { return Duration::Hours(x).hours(); }},
      {"days", [](double x) { return Duration::Days(x).days(); }},
  };
  return doors;
}

TEST(Quantity, EveryUnitRoundTrips) {
  std::mt19937_64 random(20260314);
  std::uniform_real_distribution<double> exponent(-6, 9);
  for (int i = 0; i < 20000; ++i) {
    const double x = std::pow(10, exponent(random)) * (i % 2 ? 1 : -1);
    for (const Door& door : Doors()) ASSERT_NEAR(door.there_and_back(x) / x, 1, 1e-12) << door.name << " " << x;
  }
  std::uniform_real_distribution<double> degrees(-100, 400);
  for (int i = 0; i < 20000; ++i) {
    const double f = degrees(random);
    ASSERT_NEAR(Temperature::Fahrenheit(f).fahrenheit(), f, 1e-12 * 500);
  }
}

TEST(Quantity, TheAuthorsNumberComesBackExactly) {
  // Every 64th of an inch up to 12 ft, and every half 64th of a tip-top: x * 254 is exact, (y / 10) * 10 == y for
  // every double (10 = 2^3 + 2^1: Kahan, quoted in Goldberg 1991, theorem 7), so the division by 254 is of an exact
  // multiple.
  for (int i = 1; i <= 144 * 64; ++i) {
    const double inches = i / 64.0;
    ASSERT_EQ(Length::Inches(inches).inches(), inches);
    ASSERT_EQ(Length::In64(i / 2.0).in64(), i / 2.0);
    ASSERT_EQ(Length::Feet(inches).feet(), inches);
  }
  // What is not exact in binary still comes back when it is written with four decimals.
  for (int i = 1; i <= 144 * 100; ++i) {
    ASSERT_EQ(std::round(Length::Inches(i / 100.0).inches() * 1e4), i * 100.0);
    ASSERT_EQ(Length::Mm(i / 100.0).mm(), i / 100.0);
    ASSERT_EQ(Mass::Grams(i / 100.0).grams(), i / 100.0);
  }
}

}  // namespace
}  // namespace withy
