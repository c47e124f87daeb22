#include "withy/numerics/elastica.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <numbers>

namespace withy {
namespace {

using std::numbers::pi;
using ::testing::HasSubstr;

constexpr double kNotANumber = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinite = std::numeric_limits<double>::infinity();

// Length, stiffness and mass per length of one.
Beam Unit() {
  return {{{0, 1, {1}, {1}}}, {}};
}

void ExpectNumbers(const Elastica& shape) {
  EXPECT_TRUE(std::isfinite(shape.reached) && std::isfinite(shape.strain_energy) && std::isfinite(shape.error));
  for (const BeamPoint& point : shape.points) {
    ASSERT_TRUE(std::isfinite(point.s) && std::isfinite(point.x) && std::isfinite(point.y) &&
                std::isfinite(point.angle) && std::isfinite(point.moment));
  }
}

// Bisshopp and Drucker 1945: from the angle of the free end to the load and the drop, by elliptic integrals.
TEST(Elastica, DeadTipForceByEllipticIntegrals) {
  for (double tip : {0.01, 0.3, 0.9, 1.3, 1.5, 1.55}) {
    const double k = std::sqrt((1 + std::sin(tip)) / 2), start = std::asin(1 / (k * std::numbers::sqrt2));
    const double alpha = std::comp_ellint_1(k) - std::ellint_1(k, start);
    const double drop = 1 - 2 * (std::comp_ellint_2(k) - std::ellint_2(k, start)) / alpha;
    const Elastica shape = SolveElastica(Unit(), {.force_y = -alpha * alpha}, {.tolerance = 1e-11});
    ASSERT_EQ(shape.state, ElasticaState::kSolved);
    EXPECT_NEAR(shape.tip().angle, -tip, 1e-10) << tip;
    EXPECT_NEAR(shape.tip().y, -drop, 1e-10) << tip;
    EXPECT_NEAR(shape.tip().x, std::sqrt(2 * std::sin(tip)) / alpha, 1e-10) << tip;
  }
}

// A tip moment bends an even beam into an arc of a circle: here two and a half turns.
TEST(Elastica, TipMomentMakesACircle) {
  const double turn = 5 * pi;
  const Elastica shape = SolveElastica(Unit(), {.clamp_angle = 0.3, .moment = turn});
  ASSERT_EQ(shape.state, ElasticaState::kSolved);
  for (double s : {0.0, 0.123, 0.5, 0.77, 1.0}) {
    const BeamPoint at = shape.At(s);
    EXPECT_NEAR(at.angle, 0.3 + turn * s, 1e-9);
    EXPECT_NEAR(at.x, (std::sin(0.3 + turn * s) - std::sin(0.3)) / turn, 1e-9);
    EXPECT_NEAR(at.y, (std::cos(0.3) - std::cos(0.3 + turn * s)) / turn, 1e-9);
    EXPECT_NEAR(at.moment, turn, 1e-9);
  }
  EXPECT_NEAR(shape.strain_energy, turn * turn / 2, 1e-9);
}

// Statics and the first integral of an even beam under a tip force F: M(s) = (r(L) - r(s)) x F, and M^2 / 2 EI + F . t
// is the same everywhere. They hold between points as well.
TEST(Elastica, BetweenPointsStaticsHold) {
  const double fx = -6, fy = -9;
  const Elastica shape = SolveElastica(Unit(), {.clamp_angle = 1, .force_x = fx, .force_y = fy}, {.tolerance = 1e-11});
  ASSERT_EQ(shape.state, ElasticaState::kSolved);
  const BeamPoint& tip = shape.tip();
  const double constant = fx * std::cos(tip.angle) + fy * std::sin(tip.angle);
  for (int k = 0; k <= 200; ++k) {
    const BeamPoint at = shape.At(k / 200.0);
    EXPECT_NEAR(at.moment, (tip.x - at.x) * fy - (tip.y - at.y) * fx, 1e-9) << at.s;
    EXPECT_NEAR(at.moment * at.moment / 2 + fx * std::cos(at.angle) + fy * std::sin(at.angle), constant, 1e-8) << at.s;
  }
}

// Symmetry: turned as a whole, mirrored, and in other units a problem has the same answer.
TEST(Elastica, TurnedMirroredScaled) {
  const ElasticaLoad load{
      .clamp_angle = 0.4, .force_x = 1, .force_y = -5, .follower = 2, .follower_angle = 0.5, .moment = 1};
  const Elastica shape = SolveElastica(Unit(), load, {.tolerance = 1e-11});
  ASSERT_EQ(shape.state, ElasticaState::kSolved);
  const double turn = 2;
  ElasticaLoad turned = load;
  turned.clamp_angle += turn;
  turned.force_x = std::cos(turn) * load.force_x - std::sin(turn) * load.force_y;
  turned.force_y = std::sin(turn) * load.force_x + std::cos(turn) * load.force_y;
  EXPECT_NEAR(SolveElastica(Unit(), turned, {.tolerance = 1e-11}).tip().angle, shape.tip().angle + turn, 1e-9);
  const ElasticaLoad mirrored{
      .clamp_angle = -0.4, .force_x = 1, .force_y = 5, .follower = 2, .follower_angle = -0.5, .moment = -1};
  EXPECT_NEAR(SolveElastica(Unit(), mirrored, {.tolerance = 1e-11}).tip().y, -shape.tip().y, 1e-9);
  // A thousand times as long and a million times as stiff: forces stay, moments grow a thousandfold.
  const Beam large{{{0, 1000, {1e6}, {0}}}, {}};
  ElasticaLoad scaled = load;
  scaled.moment *= 1000;
  EXPECT_NEAR(SolveElastica(large, scaled, {.tolerance = 1e-11}).tip().y, 1000 * shape.tip().y, 1e-6);
}

// An even beam cut into pieces, and a force given at its free end in `forces`, change nothing; nor does a very short
// piece.
TEST(Elastica, HowItIsWrittenDoesNotMatter) {
  const Elastica whole = SolveElastica(Unit(), {.force_y = -7}, {.tolerance = 1e-12});
  for (double cut : {0.5, 1e-3, 1e-7, 1e-11}) {
    const Beam beam{{{0, cut, {1}, {1}}, {cut, 1, {1}, {1}}}, {}};
    const Elastica pieces = SolveElastica(beam, {.forces = {{1, 0, -7}}}, {.tolerance = 1e-12});
    ASSERT_EQ(pieces.state, ElasticaState::kSolved) << cut;
    EXPECT_NEAR(pieces.tip().x, whole.tip().x, 1e-11) << cut;
    EXPECT_NEAR(pieces.tip().angle, whole.tip().angle, 1e-11) << cut;
  }
}

// A weightless beam with a mass on its end under gravity is one with that weight as a force.
TEST(Elastica, WeightOfAMassIsAForce) {
  Beam beam{{{0, 1, {1}, {0}}}, {{1, 0.5}}};
  const Elastica hung = SolveElastica(beam, {.gravity_y = -9.80665});
  const Elastica pulled = SolveElastica(beam, {.force_y = -0.5 * 9.80665});
  EXPECT_NEAR(hung.tip().y, pulled.tip().y, 1e-14);
  // At the clamp it does nothing.
  beam.masses = {{0, 5}};
  EXPECT_EQ(SolveElastica(beam, {.gravity_y = -9.80665}).tip().y, 0);
}

// Under 10 times the load that a beam takes as a boundary layer near the clamp, the free end hangs in the force's
// direction. The layer: M^2 / 2 EI = F (1 - sin theta) at the clamp, so M = sqrt(2 F EI), with an error that decays as
// exp(-sqrt(F)).
TEST(Elastica, LoadsOutOfProportion) {
  for (double force : {1e3, 1e4, 1e6}) {
    const Elastica shape = SolveElastica(Unit(), {.force_y = -force});
    ASSERT_EQ(shape.state, ElasticaState::kSolved) << force;
    EXPECT_NEAR(shape.tip().angle, -pi / 2, 1e-8) << force;
    EXPECT_NEAR(shape.points[0].moment, -std::sqrt(2 * force), 1e-7 * std::sqrt(force)) << force;
  }
  const Elastica absurd = SolveElastica(Unit(), {.force_y = -1e30});
  EXPECT_EQ(absurd.state, ElasticaState::kBadInput);
  EXPECT_THAT(absurd.why, HasSubstr("out of all proportion"));
}

// A cone whose tip is a thousandth as stiff as its butt, far past a right angle. Its error estimate holds against a
// solution a hundred times finer.
TEST(Elastica, ConeThatIsAThousandTimesStifferAtItsButt) {
  const double r = std::pow(1e-3, 0.25) - 1;  // (1 + r t)^4
  const Beam cone{{{0, 2, {50, 200 * r, 300 * r * r, 200 * r * r * r, 50 * r * r * r * r}, {}}}, {}};
  for (double force : {0.1, 1.0, 10.0, 100.0}) {
    const ElasticaLoad load{.clamp_angle = 1.2, .force_y = -force};
    const Elastica shape = SolveElastica(cone, load), fine = SolveElastica(cone, load, {.tolerance = 1e-12});
    ASSERT_EQ(shape.state, ElasticaState::kSolved) << force;
    ASSERT_EQ(fine.state, ElasticaState::kSolved) << force;
    EXPECT_LE(shape.error, 2e-9) << force;
    EXPECT_NEAR(shape.tip().x, fine.tip().x, 10 * shape.error + 1e-14);
    EXPECT_NEAR(shape.tip().y, fine.tip().y, 10 * shape.error + 1e-14);
  }
}

// The work of a force that is raised slowly is the strain energy: integral of P d(drop), by Simpson over 40 loads.
TEST(Elastica, StrainEnergyIsTheWorkDone) {
  const double last = 6;
  const int steps = 40;
  double complementary = 0, drop = 0;  // integral of the drop over the load
  for (int k = 0; k <= steps; ++k) {
    drop = -SolveElastica(Unit(), {.force_y = -last * k / steps}, {.tolerance = 1e-12}).tip().y;
    complementary += (k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2) * drop * last / steps / 3;
  }
  EXPECT_NEAR(SolveElastica(Unit(), {.force_y = -last}).strain_energy, last * drop - complementary, 1e-6);
}

TEST(Elastica, BadInputIsSaid) {
  const auto why = [](const Beam& beam, const ElasticaLoad& load, const ElasticaOptions& options = {}) {
    const Elastica shape = SolveElastica(beam, load, options);
    EXPECT_EQ(shape.state, ElasticaState::kBadInput);
    EXPECT_TRUE(shape.points.empty());
    return shape.why;
  };
  EXPECT_THAT(why({}, {}), HasSubstr("no pieces"));
  EXPECT_THAT(why({{{0, 1, {0}, {}}}, {}}, {}), HasSubstr("stiffness is not above zero"));
  EXPECT_THAT(why({{{0, 1, {-1}, {}}}, {}}, {}), HasSubstr("stiffness is not above zero"));
  EXPECT_THAT(why({{{0, 1, {kNotANumber}, {}}}, {}}, {}), HasSubstr("not a number"));
  EXPECT_THAT(why(Unit(), {.force_y = kNotANumber}), HasSubstr("a load is not a number"));
  EXPECT_THAT(why(Unit(), {.gravity_x = kInfinite}), HasSubstr("a load is not a number"));
  EXPECT_THAT(why(Unit(), {.clamp_angle = kInfinite}), HasSubstr("a load is not a number"));
  EXPECT_THAT(why(Unit(), {.forces = {{0.5, kInfinite, 0}}}), HasSubstr("a force is not a number"));
  EXPECT_THAT(why(Unit(), {.forces = {{1.5, 0, 1}}}), HasSubstr("beyond the beam"));
  EXPECT_THAT(why(Unit(), {}, {.tolerance = 0}), HasSubstr("tolerance"));
  EXPECT_THAT(why(Unit(), {}, {.tolerance = kNotANumber}), HasSubstr("tolerance"));
}

// Whatever the size of the numbers: no hang, no NaN.
TEST(Elastica, ExtremeNumbers) {
  for (double stiffness : {1e-300, 1e-30, 1e-3, 1e30, 1e300}) {
    for (double force : {0.0, 1e-300, 1e-30, 1e30, 1e300}) {
      for (double length : {1e-6, 1.0, 1e6}) {
        const Beam beam{{{0, length, {stiffness}, {1}}}, {}};
        ExpectNumbers(SolveElastica(beam, {.force_y = force}));
        ExpectNumbers(
            SolveElastica(beam, {.follower = force, .follower_angle = 1, .moment = force, .gravity_x = force}));
      }
    }
  }
}

TEST(Elastica, OutOfStepsIsSaid) {
  const Elastica shape = SolveElastica(Unit(), {.force_y = -50}, {.most_steps = 2});
  EXPECT_EQ(shape.state, ElasticaState::kNotConverged);
  EXPECT_LT(shape.reached, 1);
  ExpectNumbers(shape);
  EXPECT_EQ(SolveElastica(Unit(), {.force_y = -50}, {.most_steps = 0}).state, ElasticaState::kNotConverged);
}

}  // namespace
}  // namespace withy
