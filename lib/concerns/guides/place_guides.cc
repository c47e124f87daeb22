// The search: several ways down, then the sides of closed stretches.
#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_format.h"
#include "descent.h"

namespace withy {
namespace {

constexpr double kSame = 1e-4;  // of the cost: two ways down that end so close found the same
constexpr double kStandsFree = kPlaceTolerance / 10;
constexpr double kTie = 1e-3;  // of J: what R may cost as a breaker of ties
constexpr double kSmallShareOfR = 0.01;
constexpr int kMostBranches = 40;

std::vector<double> Between(const std::vector<double>& a, const std::vector<double>& b) {
  std::vector<double> middle(a.size());
  for (std::size_t k = 0; k < a.size(); ++k) middle[k] = (a[k] + b[k]) / 2;
  return middle;
}

// Guide 1 as far up as it may stand and the next close by: a valley of its own, where two rings share one step in
// height.
std::vector<double> CloseFirstPair(const PlacementProblem& problem) {
  std::vector<double> places{problem.first_high_m};
  const double next = problem.first_high_m + problem.least_gaps_m.front();
  const double gap = (problem.beam.length() - next) / std::max(1, problem.count() - 1);
  for (int k = 1; k < problem.count(); ++k) places.push_back(next + (k - 1) * gap);
  return places;
}

// Far apart first: where those agree the rest is spared.
std::vector<std::vector<double>> StartsOf(const PlacementProblem& problem) {
  const std::vector<double> arithmetic = ArithmeticLayout(problem), geometric = GeometricLayout(problem),
                            equal = EqualLayout(problem);
  return {arithmetic, CloseFirstPair(problem), equal, geometric, Between(arithmetic, equal)};
}

// A choice of sides of closed stretches, and the best layout that obeys it.
struct Branch {
  PlaceRules rules;
  Layout best;
};

class Search {
 public:
  Search(const PlacementProblem& problem, const PlaceOptions& options)
      : problem_(problem), solver_(problem), most_solves_(options.most_solves) {}

  int solves() const { return solver_.solves(); }

  // The best of several ways down; not solved where no start is, with why.
  Layout FromStarts(const PlaceRules& rules) {
    Layout best;
    for (const std::vector<double>& start : StartsOf(problem_)) {
      if (best.solved && OutOfSolves()) break;
      Layout found = Down(rules, Nearest(rules, start).s_m);
      const bool same = found.solved && best.solved && std::abs(CostOf(found) - CostOf(best)) <= kSame * CostOf(best);
      if (!best.solved || (found.solved && CostOf(found) < CostOf(best))) best = std::move(found);
      if (same) break;
    }
    return best;
  }

  // Best first: what a branch found without heeding a stretch is what its two sides can hardly better.
  Branch HeedClosed(Branch root) {
    Branch found;
    Layout& best = found.best;
    std::vector<Branch> open{std::move(root)};
    for (int i = 0; i < kMostBranches && !open.empty(); ++i) {
      const auto first = std::min_element(
          open.begin(), open.end(), [](const Branch& a, const Branch& b) { return CostOf(a.best) < CostOf(b.best); });
      Branch branch = std::move(*first);
      open.erase(first);
      if (best.solved && CostOf(branch.best) >= CostOf(best)) break;
      const std::size_t guide = DeepestInClosed(branch.best);
      const InClosed inside = ClosedAt(problem_, guide, branch.best.s_m[guide]);
      if (inside.depth_m <= kStandsFree) {
        found = std::move(branch);
        continue;
      }
      if (best.solved && OutOfSolves()) break;
      for (const bool below : {true, false}) Open(branch, guide, *inside.stretch, below, open);
    }
    return found;
  }

  // Where R took more of J than a tie is worth, it is given less weight.
  Layout LessForR(const Branch& branch) {
    const int left = most_solves_ - solver_.solves();
    if (left <= 0) return branch.best;
    Layout even = Descend(solver_, problem_, branch.rules, branch.best.s_m, left, kSmallShareOfR);
    const bool gains = even.solved && CostOf(even, 0) < (1 - kTie) * CostOf(branch.best, 0);
    const bool free = ClosedAt(problem_, DeepestInClosed(even), even.s_m[DeepestInClosed(even)]).depth_m <= kStandsFree;
    return gains && free ? even : branch.best;
  }

 private:
  bool OutOfSolves() const { return solver_.solves() >= most_solves_; }

  Layout Down(const PlaceRules& rules, const std::vector<double>& start) {
    return Descend(solver_, problem_, rules, start, std::max(1, most_solves_ - solver_.solves()));
  }

  std::size_t DeepestInClosed(const Layout& layout) const {
    std::size_t deepest = 0;
    for (std::size_t k = 0; k < layout.s_m.size(); ++k) {
      if (ClosedAt(problem_, k, layout.s_m[k]).depth_m > ClosedAt(problem_, deepest, layout.s_m[deepest]).depth_m)
        deepest = k;
    }
    return deepest;
  }

  void Open(const Branch& from, std::size_t guide, const ClosedStretch& stretch, bool below,
            std::vector<Branch>& open) {
    PlaceRules rules = from.rules;
    if (below) {
      rules.high[guide] = std::min(rules.high[guide], stretch.from_m);
    } else {
      rules.low[guide] = std::max(rules.low[guide], stretch.to_m);
    }
    if (!Tighten(problem_, rules).empty()) return;
    // From where it was, and from afar: it may have been the wrong valley for this side.
    Layout best;
    for (const std::vector<double>& wanted : {from.best.s_m, EqualLayout(problem_)}) {
      const NearestPlaces start = Nearest(rules, wanted);
      if (start.missing_m > 0) return;
      Layout found = Down(rules, start.s_m);
      if (found.solved && (!best.solved || CostOf(found) < CostOf(best))) best = std::move(found);
    }
    if (best.solved) open.push_back({std::move(rules), std::move(best)});
  }

  const PlacementProblem& problem_;
  LayoutSolver solver_;
  int most_solves_;
};

std::string SpanName(const PlacementProblem& problem, std::size_t span) {
  const std::string from = span == 0 ? "the reel" : absl::StrFormat("guide %d", span);
  const std::string to = span == problem.offsets_m.size() ? "the tip-top" : absl::StrFormat("guide %d", span + 1);
  return from + " and " + to;
}

std::string WhatIsMissed(const PlacementProblem& problem, const Layout& layout) {
  for (std::size_t c = 0; c < layout.cases.size(); ++c) {
    if (!problem.cases[c].clearance_m) continue;
    const std::vector<double>& clearances = layout.cases[c].clearances_m;
    for (std::size_t span = 0; span < clearances.size(); ++span) {
      const double missing = *problem.cases[c].clearance_m - clearances[span];
      if (missing < layout.clearance_violation_m || missing <= kClearanceTolerance) continue;
      return absl::StrFormat("load case %s: between %s the line is %.2f mm short of its clearance from the blank",
                             problem.cases[c].id, SpanName(problem, span), missing * 1000);
    }
  }
  for (std::size_t k = 0; k < layout.s_m.size(); ++k) {
    const InClosed inside = ClosedAt(problem, k, layout.s_m[k]);
    if (inside.depth_m > kPlaceTolerance) {
      return absl::StrFormat(
          "guide %d finds no place clear of what is closed to it from %.1f to %.1f mm ahead of where the rod is held",
          k + 1, inside.stretch->from_m * 1000, inside.stretch->to_m * 1000);
    }
  }
  return "";
}

}  // namespace

Placement PlaceGuides(const PlacementProblem& problem, const PlaceOptions& options) {
  Placement placement;
  placement.why = WhatIsWrongWith(problem);
  if (!placement.why.empty()) return placement;
  PlaceRules rules = RulesOf(problem);
  placement.why = Tighten(problem, rules);
  if (!placement.why.empty()) return placement;
  const NearestPlaces nearest = Nearest(rules, ArithmeticLayout(problem));
  if (nearest.missing_m > 0) {
    placement.why =
        absl::StrFormat("no layout keeps all rules: %s, by %.1f mm", nearest.what, nearest.missing_m * 1000);
    placement.best = EvaluateLayout(problem, nearest.s_m);
    return placement;
  }
  Search search(problem, options);
  const Layout anywhere = search.FromStarts(rules);
  const Branch branch = anywhere.solved ? search.HeedClosed({rules, anywhere}) : Branch();
  placement.best = branch.best.solved ? search.LessForR(branch) : anywhere;
  placement.solves = search.solves();
  placement.feasible = IsFeasible(placement.best);
  placement.why = placement.best.solved ? WhatIsMissed(problem, placement.best) : placement.best.why;
  return placement;
}

}  // namespace withy
