// What sits on the blank, for bending: from what was counted for the balance.
#ifndef WITHY_REVIEW_ON_THE_BLANK_H_
#define WITHY_REVIEW_ON_THE_BLANK_H_

#include <vector>

#include "withy/balance/balance.h"
#include "withy/bending/bending.h"

namespace withy {

// Everything but the sections themselves; whether it is ahead of the clamp is for bending to see. A wrap on a guide or
// the tip-top, and what these are glued with, belongs to its train.
std::vector<OnTheBlank> OnTheBlankOf(const Rod& rod, const std::vector<Contribution>& parts);

}  // namespace withy

#endif  // WITHY_REVIEW_ON_THE_BLANK_H_
