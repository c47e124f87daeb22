#include "withy/fit/cut_for_length.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

using Kind = LengthOutcome::Kind;

constexpr double kTie_m = Insertion::kPositionTie;
constexpr double kReached_m = 1.001 * kTie_m;  // LeastCut may solve for the tie itself
constexpr double kLevel = 1e-9;                // a slope that is none

}  // namespace

LengthOutcome CutForLength(const Insertion& insertion, double length_m, double cut_limit_m) {
  LengthOutcome outcome;
  const double uncut = insertion.LengthAt(0);
  if (length_m > uncut + kTie_m) {
    outcome.kind = Kind::kLongerThanUncut;
    outcome.below = {uncut, true};
    return outcome;
  }
  const double shortest = insertion.LengthAt(cut_limit_m);
  const auto cut = insertion.LeastCut(length_m);
  if (length_m < shortest - kTie_m || !cut) {
    outcome.kind = Kind::kBeyondLimit;
    outcome.above = {shortest, true};
    return outcome;
  }
  outcome.cut_m = std::min(*cut, cut_limit_m);
  const Insertion::State state = insertion.At(*outcome.cut_m);
  if (std::abs(state.length - length_m) <= kReached_m) return outcome;
  outcome.kind = Kind::kJump;
  outcome.below = {state.length, true};
  outcome.above = {state.length + state.jump, state.slope_before.value_or(-1) > -kLevel};
  return outcome;
}

}  // namespace withy
