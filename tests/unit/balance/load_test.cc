// Moments of loads worked by hand, and against sums over thin slices.
#include "withy/balance/load.h"

#include <cmath>

#include "gtest/gtest.h"

namespace withy {
namespace {

// Held at 0.3 m: 0.1 kg at 0.7 and 0.06 kg at 0.15. Moment g (0.04 - 0.009) = 0.30400615 N m, tip-heavy; balance point
// (0.07 + 0.009) / 0.16 = 0.49375 m; about the hold 0.1 x 0.16 + 0.06 x 0.0225 kg m2.
TEST(StateOf, PointsWorkedByHand) {
  MassProperties load = PointMass(0.1, 0.7, 0);
  load += PointMass(0.06, 0.15, 0);
  const LoadState state = StateOf(load, 0.3);
  EXPECT_NEAR(state.moment_n_m, 9.80665 * 0.031, 1e-14);
  EXPECT_NEAR(state.balance_m, 0.49375, 1e-15);
  EXPECT_NEAR(state.inertia_about_hold_kg_m2, 0.016 + 0.00135, 1e-15);
  // 0.1 x 0.20625^2 + 0.06 x 0.34375^2
  EXPECT_NEAR(state.inertia_at_balance_kg_m2, 0.00425390625 + 0.00708984375, 1e-15);
}

TEST(StateOf, ButtHeavyIsNegative) { EXPECT_LT(StateOf(PointMass(0.2, 0.1, 0), 0.3).moment_n_m, 0); }

// An annulus 100 mm long between 10.4 and 10 mm: pi/4 (108.16 - 100) x 100 = 640.88 mm3, at 1.1 g/cm3 0.70497 g.
TEST(Film, IsAnAnnulus) {
  const MassProperties film = Film({0.5, 0.6, 0.010, 0.010}, 0.0002, 1100);
  EXPECT_NEAR(film.mass_kg, M_PI / 4 * (108.16 - 100) * 100 * 1.1e-6, 1e-15);
  EXPECT_NEAR(film.Balance(), 0.55, 1e-12);
  EXPECT_EQ(film.hh_kg_m2, 0);
}

// Second method: 100 000 slices of section pi w (D - w), wall and diameter linear.
TEST(Tube, AgainstThinSlices) {
  const double x0 = 0.02, x1 = 2.1, d0 = 0.0132, d1 = 0.0019, w0 = 0.0011, w1 = 0.0004, density = 1550;
  double mass = 0, first = 0, second = 0;
  const int slices = 100'000;
  for (int i = 0; i < slices; ++i) {
    const double t = (i + 0.5) / slices, x = x0 + t * (x1 - x0);
    const double d = d0 + t * (d1 - d0), w = w0 + t * (w1 - w0);
    const double dm = density * M_PI * w * (d - w) * (x1 - x0) / slices;
    mass += dm;
    first += x * dm;
    second += x * x * dm;
  }
  const MassProperties tube = Tube({x0, x1, d0, d1, d0 - 2 * w0, d1 - 2 * w1}, density);
  EXPECT_NEAR(tube.mass_kg / mass, 1, 1e-8);
  EXPECT_NEAR(tube.s_kg_m / first, 1, 1e-8);
  EXPECT_NEAR(tube.ss_kg_m2 / second, 1, 1e-8);
  EXPECT_EQ(tube.hh_kg_m2, 0);
}

}  // namespace
}  // namespace withy
