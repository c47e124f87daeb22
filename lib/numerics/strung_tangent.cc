#include "strung_tangent.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

// Of the terms left out of a section, radians; those of its first variations are left out at a hundred times that.
constexpr double kTolerance = 1e-13;

}  // namespace

StrungTangent::StrungTangent(const StrungCase& given, const StrungBeam& solved) : given_(given), system_(given) {
  system_.SetNodes(solved.nodes, solved.log_tension);
  usable_ = system_.Factor(1, kTolerance);
}

// Above the node, for both sections: where the stiffness steps there, a ring that moves up moves into what is above.
double StrungTangent::StiffnessAt(std::size_t node) const {
  const auto& pieces = given_.beam.pieces;
  const auto holds = std::upper_bound(pieces.begin(), pieces.end(), given_.s[node],
                                      [](double s, const BeamPiece& piece) { return s < piece.s1; });
  return (holds == pieces.end() ? pieces.back() : *holds).StiffnessAt(given_.s[node]);
}

// To start later by ds with the same state is to lose the first ds of the way: -(by state x its rate) ds.
StateChange StrungTangent::ByStart(std::size_t section, const FirstVariations& by) const {
  const StrungLink& link = system_.links()[section];
  const double angle = system_.at(section, StrungSystem::kAngle), c = std::cos(angle), s = std::sin(angle);
  const double curvature = link.moment / StiffnessAt(section), shear = link.pull.x * s - link.pull.y * c;
  const auto lost = [&](double StateChange::*of) { return by.by_angle.*of * curvature + by.by_moment.*of * shear; };
  return {-lost(&StateChange::angle), -lost(&StateChange::x) - c, -lost(&StateChange::y) - s,
          -lost(&StateChange::moment)};
}

// A section that ends later by ds goes on by its rate there.
StrungChange StrungTangent::ByRing(std::size_t node) const {
  StrungChange change{node, std::vector<double>(system_.unknowns().size())};
  if (!usable_) return change;
  const StrungLink& link = system_.links()[node - 1];
  const double angle = system_.at(node, StrungSystem::kAngle);
  const PlaneVector arm = ArmAt(given_.arm[node], angle);
  const double moment_below = system_.at(node, StrungSystem::kMoment) + Cross(arm, link.pull);
  double* below = &change.unknowns[system_.RowOf(node - 1)];
  below[StrungSystem::kAngle] = moment_below / StiffnessAt(node);
  below[StrungSystem::kX] = std::cos(angle);
  below[StrungSystem::kY] = std::sin(angle);
  if (node < given_.spans()) {
    const StateChange start = ByStart(node, system_.links()[node].by);
    double* above = &change.unknowns[system_.RowOf(node)];
    above[StrungSystem::kAngle] = start.angle;
    above[StrungSystem::kX] = start.x;
    above[StrungSystem::kY] = start.y;
  }
  system_.Solve(change.unknowns);
  return change;
}

StrungChange StrungTangent::ByTension() const {
  StrungChange change{0, std::vector<double>(system_.unknowns().size())};
  if (usable_) system_.ByShare(change.unknowns);
  return change;
}

StateChange StrungTangent::OfNode(const StrungChange& change, std::size_t node) const {
  const double* of = &change.unknowns[node * system_.width()];
  return {of[StrungSystem::kAngle], of[StrungSystem::kX], of[StrungSystem::kY], of[StrungSystem::kMoment]};
}

PlaneVector StrungTangent::OfCentre(const StrungChange& change, std::size_t node) const {
  const StateChange of = OfNode(change, node);
  const PlaneVector turned = Quarter(ArmAt(given_.arm[node], system_.at(node, StrungSystem::kAngle)));
  return {of.x + turned.x * of.angle, of.y + turned.y * of.angle};
}

PlaneVector StrungTangent::OfChord(const StrungChange& change, std::size_t span) const {
  const PlaneVector from = OfCentre(change, span), to = OfCentre(change, span + 1);
  return {to.x - from.x, to.y - from.y};
}

PlaneVector StrungTangent::OfPull(const StrungChange& change, std::size_t section) const {
  const StrungLink& link = system_.links()[section];
  const double held = given_.tension * std::exp(system_.log_tension(section));
  const PlaneVector unit = link.span.Changed(OfChord(change, section));
  const bool has = system_.width() > StrungSystem::kLogTension;
  const double more = has ? change.unknowns[section * system_.width() + StrungSystem::kLogTension] : 0;
  return {-held * unit.x - more * link.line_pull.x, -held * unit.y - more * link.line_pull.y};
}

double StrungTangent::OfMoment(const StrungChange& change, std::size_t node) const {
  const StrungLink& link = system_.links()[node];
  const StateChange of = OfNode(change, node);
  return of.moment - Dot(link.arm, link.pull) * of.angle + Cross(link.arm, OfPull(change, node));
}

StateChange StrungTangent::Within(const StrungChange& change, std::size_t section, const FirstVariations& by) const {
  const StateChange start = OfNode(change, section);
  const double moment = OfMoment(change, section);
  const PlaneVector pull = OfPull(change, section);
  const StateChange moved = change.moved == section && section > 0 ? ByStart(section, by) : StateChange{};
  const auto at = [&](double StateChange::*of) {
    return by.by_angle.*of * start.angle + by.by_moment.*of * moment + by.by_pull_x.*of * pull.x +
           by.by_pull_y.*of * pull.y + moved.*of;
  };
  return {at(&StateChange::angle), start.x + at(&StateChange::x), start.y + at(&StateChange::y),
          at(&StateChange::moment)};
}

}  // namespace withy
