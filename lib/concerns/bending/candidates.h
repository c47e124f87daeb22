// What else could be read of a blank at the bench, with the usual uncertainty of each.
#ifndef WITHY_BENDING_CANDIDATES_H_
#define WITHY_BENDING_CANDIDATES_H_

#include <string>
#include <vector>

#include "fit_blank.h"

namespace withy::bending {

struct Candidate {
  std::string text;               // what to do
  ReadingModel reading;           // `measured` is what it would read; used where `figure` is -1
  int figure = -1;                // in BlankProblem::sought(): a figure that is read by itself
  double relative_deviation = 0;  // standard
};

// At the blank that x stands for.
std::vector<Candidate> CandidatesOf(const Rod& rod, BlankProblem& problem, const std::vector<double>& x,
                                    const std::vector<ReadingModel>& readings);

}  // namespace withy::bending

#endif  // WITHY_BENDING_CANDIDATES_H_
