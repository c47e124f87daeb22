#include "withy/balance/balance.h"

#include <algorithm>
#include <unordered_map>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_join.h"
#include "contributions.h"
#include "plan_counterweights.h"
#include "remedies.h"
#include "weights_in.h"
#include "whole.h"
#include "withy/sections/material.h"
#include "withy/sections/total.h"

namespace withy {
namespace {

// Least squares over those weighed together is quadratic in their number.
constexpr std::size_t kMostWeighedTogether = 200;

// Weighed totals of guides and parts; those of sections alone are settled already.
void FitTotals(const Rod& rod, Collection& all) {
  std::unordered_map<std::string, Counted*> by_id;
  for (Counted& counted : all.things) {
    if (counted.shown.mass_kg) by_id.emplace(counted.shown.id, &counted);
  }
  std::vector<const Counted*> used;
  for (auto weighing = rod.weighings.rbegin(); weighing != rod.weighings.rend(); ++weighing) {
    if (weighing->with_reel || weighing->what.size() > kMostWeighedTogether) continue;
    std::vector<Counted*> things;
    std::vector<Weighed> together;
    bool adjustable = false;
    for (const std::string& id : weighing->what) {
      const auto found = by_id.find(id);
      const bool free = found != by_id.end() && std::find(used.begin(), used.end(), found->second) == used.end() &&
                        std::find(things.begin(), things.end(), found->second) == things.end();
      if (!free) break;
      things.push_back(found->second);
      together.push_back({*found->second->shown.mass_kg, found->second->measured});
      adjustable = adjustable || !found->second->measured;
    }
    if (things.size() != weighing->what.size() || !adjustable) continue;
    used.insert(used.end(), things.begin(), things.end());
    const TotalFit fit = FitTotal(together, all.inputs.Add(weighing->mass.value.kilograms(),
                                                           MassPlusMinus(weighing->mass, all.unstated_mass),
                                                           weighing->mass.at.ToString()));
    if (!fit.gave_way) continue;
    for (std::size_t i = 0; i < things.size(); ++i) {
      if (things[i]->measured) continue;
      things[i]->shown.mass_kg = *things[i]->shown.mass_kg * fit.ratios[i];
      things[i]->shown.mass_from = Source::kComputed;
      if (things[i]->moment_kg_m) things[i]->moment_kg_m = *things[i]->moment_kg_m * fit.ratios[i];
      things[i]->own_inertia_kg_m2 *= fit.ratios[i].value();
    }
  }
}

std::string NameOf(const Counted& counted) { return counted.shown.at.ToString(); }

std::string WhatToDo(const char* verb, std::vector<std::string> names) {
  constexpr std::size_t kShown = 5;
  const std::size_t more = names.size() > kShown ? names.size() - kShown : 0;
  names.resize(names.size() - more);
  std::string text = absl::StrCat(verb, absl::StrJoin(names, ", "));
  if (more > 0) absl::StrAppend(&text, " and ", more, " more");
  return text;
}

// What keeps the sums open: things whose mass, or whose place, is not known.
void SayWhatIsMissing(const Collection& all, const Sums& sums, BalanceAnswers& answers) {
  std::vector<std::string> no_mass, no_place;
  for (const Counted& counted : all.things) {
    if (!counted.shown.mass_kg) {
      no_mass.push_back(NameOf(counted));
    } else if (!counted.moment_kg_m) {
      no_place.push_back(NameOf(counted));
    }
  }
  if (all.things.empty()) no_mass.push_back("the rod");
  if (!no_mass.empty() && !sums.mass_kg) answers.unknowns.push_back({"balance.mass_g", WhatToDo("weigh ", no_mass)});
  if (sums.moment_kg_m || (no_place.empty() && !sums.mass_kg)) return;
  answers.unknowns.push_back({"balance.balance_from_butt_mm", !no_place.empty()
                                                                  ? WhatToDo("settle the place of ", no_place)
                                                                  : WhatToDo("weigh ", no_mass)});
}

void SumUp(const Rod& rod, const WeightsIn& weights, Collection& all, BalanceAnswers& answers, Sums& without) {
  const FixedSums fixed = FixByWholes(rod, weights, all);
  answers.whole = fixed.whole;
  answers.remainder_kg = fixed.remainder_kg;
  answers.rests_on = fixed.rests_on;
  without = fixed.sums;
  CountWeights(weights, all);
  const std::uint32_t on = weights.OnFinishedRod();
  const Sums sums = on == 0 ? without : without + weights.Units(on) + weights.Potting(on);
  SayWhatIsMissing(all, sums, answers);
  answers.mass_kg = sums.mass_kg;
  if (sums.mass_kg && sums.moment_kg_m && sums.mass_kg->value() > 0) {
    answers.balance_m = *sums.moment_kg_m / *sums.mass_kg;
  }
}

// As ordered; else where the hand closes around the reel's foot.
std::optional<Uncertain> HoldOf(const Order& order, Collection& all) {
  if (const Maybe<Length>& hold = order.holding_point) {
    return all.inputs.Add(hold->value.meters(), hold->plus_minus.value_or(0), hold->at.ToString());
  }
  if (!order.reel_foot_m) return std::nullopt;
  all.assumptions.push_back({FieldPath().Field("intent").Field("holding_point_from_butt"),
                             absl::StrFormat("%.0f mm", order.reel_foot_m->value() * 1000),
                             "held at the middle of the reel foot: common practice, no source"});
  return order.reel_foot_m;
}

std::optional<Aim> AimOf(const Order& order, const std::optional<Uncertain>& hold_m) {
  if (order.balance_from_butt) return Aim{Aim::Kind::kOrder, Uncertain(order.balance_from_butt->value.meters())};
  if (!hold_m) return std::nullopt;
  return Aim{order.holding_point ? Aim::Kind::kHold : Aim::Kind::kReelFoot, *hold_m};
}

// What is known of the reel, or what to do about it.
std::optional<Sums> ReelOf(const Order& order, Collection& all, BalanceAnswers& answers) {
  if (!order.reel_mass || !(order.reel_mass->value.kilograms() > 0) || !order.reel_foot_m) {
    answers.unknowns.push_back({"balance.balance_with_reel_mm",
                                !order.reel_mass ? "weigh the reel with its line (intent.reel.mass)"
                                                 : "give the middle of the reel foot (intent.reel.foot_center_from_butt)"});
    return std::nullopt;
  }
  const Uncertain mass = all.inputs.Add(order.reel_mass->value.kilograms(),
                                        MassPlusMinus(*order.reel_mass, all.unstated_mass), order.reel_mass->at.ToString());
  return Sums{mass, mass * *order.reel_foot_m};
}

void AddReel(const Sums& reel, BalanceAnswers& answers) {
  const Uncertain moment = *answers.mass_kg * *answers.balance_m + *reel.moment_kg_m;
  answers.mass_with_reel_kg = *answers.mass_kg + *reel.mass_kg;
  answers.balance_with_reel_m = moment / *answers.mass_with_reel_kg;
  if (!answers.hold_m) {
    answers.unknowns.push_back({"balance.moment_about_hold_n_m", "give the holding point (intent.holding_point_from_butt)"});
    return;
  }
  answers.moment_about_hold_n_m = (moment - *answers.mass_with_reel_kg * *answers.hold_m) * Uncertain(kStandardGravity);
}

void FillInertia(const std::optional<Sums>& reel, const Collection& all, BalanceAnswers& answers) {
  if (!answers.hold_m || !answers.balance_m) return;
  const double hold = answers.hold_m->value();
  double sum = 0;
  for (const Counted& counted : all.things) {
    if (!counted.shown.mass_kg || !counted.moment_kg_m) return;  // the whole was weighed, this was not
    const double arm = counted.moment_kg_m->value() / std::max(counted.shown.mass_kg->value(), 1e-12) - hold;
    sum += counted.own_inertia_kg_m2 + counted.shown.mass_kg->value() * arm * arm;
  }
  answers.inertia_about_hold_kg_m2 = sum;
  if (!reel) return;
  const double arm = reel->moment_kg_m->value() / reel->mass_kg->value() - hold;
  answers.swing_inertia_kg_m2 = sum + reel->mass_kg->value() * arm * arm;
}

void ListAssumptions(Collection& all, BalanceAnswers& answers) {
  answers.assumptions = std::move(all.assumptions);
  // Once the whole was weighed what is not counted is in the sum.
  if (answers.whole < 0) {
    answers.assumptions.insert(answers.assumptions.end(), all.uncounted.begin(), all.uncounted.end());
  }
  if (all.unstated_mass) answers.assumptions.push_back(UnstatedMassAssumption());
}

}  // namespace

const char* AimWord(Aim::Kind kind) {
  switch (kind) {
    case Aim::Kind::kOrder:
      return "the order's balance point";
    case Aim::Kind::kHold:
      return "the holding point";
    case Aim::Kind::kReelFoot:
      break;
  }
  return "the reel foot";
}

BalanceAnswers ComputeBalance(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& fit,
                              const BondingAnswers& bonding, const WrapsAnswers& wraps, Inputs& inputs) {
  BalanceAnswers answers;
  Collection all{inputs, {}, false, {}, {}};
  CollectSections(rod, sections, all);
  CollectHandle(rod, fit, all);
  const Part* host = PartForWeights(rod);
  CountOtherWeights(rod, host, all);
  CollectAdhesives(bonding, all);
  CollectGuides(rod, all);
  CollectWraps(rod, wraps, all);
  FitTotals(rod, all);
  answers.hold_m = HoldOf(rod.order, all);
  answers.aim = AimOf(rod.order, answers.hold_m);
  const WeightsIn weights = WeightsOf(rod, host, all);
  Sums without;
  SumUp(rod, weights, all, answers, without);
  std::optional<Sums> reel;
  if (answers.mass_kg && answers.balance_m) reel = ReelOf(rod.order, all, answers);
  if (reel) AddReel(*reel, answers);
  FillInertia(reel, all, answers);
  for (Counted& counted : all.things) answers.parts.push_back(counted.shown);
  const std::optional<Sums> others = reel ? std::optional(without + *reel) : std::nullopt;
  PlanCounterweights(rod, weights, others, answers);
  FindRemedies(rod, reel, answers);
  ListAssumptions(all, answers);
  return answers;
}

}  // namespace withy
