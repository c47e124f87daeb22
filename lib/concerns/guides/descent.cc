// min t + share R + m over places s, with -t <= v <= t for every v whose magnitude J is the largest of, and no
// clearance missing by more than m / (60 rad/m): smooth, and with room for a step from anywhere.
#include "descent.h"

#include <algorithm>
#include <numbers>
#include <utility>

#include "withy/numerics/minimise.h"

namespace withy {
namespace {

constexpr double kSmallestStep = 1e-6;  // of the room there is: some micrometres
constexpr double kKept = kPlaceTolerance / 10;

struct Slot {
  std::size_t t, m;
};

void FillRows(const LayoutModel& model, const PlaceRules& rules, const std::vector<double>& x, Slot slot,
              Evaluation& at) {
  std::size_t row = 0;
  const auto put = [&](double value, double sign, const std::vector<double>& slopes, std::size_t variable,
                       double factor) {
    at.constraints[row] = sign * value - factor * x[variable];
    std::vector<double>& line = at.jacobian[row++];
    std::fill(line.begin(), line.end(), 0.0);
    for (std::size_t j = 0; j < slopes.size(); ++j) line[j] = sign * slopes[j];
    line[variable] = -factor;
  };
  for (const Answer& turn : model.turns) {
    put(turn.value, 1, turn.slopes, slot.t, 1);
    put(turn.value, -1, turn.slopes, slot.t, 1);
  }
  for (const Answer& span : model.missing) put(span.value, 1, span.slopes, slot.m, 1 / kMissingCosts);
  for (const PlaceRule& rule : rules.rows) put(rule.Missing(x), 1, rule.row, slot.m, 0);
}

int RowCount(const PlacementProblem& problem, const PlaceRules& rules) {
  const int rings = problem.count() + 1;
  int rows = static_cast<int>(rules.rows.size());
  for (const PlacementCase& load_case : problem.cases) rows += 2 * rings + (load_case.clearance_m ? rings : 0);
  return rows;
}

bool Keeps(const PlaceRules& rules, const std::vector<double>& s_m) {
  return std::all_of(rules.rows.begin(), rules.rows.end(),
                     [&](const PlaceRule& rule) { return rule.Missing(s_m) <= kKept; });
}

double LargestWeight(const PlacementProblem& problem) {
  double weight = 0;
  for (const PlacementCase& load_case : problem.cases) weight = std::max(weight, load_case.weight);
  return weight;
}

}  // namespace

Layout Descend(LayoutSolver& solver, const PlacementProblem& problem, const PlaceRules& rules,
               const std::vector<double>& start, int most_solves, double share_of_r) {
  const std::size_t guides = start.size();
  const Slot slot{guides, guides + 1};
  Layout best;
  best.s_m = start;
  Programme programme{rules.low, rules.high, RowCount(problem, rules), {}};
  for (const double high : {2 * std::numbers::pi * LargestWeight(problem), kMissingCosts * problem.beam.length()}) {
    programme.low.push_back(0);
    programme.high.push_back(high);
  }
  programme.evaluate = [&](const std::vector<double>& x, Evaluation& at) {
    const std::vector<double> places(x.begin(), x.begin() + static_cast<std::ptrdiff_t>(guides));
    std::optional<LayoutModel> model = solver.ModelAt(places);
    if (!model) return false;
    at.objective = x[slot.t] + share_of_r * model->r.value + x[slot.m];
    for (std::size_t j = 0; j < guides; ++j) at.gradient[j] = share_of_r * model->r.slopes[j];
    at.gradient[slot.t] = at.gradient[slot.m] = 1;
    FillRows(*model, rules, x, slot, at);
    const bool better = !best.solved || CostOf(model->layout, share_of_r) < CostOf(best, share_of_r);
    if (better && Keeps(rules, places)) best = std::move(model->layout);
    return true;
  };
  const Layout first = solver.Evaluate(start);
  if (!first.solved) return first;
  std::vector<double> x = start;
  x.push_back(first.j);
  x.push_back(kMissingCosts * first.clearance_violation_m);
  const int cases = static_cast<int>(problem.cases.size());
  Minimise(programme, x, {.tolerance = kSmallestStep, .most_evaluations = std::max(1, most_solves / cases - 1)});
  return best.solved ? best : first;
}

}  // namespace withy
