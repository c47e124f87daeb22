// Counterweights and their potting, worked by hand.
#include "withy/bonding/counterweight_stack.h"

#include <cmath>

#include "gtest/gtest.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

// Three quarter-ounce units are 0.75 oz (21.26 g: international avoirdupois ounce of 28.349523125 g).
TEST(CounterweightStack, ThreeQuarterOunces) {
  const CounterweightStack stack({Mass::Ounces(0.25).kilograms(), 0.0125, 0.0068}, {.length_m = 0.1, .diameter_m = 0.021});
  EXPECT_NEAR(stack.Units(3).mass_kg * 1000, 21.26, 0.005);
  EXPECT_NEAR(stack.Units(3).mass_kg * 1000, 0.75 * 28.349523125, 1e-12);
}

// Seven 10 g units, 9 mm long, three abreast from 20 mm up: layers of 3, 3 and 1 at 24.5, 33.5 and 42.5 mm:
// (3 x 24.5 + 3 x 33.5 + 42.5) / 7 = 216.5 / 7.
TEST(CounterweightStack, FullLayersFirst) {
  const CounterweightStack stack({0.010, 0.005, 0.009}, {.start_m = 0.020, .length_m = 0.060, .diameter_m = 0.011, .cover_m = 0.003});
  EXPECT_EQ(stack.side_by_side(), 3);  // 11 / 5 = 2.2, three need 2.155
  EXPECT_EQ(stack.fit(), 18);          // floor(57 / 9) = 6 layers
  EXPECT_EQ(stack.Layers(7), 3);
  EXPECT_NEAR(stack.EndOf(7), 0.047, 1e-15);
  EXPECT_NEAR(stack.Units(7).Balance(), 0.2165 / 7, 1e-15);
}

// The bore filled over 3 layers and the cover, 30 mm, less seven units: pi/4 (11^2 x 30 - 7 x 5^2 x 9) mm3.
TEST(CounterweightStack, PottingFillsWhatTheUnitsLeave) {
  const CounterweightStack stack({0.010, 0.005, 0.009},
                    {.start_m = 0.020, .length_m = 0.060, .diameter_m = 0.011, .cover_m = 0.003, .potting_kg_m3 = 1150});
  const double volume = M_PI / 4 * (121 * 30 - 7 * 25 * 9) * 1e-9;
  EXPECT_NEAR(stack.PottingVolume(7), volume, 1e-18);
  EXPECT_NEAR(stack.Potting(7).mass_kg, 1150 * volume, 1e-15);
  // First moment: the whole bore at its middle, less the units at theirs (216.5 / 7 mm).
  const double first = M_PI / 4 * (121 * 30 * (20 + 15.0) - 7 * 25 * 9 * (216.5 / 7)) * 1e-12;
  EXPECT_NEAR(stack.Potting(7).s_kg_m, 1150 * first, 1e-18);
  EXPECT_EQ(stack.Potting(0).mass_kg, 0);
  EXPECT_EQ(stack.PottingVolume(0), 0);
}

}  // namespace
}  // namespace withy
