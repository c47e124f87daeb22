#include "weights_in.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "withy/rod/weights_cover.h"
#include "withy/sections/material.h"

namespace withy {
namespace {

// A quarter of an ounce, of a unit that is not described (common practice, no source).
constexpr Mass kUnit = Mass::Ounces(0.25);
// Cured epoxy, 1100 to 1200 (tables of matrix materials).
constexpr double kPottingKgM3 = 1150;
// How exactly potting is filled in, of its mass (common practice, no source).
constexpr double kPottingSpread = 0.10;
// More than goes into any butt: a length is wrong, and nothing is worked out.
constexpr int kMostThatFit = 10'000;

template <typename T>
std::optional<T> Combined(const std::optional<T>& a, const std::optional<T>& b, double sign) {
  if (!a || !b) return std::nullopt;
  return sign > 0 ? *a + *b : *a - *b;
}

Known<Mass> UnitOf(const Rod& rod, const WeightsIn& weights, Collection& all) {
  const auto usable = [](const Maybe<Mass>& mass) { return mass && mass->value.kilograms() > 0; };
  if (weights.part->weights && usable(weights.part->weights->unit_mass)) return *weights.part->weights->unit_mass;
  if (usable(rod.shop.counterweight_unit)) return *rod.shop.counterweight_unit;
  all.assumptions.push_back({weights.at.Field("unit_mass"), "0.25 oz (7.09 g)", "common practice, no source"});
  return {kUnit, 0.0, Source::kAssumed, weights.at.Field("unit_mass")};
}

double CoverOf(const WeightsIn& weights, Collection& all) {
  const auto& from = weights.part->weights;
  if (from && TellsCover(*from)) return from->cover->value.meters();
  all.assumptions.push_back({weights.at.Field("cover"), "3 mm of potting over the foremost counterweight",
                             "common practice, no source"});
  return kAssumedCover.meters();
}

double PottingDensity(const Rod& rod, const WeightsIn& weights, Collection& all) {
  const std::string& bond = weights.part->weights ? weights.part->weights->bond : weights.part->bond;
  for (const Adhesive& adhesive : rod.adhesives) {
    const bool dense = adhesive.density_kg_m3 && adhesive.density_kg_m3->value > 0;
    if (!bond.empty() && adhesive.id == bond && dense) return adhesive.density_kg_m3->value;
  }
  all.assumptions.push_back({weights.at.Field("bond"), absl::StrCat(kPottingKgM3, " kg/m3"),
                             "density of what the counterweights are potted in: epoxy, matrix tables"});
  return kPottingKgM3;
}

// What keeps the room and the number that fits open, the first thing first; empty = nothing.
std::string WhatTellsTheRoom(const Rod& rod, const Part& part) {
  if (!part.cavity) return absl::StrCat("describe the cavity of '", part.id, "': where it begins, how long and how wide");
  if (!LengthOf(part.cavity->diameter)) return absl::StrCat("measure how wide the cavity of '", part.id, "' is");
  if (!part.weights || !LengthOf(part.weights->unit_length) || !LengthOf(part.weights->unit_diameter)) {
    return "measure length and diameter of one counterweight";
  }
  if (!part.start.from_butt_m) return absl::StrCat("settle the place of '", part.id, "'");
  if (!rod.blank_butt_m) return rod.rest_measure.empty() ? "dry fit the handle" : rod.rest_measure;
  return "";
}

void FillStack(const Rod& rod, Collection& all, WeightsIn& weights) {
  const Part& part = *weights.part;
  weights.measure = WhatTellsTheRoom(rod, part);
  if (!weights.measure.empty()) return;
  const double own_at = part.cavity->own_at ? part.cavity->own_at->value.meters() : 0;
  const double start = part.start.from_butt_m->value() + own_at;
  double end = rod.blank_butt_m->value();
  if (const auto length = LengthOf(part.cavity->length)) end = std::min(end, start + *length);
  weights.moved_m = *part.start.from_butt_m - Uncertain(part.start.from_butt_m->value());
  weights.stack = CounterweightStack({weights.unit_kg.value(), *LengthOf(part.weights->unit_diameter), *LengthOf(part.weights->unit_length)},
                        {.start_m = start,
                         .length_m = end - start,
                         .diameter_m = *LengthOf(part.cavity->diameter),
                         .cover_m = CoverOf(weights, all),
                         .potting_kg_m3 = PottingDensity(rod, weights, all)});
  all.assumptions.push_back({weights.at.Field("bond"), absl::StrFormat("within %.0f %%", kPottingSpread * 100),
                             "how exactly potting is filled in, of its mass: common practice, no source"});
  if (weights.stack->fit() <= kMostThatFit) return;
  weights.stack.reset();
  weights.measure = "look at length and diameter of one counterweight: too many would fit";
}

// Of a nominal load whose mass is `mass`, moved by `moved`.
Sums SumsOf(const MassProperties& load, const Uncertain& mass, const Uncertain& moved) {
  if (!(load.mass_kg > 0)) return {Uncertain(0), Uncertain(0)};
  return {mass, mass * (Uncertain(load.Balance()) + moved)};
}

void Insert(const WeightsIn& weights, const Sums& sums, const MassProperties& load, FieldPath at, Collection& all) {
  Counted counted;
  counted.needs = {weights.part->id};
  counted.potted_since = weights.potted_since;
  counted.shown.id = weights.part->id;
  counted.shown.at = std::move(at);
  counted.shown.mass_from = Source::kComputed;
  counted.shown.mass_kg = sums.mass_kg;
  counted.moment_kg_m = sums.moment_kg_m;
  if (sums.mass_kg && sums.moment_kg_m && sums.mass_kg->value() > 0) {
    counted.shown.center_m = *sums.moment_kg_m / *sums.mass_kg;
  }
  if (load.mass_kg > 0) counted.own_inertia_kg_m2 = load.InertiaAtBalance();
  const auto after = std::find_if(all.things.rbegin(), all.things.rend(), [&](const Counted& thing) {
    return thing.shown.at.IsWithin(weights.part->at);
  });
  all.things.insert(after.base(), std::move(counted));
}

}  // namespace

Sums operator+(const Sums& a, const Sums& b) {
  return {Combined(a.mass_kg, b.mass_kg, 1), Combined(a.moment_kg_m, b.moment_kg_m, 1)};
}
Sums operator-(const Sums& a, const Sums& b) {
  return {Combined(a.mass_kg, b.mass_kg, -1), Combined(a.moment_kg_m, b.moment_kg_m, -1)};
}

Sums WeightsIn::Units(std::uint32_t n) const {
  if (n == 0) return {Uncertain(0), Uncertain(0)};
  if (!part || n > CounterweightStack::kMostUnits) return {};
  const Uncertain mass = unit_kg * Uncertain(n);
  if (stack) return SumsOf(stack->Units(static_cast<int>(n)), mass, moved_m);
  if (!part->cavity || !part->start.from_butt_m) return {mass, std::nullopt};
  const double own_at = part->cavity->own_at ? part->cavity->own_at->value.meters() : 0;
  return {mass, mass * (*part->start.from_butt_m + Uncertain(own_at + LengthOf(part->cavity->length).value_or(0) / 2))};
}

Sums WeightsIn::Potting(std::uint32_t n) const {
  if (n == 0 || !stack || n > CounterweightStack::kMostUnits) return {Uncertain(0), Uncertain(0)};
  const MassProperties load = stack->Potting(static_cast<int>(n));
  return SumsOf(load, Uncertain(load.mass_kg) * potting, moved_m);
}

const Part* PartForWeights(const Rod& rod) {
  const Part *weights = nullptr, *cavity = nullptr;
  for (const Part& part : rod.handle.parts) {
    if (part.weights && part.cavity) return &part;
    if (part.weights && !weights) weights = &part;
    if (part.cavity && !cavity) cavity = &part;
  }
  return weights ? weights : cavity;
}

WeightsIn WeightsOf(const Rod& rod, const Part* of, Collection& all) {
  WeightsIn weights;
  if (!of) return weights;
  const Part& part = *of;
  weights.part = of;
  weights.at = part.at.Field("weights");
  if (part.weights) weights.planned = part.weights->count;
  if (const Closed* closed = rod.FindClosed(Closed::Kind::kPotted, part.id)) {
    weights.potted = true;
    weights.potted_since = EntryOf(closed->at);
    weights.planned = static_cast<std::uint32_t>(std::clamp(closed->amount, 0.0, 4e9));
  }
  const Known<Mass> unit = UnitOf(rod, weights, all);
  weights.unit_kg = all.inputs.Add(unit.value.kilograms(), MassPlusMinus(unit, all.unstated_mass), unit.at.ToString());
  weights.potting = all.inputs.Add(1, kPottingSpread, weights.at.Field("bond").ToString() + " (how much of it goes in)");
  FillStack(rod, all, weights);
  return weights;
}

void CountOtherWeights(const Rod& rod, const Part* planned, Collection& all) {
  for (const Part& part : rod.handle.parts) {
    if (!part.weights || &part == planned) continue;
    if (part.weights->count.value_or(0) == 0 && !rod.FindClosed(Closed::Kind::kPotted, part.id)) continue;
    const WeightsIn weights = WeightsOf(rod, &part, all);
    all.assumptions.push_back({weights.at.Field("count"), absl::StrCat(weights.OnFinishedRod()),
                               absl::StrCat("taken as ", weights.potted ? "potted" : "designed",
                                            ": planned are the counterweights of '", planned->id, "' alone")});
    CountWeights(weights, all);
  }
}

void CountWeights(const WeightsIn& weights, Collection& all) {
  const std::uint32_t n = weights.OnFinishedRod();
  if (!weights.part || n == 0) return;
  const bool stacked = weights.stack && n <= CounterweightStack::kMostUnits;
  Insert(weights, weights.Units(n), stacked ? weights.stack->Units(static_cast<int>(n)) : MassProperties{}, weights.at,
         all);
  if (!stacked) {
    all.uncounted.push_back(
        {weights.at.Field("bond"), "0 g", absl::StrCat("potting is not counted: ", weights.measure)});
    return;
  }
  Insert(weights, weights.Potting(n), weights.stack->Potting(static_cast<int>(n)), weights.at.Field("bond"), all);
}

}  // namespace withy
