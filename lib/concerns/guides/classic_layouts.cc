// The trade's progressions. Common practice, no source, but for the check values that the tests name.
#include <algorithm>
#include <cmath>

#include "withy/guides/placement.h"

namespace withy {
namespace {

// D_j for j = 1 (next to the tip) to n, as places of guide 1 (next to the butt) to n.
template <typename DistanceAt>
std::vector<double> PlacesOf(const PlacementProblem& problem, DistanceAt distance_at) {
  std::vector<double> places;
  for (int j = problem.count(); j > 0; --j) places.push_back(problem.beam.length() - distance_at(j));
  return places;
}

double LongestDistance(const PlacementProblem& problem) {
  return problem.beam.length() - (problem.first_low_m + problem.first_high_m) / 2;
}

// 1 + q + ... + q^(count - 1)
double GeometricSum(double ratio, int count) {
  double sum = 0;
  for (int i = 0; i < count; ++i) sum = 1 + ratio * sum;
  return sum;
}

// The ratio with which gaps from `first` on sum up to `longest`: the sum rises with it, so by bisection, to the last
// bit.
double RatioFor(double first, double longest, int count) {
  double low = 0, high = longest / first;  // at the high end the second gap alone is as long
  for (int i = 0; i < 200 && low < high; ++i) {
    const double middle = low + (high - low) / 2;
    (first * GeometricSum(middle, count) < longest ? low : high) = middle;
  }
  return high;
}

}  // namespace

ArithmeticRule ArithmeticThrough(double first, double last, int count) {
  const double steps = count * (count - 1) / 2.0;
  return {first, (last - count * first) / steps, 0};
}

std::vector<double> ArithmeticLayout(const PlacementProblem& problem, double from_tip_m) {
  if (problem.count() < 2) return EqualLayout(problem);
  const ArithmeticRule rule = ArithmeticThrough(from_tip_m, LongestDistance(problem), problem.count());
  return PlacesOf(problem, [&](int j) { return rule.DistanceAt(j); });
}

std::vector<double> GeometricLayout(const PlacementProblem& problem, double from_tip_m) {
  const double longest = LongestDistance(problem);
  if (problem.count() < 2 || !(from_tip_m < longest)) return EqualLayout(problem);
  const double ratio = RatioFor(from_tip_m, longest, problem.count());
  return PlacesOf(problem, [&](int j) { return from_tip_m * GeometricSum(ratio, j); });
}

std::vector<double> EqualLayout(const PlacementProblem& problem) {
  const double gap = LongestDistance(problem) / problem.count();
  return PlacesOf(problem, [&](int j) { return j * gap; });
}

// With t = j - mean, the parabola a + b t + c (t^2 - mean of t^2) has orthogonal parts, as the j are evenly spaced.
ArithmeticRule FitArithmetic(const std::vector<double>& distances) {
  const double count = static_cast<double>(distances.size()), mean = (count + 1) / 2;
  const double spread = (count * count - 1) / 12;
  double level = 0, slope = 0, slopes = 0, bend = 0, bends = 0;
  for (std::size_t i = 0; i < distances.size(); ++i) {
    const double t = static_cast<double>(i) + 1 - mean, bow = t * t - spread;
    level += distances[i] / count;
    slope += distances[i] * t;
    slopes += t * t;
    bend += distances[i] * bow;
    bends += bow * bow;
  }
  const double b = slope / slopes, c = bend / bends;
  // In powers of j: c j^2 + (b - 2 c mean) j + rest; and I / 2 = c, X - I / 2 = the factor of j.
  return {b - 2 * c * mean + c, 2 * c, level - b * mean + c * (mean * mean - spread)};
}

}  // namespace withy
