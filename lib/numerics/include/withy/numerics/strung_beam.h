// A clamped beam bent by a taut line that runs through rings standing off it. Plane, static, weightless.
//
//   StrungLoad load;
//   load.tension = 20;                                   // N, beyond the last ring
//   load.far_angle = 90 * kDegree;                       // straight across, on the side away from the rings
//   StrungBeam bent = SolveStrungBeam(beam, rings, load);
//   if (bent.state == ElasticaState::kSolved) bent.rings[2].turn;
//
// The beam is the elastica of elastica.h without weight: EI theta' = M, clamp at the origin, angles anticlockwise from +x.
// A ring is a point at r(s) + offset x normal, `side` telling on which side; the line is massless and runs straight from ring
// to ring, from a fixed point (the reel) to a far one in a given direction. Ring k feels F_k = T_k u_k - T_(k-1) u_(k-1), and
// the beam that force with its moment about the axis. All SI.
//
// Rings may be turned about the beam (a spiral arrangement): the line then runs in space. The beam bends in its plane by the
// part of the forces that lies in it; what would bend it sideways and roll it is left out.
//
// Of several equilibria the one is given that is reached by raising the tension from zero; where that path ends the state
// says so and where, as of the elastica.
//
// Method: multiple shooting from ring to ring, sections by Taylor series, Newton, steps in the tension. Cost linear in pieces
// and in rings: with ten rings two to six times that of SolveElastica with one force on the end of the same beam; a
// solution near another with all slopes and clearances about as much as one from a slack line (tests/bench/
// line_load_bench.cc). Sections many times as long as sqrt(EI / tension), a rod of one ring under a hard pull, take more steps.
#ifndef WITHY_NUMERICS_STRUNG_BEAM_H_
#define WITHY_NUMERICS_STRUNG_BEAM_H_

#include <string>
#include <vector>

#include "withy/numerics/beam.h"
#include "withy/numerics/elastica.h"

namespace withy {

// One ring. The last one stands at the end of the beam.
struct BeamRing {
  double s = 0;        // metres from the clamp, above 0; rising from ring to ring by more than 1e-9 of the length
  double offset = 0;   // axis of the beam to the ring's centre, >= 0
  double turned = 0;   // radians about the axis from `side`; 0 = in the plane
};

// Which way the line slides in its rings.
enum class LineSlip { kNone, kOut, kIn };  // kOut: towards the far end; kIn: retrieved

struct StrungLoad {
  double clamp_angle = 0;    // radians
  int side = 1;              // +1: rings to the left of the axis; -1: to the right
  double reel_s = 0;         // along the clamped axis, metres from the clamp; less than the first ring's s
  double reel_offset = 0;    // on `side`, >= 0
  double tension = 0;        // N, beyond the last ring, >= 0
  double far_angle = 0;      // of the line there, radians CLOCKWISE from the clamped axis
  double friction = 0;       // of line on ring (capstan: T_(k-1) = T_k exp(-+ friction |turn|)), 0 to 1
  LineSlip slip = LineSlip::kNone;  // kNone = no friction, whatever `friction` says
};

// The line at one ring, and what it does there.
struct RingUnderLine {
  double x = 0, y = 0, z = 0;              // of the ring's centre; z out of the plane, 0 unless the ring is turned
  double axis_x = 0, axis_y = 0, angle = 0;  // of the beam under it
  double line_in = 0, line_out = 0;        // directions in the plane, radians
  // line_out - line_in in (-pi, pi]; of a line in space the angle between its two parts, with that sign.
  double turn = 0;
  double tension_in = 0, tension_out = 0;  // N
  double force_x = 0, force_y = 0, force_z = 0;  // of the line on the beam
  double moment_on_axis = 0;               // of that force about the axis, in the plane, N m
  double moment_before = 0, moment_after = 0;  // of the beam, just below and just above the ring
};

// From one ring (of the first: the reel) to the next.
struct LineSpan {
  double length = 0;
  double direction = 0;                    // in the plane
  double tension = 0;
};

// A state of the beam just above the clamp or above a ring; what starts a solution near it.
struct StrungNode {
  double x = 0, y = 0, angle = 0, moment = 0;
};

struct StrungBeam {
  ElasticaState state = ElasticaState::kNotConverged;
  double reached = 0;                  // share of the tension at which all stands; 1 where solved
  std::string why;                     // unless solved: "ring 3 at 700 mm is not beyond ring 2 at 720 mm"
  std::vector<RingUnderLine> rings;
  std::vector<LineSpan> spans;         // as rings
  // From clamp to end, for drawing: rings (twice: the moment steps) and eight or more between two of them.
  std::vector<BeamPoint> points;
  double strain_energy = 0;            // J
  double path = 0;                     // length of the line from the reel to the last ring
  double tension_at_reel = 0;          // N
  double error = 0;                    // how far the end may be off, metres: an estimate; 0 where not solved
  int newton_steps = 0;                // taken in all
  std::vector<StrungNode> nodes;       // at the clamp and at each ring
  std::vector<double> log_tension;     // of each span over the far one; all 0 without friction

  const BeamPoint& tip() const { return points.back(); }  // requires points
};

struct StrungOptions {
  double tolerance = 1e-9;             // of `error` over the length; above zero
  int most_steps = 400;                // of Newton, in all
  const StrungBeam* near = nullptr;    // a solution for the same beam and as many rings, some way off: saves the steps in the
                                       // tension, where Newton comes home from it
  bool points = true;                  // false: only rings, spans and nodes are wanted (points stay empty, energy 0)
};

StrungBeam SolveStrungBeam(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load,
                           const StrungOptions& options = {});

// The state at s of a solved beam, to the accuracy of the solution; at a ring the one above it. 0 <= s <= length.
BeamPoint StrungPointAt(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load,
                        const StrungBeam& solved, double s);

// Where the line comes nearest to the surface of the beam within one span: min over s of side x (c - p(s)) . nu with p the
// surface on the side of the rings, nu the left normal of the span. Below zero the straight line would cut into the beam. Of a
// span whose two rings are turned by half a turn the other side; of one that does not lie in the plane: distance of the line from the axis less half the diameter.
struct Clearance {
  double least = 0;
  double s = 0;
  std::vector<double> slopes;          // by the place of each ring but the last; empty unless asked for
};
// `outer_m`: outer diameter at both ends of each piece of the beam. REQUIRES: solved, else empty.
std::vector<Clearance> ClearancesOf(const Beam& beam, const std::vector<double>& outer_m, const std::vector<BeamRing>& rings,
                                    const StrungLoad& load, const StrungBeam& solved, bool with_slopes = false);

// The largest of each along the beam, one-sided limits at rings counted; places to 1e-6 of the length.
struct StrungPeaks {
  double moment = 0, moment_s = 0;         // |M|
  double curvature = 0, curvature_s = 0;   // |theta'|
  double strain = 0, strain_s = 0;         // |theta'| D / 2
};
StrungPeaks PeaksOf(const Beam& beam, const std::vector<double>& outer_m, const std::vector<BeamRing>& rings,
                    const StrungLoad& load, const StrungBeam& solved);

// How the solution answers to small changes, exact to first order (implicit differentiation of the shooting system; agrees
// with differences of solutions to 1e-8). Rings in the plane or turned, with friction or without. By ring j: by its place,
// per metre, its offset going with it; the last ring is left out.
struct StrungSlopes {
  std::vector<std::vector<double>> direction;  // of span k (row) by ring j
  std::vector<std::vector<double>> turn;       // at ring k by ring j
  std::vector<std::vector<double>> angle;      // of the beam at ring k by ring j; a moving ring is followed
  // By the logarithm of the tension (as much as minus that of a common factor of the stiffness).
  std::vector<double> turn_by_tension, angle_by_tension;  // of each ring
  double tip_x_by_tension = 0, tip_y_by_tension = 0, clamp_moment_by_tension = 0;
};
// REQUIRES: solved.
StrungSlopes SlopesOf(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load, const StrungBeam& solved);

}  // namespace withy

#endif  // WITHY_NUMERICS_STRUNG_BEAM_H_
