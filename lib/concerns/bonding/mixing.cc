#include "withy/bonding/mixing.h"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace withy {
namespace {

// Volumes and times that differ by less than one part in 1e9 are equal; a tie fits.
constexpr double kTie = 1e-9;
constexpr double kNever = std::numeric_limits<double>::infinity();

bool Fits(double duration_s, const BatchJobs& jobs) {
  return duration_s <= jobs.pot_life_s * (1 + kTie);
}

double MixedFor(double need_m3, const BatchJobs& jobs) {
  return std::max(jobs.waste * need_m3, jobs.smallest_m3);
}

// Calls visit(end, mixed) for every batch [first, end) that fits the pot life, shortest first.
template <typename Visit>
void ForEachBatchFrom(std::size_t first, const BatchJobs& jobs, Visit visit) {
  double need = 0, duration = 0;
  for (std::size_t end = first; end < jobs.needs_m3.size();) {
    need += jobs.needs_m3[end];
    duration += jobs.durations_s[end];
    if (!Fits(duration, jobs)) return;
    visit(++end, MixedFor(need, jobs));
  }
}

// [i]: least volume mixed for the jobs from i on, where `rest` gives it for the jobs after the first batch.
std::vector<double> LeastFrom(const BatchJobs& jobs, const std::vector<double>& rest) {
  std::vector<double> least(rest.size(), kNever);
  for (std::size_t i = 0; i + 1 < rest.size(); ++i) {
    ForEachBatchFrom(i, jobs, [&](std::size_t end, double mixed) { least[i] = std::min(least[i], mixed + rest[end]); });
  }
  return least;
}

// Over any number of batches.
double LeastMixed(const BatchJobs& jobs) {
  const std::size_t n = jobs.needs_m3.size();
  std::vector<double> least(n + 1, kNever);
  least[n] = 0;
  for (std::size_t i = n; i-- > 0;) {
    ForEachBatchFrom(i, jobs,
                     [&](std::size_t end, double mixed) { least[i] = std::min(least[i], mixed + least[end]); });
  }
  return least[0];
}

Batch BatchOf(std::size_t first, std::size_t end, const BatchJobs& jobs) {
  Batch batch{.first = first, .last = end - 1};
  for (std::size_t i = first; i < end; ++i) {
    batch.need_m3 += jobs.needs_m3[i];
    batch.working_s += jobs.durations_s[i];
  }
  batch.mixed_m3 = MixedFor(batch.need_m3, jobs);
  batch.set_by_minimum = jobs.smallest_m3 > jobs.waste * batch.need_m3 * (1 + kTie);
  return batch;
}

// Requires: every job fits alone; `least` is that of LeastMixed and finite.
std::vector<Batch> BestPartition(const BatchJobs& jobs, double least) {
  const std::size_t n = jobs.needs_m3.size();
  const double bound = least * (1 + kTie);
  // left[k][i]: least for the jobs from i on in exactly k batches.
  std::vector<std::vector<double>> left(1, std::vector<double>(n + 1, kNever));
  left[0][n] = 0;
  while (!(left.back()[0] <= bound)) left.push_back(LeastFrom(jobs, left.back()));
  std::vector<Batch> batches;
  double mixed_so_far = 0;
  for (std::size_t i = 0, k = left.size() - 1; i < n; --k) {
    std::size_t longest = i;
    double mixed_in_it = 0;
    ForEachBatchFrom(i, jobs, [&](std::size_t end, double mixed) {
      if (!(mixed_so_far + mixed + left[k - 1][end] <= bound)) return;
      longest = end;
      mixed_in_it = mixed;
    });
    batches.push_back(BatchOf(i, longest, jobs));
    mixed_so_far += mixed_in_it;
    i = longest;
  }
  return batches;
}

}  // namespace

MixShares SharesOf(const MixRecipe& recipe) {
  // Volumes of both for one and the same mix, in whatever unit.
  const bool by_mass = recipe.by == MixRecipe::By::kMass;
  const double resin = by_mass ? recipe.resin / recipe.resin_kg_m3 : recipe.resin;
  const double hardener = by_mass ? recipe.hardener / recipe.hardener_kg_m3 : recipe.hardener;
  MixShares shares;
  shares.resin_by_volume = resin / (resin + hardener);
  const double resin_kg = shares.resin_by_volume * recipe.resin_kg_m3;
  const double hardener_kg = hardener / (resin + hardener) * recipe.hardener_kg_m3;
  shares.hardener_per_resin_by_mass = hardener_kg / resin_kg;
  shares.density_kg_m3 = resin_kg + hardener_kg;
  return shares;
}

double PotLifeAt(double pot_life_s, double printed_for_c, double at_c) {
  return pot_life_s * std::exp2((printed_for_c - at_c) / 10);
}

BatchPlan PlanBatches(const BatchJobs& jobs) {
  assert(jobs.needs_m3.size() == jobs.durations_s.size());
  BatchPlan plan;
  for (std::size_t i = 0; i < jobs.durations_s.size(); ++i) {
    if (!Fits(jobs.durations_s[i], jobs)) plan.too_long.push_back(i);
  }
  if (!plan.too_long.empty()) return plan;
  const double least = LeastMixed(jobs);
  if (!std::isfinite(least)) return plan;
  plan.batches = BestPartition(jobs, least);
  for (const Batch& batch : *plan.batches) {
    plan.mixed_m3 += batch.mixed_m3;
    plan.wasted_m3 += batch.mixed_m3 - batch.need_m3;
  }
  return plan;
}

}  // namespace withy
