// One load of a placement problem in the terms of the strung beam.
#ifndef WITHY_GUIDES_LINE_OF_LAYOUT_H_
#define WITHY_GUIDES_LINE_OF_LAYOUT_H_

#include <vector>

#include "withy/guides/placement.h"

namespace withy {

// The guides at s_m and the tip-top.
std::vector<BeamRing> RingsOf(const PlacementProblem& problem, const std::vector<double>& s_m);
StrungLoad LoadOf(const PlacementProblem& problem, const PlacementCase& load_case);

}  // namespace withy

#endif  // WITHY_GUIDES_LINE_OF_LAYOUT_H_
