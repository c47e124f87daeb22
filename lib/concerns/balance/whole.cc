#include "whole.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
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

// How much of each misfit a value takes: least squares with both sums exact, covariances to first order.
struct Gain {
  double of_mass = 0, of_moment = 0;
};

class Adjustment {
 public:
  Adjustment(const Sums& sums, const Whole& whole) : sums_(sums), misfit_mass_(whole.mass_kg - *sums.mass_kg) {
    var_mass_ = Covariance(*sums.mass_kg, *sums.mass_kg);
    if (!sums.moment_kg_m || !whole.moment_kg_m) return;
    var_moment_ = Covariance(*sums.moment_kg_m, *sums.moment_kg_m);
    cov_ = Covariance(*sums.mass_kg, *sums.moment_kg_m);
    determinant_ = var_mass_ * var_moment_ - cov_ * cov_;
    both_ = determinant_ > 1e-9 * var_mass_ * var_moment_;
    if (both_) misfit_moment_ = *whole.moment_kg_m - *sums.moment_kg_m;
  }
  bool possible() const { return var_mass_ > 0; }

  Uncertain Adjusted(const Uncertain& value) const {
    const Gain gain = GainOf(value);
    Uncertain adjusted = value + misfit_mass_ * Uncertain(gain.of_mass);
    if (both_) adjusted = adjusted + misfit_moment_ * Uncertain(gain.of_moment);
    return adjusted;
  }

 private:
  Gain GainOf(const Uncertain& value) const {
    const double with_mass = Covariance(value, *sums_.mass_kg);
    if (!both_) return {with_mass / var_mass_, 0};
    const double with_moment = Covariance(value, *sums_.moment_kg_m);
    return {(with_mass * var_moment_ - with_moment * cov_) / determinant_,
            (with_moment * var_mass_ - with_mass * cov_) / determinant_};
  }

  const Sums& sums_;
  Uncertain misfit_mass_, misfit_moment_;
  double var_mass_ = 0, var_moment_ = 0, cov_ = 0, determinant_ = 0;
  bool both_ = false;
};

void GiveWay(const Adjustment& adjustment, Counted& counted) {
  if (!(counted.shown.mass_kg->plus_minus() > 0)) return;
  const Uncertain mass = adjustment.Adjusted(*counted.shown.mass_kg);
  if (!(mass.value() > 0)) return;  // the finding about the sum speaks of it
  if (counted.shown.mass_kg->value() > 0) counted.own_inertia_kg_m2 *= mass.value() / counted.shown.mass_kg->value();
  counted.shown.mass_kg = mass;
  if (!counted.moment_kg_m) return;
  counted.moment_kg_m = adjustment.Adjusted(*counted.moment_kg_m);
  counted.shown.center_m = *counted.moment_kg_m / mass;
}

}  // namespace

Sums SumOf(const Collection& all) {
  std::vector<Uncertain> masses, moments;
  for (const Counted& counted : all.things) {
    if (counted.shown.mass_kg) masses.push_back(*counted.shown.mass_kg);
    if (counted.moment_kg_m) moments.push_back(*counted.moment_kg_m);
  }
  Sums sums;
  if (all.things.empty() || masses.size() != all.things.size()) return sums;
  sums.mass_kg = Sum(masses, 0, masses.size());
  if (moments.size() == all.things.size()) sums.moment_kg_m = Sum(moments, 0, moments.size());
  return sums;
}

std::optional<Whole> WholeOf(const Rod& rod, Collection& all) {
  for (int i = static_cast<int>(rod.weighings.size()) - 1; i >= 0; --i) {
    const Weighing& weighing = rod.weighings[i];
    if (!weighing.what.empty()) continue;
    if (weighing.outdated) {
      all.assumptions.push_back({weighing.at, "not used", "the rod is cut after it was weighed"});
      continue;
    }
    const Maybe<Mass>& reel = rod.order.reel_mass;
    if (!(weighing.mass.value.kilograms() > 0) || (weighing.with_reel && !reel)) return std::nullopt;
    Whole whole{i, all.inputs.Add(weighing.mass.value.kilograms(), MassPlusMinus(weighing.mass, all.unstated_mass),
                                  weighing.mass.at.ToString()),
                std::nullopt};
    if (weighing.balance) {
      whole.moment_kg_m = whole.mass_kg * all.inputs.Add(weighing.balance->value.meters(),
                                                         weighing.balance->plus_minus.value_or(kUnstatedBalanceM),
                                                         weighing.balance->at.ToString());
    }
    if (!weighing.with_reel) return whole;
    const Uncertain on = all.inputs.Add(reel->value.kilograms(), MassPlusMinus(*reel, all.unstated_mass),
                                        reel->at.ToString());
    whole.mass_kg = whole.mass_kg - on;
    if (!rod.order.reel_foot_m) whole.moment_kg_m.reset();
    if (whole.moment_kg_m) whole.moment_kg_m = *whole.moment_kg_m - on * *rod.order.reel_foot_m;
    if (!(whole.mass_kg.value() > 0)) return std::nullopt;
    return whole;
  }
  return std::nullopt;
}

Sums FitWhole(const Rod& rod, const Whole& whole, const Sums& before, Collection& all) {
  Sums after{whole.mass_kg, whole.moment_kg_m};
  if (!before.mass_kg) return after;
  const Uncertain remainder = whole.mass_kg - *before.mass_kg;
  if (remainder.value() > remainder.plus_minus()) AddUncounted(rod, remainder, all);
  const Sums sums = SumOf(all);
  const Adjustment adjustment(sums, whole);
  if (!adjustment.possible()) {
    if (!after.moment_kg_m && sums.moment_kg_m) after.moment_kg_m = *sums.moment_kg_m / *sums.mass_kg * whole.mass_kg;
    return after;
  }
  if (!after.moment_kg_m && sums.moment_kg_m) after.moment_kg_m = adjustment.Adjusted(*sums.moment_kg_m);
  if (all.things.size() > kMostGivingWay) return after;
  for (Counted& counted : all.things) GiveWay(adjustment, counted);
  return after;
}

}  // namespace withy
