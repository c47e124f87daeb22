#include "strung_figures.h"

#include <algorithm>
#include <cmath>

#include "lobatto.h"

namespace withy {
namespace {

// Of the terms left out where a solved beam is walked anew, radians.
constexpr double kWalked = 1e-14;
// Points between two rings, apart from ends of pieces; one closer than half of that to the last is left out.
constexpr double kPointsOfSection = 8;

bool Sound(const BeamPoint& point) {
  return std::isfinite(point.x + point.y + point.angle + point.moment);
}

// 1/2 integral of M^2 / EI.
double EnergyOf(const Beam& beam, const BendArc& arc) {
  const LobattoTable& lobatto = Lobatto();
  double energy = 0;
  for (int j = 0; j < LobattoTable::kNodes; ++j) {
    const BeamPoint point = arc.At(lobatto.t[j]);
    const double stiffness = beam.pieces[arc.piece].StiffnessAt(point.s);
    energy += lobatto.Weight(j) * arc.length * point.moment * point.moment / stiffness / 2;
  }
  return energy;
}

// The line on both sides of a ring.
struct LineEnd {
  SpanChord span;
  double tension = 0;
  PlaneVector pull() const { return {tension * span.unit.x, tension * span.unit.y}; }
};

RingUnderLine RingOf(const StrungCase& given, const StrungSystem& system, std::size_t node, const LineEnd& in,
                     const LineEnd& out, PlaneVector far) {
  RingUnderLine ring;
  ring.axis_x = system.at(node, StrungSystem::kX);
  ring.axis_y = system.at(node, StrungSystem::kY);
  ring.angle = system.at(node, StrungSystem::kAngle);
  const PlaneVector arm = ArmAt(given.arm[node], ring.angle);
  ring.x = ring.axis_x + arm.x;
  ring.y = ring.axis_y + arm.y;
  ring.z = given.arm[node].out;
  ring.line_in = std::atan2(in.span.unit.y, in.span.unit.x);
  ring.line_out = std::atan2(out.span.unit.y, out.span.unit.x);
  ring.turn = TurnOf(in.span, out.span).angle;
  ring.tension_in = in.tension;
  ring.tension_out = out.tension;
  const PlaneVector pull_in = in.pull(), pull_out = out.pull(), force{pull_out.x - pull_in.x, pull_out.y - pull_in.y};
  ring.force_x = force.x;
  ring.force_y = force.y;
  ring.force_z = out.tension * out.span.unit_out - in.tension * in.span.unit_out;
  ring.moment_on_axis = Cross(arm, force);
  const double moment = system.at(node, StrungSystem::kMoment);
  ring.moment_before = moment + Cross(arm, {far.x - pull_in.x, far.y - pull_in.y});
  ring.moment_after = moment + Cross(arm, {far.x - pull_out.x, far.y - pull_out.y});
  return ring;
}

bool Sound(const RingUnderLine& ring) {
  return std::isfinite(ring.x + ring.y + ring.angle + ring.turn + ring.tension_in + ring.force_x + ring.force_y +
                       ring.moment_on_axis + ring.moment_before + ring.moment_after);
}

}  // namespace

bool Fits(const StrungCase& given, const StrungBeam& solved) {
  return given.spans() > 0 && solved.nodes.size() == given.s.size() && solved.spans.size() == given.spans() &&
         solved.rings.size() == given.spans();
}

PlaneVector CentreOf(const StrungCase& given, const std::vector<StrungNode>& nodes, std::size_t k) {
  const PlaneVector arm = ArmAt(given.arm[k], nodes[k].angle);
  return {nodes[k].x + arm.x, nodes[k].y + arm.y};
}

SpanChord SpanOf(const StrungCase& given, const std::vector<StrungNode>& nodes, std::size_t k) {
  return ChordOf(CentreOf(given, nodes, k), given.arm[k], CentreOf(given, nodes, k + 1), given.arm[k + 1]);
}

bool SetFigures(const StrungSystem& system, double share, StrungBeam& bent) {
  const StrungCase& given = system.given();
  const double tension = share * given.tension;
  const PlaneVector far{tension * given.far.x, tension * given.far.y};
  bent.nodes.resize(given.s.size());
  for (std::size_t k = 0; k < given.s.size(); ++k) {
    bent.nodes[k] = {system.at(k, StrungSystem::kX), system.at(k, StrungSystem::kY), system.at(k, StrungSystem::kAngle),
                     0};
  }
  std::vector<LineEnd> line(given.s.size());
  bent.spans.clear();
  bent.log_tension.clear();
  bent.path = 0;
  for (std::size_t k = 0; k < given.spans(); ++k) {
    line[k] = {SpanOf(given, bent.nodes, k), tension * std::exp(system.log_tension(k))};
    bent.spans.push_back({line[k].span.length, std::atan2(line[k].span.unit.y, line[k].span.unit.x), line[k].tension});
    bent.log_tension.push_back(system.log_tension(k));
    bent.path += line[k].span.length;
  }
  line.back() = {Far(given.far), tension};
  bent.tension_at_reel = line.front().tension;
  bent.rings.clear();
  bool sound = std::isfinite(bent.path);
  for (std::size_t k = 1; k < given.s.size(); ++k) {
    bent.rings.push_back(RingOf(given, system, k, line[k - 1], line[k], far));
    bent.nodes[k].moment = bent.rings.back().moment_after;
    sound = sound && Sound(bent.rings.back());
  }
  bent.nodes[0].moment = RingOf(given, system, 0, line[0], line[0], far).moment_after;
  bent.nodes.back().moment = bent.rings.back().moment_after = 0;
  return sound;
}

SectionWalk WalkOf(const StrungCase& given, const StrungBeam& solved, std::size_t k, double s) {
  const StrungNode& node = solved.nodes[k];
  const SpanChord span = SpanOf(given, solved.nodes, k);
  const double far = solved.rings.back().tension_out, held = solved.spans[k].tension;
  const PlaneVector pull{far * given.far.x - held * span.unit.x, far * given.far.y - held * span.unit.y};
  return SectionWalk(given.beam, {given.s[k], node.x, node.y, node.angle, node.moment}, s, pull, kWalked);
}

std::vector<BendArc> ArcsOf(const StrungCase& given, const StrungBeam& solved, std::size_t k) {
  std::vector<BendArc> arcs;
  SectionWalk walk = WalkOf(given, solved, k, given.s[k + 1]);
  for (BendArc arc; walk.Next(arc);) arcs.push_back(arc);
  return arcs;
}

double OuterAt(const Beam& beam, const std::vector<double>& outer_m, const BendArc& arc, double t) {
  const BeamPiece& piece = beam.pieces[arc.piece];
  const double part = (arc.s0 + t * arc.length - piece.s0) / (piece.s1 - piece.s0);
  return std::lerp(outer_m[2 * arc.piece], outer_m[2 * arc.piece + 1], part);
}

bool SetPoints(const StrungCase& given, StrungBeam& bent) {
  bent.points.clear();
  bent.strain_energy = 0;
  for (std::size_t k = 0; k < given.spans(); ++k) {
    const StrungNode &node = bent.nodes[k], &next = bent.nodes[k + 1];
    const double spacing = (given.s[k + 1] - given.s[k]) / kPointsOfSection;
    bent.points.push_back({given.s[k], node.x, node.y, node.angle, node.moment});
    for (const BendArc& arc : ArcsOf(given, bent, k)) {
      bent.strain_energy += EnergyOf(given.beam, arc);
      const int parts = static_cast<int>(std::ceil(arc.length / spacing * (1 - 1e-9)));
      for (int part = 1; part <= parts; ++part) {
        const BeamPoint point = arc.At(static_cast<double>(part) / parts);
        if (!Sound(point)) return false;
        const double room = std::min(point.s - bent.points.back().s, given.s[k + 1] - point.s);
        if (room >= spacing / 2) bent.points.push_back(point);
      }
    }
    bent.points.push_back({given.s[k + 1], next.x, next.y, next.angle, bent.rings[k].moment_before});
  }
  return std::isfinite(bent.strain_energy);
}

}  // namespace withy
