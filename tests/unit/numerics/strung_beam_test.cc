// Limits that have a known answer, balance of forces and moments, the capstan, what is refused.
#include "withy/numerics/strung_beam.h"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <string>

#include "unit/numerics/strung_rods.h"

namespace withy {
namespace {

using std::numbers::pi;

StrungRod WithRingsOnTheAxis(int count, double tension, double far_degrees) {
  StrungRod rod = TubeRod(4);
  for (int k = 1; k <= count; ++k) rod.rings.push_back({2.0 * k / count, 0, 0});
  rod.load = {.tension = tension, .far_angle = far_degrees * pi / 180};
  return rod;
}

// More and more rings on the axis press on the beam as does the tension on its end alone: what the line does along a
// curve is balanced by what holds it there. The error goes with the square of the spacing, so that thrice as many rings
// leave a ninth: (9 fine - coarse) / 8.
TEST(StrungBeamTest, ManyRingsOnTheAxisAreOneForceOnTheEnd) {
  for (double degrees : {30.0, 90.0, 140.0}) {
    const double direction = -degrees * pi / 180;
    const Elastica dead =
        SolveElastica(TubeRod(4).beam, {.force_x = 8 * std::cos(direction), .force_y = 8 * std::sin(direction)},
                      {.tolerance = 1e-12});
    const StrungBeam coarse = WithRingsOnTheAxis(40, 8, degrees).Solve(),
                     fine = WithRingsOnTheAxis(120, 8, degrees).Solve();
    ASSERT_EQ(fine.state, ElasticaState::kSolved);
    EXPECT_GT(std::hypot(coarse.tip().x - dead.tip().x, coarse.tip().y - dead.tip().y), 1e-5);
    EXPECT_NEAR((9 * fine.tip().x - coarse.tip().x) / 8, dead.tip().x, 3e-6);
    EXPECT_NEAR((9 * fine.tip().y - coarse.tip().y) / 8, dead.tip().y, 3e-6);
    EXPECT_NEAR((9 * fine.tip().angle - coarse.tip().angle) / 8, dead.tip().angle, 2e-5);
  }
}

// A single ring on the end, on the axis, and the reel at the clamp: a dead force T (far direction - chord).
TEST(StrungBeamTest, OneRingIsAForceOfTwoLines) {
  const StrungRod rod = WithRingsOnTheAxis(1, 6, 100);
  const StrungBeam bent = rod.Solve();
  ASSERT_EQ(bent.state, ElasticaState::kSolved);
  const double far = -100 * pi / 180, chord = std::atan2(bent.tip().y, bent.tip().x);
  const Elastica dead = SolveElastica(
      rod.beam, {.force_x = 6 * (std::cos(far) - std::cos(chord)), .force_y = 6 * (std::sin(far) - std::sin(chord))},
      {.tolerance = 1e-12});
  EXPECT_NEAR(bent.tip().x, dead.tip().x, 1e-10);
  EXPECT_NEAR(bent.tip().y, dead.tip().y, 1e-10);
  EXPECT_NEAR(bent.tip().angle, dead.tip().angle, 1e-10);
  EXPECT_NEAR(bent.strain_energy, dead.strain_energy, 1e-9);
}

// The same of a section ten to thirty times as long as sqrt(EI / tension), bent near the clamp and all but straight
// beyond.
TEST(StrungBeamTest, LongSoftSection) {
  for (double tension : {100.0, 300.0, 900.0}) {
    StrungRod rod;
    rod.beam.pieces.push_back({0, 1, {1}, {}});
    rod.rings = {{1, 0, 0}};
    rod.load = {.tension = tension, .far_angle = pi / 3};
    const StrungBeam bent = rod.Solve();
    ASSERT_EQ(bent.state, ElasticaState::kSolved) << tension << " N: " << bent.why;
    const double chord = std::atan2(bent.tip().y, bent.tip().x);
    const Elastica dead = SolveElastica(rod.beam,
                                        {.force_x = tension * (std::cos(pi / 3) - std::cos(chord)),
                                         .force_y = tension * (-std::sin(pi / 3) - std::sin(chord))},
                                        {.tolerance = 1e-12});
    ASSERT_EQ(dead.state, ElasticaState::kSolved);
    EXPECT_NEAR(bent.tip().x, dead.tip().x, 1e-10);
    EXPECT_NEAR(bent.tip().y, dead.tip().y, 1e-10);
    EXPECT_NEAR(bent.tip().angle, dead.tip().angle, 1e-9);
  }
}

TEST(StrungBeamTest, TurnsWithItsClamp) {
  StrungRod rod = RodWithRings(+1, 18, 110);
  const StrungBeam level = rod.Solve();
  rod.load.clamp_angle = 0.9;
  const StrungBeam turned = rod.Solve();
  const double c = std::cos(0.9), s = std::sin(0.9);
  EXPECT_NEAR(turned.tip().x, c * level.tip().x - s * level.tip().y, 1e-11);
  EXPECT_NEAR(turned.tip().y, s * level.tip().x + c * level.tip().y, 1e-11);
  EXPECT_NEAR(turned.tip().angle, level.tip().angle + 0.9, 1e-11);
  EXPECT_NEAR(turned.nodes[0].moment, level.nodes[0].moment, 1e-9);
  for (std::size_t k = 0; k < level.rings.size(); ++k) EXPECT_NEAR(turned.rings[k].turn, level.rings[k].turn, 1e-11);
}

TEST(StrungBeamTest, MirroredWithItsSide) {
  StrungRod rod = RodWithRings(+1, 18, 110);
  const StrungBeam up = rod.Solve();
  rod.load.side = -1;
  rod.load.far_angle = -rod.load.far_angle;
  const StrungBeam down = rod.Solve();
  EXPECT_NEAR(down.tip().x, up.tip().x, 1e-11);
  EXPECT_NEAR(down.tip().y, -up.tip().y, 1e-11);
  EXPECT_NEAR(down.nodes[0].moment, -up.nodes[0].moment, 1e-9);
  for (std::size_t k = 0; k < up.rings.size(); ++k) EXPECT_NEAR(down.rings[k].turn, -up.rings[k].turn, 1e-11);
}

// Rings in the plane, turned by 0 or by half a turn: the same as the other side.
TEST(StrungBeamTest, HalfATurnIsTheOtherSide) {
  StrungRod rod = RodWithRings(+1, 18, 80);
  rod.load.reel_offset = 0;
  for (BeamRing& ring : rod.rings) ring.turned = pi;
  const StrungBeam turned = rod.Solve();
  for (BeamRing& ring : rod.rings) ring.turned = 0;
  rod.load.side = -1;
  const StrungBeam other = rod.Solve();
  EXPECT_NEAR(turned.tip().x, other.tip().x, 1e-11);
  EXPECT_NEAR(turned.tip().y, other.tip().y, 1e-11);
  EXPECT_NEAR(turned.rings[3].turn, other.rings[3].turn, 1e-11);
}

// Capstan (Euler): T_(k-1) = T_k exp(-+ friction |turn|), here as the product over all rings.
TEST(StrungBeamTest, FrictionAddsUpAlongTheLine) {
  for (double turned : {0.0, 1.0}) {
    StrungRod rod = RodWithRings(+1, 14, 90, turned);
    rod.load.friction = 0.2;
    rod.load.slip = LineSlip::kOut;
    const StrungBeam out = rod.Solve();
    rod.load.slip = LineSlip::kIn;
    const StrungBeam in = rod.Solve();
    rod.load.slip = LineSlip::kNone;
    const StrungBeam still = rod.Solve();
    ASSERT_EQ(out.state, ElasticaState::kSolved);
    ASSERT_EQ(in.state, ElasticaState::kSolved);
    double turns_out = 0, turns_in = 0;
    for (const RingUnderLine& ring : out.rings) turns_out += std::abs(ring.turn);
    for (const RingUnderLine& ring : in.rings) turns_in += std::abs(ring.turn);
    EXPECT_NEAR(out.tension_at_reel, 14 * std::exp(-0.2 * turns_out), 1e-9);
    EXPECT_NEAR(in.tension_at_reel, 14 * std::exp(0.2 * turns_in), 1e-9);
    EXPECT_EQ(still.tension_at_reel, 14);
    EXPECT_LT(out.tension_at_reel, 14 * std::exp(-0.2 * 1.2));  // some 90 degrees and what the offsets add
  }
}

TEST(StrungBeamTest, SlackLineLeavesItStraight) {
  StrungRod rod = RodWithRings(+1, 0, 90);
  rod.load.clamp_angle = 0.5;
  const StrungBeam bent = rod.Solve();
  ASSERT_EQ(bent.state, ElasticaState::kSolved);
  EXPECT_NEAR(bent.tip().x, 2 * std::cos(0.5), 1e-14);
  EXPECT_NEAR(bent.tip().y, 2 * std::sin(0.5), 1e-14);
  EXPECT_EQ(bent.strain_energy, 0);
}

TEST(StrungBeamTest, TipPointsBackAtTheHand) {
  const StrungRod rod = RodWithRings(-1, 30, 150);
  const StrungBeam bent = rod.Solve();
  ASSERT_EQ(bent.state, ElasticaState::kSolved) << bent.why;
  EXPECT_LT(bent.tip().angle, -2.3);
  EXPECT_LT(bent.tip().x, 0.7);
  for (const RingUnderLine& ring : bent.rings) EXPECT_LT(std::abs(ring.turn), pi);
}

// Rings on the axis and a line straight back: a strut. It buckles at pi^2 EI / (4 L^2) (Euler) as rings become many;
// with n the load is off by some 1/n^2, extrapolated as above. Just below straight holds, alone.
TEST(StrungBeamTest, LineStraightBackBuckles) {
  const auto buckles = [](int count) {
    StrungRod rod;
    rod.beam.pieces.push_back({0, 2, {20}, {}});
    for (int k = 1; k <= count; ++k) rod.rings.push_back({2.0 * k / count, 0, 0});
    rod.load = {.tension = 30, .far_angle = pi};
    const StrungBeam bent = rod.Solve();
    EXPECT_EQ(bent.state, ElasticaState::kSeveral);
    EXPECT_NE(bent.why, "");
    rod.load.tension *= bent.reached * 0.999;
    const StrungBeam below = rod.Solve();
    EXPECT_EQ(below.state, ElasticaState::kSolved);
    EXPECT_NEAR(below.tip().x, 2, 1e-12);
    return 30 * bent.reached;
  };
  EXPECT_NEAR((9 * buckles(60) - buckles(20)) / 8, pi * pi * 20 / 16, 2e-4);
}

TEST(StrungBeamTest, PointsFollowTheBeam) {
  const StrungRod rod = RodWithRings(+1, 15, 90, 0, 60);
  const StrungBeam bent = rod.Solve();
  EXPECT_LE(bent.points.size(), 200u);
  EXPECT_EQ(bent.points.front().s, 0);
  EXPECT_EQ(bent.points.back().s, 2);
  double along = 0;
  for (std::size_t k = 1; k < bent.points.size(); ++k) {
    const BeamPoint &a = bent.points[k - 1], &b = bent.points[k];
    ASSERT_LE(a.s, b.s);
    along += std::hypot(b.x - a.x, b.y - a.y);
    if (b.s > a.s) EXPECT_NEAR(b.x, rod.At(bent, b.s).x, 1e-12);
  }
  EXPECT_NEAR(along, 2, 1e-3);  // a polygon, a little shorter
  for (std::size_t k = 0; k < rod.rings.size(); ++k) {
    EXPECT_NEAR(rod.At(bent, rod.rings[k].s).moment, bent.rings[k].moment_after, 1e-12);
  }
  const StrungBeam bare = rod.Solve({.points = false});
  EXPECT_TRUE(bare.points.empty());
  EXPECT_EQ(bare.rings.size(), 7u);
}

TEST(StrungBeamTest, StartsFromANeighbour) {
  StrungRod rod = RodWithRings(+1, 15, 90);
  const StrungBeam first = rod.Solve();
  for (std::size_t k = 0; k < 6; ++k) rod.rings[k].s += k % 2 == 0 ? 0.02 : -0.02;
  const StrungBeam cold = rod.Solve(), warm = rod.Solve({.tolerance = 1e-12, .near = &first});
  ASSERT_EQ(warm.state, ElasticaState::kSolved);
  EXPECT_LT(2 * warm.newton_steps, cold.newton_steps);
  EXPECT_NEAR(warm.tip().x, cold.tip().x, 1e-11);
  EXPECT_NEAR(warm.tip().y, cold.tip().y, 1e-11);
}

// From what is no neighbour at all, or of other rings, it goes the whole way.
TEST(StrungBeamTest, AFarNeighbourDoesNoHarm) {
  const StrungRod rod = RodWithRings(+1, 15, 90);
  const StrungBeam cold = rod.Solve();
  StrungBeam far = RodWithRings(-1, 60, -150).Solve();
  EXPECT_NEAR(rod.Solve({.near = &far}).tip().x, cold.tip().x, 1e-8);
  far.nodes[3].x = std::numeric_limits<double>::quiet_NaN();
  EXPECT_NEAR(rod.Solve({.near = &far}).tip().x, cold.tip().x, 1e-8);
  far.nodes.pop_back();
  EXPECT_NEAR(rod.Solve({.near = &far}).tip().x, cold.tip().x, 1e-8);
}

TEST(StrungBeamTest, StepsAreBounded) {
  const StrungBeam bent = RodWithRings(+1, 15, 150).Solve({.most_steps = 5});
  EXPECT_EQ(bent.state, ElasticaState::kNotConverged);
  EXPECT_LE(bent.newton_steps, 5);
  EXPECT_LT(bent.reached, 1);
  EXPECT_NE(bent.why, "");
}

TEST(StrungBeamTest, WhatIsWrongIsSaid) {
  constexpr double kNan = std::numeric_limits<double>::quiet_NaN(), kInf = std::numeric_limits<double>::infinity();
  const struct {
    std::function<void(StrungRod&)> spoil;
    const char* why;
  } cases[] = {
      {[](StrungRod& rod) { rod.rings.clear(); }, "there is no ring"},
      {[](StrungRod& rod) { rod.beam.pieces.clear(); }, "the beam has no pieces"},
      {[](StrungRod& rod) { rod.rings[2].s = 0.7; }, "ring 3 at 700 mm is not beyond ring 2 at 800 mm"},
      {[](StrungRod& rod) { rod.rings[2].s = 0.8; }, "ring 3 at 800 mm is not beyond ring 2 at 800 mm"},
      {[](StrungRod& rod) { rod.rings[0].s = 0; }, "ring 1 at 0 mm is not beyond the clamp"},
      {[](StrungRod& rod) { rod.rings[0].s = -0.1; }, "ring 1 at -100 mm is not beyond the clamp"},
      {[](StrungRod& rod) { rod.rings.pop_back(); },
       "ring 6, the last, at 1800 mm is not at the end of the beam, 2000 mm"},
      {[](StrungRod& rod) { rod.rings.back().s = 2.1; },
       "ring 7, the last, at 2100 mm is not at the end of the beam, 2000 mm"},
      {[](StrungRod& rod) { rod.rings[4].s = kNan; }, "ring 5: its place is not a number"},
      {[](StrungRod& rod) { rod.rings[4].offset = kInf; }, "ring 5: its place is not a number"},
      {[](StrungRod& rod) { rod.rings[4].offset = -0.01; }, "ring 5: its offset, -10 mm, is below zero"},
      {[](StrungRod& rod) { rod.rings[4].turned = kNan; }, "ring 5: its place is not a number"},
      {[](StrungRod& rod) { rod.load.tension = -1; }, "the tension, -1 N, is below zero"},
      {[](StrungRod& rod) { rod.load.tension = kNan; }, "a load is not a number"},
      {[](StrungRod& rod) { rod.load.far_angle = kInf; }, "a load is not a number"},
      {[](StrungRod& rod) { rod.load.friction = 1.5; }, "friction is 1.5, not between 0 and 1"},
      {[](StrungRod& rod) { rod.load.friction = -0.1; }, "friction is -0.1, not between 0 and 1"},
      {[](StrungRod& rod) { rod.load.side = 0; }, "side is 0, neither +1 nor -1"},
      {[](StrungRod& rod) { rod.load.reel_offset = -0.02; }, "the offset of the reel, -20 mm, is below zero"},
      {[](StrungRod& rod) { rod.load.reel_s = 0.4; }, "the reel at 400 mm is not before ring 1 at 400 mm"},
  };
  for (const auto& one : cases) {
    StrungRod rod = RodWithRings(+1, 15, 90);
    one.spoil(rod);
    const StrungBeam bent = rod.Solve();
    EXPECT_EQ(bent.state, ElasticaState::kBadInput) << one.why;
    EXPECT_EQ(bent.why, one.why);
    EXPECT_TRUE(bent.points.empty());
  }
  EXPECT_EQ(RodWithRings(+1, 15, 90).Solve({.tolerance = 0}).why, "the tolerance is not above zero");
}

// Last digits of where the last ring stands do not matter.
TEST(StrungBeamTest, LastRingMayBeOffByRounding) {
  StrungRod rod = RodWithRings(+1, 15, 90);
  const StrungBeam exact = rod.Solve();
  rod.rings.back().s += 1e-9;
  const StrungBeam off = rod.Solve();
  ASSERT_EQ(off.state, ElasticaState::kSolved);
  EXPECT_NEAR(off.tip().x, exact.tip().x, 1e-11);
}

}  // namespace
}  // namespace withy
