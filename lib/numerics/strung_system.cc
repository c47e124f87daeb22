#include "strung_system.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

PlaneVector Sum(PlaneVector a, PlaneVector b) {
  return {a.x + b.x, a.y + b.y};
}
PlaneVector Times(PlaneVector a, double factor) {
  return {a.x * factor, a.y * factor};
}

}  // namespace

// The band: see RowOf; a row of friction reaches over three nodes.
StrungSystem::StrungSystem(const StrungCase& given)
    : given_(given),
      width_(given.friction == 0 ? 4 : 5),
      unknowns_(width_ * given.s.size()),
      lack_(unknowns_.size()),
      links_(given.spans()),
      matrix_(unknowns_.size(), width_ + 2, width_ == 4 ? 3 : 5) {}

void StrungSystem::SetStraight() {
  std::vector<StrungNode> nodes(given_.s.size());
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    nodes[k].angle = given_.clamp_angle;
    nodes[k].x = given_.s[k] * std::cos(given_.clamp_angle);
    nodes[k].y = given_.s[k] * std::sin(given_.clamp_angle);
  }
  SetNodes(nodes, {});
  for (std::size_t k = 0; k < nodes.size(); ++k) unknowns_[k * width_ + kMoment] = 0;
}

void StrungSystem::SetNodes(const std::vector<StrungNode>& nodes, const std::vector<double>& log_tension) {
  std::fill(unknowns_.begin(), unknowns_.end(), 0.0);
  unknowns_[kAngle] = given_.clamp_angle;
  for (std::size_t k = 1; k < nodes.size(); ++k) {
    unknowns_[k * width_ + kAngle] = nodes[k].angle;
    unknowns_[k * width_ + kX] = nodes[k].x;
    unknowns_[k * width_ + kY] = nodes[k].y;
  }
  const PlaneVector end = Centre(given_.spans());
  for (std::size_t k = 0; k < nodes.size(); ++k) {
    const PlaneVector centre = Centre(k);
    unknowns_[k * width_ + kMoment] = given_.tension * Cross({end.x - centre.x, end.y - centre.y}, given_.far);
    if (width_ > kLogTension && k < log_tension.size()) unknowns_[k * width_ + kLogTension] = log_tension[k];
  }
}

PlaneVector StrungSystem::Centre(std::size_t node) const {
  return Sum({at(node, kX), at(node, kY)}, ArmAt(given_.arm[node], at(node, kAngle)));
}

bool StrungSystem::Factor(double share, double tolerance) {
  return Assemble(share, tolerance, true) && matrix_.Factor();
}

bool StrungSystem::Evaluate(double share, double tolerance) {
  return Assemble(share, tolerance, false);
}

bool StrungSystem::Assemble(double share, double tolerance, bool with_matrix) {
  const std::size_t last = given_.spans();
  const double tension = share * given_.tension;
  if (with_matrix) matrix_.Clear();
  for (std::size_t i = 0; i < 3; ++i) {
    lack_[i] = unknowns_[i] - (i == kAngle ? given_.clamp_angle : 0);
    if (with_matrix) matrix_.At(i, i) = 1;
  }
  for (std::size_t k = 0; k < last; ++k) {
    StrungLink& link = links_[k];
    const PlaneVector from = Centre(k), to = Centre(k + 1);
    link.arm = {from.x - at(k, kX), from.y - at(k, kY)};
    link.span = ChordOf(from, given_.arm[k], to, given_.arm[k + 1]);
    link.line_pull = Times(link.span.unit, tension * std::exp(log_tension(k)));
    link.pull = Sum(Times(given_.far, tension), Times(link.line_pull, -1));
    link.moment = at(k, kMoment) + Cross(link.arm, link.pull);
    if (!std::isfinite(link.pull.x + link.pull.y + link.moment)) return false;
    const BeamPoint start{given_.s[k], at(k, kX), at(k, kY), at(k, kAngle), link.moment};
    SectionWalk walk(given_.beam, start, given_.s[k + 1], link.pull, tolerance);
    if (!(with_matrix ? walk.ToEnd(link.by) : walk.ToEnd())) return false;
    double* lack = &lack_[RowOf(k)];
    lack[kAngle] = at(k + 1, kAngle) - walk.here().angle;
    lack[kX] = at(k + 1, kX) - walk.here().x;
    lack[kY] = at(k + 1, kY) - walk.here().y;
    lack[kMoment] = at(k, kMoment) - at(k + 1, kMoment) - Cross(link.span.chord, Times(given_.far, tension));
    if (with_matrix) SetRows(k, share);
  }
  if (width_ > kLogTension) {
    for (std::size_t k = 0; k < last; ++k) SetFriction(k, with_matrix);
  }
  for (std::size_t i = kMoment; i < width_; ++i) {
    const std::size_t row = last * width_ + i;
    lack_[row] = unknowns_[row];
    if (with_matrix) matrix_.At(row, row) = 1;
  }
  return true;
}

// dM = dQ + d(arm) x N + arm x dN; dN = -T_k du - T_k u dt; a centre moves by (dx, dy) + Quarter(arm) d(angle).
void StrungSystem::SetRows(std::size_t k, double share) {
  const StrungLink& link = links_[k];
  const std::size_t from = k * width_, to = from + width_;
  const double held = given_.tension * share * std::exp(log_tension(k));
  const PlaneVector by_x = link.span.Changed({1, 0}), by_y = link.span.Changed({0, 1});
  const PlaneVector arm = Quarter(link.arm), next_arm = Quarter(ArmAt(given_.arm[k + 1], at(k + 1, kAngle)));
  constexpr double StateChange::*kEnds[] = {&StateChange::angle, &StateChange::x, &StateChange::y};
  for (std::size_t i = 0; i < 3; ++i) {
    const auto end = kEnds[i];
    const std::size_t row = RowOf(k) + i;
    const double by_moment = link.by.by_moment.*end;
    const PlaneVector by_pull{link.by.by_pull_x.*end - by_moment * link.arm.y,
                              link.by.by_pull_y.*end + by_moment * link.arm.x};
    const PlaneVector by_chord{-held * Dot(by_pull, by_x), -held * Dot(by_pull, by_y)};
    matrix_.At(row, from + kAngle) =
        -(link.by.by_angle.*end - by_moment * Dot(link.arm, link.pull)) + Dot(by_chord, arm);
    matrix_.At(row, from + kX) = by_chord.x - (i == kX);
    matrix_.At(row, from + kY) = by_chord.y - (i == kY);
    matrix_.At(row, from + kMoment) = -by_moment;
    if (width_ > kLogTension) matrix_.At(row, from + kLogTension) = Dot(by_pull, link.line_pull);
    matrix_.At(row, to + kAngle) = (i == kAngle) - Dot(by_chord, next_arm);
    matrix_.At(row, to + kX) = (i == kX) - by_chord.x;
    matrix_.At(row, to + kY) = (i == kY) - by_chord.y;
  }
  const PlaneVector far = Times(given_.far, share * given_.tension);
  const std::size_t row = RowOf(k) + kMoment;
  matrix_.At(row, from + kMoment) = 1;
  matrix_.At(row, to + kMoment) = -1;
  matrix_.At(row, from + kAngle) = Cross(arm, far);
  matrix_.At(row, from + kX) = far.y;
  matrix_.At(row, from + kY) = -far.x;
  matrix_.At(row, to + kAngle) = -Cross(next_arm, far);
  matrix_.At(row, to + kX) = -far.y;
  matrix_.At(row, to + kY) = far.x;
}

void StrungSystem::SetFriction(std::size_t k, bool with_matrix) {
  const std::size_t row = RowOf(k) + kLogTension;
  const bool far = k + 1 == given_.spans();
  const LineTurn turn = TurnOf(links_[k].span, far ? Far(given_.far) : links_[k + 1].span);
  lack_[row] = log_tension(k) - log_tension(k + 1) - given_.friction * std::abs(turn.angle);
  if (!with_matrix) return;
  matrix_.At(row, k * width_ + kLogTension) = 1;
  matrix_.At(row, (k + 1) * width_ + kLogTension) = -1;
  const double factor = given_.friction * (turn.angle < 0 ? -1 : turn.angle > 0 ? 1 : 0);
  const auto add = [&](std::size_t node, PlaneVector by_centre) {
    const PlaneVector arm = Quarter(ArmAt(given_.arm[node], at(node, kAngle)));
    matrix_.At(row, node * width_ + kAngle) -= factor * Dot(by_centre, arm);
    matrix_.At(row, node * width_ + kX) -= factor * by_centre.x;
    matrix_.At(row, node * width_ + kY) -= factor * by_centre.y;
  };
  add(k, Times(turn.by_before, -1));
  add(k + 1, Sum(turn.by_before, Times(turn.by_after, -1)));
  if (!far) add(k + 2, turn.by_after);
}

void StrungSystem::Correction(std::vector<double>& change) const {
  change.resize(lack_.size());
  for (std::size_t i = 0; i < lack_.size(); ++i) change[i] = -lack_[i];
  matrix_.Solve(change);
}

// N grows in proportion to the share.
void StrungSystem::ByShare(std::vector<double>& change) const {
  change.assign(lack_.size(), 0);
  for (std::size_t k = 0; k < links_.size(); ++k) {
    const StrungLink& link = links_[k];
    const PlaneVector line = Times(link.span.unit, std::exp(log_tension(k)));
    const PlaneVector pull = Times(Sum(given_.far, Times(line, -1)), given_.tension);
    const double moment = Cross(link.arm, pull);
    const auto by = [&](double StateChange::*end) {
      return pull.x * link.by.by_pull_x.*end + pull.y * link.by.by_pull_y.*end + moment * link.by.by_moment.*end;
    };
    double* side = &change[RowOf(k)];
    side[kAngle] = by(&StateChange::angle);
    side[kX] = by(&StateChange::x);
    side[kY] = by(&StateChange::y);
    side[kMoment] = given_.tension * Cross(link.span.chord, given_.far);
  }
  matrix_.Solve(change);
}

double StrungSystem::Largest(const std::vector<double>& change) const {
  double angle = 0, way = 0;
  for (std::size_t node = 0; node < given_.s.size(); ++node) {
    const double* of = &change[node * width_];
    if (!std::isfinite(of[kAngle] + of[kX] + of[kY] + of[kMoment])) return HUGE_VAL;
    angle = std::max(angle, std::abs(of[kAngle]));
    way = std::max({way, std::abs(of[kX]), std::abs(of[kY])});
  }
  return std::max(angle, way / given_.beam.length());
}

void StrungSystem::Add(const std::vector<double>& change, double factor) {
  for (std::size_t i = 0; i < unknowns_.size(); ++i) unknowns_[i] += factor * change[i];
}

}  // namespace withy
