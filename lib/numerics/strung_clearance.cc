#include <cmath>
#include <optional>

#include "strung_figures.h"
#include "strung_search.h"
#include "strung_tangent.h"
#include "withy/numerics/strung_beam.h"

namespace withy {
namespace {

constexpr int kSamplesOfSection = 16;
// A least value this close to a ring, over the length of the section, is at the ring and goes with it.
constexpr double kAtRing = 1e-7;

// How the surface at the place looked at moves with the line.
struct SurfaceChange {
  StateChange axis;
  double outer = 0;
  PlaneVector centre, chord;
};

// The line of one span over its part of the beam.
struct ClearanceOfSpan {
  SpanChord span;
  PlaneVector centre;  // of the ring below
  double out = 0;      // of that
  bool flat = true;
  int side = 1;

  double At(const BeamPoint& at, double outer) const {
    const PlaneVector way{centre.x - at.x, centre.y - at.y};
    if (!flat) {
      const double along = Dot(way, span.unit) + out * span.unit_out;
      return std::hypot(way.x - along * span.unit.x, way.y - along * span.unit.y, out - along * span.unit_out) -
             outer / 2;
    }
    const PlaneVector normal = Quarter(span.unit);
    return side * Dot(way, normal) - outer / 2 * Dot({-std::sin(at.angle), std::cos(at.angle)}, normal);
  }

  double Changed(const BeamPoint& at, double outer, const SurfaceChange& by) const {
    const PlaneVector way{centre.x - at.x, centre.y - at.y};
    const PlaneVector way_by{by.centre.x - by.axis.x, by.centre.y - by.axis.y}, unit_by = span.Changed(by.chord);
    if (!flat) {
      const double along = Dot(way, span.unit) + out * span.unit_out;
      const PlaneVector across{way.x - along * span.unit.x, way.y - along * span.unit.y};
      const double across_out = out - along * span.unit_out, distance = At(at, outer) + outer / 2;
      const double unit_out_by = -span.unit_out * Dot(span.unit, by.chord) / span.length;
      return (Dot(across, way_by) - along * (Dot(across, unit_by) + across_out * unit_out_by)) / distance -
             by.outer / 2;
    }
    const PlaneVector normal = Quarter(span.unit), normal_by = Quarter(unit_by);
    const PlaneVector tangent{std::cos(at.angle), std::sin(at.angle)}, left = Quarter(tangent);
    return side * (Dot(way_by, normal) + Dot(way, normal_by)) - by.outer / 2 * Dot(left, normal) +
           outer / 2 * (Dot(tangent, normal) * by.axis.angle - Dot(left, normal_by));
  }
};

// What all spans have in common.
struct Asked {
  const StrungCase& given;
  const std::vector<double>& outer_m;
  const StrungBeam& solved;
  int side = 1;
  const StrungTangent* tangent = nullptr;  // where slopes are wanted
  std::vector<StrungChange> changes;       // by each ring but the last
};

// The place of least clearance stays where it is to first order (the envelope theorem), or goes with its ring.
std::vector<double> SlopesAt(const Asked& asked, const ClearanceOfSpan& of, std::size_t k, const BendArc& arc,
                             double t) {
  const StrungCase& given = asked.given;
  const Beam& beam = given.beam;
  const double s = arc.s0 + t * arc.length, near = kAtRing * (given.s[k + 1] - given.s[k]);
  const bool at_start = s - given.s[k] <= near, at_end = given.s[k + 1] - s <= near;
  const BeamPiece& piece = beam.pieces[arc.piece];
  const double widening = (asked.outer_m[2 * arc.piece + 1] - asked.outer_m[2 * arc.piece]) / (piece.s1 - piece.s0);
  FirstVariations by;
  if (!at_start && !at_end) WalkOf(given, asked.solved, k, s).ToEnd(by);
  std::vector<double> slopes;
  for (const StrungChange& change : asked.changes) {
    SurfaceChange surface;
    surface.centre = asked.tangent->OfCentre(change, k);
    surface.chord = asked.tangent->OfChord(change, k);
    if (at_start || at_end) {
      surface.axis = asked.tangent->OfNode(change, at_start ? k : k + 1);
      surface.outer = change.moved == (at_start ? k : k + 1) ? widening : 0;
    } else {
      surface.axis = asked.tangent->Within(change, k, by);
    }
    slopes.push_back(of.Changed(arc.At(t), OuterAt(beam, asked.outer_m, arc, t), surface));
  }
  return slopes;
}

// The side on which the rings of a flat span stand: both may be turned by half a turn. Where they stand on both sides the
// line goes through the blank whichever is asked.
int SideOf(const Asked& asked, std::size_t k) {
  const double below = asked.given.arm[k].across, above = asked.given.arm[k + 1].across;
  if (below <= 0 && above <= 0 && below + above < 0) return -1;
  if (below >= 0 && above >= 0 && below + above > 0) return 1;
  return asked.side;
}

Clearance ClearanceOf(const Asked& asked, std::size_t k) {
  const StrungCase& given = asked.given;
  const ClearanceOfSpan of{.span = SpanOf(given, asked.solved.nodes, k),
                           .centre = CentreOf(given, asked.solved.nodes, k),
                           .out = given.arm[k].out,
                           .flat = given.arm[k].out == 0 && given.arm[k + 1].out == 0,
                           .side = SideOf(asked, k)};
  const std::vector<BendArc> arcs = ArcsOf(given, asked.solved, k);
  if (arcs.empty()) return {};
  const LeastOnArc least = LeastAlong(arcs, kSamplesOfSection, [&](std::size_t arc, double t) {
    return of.At(arcs[arc].At(t), OuterAt(given.beam, asked.outer_m, arcs[arc], t));
  });
  const BendArc& arc = arcs[least.arc];
  Clearance clearance{least.value, arc.s0 + least.t * arc.length, {}};
  if (asked.tangent) clearance.slopes = SlopesAt(asked, of, k, arc, least.t);
  return clearance;
}

}  // namespace

std::vector<Clearance> ClearancesOf(const Beam& beam, const std::vector<double>& outer_m,
                                    const std::vector<BeamRing>& rings, const StrungLoad& load,
                                    const StrungBeam& solved, bool with_slopes) {
  const StrungCase given(beam, rings, load);
  if (!Fits(given, solved) || outer_m.size() != 2 * beam.pieces.size()) return {};
  std::optional<StrungTangent> tangent;
  Asked asked{.given = given, .outer_m = outer_m, .solved = solved, .side = load.side, .changes = {}};
  if (with_slopes) {
    asked.tangent = &tangent.emplace(given, solved);
    for (std::size_t node = 1; node < given.spans(); ++node) asked.changes.push_back(tangent->ByRing(node));
  }
  std::vector<Clearance> clearances;
  for (std::size_t k = 0; k < given.spans(); ++k) clearances.push_back(ClearanceOf(asked, k));
  return clearances;
}

}  // namespace withy
