// The line over the rings: where their centres are, how a span runs between two, how it turns in one.
//
// Node 0 is the clamp with the reel as its ring, node k the k-th ring. Every ring stands on an arm fixed in the beam's
// own frame there.
#ifndef WITHY_LIB_NUMERICS_STRUNG_LINE_H_
#define WITHY_LIB_NUMERICS_STRUNG_LINE_H_

#include <vector>

#include "strung_section.h"
#include "withy/numerics/strung_beam.h"

namespace withy {

// From the axis to the centre of the ring: along the tangent, along the left normal, out of the plane.
struct RingArm {
  double along = 0, across = 0, out = 0;
};

// In the plane, of a beam at that angle.
PlaneVector ArmAt(const RingArm& arm, double angle);

// What is given, node by node.
struct StrungCase {
  StrungCase(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load);
  std::size_t spans() const { return s.size() - 1; }
  bool flat() const { return flat_; }  // every ring in the plane

  const Beam& beam;
  std::vector<double> s;
  std::vector<RingArm> arm;
  double clamp_angle = 0;
  PlaneVector far;  // direction of the line beyond the last ring
  double tension = 0;
  double friction = 0;  // log T_(k-1) = log T_k + friction |turn|: below zero where the line runs out

 private:
  bool flat_ = true;
};

// Of a span from one centre to the next.
struct SpanChord {
  PlaneVector chord;  // in the plane
  double length = 0;  // in space
  PlaneVector unit;   // of the direction in space: its part in the plane
  double unit_out = 0;
  PlaneVector Changed(PlaneVector chord_by) const;  // of `unit`
};
SpanChord ChordOf(PlaneVector from, const RingArm& arm, PlaneVector to, const RingArm& next);
// Direction of the line beyond the last ring, as a span without end: nothing moves it.
SpanChord Far(PlaneVector unit);

// How the line turns from one span to the next, and what that answers to their chords.
struct LineTurn {
  double angle = 0;  // anticlockwise in (-pi, pi]; in space the angle between them with the sign it has in the plane
  PlaneVector by_before, by_after;
};
LineTurn TurnOf(const SpanChord& before, const SpanChord& after);

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_LINE_H_
