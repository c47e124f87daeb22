#include "placement_rules.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_format.h"
#include "nearest_point.h"
#include "withy/numerics/minimise.h"

namespace withy {
namespace {

// Places of guide 1 to n and of the tip-top's ring, by what a row asks of them.
struct Term {
  std::size_t ring;
  double factor;
};

// sum of factor x place <= most, the tip-top's part brought over. Left out where every guide in it is locked.
void AddRow(const PlacementProblem& problem, std::initializer_list<Term> terms, double most, std::string what,
            PlaceRules& rules) {
  const std::size_t guides = problem.offsets_m.size();
  PlaceRule rule{std::vector<double>(guides, 0.0), most, std::move(what)};
  bool any_free = false;
  for (const Term& term : terms) {
    if (term.ring == guides) {
      rule.most -= term.factor * problem.beam.length();
    } else {
      rule.row[term.ring] += term.factor;
      any_free = any_free || !IsLocked(problem, term.ring);
    }
  }
  if (any_free) rules.rows.push_back(std::move(rule));
}

std::string RingName(const PlacementProblem& problem, std::size_t ring) {
  return ring == problem.offsets_m.size() ? "the tip-top" : absl::StrFormat("guide %d", ring + 1);
}

// min 1/2 |s - wanted|^2 + price x slack, rows <= slack: always has an answer.
Programme NearestProgramme(const PlaceRules& rules, const std::vector<double>& wanted) {
  constexpr double kPrice = 1e3;  // metres: above what any metre of rows is worth
  Programme programme;
  programme.low = rules.low;
  programme.high = rules.high;
  programme.low.push_back(0);
  programme.high.push_back(10);
  programme.constraint_count = static_cast<int>(rules.rows.size());
  programme.evaluate = [&rules, wanted](const std::vector<double>& x, Evaluation& at) {
    const std::size_t slack = wanted.size();
    at.objective = kPrice * x[slack];
    at.gradient[slack] = kPrice;
    for (std::size_t j = 0; j < slack; ++j) {
      at.gradient[j] = x[j] - wanted[j];
      at.objective += at.gradient[j] * at.gradient[j] / 2;
    }
    for (std::size_t i = 0; i < rules.rows.size(); ++i) {
      at.constraints[i] = rules.rows[i].Missing(x) - x[slack];
      std::copy(rules.rows[i].row.begin(), rules.rows[i].row.end(), at.jacobian[i].begin());
      at.jacobian[i][slack] = -1;
    }
    return true;
  };
  return programme;
}

std::vector<double> Within(const PlaceRules& rules, std::vector<double> s_m) {
  for (std::size_t k = 0; k < s_m.size(); ++k) s_m[k] = std::clamp(s_m[k], rules.low[k], rules.high[k]);
  return s_m;
}

// Rows and bounds; guides that have but one place are no unknowns.
std::vector<HalfSpace> HalfSpacesOf(const PlaceRules& rules) {
  const std::size_t guides = rules.low.size();
  std::vector<HalfSpace> spaces;
  for (const PlaceRule& rule : rules.rows) {
    HalfSpace space{rule.row, rule.most};
    for (std::size_t k = 0; k < guides; ++k) {
      if (rules.low[k] < rules.high[k]) continue;
      space.most -= space.normal[k] * rules.low[k];
      space.normal[k] = 0;
    }
    spaces.push_back(std::move(space));
  }
  for (std::size_t k = 0; k < guides; ++k) {
    if (!(rules.low[k] < rules.high[k])) continue;
    for (const double sign : {-1.0, 1.0}) {
      HalfSpace space{std::vector<double>(guides, 0.0), sign < 0 ? -rules.low[k] : rules.high[k]};
      space.normal[k] = sign;
      spaces.push_back(std::move(space));
    }
  }
  return spaces;
}

}  // namespace

double PlaceRule::Missing(const std::vector<double>& s_m) const {
  double missing = -most;
  for (std::size_t j = 0; j < row.size(); ++j) missing += row[j] * s_m[j];
  return missing;
}

bool IsLocked(const PlacementProblem& problem, std::size_t guide) {
  return guide < problem.locked_m.size() && problem.locked_m[guide].has_value();
}

PlaceRules RulesOf(const PlacementProblem& problem) {
  PlaceRules rules;
  const std::size_t guides = problem.offsets_m.size();
  for (std::size_t k = 0; k < guides; ++k) {
    const bool locked = IsLocked(problem, k);
    rules.low.push_back(locked ? *problem.locked_m[k] : k == 0 ? problem.first_low_m : 0);
    rules.high.push_back(locked ? *problem.locked_m[k] : problem.beam.length());
    if (!locked && k == 0) rules.high[k] = problem.first_high_m;
    if (!locked && k + 1 == guides) rules.high[k] = std::min(rules.high[k], problem.last_high_m);
    AddRow(problem, {{k, 1}, {k + 1, -1}}, -problem.least_gaps_m[k],
           absl::StrFormat("%s and %s at least %.1f mm apart", RingName(problem, k), RingName(problem, k + 1),
                           problem.least_gaps_m[k] * 1000),
           rules);
    if (!problem.gaps_never_grow || k + 1 == guides) continue;
    AddRow(problem, {{k + 2, 1}, {k + 1, -2}, {k, 1}}, 0,
           absl::StrFormat("the gap from %s to %s no wider than the one before it", RingName(problem, k + 1),
                           RingName(problem, k + 2)),
           rules);
  }
  return rules;
}

std::string Tighten(const PlacementProblem& problem, PlaceRules& rules) {
  const std::size_t guides = rules.low.size();
  const auto draw_in = [&](std::size_t k, double low, double high) {
    if (IsLocked(problem, k)) return;
    rules.low[k] = std::max(rules.low[k], low);
    rules.high[k] = std::min(rules.high[k], high);
  };
  const double length = problem.beam.length();
  for (std::size_t k = 0; k < guides; ++k) {
    draw_in(k, k == 0 ? 0 : rules.low[k - 1] + problem.least_gaps_m[k - 1], length);
  }
  for (std::size_t k = guides; k-- > 0;) {
    draw_in(k, 0, (k + 1 == guides ? length : rules.high[k + 1]) - problem.least_gaps_m[k]);
  }
  for (std::size_t k = 0; k < guides; ++k) {
    if (rules.low[k] <= rules.high[k]) continue;
    if (rules.low[k] - rules.high[k] < kPlaceTolerance / 10) {  // rounding of a place that is just one point
      rules.low[k] = rules.high[k];
      continue;
    }
    return absl::StrFormat(
        "no room for guide %d: not before %.1f mm and not beyond %.1f mm ahead of where the rod is held", k + 1,
        rules.low[k] * 1000, rules.high[k] * 1000);
  }
  return "";
}

NearestPlaces Nearest(const PlaceRules& rules, const std::vector<double>& s_m) {
  NearestPlaces nearest;
  if (auto kept = NearestPoint(HalfSpacesOf(rules), Within(rules, s_m), kPlaceTolerance / 100)) {
    nearest.s_m = Within(rules, std::move(*kept));
    return nearest;
  }
  std::vector<double> start = Within(rules, s_m);
  double slack = 0;
  for (const PlaceRule& rule : rules.rows) slack = std::max(slack, rule.Missing(start));
  start.push_back(slack);
  nearest.s_m = Minimise(NearestProgramme(rules, s_m), start, {.tolerance = 1e-12, .feasible = 1e-10}).x;
  nearest.s_m.pop_back();
  for (const PlaceRule& rule : rules.rows) {
    const double missing = rule.Missing(nearest.s_m);
    if (missing <= std::max(nearest.missing_m, kPlaceTolerance / 10)) continue;
    nearest.missing_m = missing;
    nearest.what = rule.what;
  }
  return nearest;
}

InClosed ClosedAt(const PlacementProblem& problem, std::size_t guide, double s_m) {
  InClosed deepest;
  if (guide >= problem.closed.size() || IsLocked(problem, guide)) return deepest;
  for (const ClosedStretch& stretch : problem.closed[guide]) {
    const double depth = std::min(s_m - stretch.from_m, stretch.to_m - s_m);
    if (depth > deepest.depth_m) deepest = {depth, &stretch};
  }
  return deepest;
}

double PositionViolation(const PlacementProblem& problem, const std::vector<double>& s_m) {
  double violation = 0;
  if (s_m.size() != problem.offsets_m.size()) return violation;
  const PlaceRules rules = RulesOf(problem);
  for (std::size_t k = 0; k < s_m.size(); ++k) {
    violation =
        std::max({violation, rules.low[k] - s_m[k], s_m[k] - rules.high[k], ClosedAt(problem, k, s_m[k]).depth_m});
  }
  for (const PlaceRule& rule : rules.rows) violation = std::max(violation, rule.Missing(s_m));
  return violation;
}

std::string WhatIsWrongWithPlaces(const PlacementProblem& problem, const std::vector<double>& s_m) {
  if (s_m.size() != problem.offsets_m.size()) {
    return absl::StrFormat("%d places for %d guides", s_m.size(), problem.offsets_m.size());
  }
  double before = std::max(0.0, problem.reel_s_m);
  for (std::size_t k = 0; k < s_m.size(); ++k) {
    if (!(s_m[k] > before) || !(s_m[k] < problem.beam.length())) {
      return absl::StrFormat(
          "guide %d at %.1f mm ahead of where the rod is held is not between the ring before it and the tip-top", k + 1,
          s_m[k] * 1000);
    }
    before = s_m[k];
  }
  return "";
}

}  // namespace withy
