#include <cmath>

#include "strung_figures.h"
#include "strung_tangent.h"
#include "withy/numerics/strung_beam.h"

namespace withy {
namespace {

// Of the direction of a span, its part in the plane.
double OfDirection(const SpanChord& span, PlaneVector chord_by) {
  return Cross(span.chord, chord_by) / Dot(span.chord, span.chord);
}

// Of the turn at ring k, between its span and the next.
double OfTurn(const StrungTangent& tangent, const LineTurn& turn, const StrungChange& change, std::size_t k) {
  const bool last = k + 1 == tangent.system().given().spans();
  return Dot(turn.by_before, tangent.OfChord(change, k)) +
         (last ? 0 : Dot(turn.by_after, tangent.OfChord(change, k + 1)));
}

}  // namespace

StrungSlopes SlopesOf(const Beam& beam, const std::vector<BeamRing>& rings, const StrungLoad& load,
                      const StrungBeam& solved) {
  const StrungCase given(beam, rings, load);
  if (!Fits(given, solved)) return {};
  const StrungTangent tangent(given, solved);
  const std::size_t count = rings.size();
  std::vector<SpanChord> spans;
  for (std::size_t k = 0; k < count; ++k) spans.push_back(SpanOf(given, solved.nodes, k));
  spans.push_back(Far(given.far));
  std::vector<LineTurn> turns;
  for (std::size_t k = 0; k < count; ++k) turns.push_back(TurnOf(spans[k], spans[k + 1]));

  StrungSlopes slopes;
  slopes.direction.assign(count, std::vector<double>(count - 1));
  slopes.turn = slopes.angle = slopes.direction;
  for (std::size_t j = 0; j + 1 < count; ++j) {
    const StrungChange change = tangent.ByRing(j + 1);
    for (std::size_t k = 0; k < count; ++k) {
      slopes.direction[k][j] = OfDirection(spans[k], tangent.OfChord(change, k));
      slopes.turn[k][j] = OfTurn(tangent, turns[k], change, k);
      slopes.angle[k][j] = tangent.OfNode(change, k + 1).angle;
    }
  }
  const StrungChange change = tangent.ByTension();
  for (std::size_t k = 0; k < count; ++k) {
    slopes.turn_by_tension.push_back(OfTurn(tangent, turns[k], change, k));
    slopes.angle_by_tension.push_back(tangent.OfNode(change, k + 1).angle);
  }
  const StateChange tip = tangent.OfNode(change, count);
  slopes.tip_x_by_tension = tip.x;
  slopes.tip_y_by_tension = tip.y;
  if (tangent.usable()) {
    const StrungLink& clamp = tangent.system().links().front();
    slopes.clamp_moment_by_tension = tangent.OfMoment(change, 0) + Cross(clamp.arm, clamp.pull);
  }
  return slopes;
}

}  // namespace withy
