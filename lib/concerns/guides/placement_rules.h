// The rules for places in a placement problem, as bounds and linear rows.
#ifndef WITHY_GUIDES_PLACEMENT_RULES_H_
#define WITHY_GUIDES_PLACEMENT_RULES_H_

#include <string>
#include <vector>

#include "withy/guides/placement.h"

namespace withy {

// sum of row x place <= most
struct PlaceRule {
  std::vector<double> row;
  double most = 0;
  std::string what;  // "guide 2 and guide 3 at least 50 mm apart"
  double Missing(const std::vector<double>& s_m) const;
};

// Closed stretches are not in it: they leave a choice of sides.
struct PlaceRules {
  std::vector<double> low, high;  // of each guide, as tight as the least gaps make them; a locked guide's are its place
  std::vector<PlaceRule> rows;    // those that touch a guide which is not locked
};
PlaceRules RulesOf(const PlacementProblem& problem);

// Draws each guide's bounds in by those of its neighbours. Empty, or the guide that is left no room, in words.
std::string Tighten(const PlacementProblem& problem, PlaceRules& rules);

struct NearestPlaces {
  std::vector<double> s_m;
  double missing_m = 0;  // of the worst row; 0 where all are kept
  std::string what;      // that row
};
// The places within the bounds that keep every row and lie nearest to `s_m` (least squares). REQUIRES: Tighten gave no
// complaint.
NearestPlaces Nearest(const PlaceRules& rules, const std::vector<double>& s_m);

bool IsLocked(const PlacementProblem& problem, std::size_t guide);
// How deep inside which of its closed stretches a guide stands; depth 0 and no stretch where it stands free or is
// locked.
struct InClosed {
  double depth_m = 0;
  const ClosedStretch* stretch = nullptr;
};
InClosed ClosedAt(const PlacementProblem& problem, std::size_t guide, double s_m);

// Layout::position_violation_m.
double PositionViolation(const PlacementProblem& problem, const std::vector<double>& s_m);
// What keeps a solver from working with these places; empty where nothing does.
std::string WhatIsWrongWithPlaces(const PlacementProblem& problem, const std::vector<double>& s_m);

}  // namespace withy

#endif  // WITHY_GUIDES_PLACEMENT_RULES_H_
