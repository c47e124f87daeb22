#include "withy/numerics/beam.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <limits>

namespace withy {
namespace {

using ::testing::HasSubstr;

constexpr double kNothing = std::numeric_limits<double>::quiet_NaN();

// 2 m in two pieces: the first tapers, stiffness 81 (1 - t/3)^4, mass 9 (1 - t/3)^2; the second is even.
Beam TwoPieces() {
  Beam beam;
  beam.pieces.push_back({0, 1.5, {81, -108, 54, -12, 1}, {9, -6, 1}});
  beam.pieces.push_back({1.5, 2, {16}, {4}});
  return beam;
}

TEST(Beam, StiffnessAndMassWorkedByHand) {
  const Beam beam = TwoPieces();
  EXPECT_DOUBLE_EQ(beam.length(), 2);
  EXPECT_DOUBLE_EQ(beam.pieces[0].StiffnessAt(0), 81);
  EXPECT_DOUBLE_EQ(beam.pieces[0].StiffnessAt(0.75), 39.0625);  // (3 - 1/2)^4
  EXPECT_DOUBLE_EQ(beam.pieces[0].StiffnessAt(1.5), 16);        // (3 - 1)^4
  EXPECT_DOUBLE_EQ(beam.pieces[0].MassPerLengthAt(0.75), 6.25);
  EXPECT_DOUBLE_EQ(beam.pieces[1].StiffnessAt(1.7), 16);
  EXPECT_EQ(WhatIsWrongWith(beam), "");
}

TEST(Beam, WhatIsWrongIsSaidWithItsPlace) {
  EXPECT_THAT(WhatIsWrongWith(Beam{}), HasSubstr("no pieces"));
  Beam beam = TwoPieces();
  beam.pieces[1].s0 = 1.6;
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("end to end at 1.6 m"));
  beam = TwoPieces();
  beam.pieces[1].s1 = 1.5;
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("no length at 1.5 m"));
  beam = TwoPieces();
  std::swap(beam.pieces[0], beam.pieces[1]);
  EXPECT_NE(WhatIsWrongWith(beam), "");
  beam = TwoPieces();
  beam.pieces[0].s1 = beam.pieces[1].s0 = kNothing;
  EXPECT_NE(WhatIsWrongWith(beam), "");
  beam = TwoPieces();
  beam.pieces[1].stiffness[0] = std::numeric_limits<double>::infinity();
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("stiffness is not a number at 1.5 m"));
  beam = TwoPieces();
  beam.pieces[1].mass[1] = -4.5;  // 4 - 4.5 t: below zero at the end
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("mass is below zero"));
  beam = TwoPieces();
  beam.pieces[1].mass[1] = kNothing;
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("mass is not a number"));
}

// 1 - 4 t (1 - t) c dips to 1 - c halfway, positive at both ends: 0.2 + 0.5 s = 0.35 m of a piece from 0.1 to 0.6 m.
TEST(Beam, StiffnessThatDipsBetweenTheEnds) {
  Beam beam;
  beam.pieces.push_back({0, 0.1, {1}, {}});
  beam.pieces.push_back({0.1, 0.6, {1, -4, 4}, {}});
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("stiffness is not above zero at 0.35 m"));
  beam.pieces[1].stiffness = {1, -4 * 0.999, 4 * 0.999};
  EXPECT_EQ(WhatIsWrongWith(beam), "");
  beam.pieces[1].stiffness = {1, -4 * 1.001, 4 * 1.001};
  EXPECT_NE(WhatIsWrongWith(beam), "");
  beam.pieces[1].stiffness = {};
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("stiffness is not above zero at 0.1 m"));
}

// A mass per length of (1 - t)^2 runs out to nothing, however its powers are rounded.
TEST(Beam, MassMayRunOut) {
  Beam beam;
  beam.pieces.push_back({0, 1, {1}, {0.1, -0.2, 0.1}});
  EXPECT_EQ(WhatIsWrongWith(beam), "");
}

TEST(Beam, MassesLieOnIt) {
  Beam beam = TwoPieces();
  beam.masses = {{2, 0.1}, {0, 0}};
  EXPECT_EQ(WhatIsWrongWith(beam), "");
  beam.masses = {{2.1, 0.1}};
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("beyond the beam, at 2.1 m"));
  beam.masses = {{1, -0.1}};
  EXPECT_THAT(WhatIsWrongWith(beam), HasSubstr("below zero or not a number at 1 m"));
  beam.masses = {{kNothing, 0.1}};
  EXPECT_NE(WhatIsWrongWith(beam), "");
}

}  // namespace
}  // namespace withy
