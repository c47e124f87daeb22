// Rounding that breaks nothing: the nearest layout on the grid that keeps every rule for places, then the best among
// its neighbours, by their answers to first order, each checked by a solution before it is taken.
#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "absl/strings/str_format.h"
#include "layout_model.h"
#include "placement_rules.h"

namespace withy {
namespace {

constexpr double kNever = std::numeric_limits<double>::infinity();
constexpr int kReach = 4;      // grid steps to either side of where a guide stands
constexpr int kMostTries = 6;  // neighbours looked at closely from one layout
// Missing clearance that costs nothing here: half of what passes, as steps are coarser than that.
constexpr double kSpare = kClearanceTolerance / 2;

double CostOnGrid(const Layout& layout) {
  return layout.f + kMissingCosts * std::max(0.0, layout.clearance_violation_m - kSpare);
}

class Grid {
 public:
  Grid(const PlacementProblem& problem, double step) : problem_(problem), rules_(RulesOf(problem)), step_(step) {}

  // Places on the grid within reach of `wanted`, from the butt to the tip; a locked guide's own.
  std::vector<double> Around(std::size_t guide, double wanted) const {
    if (IsLocked(problem_, guide)) return {*problem_.locked_m[guide]};
    std::vector<double> places;
    const double length = problem_.beam.length(), nearest = std::round((length - wanted) / step_);
    for (int i = kReach; i >= -kReach; --i) {
      const double place = length - (nearest + i) * step_;
      const bool free = place >= rules_.low[guide] - kPlaceTolerance && place <= rules_.high[guide] + kPlaceTolerance &&
                        ClosedAt(problem_, guide, place).depth_m <= kPlaceTolerance;
      if (free) places.push_back(place);
    }
    return places;
  }

  // The least squares of way from `wanted`; empty where nothing within reach keeps every rule.
  std::vector<double> NearestTo(const std::vector<double>& wanted) const;

  bool Keeps(const std::vector<double>& s_m) const { return PositionViolation(problem_, s_m) <= kPlaceTolerance; }

  // One guide, two, or all from one on, by one step each.
  std::vector<std::vector<double>> Moves() const;

 private:
  using Choices = std::vector<std::vector<double>>;  // of each guide
  // The least squares up to one guide, and where the one two before it then stands: table[guide][choice][choice
  // before].
  struct Cell {
    double squares = kNever;
    std::size_t before_that = 0;
  };
  using Table = std::vector<std::vector<std::vector<Cell>>>;
  // Guide by guide: a row reaches over three rings at most, so what is best up to one guide depends on where it and the
  // one before it stand.
  Table TableFor(const Choices& places, const std::vector<double>& wanted) const;
  // Rules whose last guide is `last`, given its place and the two before it.
  bool KeepsUpTo(std::size_t last, double here, double before, double before_that) const;

  const PlacementProblem& problem_;
  PlaceRules rules_;
  double step_;
};

bool Grid::KeepsUpTo(std::size_t last, double here, double before, double before_that) const {
  std::vector<double> s_m(rules_.low.size(), 0.0);
  s_m[last] = here;
  if (last >= 1) s_m[last - 1] = before;
  if (last >= 2) s_m[last - 2] = before_that;
  for (const PlaceRule& rule : rules_.rows) {
    std::size_t end = 0;
    for (std::size_t k = 0; k < s_m.size(); ++k) {
      if (rule.row[k] != 0) end = k;
    }
    if (end == last && rule.Missing(s_m) > kPlaceTolerance) return false;
  }
  return true;
}

Grid::Table Grid::TableFor(const Choices& places, const std::vector<double>& wanted) const {
  Table table(places.size());
  for (std::size_t k = 0; k < places.size(); ++k) {
    const std::size_t befores = k < 1 ? 1 : places[k - 1].size(), earlier = k < 2 ? 1 : places[k - 2].size();
    table[k].assign(places[k].size(), std::vector<Cell>(befores));
    for (std::size_t here = 0; here < places[k].size(); ++here) {
      const double way = places[k][here] - wanted[k];
      for (std::size_t before = 0; before < befores; ++before) {
        Cell& cell = table[k][here][before];
        for (std::size_t that = 0; that < earlier; ++that) {
          const double squares = way * way + (k < 1 ? 0 : table[k - 1][before][that].squares);
          if (squares >= cell.squares) continue;
          const double one = k < 1 ? 0 : places[k - 1][before], two = k < 2 ? 0 : places[k - 2][that];
          if (KeepsUpTo(k, places[k][here], one, two)) cell = {squares, that};
        }
      }
    }
  }
  return table;
}

std::vector<double> Grid::NearestTo(const std::vector<double>& wanted) const {
  Choices places;
  for (std::size_t k = 0; k < wanted.size(); ++k) places.push_back(Around(k, wanted[k]));
  if (std::any_of(places.begin(), places.end(), [](const auto& list) { return list.empty(); })) return {};
  const Table table = TableFor(places, wanted);
  std::size_t here = 0, before = 0;
  double least = kNever;
  for (std::size_t i = 0; i < table.back().size(); ++i) {
    for (std::size_t j = 0; j < table.back()[i].size(); ++j) {
      if (table.back()[i][j].squares >= least) continue;
      least = table.back()[i][j].squares;
      here = i;
      before = j;
    }
  }
  if (!(least < kNever)) return {};
  std::vector<double> nearest(wanted.size());
  for (std::size_t k = wanted.size(); k-- > 0;) {
    nearest[k] = places[k][here];
    const std::size_t that = table[k][here][before].before_that;
    here = before;
    before = that;
  }
  return nearest;
}

std::vector<std::vector<double>> Grid::Moves() const {
  const std::size_t guides = rules_.low.size();
  std::vector<std::vector<double>> moves;
  const auto add = [&](std::vector<double> move) {
    for (std::size_t k = 0; k < guides; ++k) {
      if (IsLocked(problem_, k)) move[k] = 0;
    }
    moves.push_back(std::move(move));
  };
  const std::vector<double> none(guides, 0.0);
  for (const double way : {-step_, step_}) {
    for (std::size_t a = 0; a < guides; ++a) {
      std::vector<double> move = none;
      std::fill(move.begin() + static_cast<std::ptrdiff_t>(a), move.end(), way);
      add(move);
      for (std::size_t b = a; b < guides; ++b) {
        for (const double other : {-step_, step_}) {
          move = none;
          move[b] = other;
          move[a] = way;
          add(move);
        }
      }
    }
  }
  return moves;
}

// The neighbours that promise most, best first.
std::vector<std::vector<double>> Promising(const Grid& grid, const LayoutModel& here,
                                           const std::vector<std::vector<double>>& moves) {
  std::vector<std::pair<double, std::vector<double>>> found;
  for (const std::vector<double>& move : moves) {
    const double cost = here.CostAt(move, kSpare);
    if (cost >= CostOnGrid(here.layout)) continue;
    std::vector<double> places = here.layout.s_m;
    for (std::size_t k = 0; k < places.size(); ++k) places[k] += move[k];
    if (grid.Keeps(places)) found.emplace_back(cost, std::move(places));
  }
  std::sort(found.begin(), found.end());
  if (found.size() > kMostTries) found.resize(kMostTries);
  std::vector<std::vector<double>> best;
  for (auto& [cost, places] : found) best.push_back(std::move(places));
  return best;
}

}  // namespace

Placement OnGrid(const PlacementProblem& problem, const Layout& best, double grid_m, const PlaceOptions& options) {
  Placement placement;
  placement.why = WhatIsWrongWith(problem);
  if (placement.why.empty()) placement.why = WhatIsWrongWithPlaces(problem, best.s_m);
  if (placement.why.empty() && !(grid_m > 0 && grid_m < problem.beam.length())) {
    placement.why = absl::StrFormat("a grid of %g mm", grid_m * 1000);
  }
  if (!placement.why.empty()) return placement;
  const Grid grid(problem, grid_m);
  const std::vector<double> nearest = grid.NearestTo(best.s_m);
  if (nearest.empty()) {
    placement.why = absl::StrFormat("no layout on a grid of %g mm keeps every rule within %d steps of the best one",
                                    grid_m * 1000, kReach);
    placement.best = best;
    return placement;
  }
  LayoutSolver solver(problem);
  std::optional<LayoutModel> here = solver.ModelAt(nearest);
  if (!here) {
    placement.best = solver.Evaluate(nearest);
    placement.why = placement.best.why;
    return placement;
  }
  const std::vector<std::vector<double>> moves = grid.Moves();
  for (bool gained = true; gained && solver.solves() < options.most_solves;) {
    gained = false;
    for (const std::vector<double>& places : Promising(grid, *here, moves)) {
      std::optional<LayoutModel> there = solver.ModelAt(places);
      if (!there || CostOnGrid(there->layout) >= CostOnGrid(here->layout)) continue;
      here = std::move(there);
      gained = true;
      break;
    }
  }
  placement.best = std::move(here->layout);
  placement.solves = solver.solves();
  placement.feasible = IsFeasible(placement.best);
  if (!placement.feasible) {
    placement.why = absl::StrFormat("on a grid of %g mm the line is %.2f mm short of its clearance from the blank",
                                    grid_m * 1000, placement.best.clearance_violation_m * 1000);
  }
  return placement;
}

}  // namespace withy
