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
// path meets a point beyond which more than one shape holds the load, or none, the state says so and where. Cost linear in
// the number of pieces.
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
  kNotConverged,  // out of steps
  kBadInput,      // `why` says what
};

struct BeamPoint {
  double s = 0;
  double x = 0, y = 0;                    // metres
  double angle = 0;                       // radians, not wrapped
  double moment = 0;                      // N m
};

struct Elastica {
  static constexpr int kArc = 8;          // points follow in arcs of this many intervals, smooth within each

  ElasticaState state = ElasticaState::kNotConverged;
  double reached = 0;                     // share of the load at which the points stand; 1 where solved
  std::string why;                        // of kBadInput
  std::vector<BeamPoint> points;          // ends of pieces and points in between, s strictly rising, from clamp to free end
  double strain_energy = 0;               // J
  double error = 0;                       // a-posteriori estimate of how far the free end is off, metres

  const BeamPoint& tip() const { return points.back(); }  // requires points
  // Between points, to the accuracy of the solution: from angle and moment at both ends. Requires points.
  BeamPoint At(double s) const;
};

struct ElasticaOptions {
  double tolerance = 1e-9;                // of `error` over the length
  int most_steps = 400;                   // of raising the load
};

Elastica SolveElastica(const Beam& beam, const ElasticaLoad& load, const ElasticaOptions& options = {});

// How the free end answers to small changes, about a solved shape: by the tangent stiffness of that shape, exact to first
// order. Cost linear in the number of pieces.
struct ElasticaSensitivity {
  struct Tip {
    double x = 0, y = 0, angle = 0;
  };
  std::vector<Tip> to_stiffness;          // of each piece: per unit of d(EI)/EI over the piece
  Tip to_load;                            // per unit of d(load)/load of the force, follower and moment on the free end
  Tip to_gravity;                         // likewise of gravity
  Tip to_clamp_angle;                     // per radian
};
ElasticaSensitivity SensitivityOf(const Beam& beam, const ElasticaLoad& load, const Elastica& solved);

}  // namespace withy

#endif  // WITHY_NUMERICS_ELASTICA_H_
