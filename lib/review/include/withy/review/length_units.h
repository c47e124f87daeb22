// The unit that people read lengths along the rod in.
#ifndef WITHY_REVIEW_LENGTH_UNITS_H_
#define WITHY_REVIEW_LENGTH_UNITS_H_

#include "withy/v1/design.pb.h"

namespace withy {

// Lengths along the rod: kMm to 0.1 mm; kInch to the nearest 1/16 in (guides 1/8 in).
enum class LengthUnits { kMm, kInch };

// The unit that the design asks for (`identity.units`); unset = mm.
LengthUnits UnitsOf(const v1::Design& design);

}  // namespace withy

#endif  // WITHY_REVIEW_LENGTH_UNITS_H_
