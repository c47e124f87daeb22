#include "withy/units/format.h"

#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <random>

namespace withy {
namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
constexpr double kInf = std::numeric_limits<double>::infinity();

TEST(Format, ShortestReadsBack) {
  EXPECT_EQ(FormatShortest(87), "87");
  EXPECT_EQ(FormatShortest(0.1), "0.1");
  EXPECT_EQ(FormatShortest(-0.0), "0");
  EXPECT_EQ(FormatShortest(8.30), "8.3");
  EXPECT_EQ(FormatShortest(kNan), "?");
  EXPECT_EQ(FormatShortest(-kInf), "?");
  std::mt19937_64 random(1);
  for (int i = 0; i < 20000; ++i) {
    const double x = std::bit_cast<double>(random());
    if (!std::isfinite(x)) continue;
    EXPECT_EQ(std::strtod(FormatShortest(x).c_str(), nullptr), x);
  }
}

TEST(Format, FixedRoundsTheBinaryValue) {
  EXPECT_EQ(FormatFixed(2209.8, 1), "2209.8");
  EXPECT_EQ(FormatFixed(0.125, 2), "0.12");  // an exact half goes to the even digit
  EXPECT_EQ(FormatFixed(0.375, 2), "0.38");
  EXPECT_EQ(FormatFixed(1.005, 2), "1.00");  // 1.005 is 1.00499999999999989 in binary
  EXPECT_EQ(FormatFixed(-0.04, 1), "0.0");
  EXPECT_EQ(FormatFixed(-0.4, 0), "0");
  EXPECT_EQ(FormatFixed(-0.06, 1), "-0.1");
  EXPECT_EQ(FormatFixed(kNan, 1), "?");
  EXPECT_EQ(FormatFixed(1e308, 0).size(), 309u);
  EXPECT_EQ(FormatFixed(-1.7976931348623157e308, 40).size(), 1u + 309 + 1 + 17);
  EXPECT_EQ(FormatMm(Length::Inches(87), 1), "2209.8 mm");
  EXPECT_EQ(FormatGrams(Mass::Grams(12.345), 1), "12.3 g");
}

TEST(Format, FeetInchesFractions) {
  EXPECT_EQ(FormatFeetInches(Length::Mm(2222.5), 8), "7' 3 1/2\"");
  EXPECT_EQ(FormatFeetInches(Length::Inches(84), 8), "7' 0\"");
  EXPECT_EQ(FormatFeetInches(Length::Inches(84.125), 8), "7' 1/8\"");
  EXPECT_EQ(FormatFeetInches(Length::Inches(11.99), 8), "1' 0\"");  // rounded first, then split
  EXPECT_EQ(FormatFeetInches(Length::Inches(11.875), 16), "11 7/8\"");
  EXPECT_EQ(FormatFeetInches(Length::Inches(-14), 8), "-1' 2\"");
  EXPECT_EQ(FormatFeetInches(Length::Inches(-0.01), 8), "0\"");
  EXPECT_EQ(FormatInches(Length::Inches(87.5), 8), "87 1/2\"");
  EXPECT_EQ(FormatInches(Length::Inches(0.1875), 16), "3/16\"");
  // Half a step is rounded away from zero: 1/16 and 3/16 to eighths.
  EXPECT_EQ(FormatInches(Length::Inches(0.0625), 8), "1/8\"");
  EXPECT_EQ(FormatInches(Length::Inches(0.1875), 8), "1/4\"");
  EXPECT_EQ(FormatInches(Length::Inches(-0.0625), 8), "-1/8\"");
  EXPECT_EQ(FormatInches(Length::Mm(kNan), 8), "?");
  EXPECT_EQ(FormatFeetInches(Length::Mm(kInf), 8), "?");
  EXPECT_EQ(FormatInches(Length::Inches(1152921504606846976.0), 8), "1152921504606846976\"");
}

TEST(Format, TipTopsInHalfSixtyFourths) {
  EXPECT_EQ(FormatIn64(Length::In64(5.5)), "5.5/64");
  EXPECT_EQ(FormatIn64(Length::Mm(2.18)), "5.5/64");  // 2.18 / 25.4 * 64 = 5.493
  EXPECT_EQ(FormatIn64(Length::In64(6)), "6/64");
  EXPECT_EQ(FormatIn64(Length::In64(5.25)), "5.5/64");
  EXPECT_EQ(FormatIn64(Length::In64(64)), "64/64");
  EXPECT_EQ(FormatIn64(Length::Mm(-0.01)), "0/64");
  EXPECT_EQ(FormatIn64(Length::Mm(kNan)), "?");
}

}  // namespace
}  // namespace withy
