#include "whole.h"

#include <algorithm>
#include <string>
#include <string_view>
#include <unordered_set>
#include <utility>

#include "absl/strings/str_format.h"
#include "adjustment.h"
#include "withy/sections/material.h"

namespace withy {
namespace {

// Of a balance point that says no uncertainty: a rod laid on an edge (common practice, no source).
constexpr double kUnstatedBalanceM = 0.002;
// Each part that gives way then depends on the uncertainty of all of them; beyond this only the sums are fixed.
constexpr std::size_t kMostGivingWay = 200;

// Halves of halves, so that the lists of inputs are merged n log n times and not n^2.
Uncertain Sum(const std::vector<Uncertain>& terms, std::size_t from, std::size_t to) {
  if (to - from == 0) return Uncertain(0);
  if (to - from == 1) return terms[from];
  const std::size_t middle = from + (to - from) / 2;
  return Sum(terms, from, middle) + Sum(terms, middle, to);
}

// Where glue is: between the outermost ends of the handle's glued parts; without any, about the middle of the blank.
struct Stretch {
  double from = 0, to = 0;
};
std::optional<Stretch> WhereGlueIs(const Rod& rod, const Collection& all) {
  std::optional<Stretch> glue;
  for (const Counted& counted : all.things) {
    if (!counted.glued_part || !counted.shown.start_m || !counted.shown.length_m) continue;
    const double from = *counted.shown.start_m, to = from + *counted.shown.length_m;
    glue = glue ? Stretch{std::min(glue->from, from), std::max(glue->to, to)} : Stretch{from, to};
  }
  if (glue || !rod.blank_butt_m || !rod.blank_tip_m) return glue;
  return Stretch{rod.blank_butt_m->value(), rod.blank_tip_m->value()};
}

// What was not counted: adhesive, and finish and wraps that cannot be told.
void AddUncounted(const Rod& rod, const Uncertain& remainder, Collection& all) {
  Counted rest;
  rest.shown.at = FieldPath().Field("adhesives");
  rest.shown.mass_from = Source::kComputed;
  // Open by all of itself: whatever the parts do not take, it takes.
  rest.shown.mass_kg = all.inputs.Add(remainder.value(), remainder.value(), rest.shown.at.ToString());
  if (const auto where = WhereGlueIs(rod, all)) {
    rest.shown.center_m = all.inputs.Add((where->from + where->to) / 2, (where->to - where->from) / 2,
                                         rest.shown.at.ToString());
    rest.moment_kg_m = *rest.shown.mass_kg * *rest.shown.center_m;
  }
  all.assumptions.push_back({rest.shown.at, absl::StrFormat("%.1f g", remainder.value() * 1000),
                             "what the whole weighs beyond its parts, counted where parts are glued"});
  all.things.push_back(std::move(rest));
}

// The same, of all in the collection that has mass and place and so much of it.
Sums SumOfShares(const Collection& all, const std::vector<double>* shares) {
  std::vector<Uncertain> masses, moments;
  bool all_weighed = true, all_placed = true;
  for (std::size_t i = 0; i < all.things.size(); ++i) {
    const double share = shares ? (*shares)[i] : 1;
    if (share == 0) continue;
    const Counted& counted = all.things[i];
    all_weighed = all_weighed && counted.shown.mass_kg;
    all_placed = all_placed && counted.moment_kg_m;
    if (counted.shown.mass_kg) masses.push_back(share == 1 ? *counted.shown.mass_kg : *counted.shown.mass_kg * share);
    if (counted.moment_kg_m) moments.push_back(share == 1 ? *counted.moment_kg_m : *counted.moment_kg_m * share);
  }
  Sums sums;
  if (all.things.empty() || !all_weighed) return sums;
  sums.mass_kg = Sum(masses, 0, masses.size());
  if (all_placed) sums.moment_kg_m = Sum(moments, 0, moments.size());
  return sums;
}

// How much of each thing was on the scales.
std::vector<double> SharesOn(const WholeWeighing& weighing, const Collection& all) {
  const std::unordered_set<std::string_view> missing(weighing.missing.begin(), weighing.missing.end());
  std::vector<double> shares;
  shares.reserve(all.things.size());
  for (const Counted& counted : all.things) {
    double share = 1;
    for (const std::string& needed : counted.needs) {
      if (!needed.empty() && missing.contains(needed)) share = 0;
    }
    if (counted.potted_since && (*counted.potted_since < 0 || *counted.potted_since >= EntryOf(weighing.at))) share = 0;
    for (const auto& [finish, of_mass] : counted.films) {
      if (share > 0 && missing.contains(finish)) share = std::max(share - of_mass, 0.0);
    }
    shares.push_back(share);
  }
  return shares;
}

std::vector<double> Others(std::vector<double> shares) {
  for (double& share : shares) share = 1 - share;
  return shares;
}

// Of the counterweights that are planned, those that were in, and those of them that were potted.
struct PlannedIn {
  std::uint32_t weights = 0, potted = 0;
};
PlannedIn PlannedThen(const Rod& rod, const WholeWeighing& weighing, const WeightsIn& weights) {
  const std::uint32_t elsewhere = weights.part ? PottedElsewhere(rod, weighing, weights.part->id) : 0;
  const auto others_off = [elsewhere](std::uint32_t all) { return all - std::min(all, elsewhere); };
  return {others_off(weighing.weights), others_off(std::min(weighing.potted, weighing.weights))};
}

// What was on besides things: planned counterweights, what they were potted in, the reel.
Sums Guests(const Rod& rod, const WholeWeighing& weighing, const WeightsIn& weights, Collection& all) {
  const PlannedIn in = PlannedThen(rod, weighing, weights);
  Sums guests = weights.Units(in.weights) + weights.Potting(in.potted);
  if (!weighing.with_reel) return guests;
  const Maybe<Mass>& reel = rod.order.reel_mass;
  if (!reel) return {};
  Sums on;
  on.mass_kg = all.inputs.Add(reel->value.kilograms(), MassPlusMinus(*reel, all.unstated_mass), reel->at.ToString());
  if (rod.order.reel_foot_m) on.moment_kg_m = *on.mass_kg * *rod.order.reel_foot_m;
  return guests + on;
}

std::optional<Uncertain> ReadingOf(const Maybe<Mass>& mass, Collection& all) {
  if (!mass || !(mass->value.kilograms() > 0)) return std::nullopt;
  return all.inputs.Add(mass->value.kilograms(), MassPlusMinus(*mass, all.unstated_mass), mass->at.ToString());
}

std::optional<Uncertain> ReadingOf(const Maybe<Length>& balance, Collection& all) {
  if (!balance) return std::nullopt;
  return all.inputs.Add(balance->value.meters(), balance->plus_minus.value_or(kUnstatedBalanceM), balance->at.ToString());
}

// One weighing: what the scales and the edge say of the things that were on.
struct Reading {
  std::vector<double> shares;          // as all.things
  std::optional<Uncertain> mass_kg;    // of things alone
  std::optional<Uncertain> moment_kg_m;
  std::optional<Constraint> on_edge;   // where only the balance point was read: moments about it cancel
};

Reading Read(const Rod& rod, const WholeWeighing& weighing, const WeightsIn& weights, Collection& all) {
  Reading reading{SharesOn(weighing, all), std::nullopt, std::nullopt, std::nullopt};
  const Sums guests = Guests(rod, weighing, weights, all);
  const auto mass = ReadingOf(weighing.mass, all);
  const auto balance = ReadingOf(weighing.balance, all);
  if (mass && guests.mass_kg && (*mass - *guests.mass_kg).value() > 0) {
    reading.mass_kg = *mass - *guests.mass_kg;
    if (balance && guests.moment_kg_m) reading.moment_kg_m = *mass * *balance - *guests.moment_kg_m;
    return reading;
  }
  const Sums things = SumOf(all, reading.shares);
  if (!balance || !guests.moment_kg_m || !things.moment_kg_m) return reading;
  const Uncertain about_edge = *things.moment_kg_m + *guests.moment_kg_m - *balance * (*things.mass_kg + *guests.mass_kg);
  reading.on_edge = Constraint{*things.moment_kg_m - *things.mass_kg * Uncertain(balance->value()), -about_edge};
  return reading;
}

// What the things that were on then add up to, each having given way.
Sums Fix(const Rod& rod, Reading& reading, std::optional<Uncertain>& remainder, Collection& all) {
  Sums on = SumOf(all, reading.shares);
  if (!on.mass_kg) return {reading.mass_kg, reading.moment_kg_m};
  if (reading.mass_kg) {
    remainder = *reading.mass_kg - *on.mass_kg;
    if (remainder->value() > remainder->plus_minus()) {
      AddUncounted(rod, *remainder, all);
      reading.shares.push_back(1);
      on = SumOf(all, reading.shares);
    }
  }
  std::vector<Constraint> constraints;
  if (reading.mass_kg) constraints.push_back({*on.mass_kg, *reading.mass_kg - *on.mass_kg});
  if (reading.moment_kg_m && on.moment_kg_m) {
    constraints.push_back({*on.moment_kg_m, *reading.moment_kg_m - *on.moment_kg_m});
  }
  if (reading.on_edge) constraints.push_back(*reading.on_edge);
  const Adjustment adjustment(constraints);
  Sums fixed{reading.mass_kg, reading.moment_kg_m};
  if (!fixed.mass_kg) fixed.mass_kg = adjustment.Adjusted(*on.mass_kg);
  if (!fixed.moment_kg_m && on.moment_kg_m) {
    fixed.moment_kg_m =
        adjustment.possible() ? adjustment.Adjusted(*on.moment_kg_m) : *on.moment_kg_m / *on.mass_kg * *fixed.mass_kg;
  }
  if (!adjustment.possible() || all.things.size() > kMostGivingWay) return fixed;
  for (Counted& counted : all.things) {
    if (counted.shown.mass_kg) GiveWay(adjustment, counted);
  }
  return fixed;
}

bool SaysSomething(const Rod& rod, const WholeWeighing& weighing) {
  const bool reel_known = !weighing.with_reel || rod.order.reel_mass;
  return !weighing.outdated && reel_known && ((weighing.mass && weighing.mass->value.kilograms() > 0) || weighing.balance);
}

// Indices in Rod::wholes, oldest first: at most two.
std::vector<int> ThoseThatCount(const Rod& rod, const Collection& all) {
  std::vector<int> used;
  bool mass = false, balance = false;
  for (int i = static_cast<int>(rod.wholes.size()) - 1; i >= 0; --i) {
    const WholeWeighing& weighing = rod.wholes[i];
    if (!SaysSomething(rod, weighing)) continue;
    const bool adds = (weighing.mass && !mass) || (weighing.balance && !balance);
    if (!adds) continue;
    used.insert(used.begin(), i);
    mass = mass || weighing.mass;
    balance = balance || weighing.balance;
    if ((mass && balance) || all.things.size() > kMostGivingWay) break;
  }
  return used;
}

bool IsFinished(const PlannedIn& in, const Reading& reading, const WeightsIn& weights) {
  const bool complete = std::all_of(reading.shares.begin(), reading.shares.end(), [](double share) { return share == 1; });
  const bool potting_on = in.potted >= weights.OnFinishedRod() || !weights.stack;
  return complete && in.weights == weights.OnFinishedRod() && potting_on;
}

}  // namespace

Sums SumOf(const Collection& all) { return SumOfShares(all, nullptr); }
Sums SumOf(const Collection& all, const std::vector<double>& shares) { return SumOfShares(all, &shares); }

std::uint32_t PottedElsewhere(const Rod& rod, const WholeWeighing& weighing, std::string_view part) {
  double count = 0;
  for (const Closed& closed : rod.closed) {
    const bool other = closed.kind == Closed::Kind::kPotted && closed.id != part;
    if (other && EntryOf(closed.at) < EntryOf(weighing.at)) count += closed.amount;
  }
  return static_cast<std::uint32_t>(std::min(count, 4e9));
}

FixedSums FixByWholes(const Rod& rod, const WeightsIn& weights, Collection& all) {
  for (auto weighing = rod.wholes.rbegin(); weighing != rod.wholes.rend(); ++weighing) {
    if (weighing->outdated) all.assumptions.push_back({weighing->at, "not used", "the rod is cut after it was weighed"});
  }
  FixedSums fixed{SumOf(all), -1, std::nullopt, RestsOn::kParts};
  for (const int i : ThoseThatCount(rod, all)) {
    const WholeWeighing& weighing = rod.wholes[i];
    Reading reading = Read(rod, weighing, weights, all);
    if (!reading.mass_kg && !reading.on_edge) continue;
    const bool finished = IsFinished(PlannedThen(rod, weighing, weights), reading, weights);
    fixed.rests_on = finished ? RestsOn::kWeighed : RestsOn::kHalfBuilt;
    std::optional<Uncertain> remainder;
    const Sums on = Fix(rod, reading, remainder, all);
    if (reading.mass_kg) {
      fixed.whole = i;
      fixed.remainder_kg = remainder;
    }
    const bool nothing_later = std::all_of(reading.shares.begin(), reading.shares.end(), [](double s) { return s == 1; });
    fixed.sums = nothing_later ? on : on + SumOf(all, Others(reading.shares));
  }
  return fixed;
}

}  // namespace withy
