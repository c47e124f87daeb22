// The way from the straight beam to the loaded one.
#ifndef WITHY_LIB_NUMERICS_ELASTICA_PATH_H_
#define WITHY_LIB_NUMERICS_ELASTICA_PATH_H_

#include "elastica_elements.h"

namespace withy {

// Raises the whole load from zero in steps, each predicted along the tangent of the path and corrected by Newton, and
// none so long that the path could be left for another; stays on shapes that are stable. Where no step however small
// goes on, the state says what is there: a branch (the path goes on, unstable), or a fold (it does not). Leaves the
// angles at `share`.
struct PathEnd {
  ElasticaState state = ElasticaState::kNotConverged;
  double share = 0;
};
PathEnd RaiseLoad(ElasticaElements& elements, int most_steps);

// Newton at a share of the load from nearby, until corrections are nothing. False where that fails.
bool Settle(ElasticaElements& elements, double share);

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_ELASTICA_PATH_H_
