#include <gtest/gtest.h>

#include <functional>
#include <vector>

#include "withy/numerics/elastica.h"

namespace withy {
namespace {

using Tip = ElasticaSensitivity::Tip;

// A cone of 1 - 0.6 s / 2 in five pieces, with a mass, a force on the way and every kind of load at its end.
Beam Cone() {
  Beam beam;
  for (int k = 0; k < 5; ++k) {
    const double a = 1 - 0.12 * k, r = -0.12;
    beam.pieces.push_back(
        {0.4 * k,
         0.4 * (k + 1),
         {38 * a * a * a * a, 152 * a * a * a * r, 228 * a * a * r * r, 152 * a * r * r * r, 38 * r * r * r * r},
         {0.5 * a * a, a * r, 0.5 * r * r}});
  }
  beam.masses.push_back({1.3, 0.2});
  return beam;
}

ElasticaLoad Load(double follower) {
  return {.clamp_angle = 0.7,
          .force_x = 1,
          .force_y = -3,
          .follower = follower,
          .follower_angle = -1.2,
          .moment = -2,
          .gravity_x = 1,
          .gravity_y = -9.8,
          .forces = {{0.77, 1, -2}}};
}

using Change = std::function<void(Beam& beam, ElasticaLoad& load, double by)>;

// Against central differences of solutions: their own error is of the order of the step squared.
void ExpectDifference(const Tip& told, double follower, const Change& change) {
  constexpr double h = 1e-4;
  Elastica shapes[2];
  for (int side : {0, 1}) {
    Beam beam = Cone();
    ElasticaLoad load = Load(follower);
    change(beam, load, side == 0 ? -h : h);
    shapes[side] = SolveElastica(beam, load, {.tolerance = 1e-13});
    ASSERT_FALSE(shapes[side].points.empty());
  }
  EXPECT_NEAR(told.x, (shapes[1].tip().x - shapes[0].tip().x) / (2 * h), 2e-8);
  EXPECT_NEAR(told.y, (shapes[1].tip().y - shapes[0].tip().y) / (2 * h), 2e-8);
  EXPECT_NEAR(told.angle, (shapes[1].tip().angle - shapes[0].tip().angle) / (2 * h), 2e-8);
}

TEST(ElasticaSensitivity, AgreesWithCentralDifferences) {
  for (double follower : {0.0, 3.0}) {
    const Elastica solved = SolveElastica(Cone(), Load(follower), {.tolerance = 1e-11});
    ASSERT_EQ(solved.state, ElasticaState::kSolved);
    const ElasticaSensitivity by = SensitivityOf(Cone(), Load(follower), solved);
    ASSERT_EQ(by.to_stiffness.size(), 5u);
    for (std::size_t k = 0; k < 5; ++k) {
      ExpectDifference(by.to_stiffness[k], follower, [k](Beam& beam, ElasticaLoad&, double change) {
        for (double& power : beam.pieces[k].stiffness) power *= 1 + change;
      });
    }
    ExpectDifference(by.to_load, follower, [](Beam&, ElasticaLoad& load, double change) {
      for (double* part : {&load.force_x, &load.force_y, &load.follower, &load.moment}) *part *= 1 + change;
    });
    ExpectDifference(by.to_gravity, follower, [](Beam&, ElasticaLoad& load, double change) {
      load.gravity_x *= 1 + change;
      load.gravity_y *= 1 + change;
    });
    ExpectDifference(by.to_clamp_angle, follower,
                     [](Beam&, ElasticaLoad& load, double change) { load.clamp_angle += change; });
  }
}

// Small deflections of an even beam of length L: y = P L^3 / 3 EI, and the part of a piece from a to b of it is the
// integral of P (L - s)^2 / EI. Here a = 0, b = L / 2: 7/8 of the whole.
TEST(ElasticaSensitivity, SmallDeflectionsWorkedByHand) {
  const Beam beam{{{0, 1, {3}, {}}, {1, 2, {3}, {}}}, {}};
  const ElasticaLoad load{.force_y = 1e-6};
  const ElasticaSensitivity by = SensitivityOf(beam, load, SolveElastica(beam, load));
  const double drop = 1e-6 * 8 / 9;
  EXPECT_NEAR(by.to_load.y / drop, 1, 1e-9);
  EXPECT_NEAR(by.to_stiffness[0].y / drop, -7.0 / 8, 1e-9);
  EXPECT_NEAR(by.to_stiffness[1].y / drop, -1.0 / 8, 1e-9);
  EXPECT_NEAR(by.to_clamp_angle.y, 2, 1e-9);
  EXPECT_NEAR(by.to_clamp_angle.angle, 1, 1e-9);
}

TEST(ElasticaSensitivity, OfNoShapeIsNothing) {
  const ElasticaSensitivity by = SensitivityOf(Cone(), Load(0), {});
  EXPECT_EQ(by.to_stiffness.size(), 5u);
  EXPECT_EQ(by.to_load.y, 0);
}

}  // namespace
}  // namespace withy
