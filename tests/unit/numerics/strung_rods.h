// Invented rods with their rings and line, and a second look at a solution of theirs.
#ifndef WITHY_TESTS_UNIT_NUMERICS_STRUNG_RODS_H_
#define WITHY_TESTS_UNIT_NUMERICS_STRUNG_RODS_H_

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>
#include <vector>

#include "support/tube_beam.h"
#include "withy/numerics/strung_beam.h"

namespace withy {

struct StrungRod {
  Beam beam;
  std::vector<double> outer_m;  // at both ends of each piece
  std::vector<BeamRing> rings;
  StrungLoad load;

  StrungBeam Solve(const StrungOptions& options = {.tolerance = 1e-12}) const {
    return SolveStrungBeam(beam, rings, load, options);
  }
  BeamPoint At(const StrungBeam& bent, double s) const { return StrungPointAt(beam, rings, load, bent, s); }
};

// 2 m, a tube from 12 to 2 mm of a modulus of 100 GPa, in pieces.
inline StrungRod TubeRod(int pieces) {
  StrungRod rod;
  const TubeEnd butt{0, 0.012, 0.010}, tip{2, 0.002, 0.0012};
  rod.beam = TubeBeam(butt, tip, 100e9, 1500, pieces);
  for (int i = 0; i < pieces; ++i) {
    for (int end : {i, i + 1})
      rod.outer_m.push_back(std::lerp(butt.outer, tip.outer, static_cast<double>(end) / pieces));
  }
  return rod;
}

// Six rings and the one at the tip, each some 15 mm of the diameter away and less towards the tip, `side` up or down.
inline StrungRod RodWithRings(int side, double tension, double far_degrees, double turned = 0, int pieces = 5) {
  StrungRod rod = TubeRod(pieces);
  constexpr double kPlaces[] = {0.4, 0.8, 1.1, 1.4, 1.6, 1.8, 2.0};
  for (double s : kPlaces) rod.rings.push_back({s, 0.006 + 0.004 * (2 - s) * (2 - s), turned * (2 - s)});
  rod.load = {.side = side,
              .reel_s = -0.1,
              .reel_offset = 0.04,
              .tension = tension,
              .far_angle = far_degrees * std::numbers::pi / 180};
  return rod;
}

// All at random: pieces, rings, line; of sizes that bend it a little or a lot.
inline StrungRod RandomRod(std::mt19937& random) {
  const auto uniform = [&](double from, double to) { return std::uniform_real_distribution<double>(from, to)(random); };
  StrungRod rod;
  const double length = uniform(0.5, 4), butt = uniform(0.006, 0.02), tip = uniform(0.0012, 0.004);
  const int pieces = 1 + static_cast<int>(random() % 40);
  rod.beam = TubeBeam({0, butt, 0}, {length, tip, 0}, uniform(30e9, 150e9), 1500, pieces);
  for (int i = 0; i < pieces; ++i) {
    for (int end : {i, i + 1}) rod.outer_m.push_back(std::lerp(butt, tip, static_cast<double>(end) / pieces));
  }
  std::vector<double> places{length};
  for (std::size_t k = random() % 10; k > 0; --k) places.push_back(uniform(0.05, 0.99) * length);
  std::sort(places.begin(), places.end());
  const bool turned = random() % 3 == 0;
  for (double s : places) rod.rings.push_back({s, uniform(0, 0.03), turned ? uniform(-3, 3) : 0});
  const LineSlip slips[] = {LineSlip::kNone, LineSlip::kOut, LineSlip::kIn};
  rod.load = {.clamp_angle = uniform(-3, 3),
              .side = random() % 2 == 0 ? 1 : -1,
              .reel_s = uniform(-0.3, 0),
              .reel_offset = uniform(0, 0.1),
              .tension = std::exp(uniform(-3, 5)),
              .far_angle = uniform(-std::numbers::pi, std::numbers::pi),
              .friction = uniform(0, 0.5),
              .slip = slips[random() % 3]};
  return rod;
}

// From a state to s under a constant force beyond, by the classical Runge and Kutta of fourth order; `steps` to a
// piece.
inline BeamPoint Integrated(const Beam& beam, BeamPoint at, double to, double pull_x, double pull_y, int steps) {
  struct Rate {
    double angle, x, y, moment;
  };
  for (const BeamPiece& piece : beam.pieces) {
    const double from = std::max(at.s, piece.s0), end = std::min(to, piece.s1), h = (end - from) / steps;
    if (!(end > from)) continue;
    const auto rate = [&](const BeamPoint& p) {
      const double c = std::cos(p.angle), s = std::sin(p.angle);
      return Rate{p.moment / piece.StiffnessAt(p.s), c, s, pull_x * s - pull_y * c};
    };
    const auto along = [](const BeamPoint& p, const Rate& k, double ds) {
      return BeamPoint{p.s + ds, p.x + ds * k.x, p.y + ds * k.y, p.angle + ds * k.angle, p.moment + ds * k.moment};
    };
    for (int n = 0; n < steps; ++n) {
      const Rate a = rate(at), b = rate(along(at, a, h / 2)), c = rate(along(at, b, h / 2)), d = rate(along(at, c, h));
      at = along(along(along(along(at, a, h / 6), b, h / 3), c, h / 3), d, h / 6);
      at.s = from + (n + 1) * h;
    }
  }
  return at;
}

}  // namespace withy

#endif  // WITHY_TESTS_UNIT_NUMERICS_STRUNG_RODS_H_
