#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "adhesive.h"
#include "joints.h"
#include "withy/bonding/mixing.h"

namespace withy {
namespace {

// A long day's work; more joints than this go into another plan.
constexpr std::size_t kMostTogether = 300;

// Joints that are mixed for together: of one adhesive, in one session.
using Group = std::vector<int>;

std::vector<Group> GroupsOf(const Rod& rod, const std::vector<GluedJoint>& joints) {
  std::vector<Group> groups;
  std::map<std::pair<int, int>, std::size_t> open;  // (session, adhesive)
  for (std::size_t i = 0; i < joints.size(); ++i) {
    const GluedJoint& joint = joints[i];
    if (joint.done || !joint.volume_m3 || joint.adhesive_index < 0) continue;
    if (!IsMixed(rod.adhesives[joint.adhesive_index])) continue;
    const auto key = std::make_pair(joint.session, joint.adhesive_index);
    const auto found = open.find(key);
    if (found == open.end() || groups[found->second].size() >= kMostTogether) {
      open[key] = groups.size();
      groups.emplace_back();
    }
    groups[open[key]].push_back(static_cast<int>(i));
  }
  return groups;
}

void FillParts(const Adhesive& adhesive, MixedBatch& batch) {
  if (adhesive.by_volume) {
    const double all = adhesive.by_volume->resin + adhesive.by_volume->hardener;
    batch.resin_m3 = batch.mixed_m3 * adhesive.by_volume->resin / all;
    batch.hardener_m3 = batch.mixed_m3 * adhesive.by_volume->hardener / all;
  }
  const std::optional<double> density = DensityOf(adhesive);
  if (!density) return;
  batch.mixed_kg = batch.mixed_m3 * *density;
  if (!adhesive.by_mass) return;
  const double all = adhesive.by_mass->resin + adhesive.by_mass->hardener;
  batch.resin_kg = *batch.mixed_kg * adhesive.by_mass->resin / all;
  batch.hardener_kg = *batch.mixed_kg * adhesive.by_mass->hardener / all;
}

BatchJobs JobsOf(const Rod& rod, const std::vector<GluedJoint>& joints, const Group& group) {
  BatchJobs jobs;
  for (const int i : group) {
    jobs.needs_m3.push_back(std::max(0.0, *joints[i].volume_m3));
    jobs.durations_s.push_back(joints[i].working_s);
  }
  jobs.waste = WasteOf(rod.shop);
  jobs.smallest_m3 = SmallestBatchOf(rod.shop);
  return jobs;
}

void PlanGroup(const Rod& rod, const Group& group, BondingAnswers& answers) {
  const int index = answers.joints[group.front()].adhesive_index;
  const Adhesive& adhesive = rod.adhesives[index];
  const double at_c = TemperatureOf(rod.shop);
  const std::optional<double> pot_life = PotLifeOf(adhesive, rod.shop);
  BatchJobs jobs = JobsOf(rod, answers.joints, group);
  if (pot_life) jobs.pot_life_s = *pot_life;
  const BatchPlan plan = PlanBatches(jobs);
  if (!plan.batches) {
    answers.unknowns.push_back({"bonding.batches", absl::StrCat("take an adhesive that stays open longer than ",
                                                                adhesive.id, ", or work faster (shop.gluing_time)")});
    return;
  }
  for (const Batch& from : *plan.batches) {
    MixedBatch batch;
    batch.adhesive = adhesive.id;
    batch.adhesive_index = index;
    batch.joints.assign(group.begin() + static_cast<std::ptrdiff_t>(from.first),
                        group.begin() + static_cast<std::ptrdiff_t>(from.last) + 1);
    batch.need_m3 = from.need_m3;
    batch.mixed_m3 = from.mixed_m3;
    batch.set_by_minimum = from.set_by_minimum;
    batch.working_s = from.working_s;
    batch.at_c = at_c;
    batch.pot_life_s = pot_life;
    batch.set_s = TimeAt(adhesive.set_s, adhesive.cure_at_c, at_c);
    FillParts(adhesive, batch);
    answers.batches.push_back(std::move(batch));
  }
}

void AddUp(BondingAnswers& answers) {
  for (const MixedBatch& batch : answers.batches) {
    auto use = std::find_if(answers.totals.begin(), answers.totals.end(),
                            [&](const AdhesiveUse& one) { return one.adhesive == batch.adhesive; });
    if (use == answers.totals.end()) {
      const auto nothing = batch.mixed_kg ? std::optional(0.0) : std::nullopt;
      use = answers.totals.insert(use, AdhesiveUse{batch.adhesive, 0, nothing});
    }
    use->mixed_m3 += batch.mixed_m3;
    if (use->mixed_kg && batch.mixed_kg) *use->mixed_kg += *batch.mixed_kg;
  }
}

// Each adhesive that is mixed, once.
void TellOfAdhesives(const Rod& rod, BondingAnswers& answers) {
  std::vector<bool> told(rod.adhesives.size(), false);
  for (const MixedBatch& batch : answers.batches) {
    if (told[batch.adhesive_index]) continue;
    told[batch.adhesive_index] = true;
    const Adhesive& adhesive = rod.adhesives[batch.adhesive_index];
    if (!batch.pot_life_s) {
      answers.unknowns.push_back({"bonding.batches.pot_life_minutes",
                                  absl::StrCat("enter the pot life of ", adhesive.id, " from its data sheet")});
    } else if (!adhesive.pot_life_at_c) {
      answers.assumptions.push_back({adhesive.at.Field("mix").Field("pot_life_at"), "the temperature of the shop",
                                     "the pot life is taken as printed"});
    }
    if (!batch.resin_m3 && !batch.resin_kg) {
      answers.unknowns.push_back({"bonding.batches.resin_ml",
                                  absl::StrCat("enter the mixing ratio of ", adhesive.id, " from its data sheet")});
    }
  }
}

void TellOfShop(const Shop& shop, BondingAnswers& answers) {
  const FieldPath at = FieldPath().Field("shop");
  const char* kPractice = "common practice, no source";
  const auto assume = [&](const char* field, const char* used, const char* why) {
    answers.assumptions.push_back({at.Field(field), used, why});
  };
  if (answers.batches.empty()) return;
  if (!shop.temperature_c) assume("temperature", "21 C", kPractice);
  if (!shop.gluing_time_s) assume("gluing_time", "10 minutes", kPractice);
  if (!shop.smallest_batch_m3) assume("smallest_batch", "6 ml", "3 ml of each part: common practice, no source");
}

}  // namespace

void PlanMixing(const Rod& rod, BondingAnswers& answers) {
  std::vector<Group> groups = GroupsOf(rod, answers.joints);
  std::sort(groups.begin(), groups.end());  // by the first joint
  for (const Group& group : groups) PlanGroup(rod, group, answers);
  AddUp(answers);
  TellOfAdhesives(rod, answers);
  TellOfShop(rod.shop, answers);
}

}  // namespace withy
