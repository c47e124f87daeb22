// One way down from a layout to a least J + share x R near it.
#ifndef WITHY_GUIDES_DESCENT_H_
#define WITHY_GUIDES_DESCENT_H_

#include "layout_model.h"
#include "placement_rules.h"

namespace withy {

// The best layout met that keeps the rules, by CostOf; not solved where `start` is not. Takes about `most_solves` more
// at most. REQUIRES: start keeps the rules.
Layout Descend(LayoutSolver& solver, const PlacementProblem& problem, const PlaceRules& rules,
               const std::vector<double>& start, int most_solves, double share_of_r = kShareOfR);

}  // namespace withy

#endif  // WITHY_GUIDES_DESCENT_H_
