#include "elastica_path.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

// Radians. A step turns no part of the beam by more than kMostTurn, and the tangent misses by no more than kMostMiss:
// other equilibria are a good part of a radian away. Where the path swerves past a branch they are near: there a miss
// of more than half the turn may have crossed over.
constexpr double kMostTurn = 0.5, kMostMiss = 0.2, kMostMissOfTurn = 0.5;
// A step of this share of the load that still fails has met the end of the path. At a fold what is left of the turn
// goes with the root of what is left of the load, at a branch in proportion to it: the last step would turn the beam by
// some 1e-4 or some 1e-8 radians, and what lies between tells them apart.
constexpr double kLeastStep = 1e-8, kTurnsBack = 3e-6;
// On the way a correction this small ends a step; near the end of the path shapes lie close together and it has to be
// less.
constexpr double kOnTheWay = 3e-3, kNearTheEnd = 1e-6;
constexpr double kSmallStep = 1e-3;
// A settled shape: what the next correction would be, as they shrink quadratically. Those that have stopped shrinking
// are rounding.
constexpr double kSettled = 1e-11, kRounding = 1e-7;
constexpr int kMostCorrections = 8;

// False where Newton does not get to a stable shape nearby.
bool Correct(ElasticaElements& elements, double share, double most, double enough, ChainFunction& correction) {
  double before = 2 * most;
  for (int round = 0; round < kMostCorrections; ++round) {
    elements.Factor(share);
    elements.Solve(ElasticaElements::kResidual, correction);
    if (!(correction.largest <= before / 2)) return false;
    elements.angle().Add(correction, 1);
    if (correction.largest <= enough) return !elements.Unstable();
    before = correction.largest;
  }
  return false;
}

}  // namespace

PathEnd RaiseLoad(ElasticaElements& elements, int most_steps) {
  ChainFunction rate(elements.mesh().size()), correction(elements.mesh().size());
  ChainFunction before = elements.angle();
  PathEnd path;
  double longest = 1;
  elements.Factor(0);
  elements.Solve(ElasticaElements::kByShare, rate);
  for (int steps = 0; steps < most_steps && std::isfinite(rate.largest); ++steps) {
    const double left = 1 - path.share;
    const double step = std::min({left, longest, kMostTurn / std::max(rate.largest, 1e-300)});
    before = elements.angle();
    elements.angle().Add(rate, step);
    const double share = step == left ? 1 : path.share + step;
    const double most = std::clamp(kMostMissOfTurn * rate.largest * step, kNearTheEnd, kMostMiss);
    if (!Correct(elements, share, most, step < kSmallStep ? kNearTheEnd : kOnTheWay, correction)) {
      elements.angle() = before;
      longest = step / 2;
      if (longest >= kLeastStep * path.share && longest > 1e-300) continue;
      path.state = rate.largest * step > kTurnsBack ? ElasticaState::kNone : ElasticaState::kSeveral;
      return path;
    }
    path.share = share;
    if (share == 1) {
      path.state = ElasticaState::kSolved;
      return path;
    }
    longest = 2 * step;
    elements.Solve(ElasticaElements::kByShare, rate);
  }
  return path;
}

bool Settle(ElasticaElements& elements, double share) {
  ChainFunction correction(elements.mesh().size());
  double before = kMostMiss;
  for (int round = 0; round < 2 * kMostCorrections; ++round) {
    elements.Factor(share);
    elements.Solve(ElasticaElements::kResidual, correction);
    if (!(correction.largest <= before)) return before <= kRounding && !elements.Unstable();
    elements.angle().Add(correction, 1);
    const double next = round == 0 ? correction.largest : std::pow(correction.largest, 3) / (before * before);
    if (next <= kSettled) return !elements.Unstable();
    before = correction.largest;
  }
  return before <= kRounding && !elements.Unstable();
}

}  // namespace withy
