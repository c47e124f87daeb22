// The point that keeps linear rules and lies nearest to another.
#ifndef WITHY_GUIDES_NEAREST_POINT_H_
#define WITHY_GUIDES_NEAREST_POINT_H_

#include <optional>
#include <vector>

namespace withy {

// normal . x <= most
struct HalfSpace {
  std::vector<double> normal;
  double most = 0;
};

// Least squares of way from `wanted`, each half space kept within `tolerance` (in units of its own normal . x). Unset
// where the half spaces contradict one another, or rounding kept the search from an end. Dual active set method:
// Goldfarb and Idnani, Mathematical Programming 27 (1983), with the unit matrix as Hessian.
std::optional<std::vector<double>> NearestPoint(const std::vector<HalfSpace>& spaces, std::vector<double> wanted,
                                                double tolerance);

}  // namespace withy

#endif  // WITHY_GUIDES_NEAREST_POINT_H_
