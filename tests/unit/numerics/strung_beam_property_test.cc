// Random rods, rings and lines: never what is not a number; of each solution the balance, the line, and every section
// integrated anew by another method.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "unit/numerics/strung_rods.h"

namespace withy {
namespace {

bool AllNumbers(const StrungBeam& bent) {
  double sum = bent.reached + bent.strain_energy + bent.path + bent.tension_at_reel + bent.error;
  for (const RingUnderLine& ring : bent.rings) {
    sum += ring.x + ring.y + ring.z + ring.axis_x + ring.axis_y + ring.angle + ring.line_in + ring.line_out +
           ring.turn + ring.tension_in + ring.tension_out + ring.force_x + ring.force_y + ring.force_z +
           ring.moment_on_axis + ring.moment_before + ring.moment_after;
  }
  for (const LineSpan& span : bent.spans) sum += span.length + span.direction + span.tension;
  for (const StrungNode& node : bent.nodes) sum += node.x + node.y + node.angle + node.moment;
  for (const BeamPoint& point : bent.points) sum += point.s + point.x + point.y + point.angle + point.moment;
  for (double value : bent.log_tension) sum += value;
  return std::isfinite(sum);
}

struct Reel {
  double x, y;
};
Reel ReelOf(const StrungLoad& load) {
  const double c = std::cos(load.clamp_angle), s = std::sin(load.clamp_angle), h = load.side * load.reel_offset;
  return {load.reel_s * c - h * s, load.reel_s * s + h * c};
}

// The line from the places of the rings alone; from it the force on each, and the moment about the clamp.
void ExpectBalance(const StrungRod& rod, const StrungBeam& bent, double scale) {
  const Reel reel = ReelOf(rod.load);
  const double far = rod.load.clamp_angle - rod.load.far_angle;
  double x = reel.x, y = reel.y, z = 0, moment = 0;
  for (std::size_t k = 0; k < bent.rings.size(); ++k) {
    const RingUnderLine& ring = bent.rings[k];
    const double length = std::hypot(ring.x - x, ring.y - y, ring.z - z), pull = ring.tension_in / length;
    double out_x = std::cos(far), out_y = std::sin(far);
    if (k + 1 < bent.rings.size()) {
      const RingUnderLine& next = bent.rings[k + 1];
      const double beyond = std::hypot(next.x - ring.x, next.y - ring.y, next.z - ring.z);
      out_x = (next.x - ring.x) / beyond;
      out_y = (next.y - ring.y) / beyond;
    }
    EXPECT_NEAR(ring.force_x, ring.tension_out * out_x - pull * (ring.x - x), 1e-9 * scale);
    EXPECT_NEAR(ring.force_y, ring.tension_out * out_y - pull * (ring.y - y), 1e-9 * scale);
    EXPECT_NEAR(ring.moment_before - ring.moment_after, ring.moment_on_axis, 1e-9 * scale);
    EXPECT_NEAR(std::hypot(ring.axis_x - ring.x, ring.axis_y - ring.y, ring.z), rod.rings[k].offset, 1e-12);
    moment += ring.x * ring.force_y - ring.y * ring.force_x;
    x = ring.x, y = ring.y, z = ring.z;
  }
  EXPECT_NEAR(bent.nodes[0].moment, moment, 1e-8 * scale);
  EXPECT_EQ(bent.rings.back().moment_after, 0);
}

// From each node to the next under the forces that act beyond.
void ExpectSections(const StrungRod& rod, const StrungBeam& bent) {
  const int steps = 20 + 400 / static_cast<int>(rod.beam.pieces.size());
  double beyond_x = 0, beyond_y = 0;
  for (std::size_t k = rod.rings.size(); k-- > 0;) {
    const RingUnderLine& ring = bent.rings[k];
    beyond_x += ring.force_x;
    beyond_y += ring.force_y;
    const StrungNode& node = bent.nodes[k];
    const double s = k == 0 ? 0 : rod.rings[k - 1].s;
    const BeamPoint end =
        Integrated(rod.beam, {s, node.x, node.y, node.angle, node.moment}, rod.rings[k].s, beyond_x, beyond_y, steps);
    EXPECT_NEAR(end.x, ring.axis_x, 1e-7);
    EXPECT_NEAR(end.y, ring.axis_y, 1e-7);
    EXPECT_NEAR(end.angle, ring.angle, 1e-7);
  }
  EXPECT_EQ(bent.nodes[0].angle, rod.load.clamp_angle);
}

TEST(StrungBeamPropertyTest, RandomRods) {
  std::mt19937 random(20);
  int solved = 0;
  for (int round = 0; round < 300; ++round) {
    const StrungRod rod = RandomRod(random);
    const StrungBeam bent = rod.Solve({});
    SCOPED_TRACE(testing::Message() << "round " << round << " " << bent.why);
    ASSERT_TRUE(AllNumbers(bent));
    ASSERT_NE(bent.state, ElasticaState::kBadInput);
    EXPECT_LE(bent.newton_steps, 400);
    EXPECT_EQ(bent.why.empty(), bent.state == ElasticaState::kSolved);
    EXPECT_LE(bent.reached, 1);
    if (bent.state != ElasticaState::kSolved) continue;
    ++solved;
    EXPECT_EQ(bent.reached, 1);
    EXPECT_LE(bent.error, 1e-9 * rod.beam.length());
    // What is off by `error` is off in force by that times the tension over a span; some spans are short.
    ExpectBalance(rod, bent, std::max(1.0, rod.load.tension * std::exp(rod.load.friction * 20)));
    ExpectSections(rod, bent);
    if (testing::Test::HasFailure()) break;
  }
  EXPECT_GT(solved, 240);
}

// Loads out of all proportion end in some state within their steps.
TEST(StrungBeamPropertyTest, OutOfAllProportion) {
  for (double tension : {1e3, 1e12, 1e300}) {
    for (double far : {0.0, 90.0, 180.0}) {
      for (double offset : {0.0, 3.0, 1e9}) {
        StrungRod rod = RodWithRings(+1, tension, far);
        for (BeamRing& ring : rod.rings) ring.offset = offset;
        const StrungBeam bent = rod.Solve();
        EXPECT_TRUE(AllNumbers(bent)) << tension << " N, " << far << " degrees, " << offset << " m";
        EXPECT_LE(bent.newton_steps, 400);
        EXPECT_EQ(bent.why.empty(), bent.state == ElasticaState::kSolved);
      }
    }
  }
}

// Rings whose centres meet: 1e-8 m apart, and the reel in the first ring.
TEST(StrungBeamPropertyTest, RingsThatMeet) {
  StrungRod rod = RodWithRings(+1, 15, 90);
  rod.rings[3].s = rod.rings[2].s + 1e-8;
  rod.rings[3].offset = rod.rings[2].offset;
  EXPECT_TRUE(AllNumbers(rod.Solve()));
  rod = RodWithRings(+1, 15, 90);
  rod.load.reel_s = rod.rings[0].s - 1e-15;
  rod.load.reel_offset = rod.rings[0].offset;
  EXPECT_TRUE(AllNumbers(rod.Solve()));
}

// Pieces far shorter than the rod is thick change nothing.
TEST(StrungBeamPropertyTest, ManyPiecesAreOne) {
  const StrungBeam one = RodWithRings(+1, 15, 90, 0, 1).Solve(), many = RodWithRings(+1, 15, 90, 0, 400).Solve();
  ASSERT_EQ(many.state, ElasticaState::kSolved);
  EXPECT_NEAR(one.tip().x, many.tip().x, 1e-10);
  EXPECT_NEAR(one.tip().y, many.tip().y, 1e-10);
  EXPECT_NEAR(one.strain_energy, many.strain_energy, 1e-10);
}

}  // namespace
}  // namespace withy
