#include <algorithm>

#include "layout_model.h"
#include "withy/guides/placement.h"

namespace withy {

std::vector<MovedGuide> MovedBy(const PlacementProblem& problem, const Layout& layout, double by_m) {
  std::vector<MovedGuide> moved(layout.s_m.size());
  if (!layout.solved || !WhatIsWrongWith(problem).empty()) return moved;
  LayoutSolver solver(problem);
  for (std::size_t k = 0; k < layout.s_m.size(); ++k) {
    for (const double way : {-by_m, by_m}) {
      std::vector<double> places = layout.s_m;
      places[k] += way;
      const Layout there = solver.Evaluate(places);
      if (!there.solved) continue;
      moved[k].j_ratio = std::max(moved[k].j_ratio, there.j / layout.j);
      moved[k].clearance_violation_m = std::max(moved[k].clearance_violation_m, there.clearance_violation_m);
    }
  }
  return moved;
}

std::optional<PlacementProblem> OneFewer(const PlacementProblem& problem) {
  const std::size_t guides = problem.offsets_m.size();
  if (guides < 2 || (!problem.locked_m.empty() && problem.locked_m.back())) return std::nullopt;
  PlacementProblem fewer = problem;
  fewer.offsets_m.pop_back();
  fewer.least_gaps_m.erase(fewer.least_gaps_m.end() - 2);  // the last one is kept from the tip-top
  if (!fewer.turned.empty()) fewer.turned.pop_back();
  if (!fewer.locked_m.empty()) fewer.locked_m.pop_back();
  if (!fewer.closed.empty()) fewer.closed.pop_back();
  return fewer;
}

std::optional<PlacementProblem> OneMore(const PlacementProblem& problem) {
  const std::size_t guides = problem.offsets_m.size();
  if (guides < 1 || (!problem.locked_m.empty() && problem.locked_m.back())) return std::nullopt;
  PlacementProblem more = problem;
  more.offsets_m.push_back(problem.offsets_m.back());
  more.least_gaps_m.insert(more.least_gaps_m.end() - 1, problem.least_gaps_m[guides < 2 ? 0 : guides - 2]);
  if (!more.turned.empty()) more.turned.push_back(problem.turned.back());
  if (!more.locked_m.empty()) more.locked_m.push_back(std::nullopt);
  if (!more.closed.empty()) more.closed.push_back(problem.closed.back());
  return more;
}

}  // namespace withy
