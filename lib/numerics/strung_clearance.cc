#include <cmath>

#include "strung_figures.h"
#include "strung_search.h"
#include "withy/numerics/strung_beam.h"

namespace withy {
namespace {

constexpr int kSamplesOfSection = 16;

// The line of one span over its part of the beam.
struct ClearanceOfSpan {
  SpanChord span;
  PlaneVector centre;  // of the ring below
  double out = 0;
  bool flat = true;
  int side = 1;

  // Of the surface where the axis is at `at`.
  double At(const BeamPoint& at, double outer) const {
    const PlaneVector way{centre.x - at.x, centre.y - at.y};
    if (!flat) {
      return std::hypot(Cross(way, span.unit), way.y * span.unit_out - out * span.unit.y,
                        out * span.unit.x - way.x * span.unit_out) -
             outer / 2;
    }
    const PlaneVector normal = Quarter(span.unit);
    return side * Dot(way, normal) - outer / 2 * Dot({-std::sin(at.angle), std::cos(at.angle)}, normal);
  }
};

}  // namespace

std::vector<Clearance> ClearancesOf(const Beam& beam, const std::vector<double>& outer_m,
                                    const std::vector<BeamRing>& rings, const StrungLoad& load,
                                    const StrungBeam& solved, bool with_slopes) {
  const StrungCase given(beam, rings, load);
  std::vector<Clearance> clearances;
  for (std::size_t k = 0; k < given.spans(); ++k) {
    const ClearanceOfSpan of{.span = SpanOf(given, solved.nodes, k),
                             .centre = CentreOf(given, solved.nodes, k),
                             .out = given.arm[k].out,
                             .flat = given.arm[k].out == 0 && given.arm[k + 1].out == 0,
                             .side = load.side};
    const std::vector<BendArc> arcs = ArcsOf(given, solved, k);
    const LeastOnArc least = LeastAlong(arcs, kSamplesOfSection, [&](std::size_t arc, double t) {
      return of.At(arcs[arc].At(t), OuterAt(beam, outer_m, arcs[arc], t));
    });
    clearances.push_back({least.value, arcs[least.arc].s0 + least.t * arcs[least.arc].length, {}});
  }
  return clearances;
}

}  // namespace withy
