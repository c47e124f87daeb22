// What the measures of one part of the handle say of each other.
#ifndef WITHY_ROD_JUDGE_PARTS_H_
#define WITHY_ROD_JUDGE_PARTS_H_

#include "resolver.h"

namespace withy {

// Tables of diameters that fall back (nothing is drawn from them); a bore wider than the part, or narrower than its
// cavity; counterweights of another mass than the shop's. Needs the parts.
void JudgeParts(Resolver& r);

}  // namespace withy

#endif  // WITHY_ROD_JUDGE_PARTS_H_
