// What the readings do not tell apart, in words.
#ifndef WITHY_BENDING_OPEN_COMBINATIONS_H_
#define WITHY_BENDING_OPEN_COMBINATIONS_H_

#include <string>
#include <vector>

#include "fit_blank.h"

namespace withy::bending {

// Relative, k = 2: a figure that may be further off than this is open. Common practice, no source: what a table of
// materials says of a modulus is no worse.
inline constexpr double kOpen = 0.25;

// "modulus", "wall at the butt of tip": the section is named where the blank has several and not all share it.
std::string NameOf(const Sought& figure, const Rod& rod);

// Principal axes of the covariance along which a figure is open, the worst first. What is said to be unseen was tried:
// every reading at the moved blank, its printed figures, against that of the fit.
std::vector<OpenCombination> OpenCombinationsOf(const Rod& rod, BlankProblem& problem, const BlankFit& fit,
                                                const std::vector<ReadingModel>& readings);

}  // namespace withy::bending

#endif  // WITHY_BENDING_OPEN_COMBINATIONS_H_
