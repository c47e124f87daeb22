// The cut at the butt for a length: what comes out of asking an Insertion for one.
//
//   CutForLength(insertion, 2.2, 0.3)  // kReached: cut_m = 0.1238, or why not and the lengths that can be had instead
//
// Length against cut never rises, but it can stand still (something ahead of the butt carries the blank) and it can
// fall at once (the butt passes a shoulder), so that a length in between is to be had by no cut at all. Own derivation.
#ifndef WITHY_FIT_CUT_FOR_LENGTH_H_
#define WITHY_FIT_CUT_FOR_LENGTH_H_

#include <optional>

#include "withy/numerics/insertion.h"

namespace withy {

struct LengthOutcome {
  enum class Kind {
    kReached,          // within 1e-9 m
    kLongerThanUncut,  // no cut makes a rod longer
    kJump,             // the length falls past it at one cut
    kBeyondLimit,      // it would take more than the cut that is allowed
  };
  // A length that can be had instead, or, where not attained, that can be come near to but never had.
  struct Nearest {
    double length_m = 0;
    bool attained = true;
  };
  Kind kind = Kind::kReached;
  std::optional<double> cut_m;   // kReached: the least cut that gives the length. kJump: the cut at the jump
  std::optional<Nearest> below;  // kLongerThanUncut: the uncut length. kJump: the length at the jump
  // kBeyondLimit: the length at the limit. kJump: just before the jump; attained only where the length stands still
  // there.
  std::optional<Nearest> above;
};

// Metres; lengths from the bore's rear end to the far end of the shaft. Requires: 0 <= cut_limit_m < the shaft's
// length.
LengthOutcome CutForLength(const Insertion& insertion, double length_m, double cut_limit_m);

}  // namespace withy

#endif  // WITHY_FIT_CUT_FOR_LENGTH_H_
