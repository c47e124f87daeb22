// Mixing an adhesive of two parts: what of each, how long it can be worked, and which joints are done from one batch.
//
//   PotLifeAt(2700, 23, 21)   // 3101.5: colder, slower
//   PlanBatches({.needs_m3 = {...}, .durations_s = {...}, .waste = 1.25, .smallest_m3 = 6e-6, .pot_life_s = 3101.5})
//
// Volumes add, so that 5 ml and 5 ml make 10 ml; mass = density x volume (own derivation).
#ifndef WITHY_BONDING_MIXING_H_
#define WITHY_BONDING_MIXING_H_

#include <cstddef>
#include <limits>
#include <optional>
#include <vector>

namespace withy {

// Two parts, resin and hardener, of known densities. All > 0.
struct MixRecipe {
  enum class By { kVolume, kMass };
  By by = By::kVolume;
  double resin = 1, hardener = 1;  // parts
  double resin_kg_m3 = 0, hardener_kg_m3 = 0;
};

struct MixShares {
  double hardener_per_resin_by_mass = 0;
  double resin_by_volume = 0;  // share of the mixed volume, 0..1
  double density_kg_m3 = 0;    // of the mix
};
MixShares SharesOf(const MixRecipe& recipe);

// Pot life at a temperature of the one printed for another: halved by every 10 C more, doubled by every 10 C less (rule of
// thumb of three makers). Heat of a large batch is not modelled.
double PotLifeAt(double pot_life_s, double printed_for_c, double at_c);

// Joints in the order of work, each with what it takes and the time from the first touch to closed. The clock of a batch
// starts when it is mixed: its joints are consecutive and their times add up to no more than the pot life.
struct BatchJobs {
  std::vector<double> needs_m3;     // >= 0
  std::vector<double> durations_s;  // >= 0, as many
  double waste = 1;                 // factor >= 1
  double smallest_m3 = 0;           // the least that can be mixed
  double pot_life_s = std::numeric_limits<double>::infinity();
};

struct Batch {
  std::size_t first = 0, last = 0;  // jobs, from 0
  double need_m3 = 0;
  double mixed_m3 = 0;              // max(waste x need, smallest)
  bool set_by_minimum = false;      // the smallest batch was the larger of the two
  double working_s = 0;
};

struct BatchPlan {
  std::vector<std::size_t> too_long;        // jobs that alone take longer than the pot life
  // The partition that mixes least; of those within one part in 1e9 of it that with fewest batches, then with the longest
  // first batch, then the longest second, and so on. Unset where a job is too long, or a volume is not finite.
  std::optional<std::vector<Batch>> batches;
  double mixed_m3 = 0, wasted_m3 = 0;       // over all batches; wasted = mixed less needed
};

// By dynamic programming; for n jobs and b batches n^2 b steps at most (300 jobs: milliseconds).
BatchPlan PlanBatches(const BatchJobs& jobs);

}  // namespace withy

#endif  // WITHY_BONDING_MIXING_H_
