#include "withy/numerics/circle_packing.h"

#include <cmath>
#include <numbers>

namespace withy {

int SideBySide(double bore, double d, double tie) {
  const double least[] = {
      1, 2, 1 + 2 / std::numbers::sqrt3, 1 + std::numbers::sqrt2, 1 + std::sqrt(2 * (1 + 1 / std::sqrt(5.0))), 3, 3};
  int count = 0;
  for (int k = 0; k < 7; ++k) {
    if (bore >= least[k] * d - tie) count = k + 1;
  }
  return count;
}

}  // namespace withy
