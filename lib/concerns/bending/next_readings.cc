#include "next_readings.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "candidates.h"

namespace withy::bending {
namespace {

constexpr std::size_t kShown = 3;
constexpr double kWorthwhile = 1.1;  // times narrower

std::size_t WorstOf(const Rows& covariance, std::size_t sought) {
  std::size_t worst = 0;
  for (std::size_t i = 1; i < sought; ++i) {
    if (covariance[i][i] > covariance[worst][worst]) worst = i;
  }
  return worst;
}

}  // namespace

std::vector<NextReading> NextReadingsOf(const Rod& rod, BlankProblem& problem, const BlankFit& fit,
                                        const std::vector<ReadingModel>& readings) {
  std::vector<NextReading> next;
  if (problem.sought().empty()) return next;
  // With the same floor under both, so that something that nobody has an idea of can be compared.
  const Rows before = CovarianceOf(fit.fit.jacobian, kNoIdea, problem.unknowns());
  const std::size_t worst = WorstOf(before, problem.sought().size());
  const Sought& figure = problem.sought()[worst];
  for (const Candidate& candidate : CandidatesOf(rod, problem, fit.fit.x, readings)) {
    std::vector<double> row(static_cast<std::size_t>(problem.unknowns()), 0.0);
    if (candidate.figure >= 0) {
      row[static_cast<std::size_t>(candidate.figure)] = 1;
    } else if (auto slopes = problem.Slopes(candidate.reading, fit.fit.x)) {
      row = *std::move(slopes);
    }
    for (double& slope : row) slope /= candidate.relative_deviation;
    Rows jacobian = fit.fit.jacobian;
    jacobian.push_back(std::move(row));
    const Rows after = CovarianceOf(jacobian, kNoIdea, problem.unknowns());
    double narrows = std::sqrt(before[worst][worst] / after[worst][worst]);
    // A figure that was measured is held, with its own doubt.
    if (candidate.figure == static_cast<int>(worst)) {
      narrows = std::sqrt(before[worst][worst]) / candidate.relative_deviation;
    }
    if (!(narrows > kWorthwhile)) continue;
    NextReading reading;
    reading.text = candidate.text;
    reading.kind = figure.kind;
    reading.section = SectionShownFor(figure, rod);
    reading.narrows = narrows;
    next.push_back(std::move(reading));
  }
  std::stable_sort(next.begin(), next.end(),
                   [](const NextReading& a, const NextReading& b) { return a.narrows > b.narrows; });
  if (next.size() > kShown) next.resize(kShown);
  return next;
}

}  // namespace withy::bending
