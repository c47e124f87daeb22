#include "strung_line.h"

#include <cmath>

namespace withy {
namespace {

// Below this turn a line in space is as good as one in the plane.
constexpr double kStraight = 1e-7;
// Sine of a turn about the axis that is the rounding of none, or of half a turn.
constexpr double kInPlane = 1e-12;

PlaneVector Scaled(PlaneVector a, double factor) {
  return {a.x * factor, a.y * factor};
}

}  // namespace

PlaneVector ArmAt(const RingArm& arm, double angle) {
  const double c = std::cos(angle), s = std::sin(angle);
  return {arm.along * c - arm.across * s, arm.along * s + arm.across * c};
}

StrungCase::StrungCase(const Beam& of, const std::vector<BeamRing>& rings, const StrungLoad& load)
    : beam(of), s{0}, clamp_angle(load.clamp_angle), tension(load.tension) {
  arm.push_back({load.reel_s, load.side * load.reel_offset, 0});
  for (const BeamRing& ring : rings) {
    s.push_back(ring.s);
    double out = ring.offset * std::sin(ring.turned);
    if (std::abs(out) <= kInPlane * ring.offset) out = 0;
    arm.push_back({0, load.side * ring.offset * std::cos(ring.turned), out});
    flat_ = flat_ && out == 0;
  }
  if (!rings.empty()) s.back() = beam.length();
  const double angle = clamp_angle - load.far_angle;
  far = {std::cos(angle), std::sin(angle)};
  if (load.slip != LineSlip::kNone) friction = load.slip == LineSlip::kOut ? -load.friction : load.friction;
}

// The part along the direction in space only lengthens the span.
PlaneVector SpanChord::Changed(PlaneVector by) const {
  const double along = Dot(unit, by);
  return {(by.x - along * unit.x) / length, (by.y - along * unit.y) / length};
}

SpanChord ChordOf(PlaneVector from, const RingArm& arm, PlaneVector to, const RingArm& next) {
  SpanChord span;
  span.chord = {to.x - from.x, to.y - from.y};
  const double out = next.out - arm.out;
  span.length = std::hypot(span.chord.x, span.chord.y, out);
  span.unit = Scaled(span.chord, 1 / span.length);
  span.unit_out = out / span.length;
  return span;
}

SpanChord Far(PlaneVector unit) {
  return {.chord = unit, .length = HUGE_VAL, .unit = unit};
}

LineTurn TurnOf(const SpanChord& before, const SpanChord& after) {
  LineTurn turn;
  const double plane = std::atan2(Cross(before.unit, after.unit), Dot(before.unit, after.unit));
  const double cosine = Dot(before.unit, after.unit) + before.unit_out * after.unit_out;
  const double sine =
      std::hypot(Cross(before.unit, after.unit), before.unit.y * after.unit_out - before.unit_out * after.unit.y,
                 before.unit_out * after.unit.x - before.unit.x * after.unit_out);
  if ((before.unit_out == 0 && after.unit_out == 0) || !(sine > kStraight)) {
    turn.angle = plane;
    turn.by_before = Scaled(Quarter(before.unit), -1 / before.length);
    turn.by_after = Scaled(Quarter(after.unit), 1 / after.length);
    return turn;
  }
  const double sign = plane < 0 ? -1 : 1;
  turn.angle = sign * std::atan2(sine, cosine);
  const auto towards = [&](const SpanChord& of, const SpanChord& other) {
    const double factor = -sign / (sine * of.length);
    return PlaneVector{factor * (other.unit.x - cosine * of.unit.x), factor * (other.unit.y - cosine * of.unit.y)};
  };
  turn.by_before = towards(before, after);
  turn.by_after = towards(after, before);
  return turn;
}

}  // namespace withy
