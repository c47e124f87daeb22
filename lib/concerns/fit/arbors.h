// Arbors: how thick, how many turns, what they leave for adhesive, and where a part that names none would need them.
#ifndef WITHY_FIT_ARBORS_H_
#define WITHY_FIT_ARBORS_H_

#include <vector>

#include "withy/fit/fit.h"

namespace withy {

// Of a part in place; `blank` is from the butt end of the finished rod.
ArborFit FitOfArbor(const Rod& rod, const Part& part, const Arbor& arbor, const Profile& blank);

// For a rigid part whose bore is over 0.5 mm all round wider than the blank and that names no arbors (common practice,
// no source): on the longest straight stretch of its bore one every 25 mm, three at most; of a one-piece handle also
// one at the neck and one at the rear, where the blank is loose there.
std::vector<ArborFit> ProposedArbors(const Rod& rod, const Part& part, const Profile& blank);

}  // namespace withy

#endif  // WITHY_FIT_ARBORS_H_
