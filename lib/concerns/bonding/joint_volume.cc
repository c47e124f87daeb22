#include "withy/bonding/joint_volume.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace withy {
namespace {

using Limit = Profile::Limit;

// A stretch in which both diameters are linear; values are seen from inside it.
struct Stretch {
  double from, to;
  double outer0, outer1, inner0, inner1;
};

std::vector<Stretch> StretchesOf(const Profile& outer, const Profile& inner, double from, double to) {
  std::vector<double> ends = {from, to};
  for (const Profile* profile : {&outer, &inner}) {
    for (const Profile::Knot& knot : profile->knots()) {
      if (knot.x > from && knot.x < to) ends.push_back(knot.x);
    }
  }
  std::sort(ends.begin(), ends.end());
  std::vector<Stretch> stretches;
  for (std::size_t i = 0; i + 1 < ends.size(); ++i) {
    const double a = ends[i], b = ends[i + 1];
    if (!(a < b)) continue;
    stretches.push_back({a, b, outer.At(a, Limit::kRight), outer.At(b, Limit::kLeft), inner.At(a, Limit::kRight),
                         inner.At(b, Limit::kLeft)});
  }
  return stretches;
}

// Volume between two surfaces of revolution, and its first moment about the origin of the coordinate.
struct Content {
  double volume_m3 = 0, moment_m4 = 0;
};

Content ContentOf(const std::vector<Stretch>& stretches) {
  Content sum;
  for (const Stretch& s : stretches) {
    const double outer = (s.outer0 + s.outer1) / 2, inner = (s.inner0 + s.inner1) / 2;
    const double first = (s.outer0 - s.inner0) * (s.outer0 + s.inner0);
    const double middle = 4 * (outer - inner) * (outer + inner);
    const double last = (s.outer1 - s.inner1) * (s.outer1 + s.inner1);
    const double scale = std::numbers::pi / 24 * (s.to - s.from);
    sum.volume_m3 += scale * (first + middle + last);
    sum.moment_m4 += scale * (s.from * first + (s.from + s.to) / 2 * middle + s.to * last);
  }
  return sum;
}

double LeastGapOf(const BondGap& gap, const std::vector<Stretch>& stretches) {
  double least = std::numeric_limits<double>::infinity();
  for (const Stretch& s : stretches) {
    least = std::min({least, (s.outer0 - s.inner0) / 2, (s.outer1 - s.inner1) / 2});
  }
  return stretches.empty() ? (gap.bore.At(gap.from_m) - gap.inner.At(gap.from_m)) / 2 : least;
}

RingInBond RingOf(const BondGap& gap, const BondRing& ring, Content& taken) {
  const double end = ring.from_m + ring.width_m;
  const double bore = gap.bore.Min(ring.from_m, end), inner = gap.inner.Max(ring.from_m, end);
  RingInBond answer;
  answer.clearance_m = (bore - ring.diameter_m) / 2;
  answer.fits = ring.diameter_m <= bore + kSameDiameter_m && inner <= ring.diameter_m + kSameDiameter_m;
  const double from = std::max(ring.from_m, gap.from_m), to = std::min(end, gap.to_m);
  if (!(from < to)) return answer;
  const Content content = ContentOf(StretchesOf(Profile({{from, ring.diameter_m}}), gap.inner, from, to));
  answer.volume_m3 = content.volume_m3;
  taken.volume_m3 += content.volume_m3;
  taken.moment_m4 += content.moment_m4;
  return answer;
}

}  // namespace

BondVolume VolumeOf(const BondGap& gap) {
  const std::vector<Stretch> stretches = StretchesOf(gap.bore, gap.inner, gap.from_m, gap.to_m);
  BondVolume answer;
  answer.gap_m = LeastGapOf(gap, stretches);
  Content taken;
  bool all_fit = true;
  for (const BondRing& ring : gap.rings) {
    answer.rings.push_back(RingOf(gap, ring, taken));
    all_fit = all_fit && answer.rings.back().fits;
  }
  answer.rings_m3 = taken.volume_m3;
  if (!(2 * answer.gap_m > kSameDiameter_m)) return answer;
  const Content gross = ContentOf(stretches);
  answer.gross_m3 = gross.volume_m3;
  if (!all_fit) return answer;
  answer.net_m3 = gross.volume_m3 - taken.volume_m3;
  if (*answer.net_m3 > 0) answer.center_m = (gross.moment_m4 - taken.moment_m4) / *answer.net_m3;
  return answer;
}

double SurfaceOf(const Profile& diameter, double from_m, double to_m) {
  double surface = 0;
  for (const Stretch& s : StretchesOf(diameter, diameter, from_m, to_m)) {
    surface += std::numbers::pi / 2 * (s.outer0 + s.outer1) * std::hypot(s.to - s.from, (s.outer1 - s.outer0) / 2);
  }
  return surface;
}

double FilletOutside(const Fillet& fillet) {
  return std::numbers::pi * fillet.axial_m * fillet.radial_m * (fillet.diameter_m / 2 + fillet.radial_m / 3);
}

double FilletInside(const Fillet& fillet) {
  return std::numbers::pi * fillet.axial_m * fillet.radial_m * (fillet.diameter_m / 2 - fillet.radial_m / 3);
}

}  // namespace withy
