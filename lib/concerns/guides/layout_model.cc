#include "layout_model.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "line_of_layout.h"

namespace withy {
namespace {

Answer Weighted(double weight, double value, std::vector<double> slopes) {
  for (double& slope : slopes) slope *= weight;
  return {weight * value, std::move(slopes)};
}

std::vector<double> Less(std::vector<double> a, const std::vector<double>& b) {
  for (std::size_t j = 0; j < a.size(); ++j) a[j] -= b[j];
  return a;
}

void AddCase(const PlacementProblem& problem, std::size_t c, const std::vector<BeamRing>& rings, LayoutModel& model) {
  const PlacementCase& load_case = problem.cases[c];
  const LayoutCase& at = model.layout.cases[c];
  const StrungLoad load = LoadOf(problem, load_case);
  const StrungSlopes slopes = SlopesOf(problem.beam, rings, load, at.solved);
  const std::size_t guides = model.layout.s_m.size();
  for (std::size_t k = 0; k < guides; ++k) {
    model.turns.push_back(Weighted(load_case.weight, at.turns[k], slopes.turn[k]));
    const std::vector<double> span = Less(slopes.angle[k + 1], slopes.angle[k]);
    // d R = sum of w^2 tau d tau / (R x number of spans); the divisor is put in when all are there.
    for (std::size_t j = 0; j < guides; ++j) {
      model.r.slopes[j] += load_case.weight * load_case.weight * at.span_turns[k] * span[j];
    }
  }
  model.turns.push_back(Weighted(2 * load_case.weight, at.entry, Less(slopes.angle[guides], slopes.direction[guides])));
  if (!load_case.clearance_m) return;
  for (const Clearance& span : ClearancesOf(problem.beam, problem.outer_m, rings, load, at.solved, true)) {
    model.missing.push_back(Weighted(-1, span.least - *load_case.clearance_m, span.slopes));
  }
}

}  // namespace

double Answer::At(const std::vector<double>& moved) const {
  double at = value;
  for (std::size_t j = 0; j < moved.size(); ++j) at += slopes[j] * moved[j];
  return at;
}

double LayoutModel::CostAt(const std::vector<double>& moved, double spare_m) const {
  double j = 0, most_missing = spare_m;
  for (const Answer& turn : turns) j = std::max(j, std::abs(turn.At(moved)));
  for (const Answer& span : missing) most_missing = std::max(most_missing, span.At(moved));
  return j + kShareOfR * r.At(moved) + kMissingCosts * (most_missing - spare_m);
}

std::optional<LayoutModel> LayoutSolver::ModelAt(const std::vector<double>& s_m) {
  LayoutModel model;
  model.layout = Evaluate(s_m);
  if (!model.layout.solved) return std::nullopt;
  model.r = {model.layout.r, std::vector<double>(s_m.size(), 0.0)};
  const std::vector<BeamRing> rings = RingsOf(problem_, s_m);
  for (std::size_t c = 0; c < problem_.cases.size(); ++c) AddCase(problem_, c, rings, model);
  const double spans = static_cast<double>(s_m.size() * problem_.cases.size());
  for (double& slope : model.r.slopes) slope = model.r.value > 0 ? slope / (model.r.value * spans) : 0;
  return model;
}

}  // namespace withy
