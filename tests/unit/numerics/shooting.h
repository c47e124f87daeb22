// A second method for the elastica: from a chosen angle of the free end its equations are integrated to the clamp as an
// initial-value problem, by the classical Runge and Kutta of fourth order. What angle the clamp then has is what had to
// be chosen: any tip angle is the solution of some problem.
#ifndef WITHY_TESTS_UNIT_NUMERICS_SHOOTING_H_
#define WITHY_TESTS_UNIT_NUMERICS_SHOOTING_H_

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "withy/numerics/elastica.h"

namespace withy {

struct Shot {
  double clamp_angle = 0, clamp_moment = 0;
  double tip_x = 0, tip_y = 0;  // from the clamp
  double strain_energy = 0;
};

class Shooting {
 public:
  Shooting(const Beam& beam, const ElasticaLoad& load, int steps_per_span = 400)
      : beam_(beam), load_(load), steps_(steps_per_span) {
    spans_.push_back(0);
    for (const BeamPiece& piece : beam.pieces) spans_.push_back(piece.s1);
    for (const BeamMass& mass : beam.masses) spans_.push_back(mass.s);
    for (const BeamForce& force : load.forces) spans_.push_back(force.s);
    std::sort(spans_.begin(), spans_.end());
  }

  Shot From(double tip_angle, double share = 1) const {
    const double turned = tip_angle + load_.follower_angle;
    double fx = load_.force_x + load_.follower * std::cos(turned),
           fy = load_.force_y + load_.follower * std::sin(turned);
    State state{tip_angle, share * load_.moment, 0, 0, 0, 0};
    for (std::size_t k = spans_.size() - 1; k > 0; --k) {
      const double from = spans_[k], to = spans_[k - 1];
      if (!(to < from)) continue;
      double jump_x = fx, jump_y = fy;
      for (const BeamForce& force : load_.forces) {
        if (force.s >= from) jump_x += force.x, jump_y += force.y;
      }
      for (const BeamMass& mass : beam_.masses) {
        if (mass.s >= from) jump_x += load_.gravity_x * mass.mass_kg, jump_y += load_.gravity_y * mass.mass_kg;
      }
      const BeamPiece& piece = PieceAt((from + to) / 2);
      const double h = (to - from) / steps_;
      for (int n = 0; n < steps_; ++n) Advance(piece, from + n * h, h, share, jump_x, jump_y, state);
    }
    return {state[0], state[1], -state[2], -state[3], -state[5]};
  }

 private:
  using State = std::array<double, 6>;  // angle, moment, x, y, mass beyond, strain energy

  const BeamPiece& PieceAt(double s) const {
    for (const BeamPiece& piece : beam_.pieces) {
      if (s < piece.s1) return piece;
    }
    return beam_.pieces.back();
  }

  State Slope(const BeamPiece& piece, double s, double share, double fx, double fy, const State& u) const {
    const double x = share * (fx + load_.gravity_x * u[4]), y = share * (fy + load_.gravity_y * u[4]);
    const double stiffness = piece.StiffnessAt(s), c = std::cos(u[0]), sine = std::sin(u[0]);
    return {u[1] / stiffness, x * sine - y * c, c, sine, -piece.MassPerLengthAt(s), u[1] * u[1] / stiffness / 2};
  }

  void Advance(const BeamPiece& piece, double s, double h, double share, double fx, double fy, State& u) const {
    const auto plus = [&](const State& slope, double step) {
      State moved = u;
      for (std::size_t i = 0; i < moved.size(); ++i) moved[i] += step * slope[i];
      return moved;
    };
    const State a = Slope(piece, s, share, fx, fy, u), b = Slope(piece, s + h / 2, share, fx, fy, plus(a, h / 2));
    const State c = Slope(piece, s + h / 2, share, fx, fy, plus(b, h / 2)),
                d = Slope(piece, s + h, share, fx, fy, plus(c, h));
    for (std::size_t i = 0; i < u.size(); ++i) u[i] += h * (a[i] + 2 * b[i] + 2 * c[i] + d[i]) / 6;
  }

  const Beam& beam_;
  const ElasticaLoad& load_;
  int steps_;
  std::vector<double> spans_;
};

}  // namespace withy

#endif  // WITHY_TESTS_UNIT_NUMERICS_SHOOTING_H_
