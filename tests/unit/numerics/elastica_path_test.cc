// Which equilibrium is found, and what is said where there is none or more than one.
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <optional>
#include <random>

#include "unit/numerics/shooting.h"
#include "withy/numerics/elastica.h"

namespace withy {
namespace {

using std::numbers::pi;

Beam Unit() {
  return {{{0, 1, {1}, {1}}}, {}};
}

double Uniform(std::mt19937& random, double from, double to) {
  return std::uniform_real_distribution<double>(from, to)(random);
}

// One to four tapering pieces with steps between them, masses, and all kinds of load, of sizes that bend the beam a
// good deal.
struct RandomCase {
  Beam beam;
  ElasticaLoad load;
};
RandomCase MakeCase(std::mt19937& random, double strength) {
  RandomCase one;
  const int count = 1 + static_cast<int>(random() % 4);
  const double length = Uniform(random, 0.5, 4), stiffness = Uniform(random, 1, 300);
  double diameter = 1;
  for (int k = 0; k < count; ++k) {
    const double r = diameter * Uniform(random, -0.4, 0), d = diameter;
    one.beam.pieces.push_back({length * k / count,
                               length * (k + 1) / count,
                               {stiffness * d * d * d * d, stiffness * 4 * d * d * d * r, stiffness * 6 * d * d * r * r,
                                stiffness * 4 * d * r * r * r, stiffness * r * r * r * r},
                               {0.1 * d * d, 0.2 * d * r, 0.1 * r * r}});
    diameter = (d + r) * Uniform(random, 0.85, 1.05);
  }
  const double unit = stiffness * diameter * diameter / (length * length);
  const double direction = Uniform(random, -pi, pi), force = Uniform(random, 0, strength) * unit;
  ElasticaLoad& load = one.load;
  load.clamp_angle = Uniform(random, -pi, pi);
  load.force_x = force * std::cos(direction);
  load.force_y = force * std::sin(direction);
  if (random() % 2 == 0) load.gravity_y = -9.80665;
  if (random() % 3 == 0) load.moment = Uniform(random, -1, 1) * unit * length;
  if (random() % 3 == 0)
    load.follower = Uniform(random, 0, strength) * unit, load.follower_angle = Uniform(random, -pi, pi);
  if (random() % 3 == 0) one.beam.masses.push_back({Uniform(random, 0, length), Uniform(random, 0, 0.2)});
  if (random() % 3 == 0) load.forces.push_back({Uniform(random, 0, length), Uniform(random, -2, 2) * unit, unit});
  return one;
}

double ClampAngleBy(const Shooting& shooting, double tip, double share) {
  return shooting.From(tip, share).clamp_angle;
}

double SlopeAt(const Shooting& shooting, double tip, double share) {
  constexpr double h = 1e-5;
  return (ClampAngleBy(shooting, tip + h, share) - ClampAngleBy(shooting, tip - h, share)) / (2 * h);
}

// Raises the load in small equal steps, each by Newton for the tip angle that gives the clamp its own: the same path by
// another method. Unset where a step fails.
std::optional<double> FollowedTip(const Shooting& shooting, double clamp_angle, double share, int steps) {
  double tip = clamp_angle, before = tip;
  for (int k = 1; k <= steps; ++k) {
    const double now = share * k / steps, guess = 2 * tip - before;
    before = tip;
    tip = guess;
    for (int round = 0;; ++round) {
      const double step = (ClampAngleBy(shooting, tip, now) - clamp_angle) / SlopeAt(shooting, tip, now);
      tip -= step;
      if (std::abs(step) < 1e-9) break;
      if (round == 20 || !(std::abs(tip - guess) < 0.3)) return std::nullopt;
    }
  }
  return tip;
}

// Integrated from the tip angle found, the clamp has the angle that it was given: what is missing, told as what the tip
// angle would have to change by, and the place of the tip.
TEST(ElasticaPath, RandomBeamsAgreeWithShooting) {
  std::mt19937 random(20240501);
  int solved = 0;
  for (int n = 0; n < 300; ++n) {
    const RandomCase one = MakeCase(random, n % 3 == 0 ? 25 : 6);
    const Elastica shape = SolveElastica(one.beam, one.load, {.tolerance = 1e-11});
    if (shape.state != ElasticaState::kSolved) continue;
    ++solved;
    const Shooting shooting(one.beam, one.load, 300);
    const Shot shot = shooting.From(shape.tip().angle);
    const double slope = SlopeAt(shooting, shape.tip().angle, 1),
                 off = (shot.clamp_angle - one.load.clamp_angle) / slope;
    const double room = 1e-9 * std::max(1.0, std::abs(slope));
    EXPECT_NEAR(off, 0, 2e-9) << n;
    EXPECT_NEAR(shape.tip().x / one.beam.length(), shot.tip_x / one.beam.length(), 10 * room) << n;
    EXPECT_NEAR(shape.tip().y / one.beam.length(), shot.tip_y / one.beam.length(), 10 * room) << n;
    EXPECT_NEAR(shape.points[0].moment / shot.clamp_moment, 1, 1000 * room) << n;
    EXPECT_NEAR(shape.strain_energy / shot.strain_energy, 1, 1000 * room) << n;
  }
  EXPECT_GE(solved, 280);
}

TEST(ElasticaPath, RandomPathsAgreeWithShootingInSmallSteps) {
  std::mt19937 random(77);
  int compared = 0;
  for (int n = 0; n < 40; ++n) {
    const RandomCase one = MakeCase(random, 8);
    const Elastica shape = SolveElastica(one.beam, one.load);
    if (shape.state != ElasticaState::kSolved) continue;
    const auto tip = FollowedTip(Shooting(one.beam, one.load, 60), one.load.clamp_angle, 1, 150);
    if (!tip) continue;
    ++compared;
    EXPECT_NEAR(*tip, shape.tip().angle, 1e-5) << n;
  }
  EXPECT_GE(compared, 35);
}

// A load nearly opposite to the butt has several equilibria; raised from zero it goes to the side it leans to, however
// little.
TEST(ElasticaPath, LoadsNearlyOppositeToTheButt) {
  for (double lean : {0.1, 1e-2, 1e-4, 1e-6, 1e-8, 1e-10}) {
    for (double side : {1.0, -1.0}) {
      const ElasticaLoad load{
          .clamp_angle = pi / 2, .force_x = side * 10 * std::sin(lean), .force_y = -10 * std::cos(lean)};
      const Elastica shape = SolveElastica(Unit(), load);
      ASSERT_EQ(shape.state, ElasticaState::kSolved) << lean;
      EXPECT_GT(side * shape.tip().x, 0.3) << lean;
      for (const BeamPoint& point : shape.points) EXPECT_LE(side * point.moment, 1e-9) << lean;  // no inflection
    }
  }
}

// Euler: pi^2 EI / 4 L^2 of a column clamped at one end. Greenhill 1881: w L^3 / EI = 9/4 j^2, j the first zero of
// J_-1/3.
TEST(ElasticaPath, AxialCompressionBranches) {
  const Elastica euler =
      SolveElastica(Unit(), {.clamp_angle = 0.7, .force_x = -8 * std::cos(0.7), .force_y = -8 * std::sin(0.7)});
  EXPECT_EQ(euler.state, ElasticaState::kSeveral);
  EXPECT_NEAR(8 * euler.reached, pi * pi / 4, 1e-7);
  EXPECT_NEAR(euler.tip().angle, 0.7, 1e-9);
  const Elastica greenhill = SolveElastica(Unit(), {.clamp_angle = pi / 2, .gravity_y = -50});
  EXPECT_EQ(greenhill.state, ElasticaState::kSeveral);
  EXPECT_NEAR(50 * greenhill.reached, 7.837347438943484, 4e-7);
  // A load below that holds, straight; so does any pull.
  EXPECT_EQ(SolveElastica(Unit(), {.force_x = -2.467}).state, ElasticaState::kSolved);
  EXPECT_EQ(SolveElastica(Unit(), {.force_x = -2.468}).state, ElasticaState::kSeveral);
  EXPECT_NEAR(SolveElastica(Unit(), {.force_x = 1e4}).tip().x, 1, 1e-14);
}

// A follower along the axis has no static buckling load (Beck 1952 found its critical load to be dynamic).
TEST(ElasticaPath, AxialFollowerHasOneShape) {
  const Elastica shape = SolveElastica(Unit(), {.follower = 12, .follower_angle = pi});
  EXPECT_EQ(shape.state, ElasticaState::kSolved);
  EXPECT_NEAR(shape.tip().y, 0, 1e-12);
}

// A tip moment winds the beam up against a force; then it snaps over. By shooting: at the fold the clamp angle does not
// change with the tip angle, before it two tip angles fit, after it none nearby.
TEST(ElasticaPath, FoldIsFound) {
  const struct { double force_x, force_y, moment; } cases[] = {{1, 8, -5}, {9, 10, 8}, {8, 9, -8}};
  for (const auto& [force_x, force_y, moment] : cases) {
    const Beam beam = Unit();
    const ElasticaLoad load{.force_x = force_x, .force_y = force_y, .moment = moment};
    const Elastica shape = SolveElastica(beam, load);
    EXPECT_EQ(shape.state, ElasticaState::kNone) << moment;
    EXPECT_LT(shape.reached, 1);
    const Shooting shooting(beam, load);
    const double tip = shape.tip().angle;
    EXPECT_NEAR(SlopeAt(shooting, tip, shape.reached), 0, 3e-3);  // it goes with the root of what is left of the load
    const auto crossings = [&](double share) {
      int count = 0;
      for (int k = -200; k < 200; ++k) {
        const double a = ClampAngleBy(shooting, tip + 0.001 * k, share),
                     b = ClampAngleBy(shooting, tip + 0.001 * (k + 1), share);
        count += (a < 0) != (b < 0);
      }
      return count;
    };
    EXPECT_EQ(crossings(shape.reached * 0.9995), 2);
    EXPECT_EQ(crossings(shape.reached * 1.0005), 0);
  }
}

}  // namespace
}  // namespace withy
