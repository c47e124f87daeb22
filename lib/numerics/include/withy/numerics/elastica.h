// The plane inextensible elastica: a clamped beam bent as far as it will go.
//
//   ElasticaLoad load;
//   load.force_y = -4;                                  // 4 N downwards on the free end
//   Elastica bent = SolveElastica(beam, load);
//   if (bent.state == ElasticaState::kSolved) bent.tip().y;
//
// EI(s) theta' = M(s), M' = (force beyond s) x tangent; no shear, no stretch (Euler). Clamp at the origin; x to the right, y
// up, angles anticlockwise from +x, moments anticlockwise positive: M = EI theta'. All SI.
//
// Of several equilibria the one is given that is reached by raising the whole load from zero, starting straight; where that
// path meets a point beyond which more than one shape holds the load, or none, the state says so and where. A load
// that leans off the axis of compression by less than some 1e-11 radians counts as along it.
//
// Method: finite elements for the angle, of degree p (Galerkin), chosen by the error estimate. With elements of length h the
// free end is off by h^(2 p): halved, they gained 2.00, 3.93 and 5.81 binary orders with p = 1, 2, 3 (a tube tapering six to
// one, turned by 132 degrees; tests/reference/elastica_convergence_test.cc). Cost linear in the number of pieces: 0.11 ms for
// 57 of them and 1e-8 m on a core of 2.6 GHz (tests/bench/elastica_bench.cc).
#ifndef WITHY_NUMERICS_ELASTICA_H_
#define WITHY_NUMERICS_ELASTICA_H_

#include <string>
#include <vector>

#include "withy/numerics/beam.h"

namespace withy {

// A dead force somewhere along the beam.
struct BeamForce {
  double s = 0;
  double x = 0, y = 0;                    // N
};

struct ElasticaLoad {
  double clamp_angle = 0;                 // radians
  double force_x = 0, force_y = 0;        // N, on the free end; keeps its direction
  double follower = 0;                    // N, on the free end; turns with it
  double follower_angle = 0;              // its direction from the tangent at the free end, radians
  double moment = 0;                      // N m, on the free end
  double gravity_x = 0, gravity_y = 0;    // m/s2, on the beam's own mass and its masses; 0, 0 = weightless
  std::vector<BeamForce> forces;
};

enum class ElasticaState {
  kSolved,
  kSeveral,       // at `reached` of the load the path branches: more than one shape holds more than that
  kNone,          // at `reached` of the load the path turns back: no shape near it holds more, the beam would snap over
  kNotConverged,  // out of steps, or `error` stays above the tolerance
  kBadInput,      // `why` says what
};

struct BeamPoint {
  double s = 0;
  double x = 0, y = 0;                    // metres
  double angle = 0;                       // radians, not wrapped
  double moment = 0;                      // N m
};

struct Elastica {
  static constexpr int kArc = 8;          // points come in arcs of so many intervals, smooth within each

  ElasticaState state = ElasticaState::kNotConverged;
  double reached = 0;                     // share of the load at which the points stand, to 1e-8; 1 where solved
  std::string why;                        // of kBadInput
  std::vector<BeamPoint> points;          // ends of pieces and points in between, s strictly rising, from clamp to free end
  double strain_energy = 0;               // J
  // How far the free end is off, metres: by how much one more degree moves it. Within a factor of ten of the truth until
  // rounding takes over, some 1e-14 of the length. 0 where not solved.
  double error = 0;

  const BeamPoint& tip() const { return points.back(); }  // requires points
  // Between points, to the accuracy of the solution: by the polynomial through the points of the arc. Before the clamp and
  // past the free end it is that end. Requires points as they were given.
  BeamPoint At(double s) const;
};

struct ElasticaOptions {
  double tolerance = 1e-9;                // of `error` over the length; above zero, and no less than 1e-13 is tried for
  int most_steps = 400;                   // of raising the load
};

Elastica SolveElastica(const Beam& beam, const ElasticaLoad& load, const ElasticaOptions& options = {});

// How the free end answers to small changes, about a solved shape: by the tangent stiffness of that shape, exact to first
// order (agrees with differences of solutions to 1e-8). Cost linear in the number of pieces.
struct ElasticaSensitivity {
  struct Tip {
    double x = 0, y = 0, angle = 0;
  };
  std::vector<Tip> to_stiffness;          // of each piece: per unit of d(EI)/EI over the piece
  Tip to_load;                            // per unit of d(load)/load of the force, follower and moment on the free end
  Tip to_gravity;                         // likewise of gravity
  Tip to_clamp_angle;                     // per radian
};
// REQUIRES: `solved` is the answer to this beam and load, kSolved. All zero where it has no points.
ElasticaSensitivity SensitivityOf(const Beam& beam, const ElasticaLoad& load, const Elastica& solved);

}  // namespace withy

#endif  // WITHY_NUMERICS_ELASTICA_H_
