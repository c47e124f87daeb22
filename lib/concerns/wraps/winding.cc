#include <cmath>
#include <numbers>

#include "withy/wraps/wraps.h"

namespace withy {

Winding Wind(double length_m, double diameter0_m, double diameter1_m, double thread_m, int layers) {
  const double turns = length_m / thread_m;
  const double mean = (diameter0_m + diameter1_m) / 2;
  Winding winding;
  for (int layer = 1; layer <= layers; ++layer) {
    // Thread centre line of this layer.
    const double around = std::numbers::pi * (mean + (2 * layer - 1) * thread_m);
    winding.turns += turns;
    winding.thread_length_m += turns * std::sqrt(around * around + thread_m * thread_m);
  }
  return winding;
}

}  // namespace withy
