// What keeps a placement problem from being one.
#include <cmath>

#include "absl/strings/str_format.h"
#include "withy/guides/placement.h"

namespace withy {
namespace {

// More than any rod carries; the cost of a search grows with the cube.
constexpr std::size_t kMostGuides = 60;
constexpr std::size_t kMostCases = 20;

bool Within(double value, double low, double high) {
  return value >= low && value <= high;
}  // false for NaN

std::string WrongOfRod(const PlacementProblem& problem) {
  const std::string beam = WhatIsWrongWith(problem.beam);
  if (!beam.empty()) return beam;
  if (problem.outer_m.size() != 2 * problem.beam.pieces.size())
    return "two outer diameters are needed for each piece of the rod";
  for (const double outer : problem.outer_m) {
    if (!Within(outer, 0, problem.beam.length())) return absl::StrFormat("an outer diameter of %g m", outer);
  }
  if (problem.side != 1 && problem.side != -1) return "side is neither 1 (on top) nor -1 (underneath)";
  const double length = problem.beam.length();
  if (!Within(problem.reel_offset_m, 0, length))
    return absl::StrFormat("a reel %g m off the rod", problem.reel_offset_m);
  if (!Within(problem.reel_s_m, -length, length)) return absl::StrFormat("a reel at %g m", problem.reel_s_m);
  return "";
}

std::string WrongOfGuide(const PlacementProblem& problem, std::size_t k) {
  const double length = problem.beam.length();
  const auto wrong = [&](const char* what, double value) {
    return absl::StrFormat("guide %d: %s %g m", k + 1, what, value);
  };
  if (!Within(problem.offsets_m[k], 0, length)) return wrong("a ring off the rod's axis by", problem.offsets_m[k]);
  if (!Within(problem.least_gaps_m[k], 0, length))
    return wrong("a least gap towards the tip of", problem.least_gaps_m[k]);
  if (!problem.turned.empty() && !std::isfinite(problem.turned[k]))
    return absl::StrFormat("guide %d: turned by no number", k + 1);
  if (!problem.locked_m.empty() && problem.locked_m[k]) {
    const double place = *problem.locked_m[k];
    if (!(place > 0) || !(place < length)) return wrong("locked at", place);
    for (std::size_t i = 0; i < k; ++i) {
      if (problem.locked_m[i] && !(*problem.locked_m[i] < place)) {
        return absl::StrFormat("guide %d is locked at %g m, not beyond guide %d", k + 1, place, i + 1);
      }
    }
  }
  if (problem.closed.empty()) return "";
  for (const ClosedStretch& stretch : problem.closed[k]) {
    if (!(stretch.from_m <= stretch.to_m))
      return wrong("a closed stretch that ends before it begins, at", stretch.from_m);
  }
  return "";
}

std::string WrongOfBounds(const PlacementProblem& problem) {
  const double length = problem.beam.length();
  if (!Within(problem.first_low_m, 0, length) || !Within(problem.first_high_m, 0, length) ||
      !Within(problem.last_high_m, 0, length)) {
    return absl::StrFormat("guide 1 between %g and %g m, the last one up to %g m: not all of that lies on the rod",
                           problem.first_low_m, problem.first_high_m, problem.last_high_m);
  }
  if (!problem.locked_m.empty() && problem.locked_m.front()) return "";
  if (problem.first_low_m > problem.first_high_m) {
    return absl::StrFormat("guide 1 has no room: not before %g m and not beyond %g m ahead of where the rod is held",
                           problem.first_low_m, problem.first_high_m);
  }
  if (!(problem.first_low_m > 0) || !(problem.first_low_m > problem.reel_s_m)) {
    return absl::StrFormat(
        "guide 1 may stand %g m ahead of where the rod is held, which is not beyond that and the reel",
        problem.first_low_m);
  }
  return "";
}

std::string WrongOfCases(const PlacementProblem& problem) {
  if (problem.cases.empty()) return "no load case";
  if (problem.cases.size() > kMostCases) return absl::StrFormat("more than %d load cases", kMostCases);
  for (const PlacementCase& load_case : problem.cases) {
    const char* what =
        !(load_case.tension_n > 0) || !std::isfinite(load_case.tension_n) ? "a tension that is not above 0"
        : !(std::abs(load_case.phi) <= 3.2)                               ? "a direction beyond half a turn"
        : !std::isfinite(load_case.clamp_angle)                           ? "a rod angle that is no number"
        : !(load_case.weight > 0) || !std::isfinite(load_case.weight)     ? "a weight that is not above 0"
        : load_case.clearance_m && !std::isfinite(*load_case.clearance_m) ? "a clearance that is no number"
                                                                          : nullptr;
    if (what) return absl::StrFormat("load case %s: %s", load_case.id, what);
  }
  return "";
}

}  // namespace

std::string WhatIsWrongWith(const PlacementProblem& problem) {
  std::string wrong = WrongOfRod(problem);
  if (!wrong.empty()) return wrong;
  const std::size_t guides = problem.offsets_m.size();
  if (guides == 0) return "no guide to place";
  if (guides > kMostGuides) return absl::StrFormat("more than %d guides", kMostGuides);
  const auto as_many = [&](const auto& list) { return list.empty() || list.size() == guides; };
  if (problem.least_gaps_m.size() != guides || !as_many(problem.turned) || !as_many(problem.locked_m) ||
      !as_many(problem.closed)) {
    return "gaps, turns, locks and closed stretches must be as many as guides";
  }
  if (!std::isfinite(problem.tip_turned)) return "a tip-top turned by no number";
  if (!Within(problem.tip_offset_m, 0, problem.beam.length())) {
    return absl::StrFormat("a tip-top's ring off the rod's axis by %g m", problem.tip_offset_m);
  }
  for (std::size_t k = 0; k < guides; ++k) {
    if (wrong = WrongOfGuide(problem, k); !wrong.empty()) return wrong;
  }
  if (wrong = WrongOfBounds(problem); !wrong.empty()) return wrong;
  return WrongOfCases(problem);
}

}  // namespace withy
