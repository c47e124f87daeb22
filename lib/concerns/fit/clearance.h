// What is between a part's bore and the blank in it.
#ifndef WITHY_FIT_CLEARANCE_H_
#define WITHY_FIT_CLEARANCE_H_

#include "withy/fit/fit.h"

namespace withy {

// Of one part of a rod whose blank has its place; everything stays unset where part or blank are not known.
PartFit FitOf(const Rod& rod, const Part& part);

}  // namespace withy

#endif  // WITHY_FIT_CLEARANCE_H_
