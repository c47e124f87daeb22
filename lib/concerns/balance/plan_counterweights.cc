#include "plan_counterweights.h"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace withy {
namespace {

const Uncertain kGravity(kStandardGravity);

// What is on the rod whatever the plan says, about the aim.
struct Base {
  Sums others;  // all but counterweights, with the reel
  Uncertain aim_m;
  int least = 0;  // potted already

  Uncertain MomentOf(const Sums& sums) const { return (*sums.moment_kg_m - *sums.mass_kg * aim_m) * kGravity; }
  // Its nominal moment lowered or raised by `by` N m.
  MassProperties Load(double by) const {
    const double moment = MomentOf(others).value() + by;
    const double mass = others.mass_kg->value();
    return PointMass(mass, aim_m.value() + moment / (mass * kStandardGravity), 0);
  }
};

// The count when the moment is what it might be instead; one below what is potted where it is butt-heavy then.
int CountAt(const CounterweightStack& stack, const Base& base, double by) {
  return CountFor(stack, base.Load(by), base.aim_m.value(), base.least).n.value_or(base.least - 1);
}

Confidence ConfidenceOf(const CounterweightStack& stack, const Base& base, int count, double plus_minus) {
  const int least = CountAt(stack, base, -plus_minus), most = CountAt(stack, base, plus_minus);
  const int off = std::max(std::abs(least - count), std::abs(most - count));
  return off == 0 ? Confidence::kSure : off == 1 ? Confidence::kOneMoreOrLess : Confidence::kCannotTell;
}

void FillCost(const WeightsIn& weights, double hold_m, int count, CounterweightPlan& plan) {
  MassProperties added = weights.stack->Units(count);
  added += weights.stack->Potting(count);
  plan.added_kg = added.mass_kg;
  plan.added_inertia_kg_m2 = added.InertiaAbout(hold_m);
}

void FillMoments(const Rod& rod, const WeightsIn& weights, const Base& base, int count, CounterweightPlan& plan) {
  const auto n = static_cast<std::uint32_t>(count);
  const Sums taped_in = base.others + weights.Units(n);
  const Sums potted = taped_in + weights.Potting(n);
  plan.moment_before_potting_n_m = base.MomentOf(taped_in);
  plan.moment_after_n_m = base.MomentOf(potted);
  plan.balance_after_m = potted.moment_kg_m->value() / potted.mass_kg->value();
  const double arm = rod.tip_ring_m ? rod.tip_ring_m->value() - base.aim_m.value() : 0;
  if (arm > 0) plan.stop_short_at_tip_kg = std::max(0.0, plan.moment_before_potting_n_m->value() / kStandardGravity / arm);
}

void FillCount(const Rod& rod, const WeightsIn& weights, const Base& base, double hold_m, CounterweightPlan& plan) {
  const CounterweightCount found = CountFor(*weights.stack, base.Load(0), base.aim_m.value(), base.least);
  plan.status = found.status;
  plan.count = found.n;
  plan.count_if_potting_ignored = found.n_if_potting_ignored;
  plan.moment_with_one_more_n_m = found.moment_with_one_more_n_m;
  if (!plan.count && weights.potted) plan.count = base.least;  // stays, however the rod then balances
  const int count = plan.count.value_or(0);
  FillMoments(rod, weights, base, count, plan);
  if (plan.count) FillCost(weights, hold_m, count, plan);
  plan.confidence = ConfidenceOf(*weights.stack, base, found.n.value_or(base.least - 1), plan.moment_after_n_m->plus_minus());
  if (plan.count) return;
  plan.moment_before_potting_n_m.reset();
  plan.moment_after_n_m.reset();
  plan.balance_after_m.reset();
  plan.stop_short_at_tip_kg.reset();
}

void SayWhatIsOpen(const WeightsIn& weights, const CounterweightPlan& plan, BalanceAnswers& answers) {
  constexpr const char* kCount = "balance.counterweights.count";
  if (!weights.stack) {
    answers.unknowns.push_back({kCount, weights.measure});
  } else if (!plan.moment_without_n_m) {
    // The reel, the hold and what is not weighed are spoken of already.
    const bool told = !answers.unknowns.empty() && answers.unknowns.back().figure.rfind("balance.", 0) == 0;
    answers.unknowns.push_back({kCount, told ? answers.unknowns.back().measure : "weigh the parts and the reel"});
  }
}

}  // namespace

void PlanCounterweights(const Rod& rod, const WeightsIn& weights, const std::optional<Sums>& others,
                        BalanceAnswers& answers) {
  if (!weights.part) return;
  CounterweightPlan plan;
  plan.part = weights.part->id;
  plan.at = weights.at;
  plan.planned = weights.planned;
  plan.potted = weights.potted;
  plan.unit_kg = weights.unit_kg;
  plan.stack = weights.stack;
  if (weights.part->weights) {
    plan.material = weights.part->weights->material;
    plan.potted_first = weights.part->weights->potted_first;
  }
  // With a reel there is a hold, and so an aim.
  const bool moment_known = answers.hold_m && answers.aim && others && others->mass_kg && others->moment_kg_m;
  if (moment_known) {
    Base base{*others, answers.aim->at_m, 0};
    if (plan.potted) base.least = static_cast<int>(std::min<std::uint32_t>(*plan.planned, CounterweightStack::kMostUnits));
    plan.moment_without_n_m = base.MomentOf(base.others);
    if (plan.stack) FillCount(rod, weights, base, answers.hold_m->value(), plan);
  }
  SayWhatIsOpen(weights, plan, answers);
  answers.counterweights = std::move(plan);
}

}  // namespace withy
