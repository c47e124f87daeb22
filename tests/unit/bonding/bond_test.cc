// Profiles on either side of the adhesive, and what counterweights are potted in.
#include "bond.h"

#include <cmath>
#include <numbers>

#include "gtest/gtest.h"
#include "support/rod_of.h"

namespace withy::testing {
namespace {

// Falling from 4 to 2 and rising from 1 to 3 over [0, 1]: they meet at 4 - 2 x = 1 + 2 x, x = 0.75, y = 2.5.
TEST(WiderOf, HasAKnotWhereTheyCross) {
  const Profile wider = WiderOf(Profile({{0, 4}, {1, 2}}), Profile({{0, 1}, {1, 3}}), 0, 1);
  EXPECT_DOUBLE_EQ(wider.At(0), 4);
  EXPECT_DOUBLE_EQ(wider.At(0.75), 2.5);
  EXPECT_DOUBLE_EQ(wider.At(1), 3);
  EXPECT_DOUBLE_EQ(wider.At(0.5), 3);       // still the falling one
  EXPECT_DOUBLE_EQ(wider.At(0.875), 2.75);  // the rising one
}

Rod Weighted(const std::string& weights) {
  return RodOf(R"(
    handle { parts { id: "rear" kind: "grip" length { mm: 200 } place { from_butt { mm: 0 } }
      cavity { at { mm: 12 } length { mm: 120 } diameter { mm: 21 } }
      weights { unit_mass { g: 7 } unit_length { mm: 6.8 } unit_diameter { mm: 12.5 } bond: "e" )" +
               weights + "} } }");
}

// Of 12.5 mm one lies in 21 mm at a time. Three: pi/4 21^2 (3 x 6.8 + 3) - 3 pi/4 12.5^2 6.8 = 8104.9 - 2503.5 mm3.
TEST(PottingOf, UnitsOneBehindTheOther) {
  const Rod rod = Weighted("count: 3");
  const Potting potting = PottingOf(rod.handle.parts[0], 3);
  const double quarter = std::numbers::pi / 4;
  const double filled = quarter * 21 * 21 * 23.4, units = 3 * quarter * 12.5 * 12.5 * 6.8;
  EXPECT_NEAR(*potting.volume_m3 * 1e9, filled - units, 1e-6);
  EXPECT_NEAR(potting.length_m * 1000, 23.4, 1e-9);
  // the filling balances at 11.7 mm, the units at 10.2 mm, both from the cavity's butt end at 12 mm
  EXPECT_NEAR(*potting.center_m * 1000, 12 + (filled * 11.7 - units * 10.2) / (filled - units), 1e-9);
}

TEST(PottingOf, TheCoverIsAsWritten) {
  const Rod rod = Weighted("cover { mm: 10 }");
  EXPECT_NEAR(PottingOf(rod.handle.parts[0], 1).length_m * 1000, 16.8, 1e-9);
}

TEST(PottingOf, WithoutDimensionsItSaysWhatToMeasure) {
  const Rod rod = RodOf(R"(handle { parts { id: "rear" length { mm: 200 } weights { count: 2 bond: "e" } } })");
  const Potting potting = PottingOf(rod.handle.parts[0], 2);
  EXPECT_FALSE(potting.volume_m3);
  EXPECT_FALSE(potting.measure.empty());
}

}  // namespace
}  // namespace withy::testing
