// A length as a rod is ordered, in mm or in inches.
#ifndef WITHY_FIT_BOTH_UNITS_H_
#define WITHY_FIT_BOTH_UNITS_H_

#include <string>

#include "withy/units/format.h"

namespace withy::fit {

// "2209.8 mm (87\")", to a tenth and to a sixteenth.
inline std::string Both(Length length) {
  return FormatMm(length, 1) + " (" + FormatInches(length, 16) + ")";
}

}  // namespace withy::fit

#endif  // WITHY_FIT_BOTH_UNITS_H_
