// What the blank under a part says of its bore: to ream to, or to take from stock.
#ifndef WITHY_FIT_ON_BLANK_H_
#define WITHY_FIT_ON_BLANK_H_

#include <vector>

#include "withy/fit/fit.h"

namespace withy {

// Of every rigid part that is to be reamed and lies on known blank over its whole length, butt first.
std::vector<ReamTable> ReamTablesOf(const Rod& rod);

// Of every winding check in place, butt first. Bores as the shop has them in stock, else every half millimetre (common
// practice, no source). A bore that equals the blank goes on.
std::vector<WindingCheckFit> WindingChecksOf(const Rod& rod);

}  // namespace withy

#endif  // WITHY_FIT_ON_BLANK_H_
