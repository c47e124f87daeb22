// Clearances and peaks against a dense look along the beam.
#include <gtest/gtest.h>

#include <cmath>

#include "unit/numerics/strung_rods.h"

namespace withy {
namespace {

struct Spot {
  double x, y, z;
};

double OuterAt(const StrungRod& rod, double s) {
  return std::lerp(rod.outer_m.front(), rod.outer_m.back(), s / rod.beam.length());  // a cone, in however many pieces
}

// In the plane: which way the surface is off the line, by the triangle of two centres and a point. In space: how far
// the axis is from it, by the area of the same triangle.
double ClearanceAt(const StrungRod& rod, const Spot& a, const Spot& b, const BeamPoint& at) {
  const double half = OuterAt(rod, at.s) / 2;
  const double ux = b.x - a.x, uy = b.y - a.y, uz = b.z - a.z;
  if (a.z == 0 && b.z == 0) {
    const double px = at.x - rod.load.side * half * std::sin(at.angle),
                 py = at.y + rod.load.side * half * std::cos(at.angle);
    return -rod.load.side * (ux * (py - a.y) - uy * (px - a.x)) / std::hypot(ux, uy);
  }
  const double wx = at.x - a.x, wy = at.y - a.y, wz = -a.z;
  return std::hypot(uy * wz - uz * wy, uz * wx - ux * wz, ux * wy - uy * wx) / std::hypot(ux, uy, uz) - half;
}

void ExpectClearances(const StrungRod& rod) {
  constexpr int kLooks = 4000;
  const StrungBeam bent = rod.Solve();
  ASSERT_EQ(bent.state, ElasticaState::kSolved);
  const auto clear = ClearancesOf(rod.beam, rod.outer_m, rod.rings, rod.load, bent);
  ASSERT_EQ(clear.size(), rod.rings.size());
  Spot from{rod.load.reel_s, rod.load.side * rod.load.reel_offset, 0};
  double s0 = 0;
  for (std::size_t k = 0; k < rod.rings.size(); ++k) {
    const Spot to{bent.rings[k].x, bent.rings[k].y, bent.rings[k].z};
    double least = HUGE_VAL, s = 0;
    for (int i = 0; i <= kLooks; ++i) {
      const double here = std::lerp(s0, rod.rings[k].s, static_cast<double>(i) / kLooks);
      const double value = ClearanceAt(rod, from, to, rod.At(bent, here));
      if (value < least) least = value, s = here;
    }
    EXPECT_NEAR(clear[k].least, least, 1e-8);  // between two looks, 0.1 mm apart, it may go lower
    EXPECT_LE(clear[k].least, least + 1e-13);
    EXPECT_NEAR(clear[k].s, s, 1e-3);
    from = to;
    s0 = rod.rings[k].s;
  }
}

TEST(StrungBeamClearanceTest, RingsOutsideOfTheBend) {
  ExpectClearances(RodWithRings(+1, 15, 90));
  ExpectClearances(RodWithRings(+1, 40, 135, 0, 60));
}

TEST(StrungBeamClearanceTest, RingsInsideOfTheBend) {
  ExpectClearances(RodWithRings(-1, 15, 90));
}

TEST(StrungBeamClearanceTest, TurnedRings) {
  ExpectClearances(RodWithRings(+1, 15, 90, 1.5));
}

// Rings above, all turned by half a turn, are rings below; only the reel keeps its side, so it lies on the axis here.
TEST(StrungBeamClearanceTest, HalfATurnIsTheOtherSide) {
  StrungRod below = RodWithRings(-1, 15, 90), turned = RodWithRings(+1, 15, 90);
  below.load.reel_offset = turned.load.reel_offset = 0;
  for (BeamRing& ring : turned.rings) ring.turned = std::numbers::pi;
  const auto one = ClearancesOf(below.beam, below.outer_m, below.rings, below.load, below.Solve());
  const auto other = ClearancesOf(turned.beam, turned.outer_m, turned.rings, turned.load, turned.Solve());
  ASSERT_EQ(one.size(), other.size());
  for (std::size_t k = 0; k < one.size(); ++k) {
    EXPECT_GT(other[k].least, 0) << k;
    EXPECT_NEAR(one[k].least, other[k].least, 1e-10) << k;
  }
}

TEST(StrungBeamPeaksTest, DenseLook) {
  for (int pieces : {1, 60}) {
    const StrungRod rod = RodWithRings(-1, 20, 60, 0, pieces);
    const StrungBeam bent = rod.Solve();
    const StrungPeaks peaks = PeaksOf(rod.beam, rod.outer_m, rod.rings, rod.load, bent);
    double moment = 0, curvature = 0, strain = 0;
    for (int i = 0; i <= 20000; ++i) {
      const double s = 2.0 * i / 20000;
      const BeamPoint at = rod.At(bent, s);
      const double bend = std::abs(at.moment) / RodWithRings(-1, 20, 60, 0, 1).beam.pieces[0].StiffnessAt(s);
      moment = std::max(moment, std::abs(at.moment));
      curvature = std::max(curvature, bend);
      strain = std::max(strain, bend * OuterAt(rod, s) / 2);
    }
    EXPECT_NEAR(peaks.moment, moment, 1e-9);
    EXPECT_NEAR(peaks.curvature, curvature, 1e-6 * curvature);
    EXPECT_NEAR(peaks.strain, strain, 1e-6 * strain);
    EXPECT_GE(peaks.curvature, curvature * (1 - 1e-12));
    EXPECT_EQ(peaks.moment_s, 0);
  }
}

// The moment steps at a ring: the greater side counts. One ring far off, pulled straight: nothing bends the beam above
// it, and below it the moment of the couple of both lines does.
TEST(StrungBeamPeaksTest, BothSidesOfARing) {
  StrungRod rod = TubeRod(1);
  rod.beam.pieces[0].stiffness = {1e5};  // as good as rigid
  rod.rings = {{1, 0, 0}, {2, 0.5, 0}};
  rod.load = {.reel_s = -1, .tension = 10};
  const StrungBeam bent = rod.Solve();
  const StrungPeaks peaks = PeaksOf(rod.beam, rod.outer_m, rod.rings, rod.load, bent);
  // Over the ring at 1 m the line rises to (2, 0.5) along (2, 1)/sqrt 5, then goes on level. The tip ring feels
  // 10 N ((1, 0) - (2, 1)/sqrt 5) = (1.0557, -4.4721) N, 0.5 m above the axis: a moment of -0.5 x 1.0557 = -0.5279 N m
  // at the tip, and -4.4721 N m more by the ring at 1 m: -5.0000, a little less for what bends. The ring there feels
  // (-1.0557, 4.4721) N, which holds it to the clamp: from 1 m down nothing is left but the -5 N m.
  EXPECT_NEAR(peaks.moment, 5, 1e-3);
  EXPECT_NEAR(bent.rings[1].moment_before, -0.5279, 1e-3);
  EXPECT_NEAR(bent.rings[0].moment_before, -5, 1e-3);
  EXPECT_NEAR(bent.nodes[0].moment, -5, 1e-3);
}

}  // namespace
}  // namespace withy
