// Slopes against differences of solutions on both sides (Fornberg 1988, five points), and against scaling.
#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "unit/numerics/strung_rods.h"

namespace withy {
namespace {

// f(-2), f(-1), f(1), f(2) steps away.
double Difference(const double (&f)[4], double step) {
  return (f[0] - 8 * f[1] + 8 * f[2] - f[3]) / (12 * step);
}

constexpr double kStep = 2e-4, kAway[] = {-2 * kStep, -kStep, kStep, 2 * kStep};

struct Neighbours {
  StrungRod rods[4];
  StrungBeam bent[4];
  std::vector<Clearance> clear[4];

  double Slope(const std::function<double(int)>& of) const { return Difference({of(0), of(1), of(2), of(3)}, kStep); }
};

template <typename Move>
Neighbours NeighboursOf(const StrungRod& rod, const Move& move) {
  Neighbours near;
  for (int i = 0; i < 4; ++i) {
    near.rods[i] = rod;
    move(near.rods[i], kAway[i]);
    near.bent[i] = near.rods[i].Solve({.tolerance = 1e-13});
    EXPECT_EQ(near.bent[i].state, ElasticaState::kSolved);
    near.clear[i] = ClearancesOf(rod.beam, rod.outer_m, near.rods[i].rings, near.rods[i].load, near.bent[i]);
  }
  return near;
}

void ExpectSlopesByRings(const StrungRod& rod) {
  const StrungBeam bent = rod.Solve();
  ASSERT_EQ(bent.state, ElasticaState::kSolved) << bent.why;
  const StrungSlopes slopes = SlopesOf(rod.beam, rod.rings, rod.load, bent);
  const auto clear = ClearancesOf(rod.beam, rod.outer_m, rod.rings, rod.load, bent, true);
  ASSERT_EQ(slopes.turn.size(), rod.rings.size());
  for (std::size_t j = 0; j + 1 < rod.rings.size(); ++j) {
    const Neighbours near = NeighboursOf(rod, [&](StrungRod& moved, double by) { moved.rings[j].s += by; });
    for (std::size_t k = 0; k < rod.rings.size(); ++k) {
      EXPECT_NEAR(slopes.direction[k][j], near.Slope([&](int i) { return near.bent[i].spans[k].direction; }), 1e-8);
      EXPECT_NEAR(slopes.turn[k][j], near.Slope([&](int i) { return near.bent[i].rings[k].turn; }), 1e-8);
      EXPECT_NEAR(slopes.angle[k][j], near.Slope([&](int i) { return near.bent[i].rings[k].angle; }), 1e-8);
      EXPECT_NEAR(clear[k].slopes[j], near.Slope([&](int i) { return near.clear[i][k].least; }), 1e-6)
          << "clearance of span " << k << " by ring " << j;
    }
  }
}

TEST(StrungBeamSlopesTest, ByThePlacesOfRings) {
  ExpectSlopesByRings(RodWithRings(+1, 15, 90, 0, 1));
  ExpectSlopesByRings(RodWithRings(-1, 15, 120, 0, 1));
}

TEST(StrungBeamSlopesTest, ByThePlacesOfTurnedRings) {
  ExpectSlopesByRings(RodWithRings(+1, 15, 90, 1.3, 1));
}

TEST(StrungBeamSlopesTest, ByThePlacesOfRingsWithFriction) {
  StrungRod rod = RodWithRings(+1, 15, 90, 0, 1);
  rod.load.friction = 0.2;
  rod.load.slip = LineSlip::kIn;
  ExpectSlopesByRings(rod);
}

// Of a straight line over a straight beam the least clearance is at a ring and goes with it.
TEST(StrungBeamSlopesTest, ClearanceAtARingGoesWithIt) {
  StrungRod rod = RodWithRings(+1, 0.01, 0, 0, 1);
  const StrungBeam bent = rod.Solve();
  const auto clear = ClearancesOf(rod.beam, rod.outer_m, rod.rings, rod.load, bent, true);
  // Span 3, from ring 3 at 1.1 m, 9.24 mm off, to ring 4 at 1.4 m, 7.44 mm off: its line falls by 6 mm/m, the radius by
  // 2.5 mm/m, so that it comes nearest at ring 4. There r = 6 - 2.5 x 1.4 = 2.5 mm: 4.94 mm, and as the offset stays
  // with the ring, which moves to a radius less by 2.5 mm/m, that grows by 2.5 mm/m.
  EXPECT_NEAR(clear[3].s, 1.4, 1e-6);
  EXPECT_NEAR(clear[3].least, 4.94e-3, 1e-6);
  EXPECT_NEAR(clear[3].slopes[3], 2.5e-3, 2e-5);
  EXPECT_NEAR(clear[3].slopes[2], 0, 2e-5);
}

TEST(StrungBeamSlopesTest, ByTheTension) {
  for (double turned : {0.0, 1.3}) {
    const StrungRod rod = RodWithRings(-1, 15, 100, turned);
    const StrungBeam bent = rod.Solve();
    const StrungSlopes slopes = SlopesOf(rod.beam, rod.rings, rod.load, bent);
    const Neighbours near =
        NeighboursOf(rod, [](StrungRod& pulled, double by) { pulled.load.tension *= std::exp(by); });
    for (std::size_t k = 0; k < rod.rings.size(); ++k) {
      EXPECT_NEAR(slopes.turn_by_tension[k], near.Slope([&](int i) { return near.bent[i].rings[k].turn; }), 1e-8);
      EXPECT_NEAR(slopes.angle_by_tension[k], near.Slope([&](int i) { return near.bent[i].rings[k].angle; }), 1e-8);
    }
    EXPECT_NEAR(slopes.tip_x_by_tension, near.Slope([&](int i) { return near.bent[i].tip().x; }), 1e-8);
    EXPECT_NEAR(slopes.tip_y_by_tension, near.Slope([&](int i) { return near.bent[i].tip().y; }), 1e-8);
    EXPECT_NEAR(slopes.clamp_moment_by_tension, near.Slope([&](int i) { return near.bent[i].nodes[0].moment; }), 1e-6);
  }
}

// A beam twice as stiff under twice the tension keeps its shape.
TEST(StrungBeamSlopesTest, TensionAndStiffnessScaleTogether) {
  StrungRod rod = RodWithRings(-1, 15, 100);
  const StrungBeam once = rod.Solve();
  rod.load.tension *= 2;
  for (BeamPiece& piece : rod.beam.pieces) {
    for (double& power : piece.stiffness) power *= 2;
  }
  const StrungBeam twice = rod.Solve();
  EXPECT_NEAR(twice.tip().x, once.tip().x, 1e-11);
  EXPECT_NEAR(twice.nodes[0].moment, 2 * once.nodes[0].moment, 1e-9);
}

}  // namespace
}  // namespace withy
