#include "withy/sections/slip.h"

namespace withy {

std::optional<double> SlipOf(double value, double expected) {
  for (const double factor : {25.4, 10.0, 1 / 25.4, 1 / 10.0}) {
    const double ratio = value * factor / expected;
    if (ratio > 0.85 && ratio < 1 / 0.85) return value * factor;
  }
  return std::nullopt;
}

}  // namespace withy
