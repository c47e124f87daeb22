// The further reading at the bench that would help most.
//
// Each candidate adds its row to the Jacobian, with the uncertainty that such a reading usually has; what counts is the
// factor by which the doubt of the figure that is known worst falls (Fisher information, to first order).
#ifndef WITHY_BENDING_NEXT_READINGS_H_
#define WITHY_BENDING_NEXT_READINGS_H_

#include <vector>

#include "fit_blank.h"

namespace withy::bending {

// Three at most, the most helpful first; empty where none helps. `readings` are those that the fit rests on.
std::vector<NextReading> NextReadingsOf(const Rod& rod, BlankProblem& problem, const BlankFit& fit,
                                        const std::vector<ReadingModel>& readings);

}  // namespace withy::bending

#endif  // WITHY_BENDING_NEXT_READINGS_H_
