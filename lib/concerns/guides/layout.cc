// J, R and F of a layout, and what it misses.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "absl/strings/str_format.h"
#include "layout_model.h"
#include "line_of_layout.h"
#include "placement_rules.h"

namespace withy {
namespace {

double Wrapped(double angle) {
  return std::remainder(angle, 2 * std::numbers::pi);
}

std::string WhyNot(const PlacementCase& load_case, const StrungBeam& bent) {
  const std::string name = load_case.id.empty() ? "a load case" : "load case " + load_case.id;
  switch (bent.state) {
    case ElasticaState::kSeveral:
      return absl::StrFormat("%s: more than one shape holds more than %.2f of the load", name, bent.reached);
    case ElasticaState::kNone:
      return absl::StrFormat("%s: the rod folds at %.2f of the load", name, bent.reached);
    case ElasticaState::kBadInput:
      return absl::StrFormat("%s: %s", name, bent.why);
    default:
      return absl::StrFormat("%s: no shape was found beyond %.2f of the load", name, bent.reached);
  }
}

LayoutCase CaseOf(const PlacementProblem& problem, const PlacementCase& load_case, const std::vector<BeamRing>& rings,
                  StrungBeam bent) {
  LayoutCase result;
  for (std::size_t k = 0; k < bent.rings.size(); ++k) {
    const RingUnderLine& ring = bent.rings[k];
    result.turns.push_back(ring.turn);
    result.forces_n.push_back(std::hypot(ring.force_x, ring.force_y, ring.force_z));
    if (k > 0) result.span_turns.push_back(ring.angle - bent.rings[k - 1].angle);
  }
  result.entry = Wrapped(bent.rings.back().angle - bent.rings.back().line_in);
  for (const Clearance& span : ClearancesOf(problem.beam, problem.outer_m, rings, LoadOf(problem, load_case), bent)) {
    result.clearances_m.push_back(span.least);
  }
  result.solved = std::move(bent);
  return result;
}

void TakeWorst(double value, int load_case, int ring, Layout& layout) {
  if (value <= layout.j) return;
  layout.j = value;
  layout.worst_case = load_case;
  layout.worst_ring = ring;
}

void Judge(const PlacementProblem& problem, Layout& layout) {
  double squares = 0;
  int spans = 0;
  for (std::size_t c = 0; c < layout.cases.size(); ++c) {
    const LayoutCase& at = layout.cases[c];
    const double weight = problem.cases[c].weight;
    const int guides = problem.count();
    for (int k = 0; k < guides; ++k) {
      TakeWorst(weight * std::abs(at.turns[static_cast<std::size_t>(k)]), static_cast<int>(c), k, layout);
    }
    TakeWorst(2 * weight * std::abs(at.entry), static_cast<int>(c), guides, layout);
    for (const double turn : at.span_turns) squares += weight * turn * weight * turn;
    spans += static_cast<int>(at.span_turns.size());
    if (!problem.cases[c].clearance_m) continue;
    for (const double clearance : at.clearances_m) {
      layout.clearance_violation_m = std::max(layout.clearance_violation_m, *problem.cases[c].clearance_m - clearance);
    }
  }
  layout.r = std::sqrt(squares / spans);
  layout.f = layout.j + kShareOfR * layout.r;
}

}  // namespace

std::vector<BeamRing> RingsOf(const PlacementProblem& problem, const std::vector<double>& s_m) {
  std::vector<BeamRing> rings;
  for (std::size_t k = 0; k < s_m.size(); ++k) {
    rings.push_back({s_m[k], problem.offsets_m[k], problem.turned.empty() ? 0 : problem.turned[k]});
  }
  rings.push_back({problem.beam.length(), problem.tip_offset_m, problem.tip_turned});
  return rings;
}

StrungLoad LoadOf(const PlacementProblem& problem, const PlacementCase& load_case) {
  StrungLoad load;
  load.clamp_angle = load_case.clamp_angle;
  load.side = problem.side;
  load.reel_s = problem.reel_s_m;
  load.reel_offset = problem.reel_offset_m;
  load.tension = load_case.tension_n;
  load.far_angle = load_case.phi;
  return load;
}

double CostOf(const Layout& layout, double share_of_r) {
  return layout.j + share_of_r * layout.r + kMissingCosts * layout.clearance_violation_m;
}

Layout LayoutSolver::Evaluate(const std::vector<double>& s_m) {
  Layout layout;
  layout.s_m = s_m;
  layout.position_violation_m = PositionViolation(problem_, s_m);
  layout.why = WhatIsWrongWithPlaces(problem_, s_m);
  if (!layout.why.empty()) return layout;
  const std::vector<BeamRing> rings = RingsOf(problem_, s_m);
  for (std::size_t c = 0; c < problem_.cases.size(); ++c) {
    StrungOptions options;
    options.near = c < near_.size() ? &near_[c].solved : nullptr;
    options.points = false;
    StrungBeam bent = SolveStrungBeam(problem_.beam, rings, LoadOf(problem_, problem_.cases[c]), options);
    ++solves_;
    if (bent.state != ElasticaState::kSolved) {
      layout.cases.clear();
      layout.why = WhyNot(problem_.cases[c], bent);
      return layout;
    }
    layout.cases.push_back(CaseOf(problem_, problem_.cases[c], rings, std::move(bent)));
  }
  near_ = layout.cases;
  layout.solved = true;
  Judge(problem_, layout);
  return layout;
}

Layout EvaluateLayout(const PlacementProblem& problem, const std::vector<double>& s_m) {
  Layout layout;
  layout.s_m = s_m;
  layout.why = WhatIsWrongWith(problem);
  return layout.why.empty() ? LayoutSolver(problem).Evaluate(s_m) : layout;
}

bool IsFeasible(const Layout& layout) {
  return layout.solved && layout.position_violation_m <= kPlaceTolerance &&
         layout.clearance_violation_m <= kClearanceTolerance;
}

}  // namespace withy
