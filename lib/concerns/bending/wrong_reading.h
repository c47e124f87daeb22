// Is one of the readings wrong, and which?
//
// Baarda's data snooping (1968): a residual over its own standard deviation beyond 3.29, once in a thousand by chance,
// does not belong. A reading is wrong where without it all others agree, and where leaving out any other one explains
// them worse by 3.29^2 in the sum of squares (the same odds, by likelihood ratio). Of several that would do, those
// count after which the blank is one that there can be: modulus, density and walls within the ranges that the schema
// calls plausible. Otherwise nobody can say which.
#ifndef WITHY_BENDING_WRONG_READING_H_
#define WITHY_BENDING_WRONG_READING_H_

#include <vector>

#include "fit_blank.h"

namespace withy::bending {

inline constexpr double kDoesNotBelong = 3.29;

struct WrongReading {
  enum class Outcome { kNone, kOne, kNobodyCanSay } outcome = Outcome::kNone;
  int reading = -1;           // of kOne
  BlankFit fit;               // by all of them; of kOne by all others
  std::vector<int> suspects;  // of kNobodyCanSay: each explains it; empty = no single one does
};

WrongReading FindWrongReading(BlankProblem& problem, const std::vector<ReadingModel>& readings);

}  // namespace withy::bending

#endif  // WITHY_BENDING_WRONG_READING_H_
