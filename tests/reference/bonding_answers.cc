#include "reference/bonding_answers.h"

#include <optional>
#include <string_view>
#include <vector>

#include "reference/fields.h"
#include "withy/bonding/joint_volume.h"
#include "withy/bonding/mixing.h"

namespace withy::reference {
namespace {

std::vector<double> FilletsOf(const Value& in) {
  std::vector<double> volumes;
  for (const Value& one : in["fillets"].GetArray()) {
    const Fillet fillet{Get(one, "diameter_m"), Get(one, "radial_leg_m"), Get(one, "axial_leg_m")};
    const bool inner = std::string_view(one["kind"].GetString()) == "inner";
    volumes.push_back(inner ? FilletInside(fillet) : FilletOutside(fillet));
  }
  return volumes;
}

Value JointOf(const Value& in, Allocator& allocator) {
  BondGap gap{.bore = ProfileOf(in["bore_knots_m"]),
              .inner = ProfileOf(in["blank_knots_m"]),
              .from_m = Get(in, "bond_from_z_m"),
              .to_m = Get(in, "bond_to_z_m"),
              .rings = {}};
  for (const Value& ring : in["rings"].GetArray()) {
    gap.rings.push_back({Get(ring, "z_from_m"), Get(ring, "width_m"), Get(ring, "diameter_m")});
  }
  const BondVolume volume = VolumeOf(gap);
  Value fits(rapidjson::kArrayType);
  std::vector<double> clearances, displaced;
  for (const RingInBond& ring : volume.rings) {
    fits.PushBack(ring.fits, allocator);
    clearances.push_back(ring.clearance_m);
    displaced.push_back(ring.volume_m3);
  }
  const std::vector<double> fillets = FilletsOf(in);
  std::optional<double> total = volume.net_m3;
  for (double fillet : fillets) total = total ? std::optional(*total + fillet) : std::nullopt;
  return Fields(allocator)
      .Put("min_radial_gap_m", volume.gap_m)
      .Put("gap_positive", volume.gross_m3.has_value())
      .Put("ring_fits", std::move(fits))
      .Put("ring_clearance_m", clearances)
      .Put("gross_volume_m3", volume.gross_m3)
      .Put("ring_volume_m3", displaced)
      .Put("net_volume_m3", volume.net_m3)
      .Put("fillet_volume_m3", fillets)
      .Put("total_volume_m3", total)
      .Take();
}

Value BatchesOf(const std::vector<Batch>& batches, const MixShares& shares, const MixRecipe& recipe,
                Allocator& allocator) {
  Value list(rapidjson::kArrayType);
  for (const Batch& batch : batches) {
    const double resin_m3 = batch.mixed_m3 * shares.resin_by_volume;
    list.PushBack(Fields(allocator)
                      .Put("first_job", static_cast<int>(batch.first))
                      .Put("last_job", static_cast<int>(batch.last))
                      .Put("need_volume_m3", batch.need_m3)
                      .Put("mixed_volume_m3", batch.mixed_m3)
                      .Put("set_by_minimum", batch.set_by_minimum)
                      .Put("mass_a_kg", resin_m3 * recipe.resin_kg_m3)
                      .Put("mass_b_kg", resin_m3 * recipe.resin_kg_m3 * shares.hardener_per_resin_by_mass)
                      .Put("working_time_s", batch.working_s)
                      .Take(),
                  allocator);
  }
  return list;
}

Value MixOf(const Value& in, Allocator& allocator) {
  const bool by_mass = std::string_view(in["ratio_kind"].GetString()) == "mass";
  const MixRecipe recipe{.by = by_mass ? MixRecipe::By::kMass : MixRecipe::By::kVolume,
                         .resin = Get(in, "part_a"),
                         .hardener = Get(in, "part_b"),
                         .resin_kg_m3 = Get(in, "density_a_kg_m3"),
                         .hardener_kg_m3 = Get(in, "density_b_kg_m3")};
  BatchJobs jobs{.needs_m3 = {},
                 .durations_s = {},
                 .waste = Get(in, "waste_factor"),
                 .smallest_m3 = Get(in, "min_batch_volume_m3"),
                 .pot_life_s = PotLifeAt(Get(in, "pot_life_ref_s"), Get(in, "T_ref_degC"), Get(in, "T_degC"))};
  for (const Value& job : in["jobs"].GetArray()) {
    jobs.needs_m3.push_back(Get(job, "need_volume_m3"));
    jobs.durations_s.push_back(Get(job, "duration_s"));
  }
  const MixShares shares = SharesOf(recipe);
  const BatchPlan plan = PlanBatches(jobs);
  const bool feasible = plan.batches.has_value();
  const std::vector<double> too_long(plan.too_long.begin(), plan.too_long.end());
  return Fields(allocator)
      .Put("pot_life_s", jobs.pot_life_s)
      .Put("mass_b_per_mass_a", shares.hardener_per_resin_by_mass)
      .Put("volume_fraction_a", shares.resin_by_volume)
      .Put("mixed_density_kg_m3", shares.density_kg_m3)
      .Put("feasible", feasible)
      .Put("jobs_longer_than_pot_life", too_long)
      .Put("n_batches", feasible ? std::optional<int>(static_cast<int>(plan.batches->size())) : std::nullopt)
      .Put("batches", feasible ? BatchesOf(*plan.batches, shares, recipe, allocator) : Value())
      .Put("total_mixed_volume_m3", feasible ? std::optional(plan.mixed_m3) : std::nullopt)
      .Put("wasted_volume_m3", feasible ? std::optional(plan.wasted_m3) : std::nullopt)
      .Take();
}

}  // namespace

Value AnswerBonding(const Value& entry, Allocator& allocator) {
  const Value& in = entry["input"];
  return Fields(allocator).Put("joint", JointOf(in["joint"], allocator)).Put("mix", MixOf(in["mix"], allocator)).Take();
}

}  // namespace withy::reference
