// A number that is off by the factor of a slip of the pen.
#ifndef WITHY_SECTIONS_SLIP_H_
#define WITHY_SECTIONS_SLIP_H_

#include <optional>

namespace withy {

// What `value` should say if its author slipped by a factor and `expected` is about right; unset where no slip explains
// it. An inch typed as a millimetre is 25.4 too small, a point put wrong 10 times too small or too large. "About" is
// within 15 in a hundred (common practice, no source). Both in the same unit, `expected` > 0.
//
//   SlipOf(0.52, 13)   // 13.208: inches
//   SlipOf(1.28, 12.7) // 12.8: the point
//   SlipOf(12, 13)     // nothing
std::optional<double> SlipOf(double value, double expected);

}  // namespace withy

#endif  // WITHY_SECTIONS_SLIP_H_
