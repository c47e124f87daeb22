// The elastica against tables worked out elsewhere.
#include <array>
#include <numbers>

#include "gtest/gtest.h"
#include "support/tube_beam.h"
#include "withy/numerics/elastica.h"

namespace withy {
namespace {

constexpr double kDegree = std::numbers::pi / 180;

Elastica Hung(const Beam& beam, double load_n) {
  ElasticaLoad load;
  load.force_y = -load_n;
  Elastica bent = SolveElastica(beam, load);
  EXPECT_EQ(bent.state, ElasticaState::kSolved) << load_n;
  return bent;
}

// Bisshopp and Drucker, Large deflection of cantilever beams, Quarterly of Applied Mathematics 3 (1945) 272: uniform,
// level at the clamp, P L^2 / EI, drop over length, angle of the tip in radians; digits by elliptic integrals.
TEST(ElasticaTables, UniformCantileverOfBisshoppAndDrucker) {
  const std::array<double, 3> table[] = {{0.25, 0.08275, 0.12429}, {0.5, 0.16214, 0.24453}, {1, 0.30172, 0.46135},
                                         {2, 0.49346, 0.78175},    {3, 0.60325, 0.98602},   {5, 0.71379, 1.21537},
                                         {10, 0.81061, 1.43029}};
  const Beam beam{{{0, 1, {1}, {}}}, {}};
  for (const auto& [load, drop, angle] : table) {
    const Elastica bent = Hung(beam, load);
    EXPECT_NEAR(-bent.tip().y, drop, 6e-6) << load;
    EXPECT_NEAR(-bent.tip().angle, angle, 6e-6) << load;
  }
}

// Length and stiffness at the clamp are one; from there both fall to the tip as diameter to the fourth power (solid) or
// to the third (of even breadth).
Beam Tapered(double tip, int power) {
  BeamPiece piece{0, 1, {}, {}};
  if (power == 4) AddPower(1, tip, 1, piece.stiffness);
  const double d = tip - 1;
  if (power == 3) piece.stiffness = {1, 3 * d, 3 * d * d, d * d * d};
  return {{piece}, {}};
}

// The load that drops the tip by a third: the drop rises with the load, so by bisection.
Elastica DroppedByAThird(const Beam& beam, double& load) {
  double low = 0, high = 2;
  while (high - low > 1e-7) {
    load = (low + high) / 2;
    (-Hung(beam, load).tip().y < 1.0 / 3 ? low : high) = load;
  }
  return Hung(beam, load);
}

// Tip over butt diameter, P L^2 / EI at the butt, angle of the tip in degrees: worked out apart, converged to five
// figures.
TEST(ElasticaTables, SolidConesDroppedByAThird) {
  const std::array<double, 3> table[] = {{1.0, 1.1313, 29.3}, {0.75, 0.8637, 32.6}, {0.5, 0.5988, 38.9},
                                         {0.4, 0.4948, 43.5}, {0.3, 0.3937, 50.8},  {0.25, 0.3452, 56.2},
                                         {0.2, 0.2992, 63.4}, {0.15, 0.2572, 72.9}, {0.1, 0.2209, 83.7}};
  for (const auto& [ratio, want, angle] : table) {
    double load = 0;
    const Elastica bent = DroppedByAThird(Tapered(ratio, 4), load);
    EXPECT_NEAR(load, want, 6e-5) << ratio;
    EXPECT_NEAR(-bent.tip().angle / kDegree, angle, 0.06) << ratio;
  }
}

// The same source: a thin wall or an even breadth, stiffness by the third power, bends its tip less.
TEST(ElasticaTables, TapersOfTheThirdPowerDroppedByAThird) {
  const std::array<double, 2> table[] = {{0.2, 49.7}, {0.1, 64.5}};
  for (const auto& [ratio, angle] : table) {
    double load = 0;
    EXPECT_NEAR(-DroppedByAThird(Tapered(ratio, 3), load).tip().angle / kDegree, angle, 0.06) << ratio;
  }
}

}  // namespace
}  // namespace withy
