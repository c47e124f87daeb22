#include "first_past.h"

#include <algorithm>
#include <cmath>

namespace withy::fit {

std::optional<double> FirstPast(const Profile& profile, double from, double to, double value, Past past) {
  constexpr double kTie = 1e-12;
  if (from == to) return std::nullopt;
  std::vector<Profile::Knot> way = profile.Slice(std::min(from, to), std::max(from, to)).knots();
  if (from > to) std::reverse(way.begin(), way.end());
  const auto beyond = [&](double y) { return past == Past::kAbove ? y - value : value - y; };
  for (std::size_t i = 0; i < way.size(); ++i) {
    if (!(beyond(way[i].y) > kTie)) continue;
    if (i == 0) return way[0].x;
    const double before = beyond(way[i - 1].y), here = beyond(way[i].y);
    return std::lerp(way[i - 1].x, way[i].x, std::clamp(-before / (here - before), 0.0, 1.0));
  }
  return std::nullopt;
}

}  // namespace withy::fit
