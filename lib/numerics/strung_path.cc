#include "strung_path.h"

#include <algorithm>
#include <cmath>

#include "lobatto.h"

namespace withy {
namespace {

// Radians. A step turns no part of the beam by more than kMostTurn, and the tangent misses by no more than kMostMiss;
// where the path swerves past a branch, by no more than half the turn.
constexpr double kMostTurn = 0.5, kMostMiss = 0.2, kMostMissOfTurn = 0.5;
// With friction the path has corners, where a ring begins to turn the line the other way.
constexpr double kMostMissAtCorner = 2;
// A step of this share of the tension that still fails has met the end of the path. At a fold what is left of the turn
// goes with the root of what is left of the tension, at a branch in proportion to it.
constexpr double kLeastStep = 1e-8, kTurnsBack = 3e-6;
// On the way a correction this small ends a step, and sections are as good as that needs. Where a step fails more is
// wanted: near the end of the path shapes lie close together, and a long soft section magnifies what it lacks.
constexpr double kOnTheWay = 3e-3, kRoughly = 1e-6;
constexpr double kCarefully = 1e-6, kClosely = 1e-13;
constexpr int kMostCorrections = 8;
// Newton from a neighbour: no correction above this; and so small that the next one would be nothing.
constexpr double kMostAtOnce = 0.5, kLast = 1e-6;
constexpr double kFinest = 1e-15;
// Tension over what buckles the beam at most. One beyond the last is out of proportion: what is found there is
// rounding.
constexpr double kFirstTension = 0.5, kLastTension = 3e3;

// Of a cantilever pressed along its axis the loads P_i at which it buckles have sum(1 / P_i) = integral of (L - s) / EI
// ds: the trace of Green's function of (EI theta')' = -P theta. In newtons, below P_1.
double LeastBuckling(const Beam& beam) {
  const LobattoTable& lobatto = Lobatto();
  double trace = 0;
  for (const BeamPiece& piece : beam.pieces) {
    const double length = piece.s1 - piece.s0;
    for (int j = 0; j < LobattoTable::kNodes; ++j) {
      const double s = piece.s0 + lobatto.t[j] * length;
      trace += lobatto.Weight(j) * length * (beam.length() - s) / piece.StiffnessAt(s);
    }
  }
  return 1 / trace;
}

}  // namespace

bool StrungNewton::Factor(double share, double tolerance) {
  if (steps_ >= most_steps_) return false;
  ++steps_;
  return system_.Factor(share, tolerance);
}

// False where Newton does not get to a stable shape nearby.
bool StrungNewton::Correct(double share, double most, double enough, double tolerance) {
  double before = 2 * most;
  for (int round = 0; round < kMostCorrections; ++round) {
    if (!Factor(share, tolerance)) return false;
    system_.Correction(correction_);
    const double largest = system_.Largest(correction_);
    if (!(largest <= before / 2)) return false;
    system_.Add(correction_, 1);
    if (largest <= enough) return system_.Stable();
    before = largest;
  }
  return false;
}

// Where it stands, but as closely as can be.
bool StrungNewton::GoCarefully(double share) {
  return Correct(share, kMostMiss, kCarefully, kClosely) && Factor(share, kClosely);
}

StrungPathEnd StrungNewton::RaiseTension() {
  StrungPathEnd path;
  system_.SetStraight();
  if (!Factor(0, kRoughly)) return path;
  std::vector<double> rate, before;
  // A step that went past two loads at which the beam buckles would find the same sign again: none more than doubles.
  const double proportion = system_.given().tension / LeastBuckling(system_.given().beam);
  const double miss = system_.given().friction == 0 ? kMostMissOfTurn : kMostMissAtCorner;
  double longest = kFirstTension / std::max(proportion, 1e-300);
  bool failed = false, careful = false;
  system_.ByShare(rate);
  while (steps_ < most_steps_) {
    const double turn = system_.Largest(rate), left = 1 - path.share;
    if (!std::isfinite(turn)) return path;
    const double step = std::min({left, longest, kMostTurn / std::max(turn, 1e-300)});
    before = system_.unknowns();
    system_.Add(rate, step);
    const double share = step == left ? 1 : path.share + step;
    const double most = std::clamp(miss * turn * step, kCarefully, kMostMiss);
    const double enough = careful ? std::clamp(most / 100, kCarefully, kOnTheWay) : kOnTheWay;
    if (!Correct(share, most, enough, careful ? kClosely : kRoughly)) {
      system_.unknowns() = before;
      if (!careful) {
        careful = true;
        if (!GoCarefully(path.share)) return path;
        system_.ByShare(rate);
        continue;
      }
      longest = step / 2;
      failed = true;
      if (longest >= kLeastStep * path.share && longest > 1e-300) continue;
      if (path.share * proportion > kLastTension) return path;
      path.state = turn * step > kTurnsBack ? ElasticaState::kNone : ElasticaState::kSeveral;
      return path;
    }
    path.share = share;
    if (share == 1) {
      path.state = ElasticaState::kSolved;
      return path;
    }
    longest = failed ? step : std::min(2 * step, share);
    failed = false;
    system_.ByShare(rate);
  }
  return path;
}

bool StrungNewton::ComeHome() {
  return Correct(1, kMostAtOnce, kOnTheWay, kRoughly);
}

bool StrungNewton::Settle(double share, double allowed, double& error) {
  const std::size_t end = system_.given().spans() * system_.width();
  double tolerance = std::clamp(allowed / 100, kFinest, kRoughly);
  error = 0;
  for (bool finest = false; !finest; tolerance = std::max(tolerance / 1000, kFinest)) {
    finest = tolerance == kFinest;
    double largest = 1;
    for (int round = 0; round < kMostCorrections && largest > kLast; ++round) {
      if (!Factor(share, tolerance)) return false;
      system_.Correction(correction_);
      largest = system_.Largest(correction_);
      if (!(largest <= kMostAtOnce)) return false;
      system_.Add(correction_, 1);
    }
    if (largest > kLast || !system_.Stable()) return false;
    if (!system_.Evaluate(share, std::max(tolerance / 1000, kFinest))) return false;
    system_.Correction(correction_);
    system_.Add(correction_, 1);
    const double rounding = 1e-16 * system_.given().beam.length();
    error = std::hypot(correction_[end + StrungSystem::kX], correction_[end + StrungSystem::kY]) + rounding;
    if (error <= allowed * system_.given().beam.length()) return true;
  }
  return false;
}

}  // namespace withy
