#include "withy/fit/length_curve.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

constexpr double kSame = 1e-9;     // of cuts and lengths
constexpr int kMostTangents = 60;  // each finds a bend, or parts the stretch

// Cuts between which the length is convex.
std::vector<double> ConvexStretches(const Insertion& insertion, double from, double to) {
  std::vector<double> at = {from, to};
  const auto& shaft = insertion.shaft().knots();
  const auto& bore = insertion.bore().knots();
  for (std::size_t i = 0; i < shaft.size(); ++i) {
    at.push_back(shaft[i].x);
    if (i + 1 == shaft.size() || shaft[i + 1].y == shaft[i].y || shaft[i + 1].x == shaft[i].x) continue;
    for (const Profile::Knot& corner : bore) {
      const double share = (corner.y - insertion.clearance() - shaft[i].y) / (shaft[i + 1].y - shaft[i].y);
      if (share > 0 && share < 1) at.push_back(std::lerp(shaft[i].x, shaft[i + 1].x, share));
    }
  }
  std::erase_if(at, [&](double cut) { return cut < from || cut > to; });
  std::sort(at.begin(), at.end());
  at.erase(std::unique(at.begin(), at.end(), [](double a, double b) { return b - a <= kSame; }), at.end());
  return at;
}

void AddBendsBetween(const Insertion& insertion, double a, double b, int tangents, std::vector<double>& bends) {
  const double from = insertion.LengthAt(a), to = insertion.LengthBefore(b);
  const double middle = (a + b) / 2;
  if (b - a <= 2 * kSame || tangents == 0) return;
  // a convex function that meets its chord inside is the chord
  if (std::abs(insertion.LengthAt(middle) - (from + to) / 2) <= kSame / 10) return;
  const double slope_a = insertion.At(a).slope_after, slope_b = insertion.At(b).slope_before.value_or(0);
  double cross = (to - from + slope_a * a - slope_b * b) / (slope_a - slope_b);
  if (!(cross > a + kSame && cross < b - kSame)) cross = middle;
  AddBendsBetween(insertion, a, cross, tangents - 1, bends);
  bends.push_back(cross);
  AddBendsBetween(insertion, cross, b, tangents - 1, bends);
}

}  // namespace

std::vector<double> BendsOfLength(const Insertion& insertion, double from, double to) {
  if (insertion.shaft().knots().size() * insertion.bore().knots().size() > kMostCorners) return {};
  const std::vector<double> stretches = ConvexStretches(insertion, from, to);
  std::vector<double> bends;
  for (std::size_t i = 0; i < stretches.size(); ++i) {
    bends.push_back(stretches[i]);
    if (i + 1 < stretches.size()) AddBendsBetween(insertion, stretches[i], stretches[i + 1], kMostTangents, bends);
  }
  std::erase_if(bends, [&](double cut) {
    const Insertion::State state = insertion.At(cut);
    return state.jump == 0 && std::abs(state.slope_before.value_or(state.slope_after) - state.slope_after) <= kSame;
  });
  return bends;
}

}  // namespace withy
