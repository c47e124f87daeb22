#include "withy/fit/staged_cuts.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

constexpr double kTie_m = 1e-9;

}  // namespace

std::optional<std::vector<double>> StagedCuts(double total_m, const CutStages& stages) {
  if (total_m <= kTie_m) return std::vector<double>{};
  const double before_last = total_m - stages.last_m - kTie_m;
  const double stages_before = before_last <= 0 ? 0 : std::ceil(before_last / stages.largest_m);
  if (!(stages_before < kMostStages)) return std::nullopt;
  if (total_m < (stages_before + 1) * stages.kerf_m - kTie_m) return std::nullopt;
  if (stages_before == 0) return std::vector<double>{total_m};
  const double last = std::min(stages.last_m, total_m - stages_before * stages.kerf_m);
  std::vector<double> removed(static_cast<size_t>(stages_before), (total_m - last) / stages_before);
  removed.push_back(last);
  return removed;
}

}  // namespace withy
