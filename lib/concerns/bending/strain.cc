#include "strain.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace withy::bending {
namespace {

// By the stiffness and diameter of one piece.
double StrainIn(const Beam& beam, const std::vector<double>& outer_m, std::size_t i, double s, double moment) {
  const BeamPiece& piece = beam.pieces[i];
  const double t = (s - piece.s0) / (piece.s1 - piece.s0);
  const double outer = outer_m[2 * i] + t * (outer_m[2 * i + 1] - outer_m[2 * i]);
  return std::abs(moment) * outer / (2 * piece.StiffnessAt(s));
}

std::size_t PieceAt(const Beam& beam, double s) {
  const auto after = std::upper_bound(beam.pieces.begin(), beam.pieces.end(), s,
                                      [](double x, const BeamPiece& piece) { return x < piece.s1; });
  return std::min<std::size_t>(after - beam.pieces.begin(), beam.pieces.size() - 1);
}

// The largest value of f over [a, b], where f rises and then falls: golden section.
template <typename F>
double PlaceOfLargest(double a, double b, double close, F f) {
  const double ratio = 1 / std::numbers::phi;
  double x = b - ratio * (b - a), y = a + ratio * (b - a);
  double at_x = f(x), at_y = f(y);
  while (b - a > close) {
    if (at_x > at_y) {
      b = y, y = x, at_y = at_x;
      x = b - ratio * (b - a), at_x = f(x);
    } else {
      a = x, x = y, at_x = at_y;
      y = a + ratio * (b - a), at_y = f(y);
    }
  }
  return (a + b) / 2;
}

// Points of the shape that lie in a piece.
struct Best {
  double strain = 0;
  double before = 0, at = 0, after = 0;  // the place of the largest, and its neighbours in the piece
};

Best BestOf(const Beam& beam, const std::vector<double>& outer_m, std::size_t piece,
            const std::vector<BeamPoint>& points, std::size_t first, std::size_t last) {
  Best best;
  for (std::size_t p = first; p <= last; ++p) {
    const double strain = StrainIn(beam, outer_m, piece, points[p].s, points[p].moment);
    if (p != first && strain <= best.strain) continue;
    best = {strain, points[p == first ? p : p - 1].s, points[p].s, points[p == last ? p : p + 1].s};
  }
  return best;
}

}  // namespace

double StrainAt(const Beam& beam, const std::vector<double>& outer_m, double s, double moment) {
  const std::size_t i = PieceAt(beam, s);
  const double here = StrainIn(beam, outer_m, i, s, moment);
  return i > 0 && s <= beam.pieces[i].s0 ? std::max(here, StrainIn(beam, outer_m, i - 1, s, moment)) : here;
}

PeakStrain PeakStrainOf(const Beam& beam, const std::vector<double>& outer_m, const Elastica& shape) {
  const double rounding = 1e-12 * beam.length();
  std::vector<Best> best_of;
  double largest = 0;
  std::size_t first = 0;
  for (std::size_t i = 0; i < beam.pieces.size(); ++i) {
    std::size_t last = first;
    while (last + 1 < shape.points.size() && shape.points[last].s < beam.pieces[i].s1 - rounding) ++last;
    best_of.push_back(BestOf(beam, outer_m, i, shape.points, first, last));
    largest = std::max(largest, best_of.back().strain);
    first = last;
  }
  PeakStrain peak{shape.points.front().s, 0, 0};
  // Between two points of a shape the strain goes up by far less than a tenth.
  constexpr double kNearlyLargest = 0.9;
  for (std::size_t i = 0; i < beam.pieces.size(); ++i) {
    const Best& best = best_of[i];
    if (best.strain < kNearlyLargest * largest) continue;
    const auto strain = [&](double s) { return StrainIn(beam, outer_m, i, s, shape.At(s).moment); };
    const double s = PlaceOfLargest(best.before, best.after, 1e-7 * beam.length(), strain);
    const double inside = strain(s);
    // At an end of a piece the search comes close only.
    const PeakStrain found = inside > best.strain ? PeakStrain{s, inside, i} : PeakStrain{best.at, best.strain, i};
    if (found.strain > peak.strain) peak = found;
  }
  return peak;
}

}  // namespace withy::bending
