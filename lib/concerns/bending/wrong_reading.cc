#include "wrong_reading.h"

#include <algorithm>
#include <cmath>
#include <iterator>
#include <limits>
#include <utility>

namespace withy::bending {
namespace {

double SquaresOf(const BlankFit& fit) {
  if (fit.fit.singular_values.empty()) return std::numeric_limits<double>::infinity();
  double sum = 0;
  for (const double residual : fit.fit.residuals) sum += residual * residual;
  return sum;
}

bool Agrees(const BlankFit& fit) {
  return !fit.fit.singular_values.empty() &&
         std::all_of(fit.studentised.begin(), fit.studentised.end(),
                     [](double deviation) { return std::abs(deviation) <= kDoesNotBelong; });
}

struct Range {
  double low, high;
};

// As the fields of blank.proto say, in SI.
Range PlausibleOf(UnknownKind kind) {
  if (kind == UnknownKind::kModulus) return {5e9, 450e9};
  if (kind == UnknownKind::kDensity) return {500, 2600};
  return {0.1e-3, 10e-3};
}

// No figure is beyond its range by more than its doubt.
bool CanBe(const BlankProblem& problem, const BlankFit& fit) {
  for (std::size_t i = 0; i < problem.sought().size(); ++i) {
    const Sought& figure = problem.sought()[i];
    const Range range = PlausibleOf(figure.kind);
    const double value = figure.value * std::exp(fit.fit.x[i]), doubt = std::exp(2 * std::sqrt(fit.covariance[i][i]));
    if (value * doubt < range.low || value > range.high * doubt) return false;
  }
  return true;
}

}  // namespace

WrongReading FindWrongReading(BlankProblem& problem, const std::vector<ReadingModel>& readings) {
  WrongReading found;
  found.fit = problem.Fit(readings);
  if (found.fit.fit.singular_values.empty() || Agrees(found.fit)) return found;
  found.outcome = WrongReading::Outcome::kNobodyCanSay;
  std::vector<BlankFit> without;
  std::vector<std::pair<double, int>> explained;  // sum of squares left, reading
  for (int i = 0; i < static_cast<int>(readings.size()); ++i) {
    without.push_back(problem.Fit(readings, i));
    if (Agrees(without.back())) explained.emplace_back(SquaresOf(without.back()), i);
  }
  std::sort(explained.begin(), explained.end());
  for (const auto& [squares, reading] : explained) {
    if (squares - explained.front().first < kDoesNotBelong * kDoesNotBelong) found.suspects.push_back(reading);
  }
  if (found.suspects.size() > 1) {
    std::vector<int> plausible;
    std::copy_if(found.suspects.begin(), found.suspects.end(), std::back_inserter(plausible),
                 [&](int reading) { return CanBe(problem, without[reading]); });
    if (!plausible.empty()) found.suspects = std::move(plausible);
  }
  if (found.suspects.size() != 1) return found;
  found.outcome = WrongReading::Outcome::kOne;
  found.reading = found.suspects.front();
  found.suspects.clear();
  found.fit = std::move(without[found.reading]);
  return found;
}

}  // namespace withy::bending
