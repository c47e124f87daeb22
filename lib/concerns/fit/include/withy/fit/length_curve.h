// The cuts at which the length of a shaft in a bore bends or jumps.
#ifndef WITHY_FIT_LENGTH_CURVE_H_
#define WITHY_FIT_LENGTH_CURVE_H_

#include <vector>

#include "withy/numerics/insertion.h"

namespace withy {

// Every cut in [from, to] at which Insertion::LengthAt has a jump or two slopes, rising, each once; exact, not sampled.
// Only where shaft and bore have so many corners that more than kMostCorners pairs of them would have to be looked at,
// none.
//
// Derivation. While the face passes one linear piece of the shaft, what may stop it is: a corner of the bore against
// the face (length falls as fast as the cut grows), the face on a linear piece of the bore (a constant slope), or
// something ahead of the face, or the stop. Each of them comes or goes only where the face's diameter, with the
// clearance, equals that of a corner of the bore. Between two such cuts the length is therefore the greatest of a fixed
// set of straight lines: convex, and its bends are found by cutting the tangents of the two ends with one another.
//
// Requires: 0 <= from <= to < the shaft's length.
inline constexpr int kMostCorners = 20000;
std::vector<double> BendsOfLength(const Insertion& insertion, double from, double to);

}  // namespace withy

#endif  // WITHY_FIT_LENGTH_CURVE_H_
