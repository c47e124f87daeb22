// Parts of a mix against published ratios, batches against all partitions there are.
#include "withy/bonding/mixing.h"

#include <chrono>
#include <cmath>
#include <numeric>
#include <random>

#include "gtest/gtest.h"

namespace withy {
namespace {

// Equal volumes: 5 ml and 5 ml make 10 ml (common practice); with 1.15 and 1.00 g/cm3 they weigh 5.75 and 5 g.
TEST(MixShares, EqualVolumes) {
  const MixShares shares =
      SharesOf({.by = MixRecipe::By::kVolume, .resin = 1, .hardener = 1, .resin_kg_m3 = 1150, .hardener_kg_m3 = 1000});
  EXPECT_DOUBLE_EQ(shares.resin_by_volume * 10, 5);
  EXPECT_NEAR(shares.hardener_per_resin_by_mass, 5 / 5.75, 1e-12);
  EXPECT_NEAR(shares.density_kg_m3, 1075, 1e-9);
}

// Two data sheets that print both ratios: 2:1 by volume = 100:47 by mass (densities 1 to 0.940), 3:1 = 3.5:1 (0.857).
TEST(MixShares, RatiosOfTwoDataSheets) {
  const auto by_volume = [](double resin, double density) {
    return SharesOf({.by = MixRecipe::By::kVolume,
                     .resin = resin,
                     .hardener = 1,
                     .resin_kg_m3 = 1000,
                     .hardener_kg_m3 = 1000 * density})
        .hardener_per_resin_by_mass;
  };
  EXPECT_NEAR(by_volume(2, 0.940), 0.47, 1e-12);
  EXPECT_NEAR(by_volume(3, 0.857), 1 / 3.5, 1e-4);
}

// 100 g of 1.25 is 80 ml, 50 g of 1.00 is 50 ml: 80 of 130 by volume.
TEST(MixShares, ByMass) {
  const MixShares shares =
      SharesOf({.by = MixRecipe::By::kMass, .resin = 100, .hardener = 50, .resin_kg_m3 = 1250, .hardener_kg_m3 = 1000});
  EXPECT_NEAR(shares.resin_by_volume, 80.0 / 130, 1e-12);
  EXPECT_NEAR(shares.density_kg_m3, 150000.0 / 130, 1e-9);
  EXPECT_NEAR(shares.hardener_per_resin_by_mass, 0.5, 1e-12);
}

// Printed for 25 C: factors 2.0 at 15, 1.414 at 20, 0.707 at 30 (rule of thumb, published).
TEST(PotLife, HalvesWithEveryTenDegrees) {
  EXPECT_DOUBLE_EQ(PotLifeAt(1800, 25, 15), 3600);
  EXPECT_NEAR(PotLifeAt(1800, 25, 20), 1800 * 1.41421, 0.01);
  EXPECT_NEAR(PotLifeAt(1800, 25, 30), 1800 * 0.70711, 0.01);
}

TEST(PlanBatches, NothingToDo) {
  const BatchPlan plan = PlanBatches({});
  ASSERT_TRUE(plan.batches);
  EXPECT_TRUE(plan.batches->empty());
}

TEST(PlanBatches, AJobThatIsTooLong) {
  const BatchPlan plan =
      PlanBatches({.needs_m3 = {2e-6, 1e-6, 1e-6}, .durations_s = {150, 200, 100}, .pot_life_s = 150});
  EXPECT_EQ(plan.too_long, std::vector<std::size_t>{1});
  EXPECT_FALSE(plan.batches);
}

// Three jobs of 2 ml that fit one after the other: one batch of 6 ml; with 1.25 of waste 7.5 ml. A minimum of 10 ml
// decides.
TEST(PlanBatches, TheSmallestBatch) {
  BatchJobs jobs{.needs_m3 = {2e-6, 2e-6, 2e-6}, .durations_s = {600, 600, 600}, .waste = 1.25};
  BatchPlan plan = PlanBatches(jobs);
  ASSERT_EQ(plan.batches->size(), 1u);
  EXPECT_NEAR(plan.mixed_m3, 7.5e-6, 1e-18);
  EXPECT_FALSE((*plan.batches)[0].set_by_minimum);
  jobs.smallest_m3 = 7.5e-6;
  EXPECT_FALSE((*PlanBatches(jobs).batches)[0].set_by_minimum) << "a tie";
  jobs.smallest_m3 = 10e-6;
  plan = PlanBatches(jobs);
  EXPECT_TRUE((*plan.batches)[0].set_by_minimum);
  EXPECT_NEAR(plan.wasted_m3, 4e-6, 1e-18);
}

// Every partition into consecutive batches, by the bits of a mask: a bit ends a batch.
std::vector<std::size_t> BestByTryingAll(const BatchJobs& jobs, double* best_mixed) {
  const std::size_t n = jobs.needs_m3.size();
  struct Candidate {
    double mixed;
    std::vector<std::size_t> lengths;
  };
  std::vector<Candidate> all;
  for (unsigned mask = 0; mask < 1u << (n - 1); ++mask) {
    Candidate candidate{0, {}};
    double need = 0, time = 0;
    std::size_t length = 0;
    bool fits = true;
    for (std::size_t i = 0; i < n; ++i) {
      need += jobs.needs_m3[i];
      time += jobs.durations_s[i];
      ++length;
      fits = fits && time <= jobs.pot_life_s * (1 + 1e-9);
      if (i + 1 < n && !(mask >> i & 1)) continue;
      candidate.mixed += std::max(jobs.waste * need, jobs.smallest_m3);
      candidate.lengths.push_back(length);
      need = time = 0;
      length = 0;
    }
    if (fits) all.push_back(candidate);
  }
  double least = all.at(0).mixed;
  for (const Candidate& one : all) least = std::min(least, one.mixed);
  const Candidate* best = nullptr;
  for (const Candidate& one : all) {
    if (one.mixed > least * (1 + 1e-9)) continue;
    const bool better = best == nullptr || one.lengths.size() < best->lengths.size() ||
                        (one.lengths.size() == best->lengths.size() && one.lengths > best->lengths);
    if (better) best = &one;
  }
  *best_mixed = least;
  return best->lengths;
}

// Whole numbers of half millilitres and of minutes, so that there are many ties.
TEST(PlanBatches, AgainstAllPartitions) {
  std::mt19937 engine(3);
  const auto whole = [&](int a, int b) { return std::uniform_int_distribution<int>(a, b)(engine); };
  for (int i = 0; i < 3000; ++i) {
    BatchJobs jobs;
    const int n = whole(1, 10);
    for (int k = 0; k < n; ++k) {
      jobs.needs_m3.push_back(whole(0, 6) * 0.5e-6);
      jobs.durations_s.push_back(60.0 * whole(1, 10));
    }
    jobs.waste = 1 + whole(0, 2) * 0.25;
    jobs.smallest_m3 = whole(0, 8) * 0.5e-6;
    jobs.pot_life_s = 60.0 * whole(10, 40);
    double mixed = 0;
    const std::vector<std::size_t> best = BestByTryingAll(jobs, &mixed);
    const BatchPlan plan = PlanBatches(jobs);
    ASSERT_TRUE(plan.batches);
    std::vector<std::size_t> lengths;
    for (const Batch& batch : *plan.batches) lengths.push_back(batch.last - batch.first + 1);
    ASSERT_EQ(lengths, best) << i;
    EXPECT_NEAR(plan.mixed_m3, mixed, 1e-15) << i;
    const double need = std::accumulate(jobs.needs_m3.begin(), jobs.needs_m3.end(), 0.0);
    EXPECT_NEAR(plan.wasted_m3, mixed - need, 1e-15) << i;
  }
}

// Six jobs fit a batch; 300 jobs of 0.2 ml and 10 minutes, an hour of pot life: 50 batches at least.
TEST(PlanBatches, HundredsOfJobs) {
  BatchJobs jobs{.needs_m3 = std::vector<double>(300, 0.2e-6),
                 .durations_s = std::vector<double>(300, 600),
                 .waste = 1.25,
                 .smallest_m3 = 3e-6,
                 .pot_life_s = 3600};
  const auto before = std::chrono::steady_clock::now();
  const BatchPlan plan = PlanBatches(jobs);
  jobs.pot_life_s = std::numeric_limits<double>::infinity();
  const BatchPlan all_at_once = PlanBatches(jobs);
  const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - before;
  EXPECT_EQ(plan.batches->size(), 50u);
  EXPECT_EQ(all_at_once.batches->size(), 1u);
  EXPECT_NEAR(all_at_once.mixed_m3, 75e-6, 1e-15);
  EXPECT_LT(taken.count(), 2.0);
}

}  // namespace
}  // namespace withy
