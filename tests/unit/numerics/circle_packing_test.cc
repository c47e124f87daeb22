#include "withy/numerics/circle_packing.h"

#include "gtest/gtest.h"

namespace withy {
namespace {

// Two need twice their diameter, three 1 + 2/sqrt 3 = 2.1547, four 1 + sqrt 2 = 2.4142, five 2.7013, seven 3; six fit no
// sooner than seven (table of the smallest circles around equal ones, Wikipedia 'Circle packing in a circle').
TEST(SideBySide, TableOfTheSmallestCircles) {
  EXPECT_EQ(SideBySide(9.99, 10, 1e-6), 0);
  EXPECT_EQ(SideBySide(10, 10, 1e-6), 1);
  EXPECT_EQ(SideBySide(19.99, 10, 1e-6), 1);
  EXPECT_EQ(SideBySide(20, 10, 1e-6), 2);
  EXPECT_EQ(SideBySide(21.54, 10, 1e-6), 2);
  EXPECT_EQ(SideBySide(21.55, 10, 1e-6), 3);
  EXPECT_EQ(SideBySide(24.14, 10, 1e-6), 3);
  EXPECT_EQ(SideBySide(24.15, 10, 1e-6), 4);
  EXPECT_EQ(SideBySide(27.01, 10, 1e-6), 4);
  EXPECT_EQ(SideBySide(27.02, 10, 1e-6), 5);
  EXPECT_EQ(SideBySide(29.99, 10, 1e-6), 5);
  EXPECT_EQ(SideBySide(30, 10, 1e-6), 7);
  EXPECT_EQ(SideBySide(300, 10, 1e-6), 7);
}

TEST(SideBySide, ATieFits) {
  EXPECT_EQ(SideBySide(20 - 5e-7, 10, 1e-6), 2);
  EXPECT_EQ(SideBySide(20 - 5e-6, 10, 1e-6), 1);
}

}  // namespace
}  // namespace withy
