#include "remedies.h"

#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace withy {
namespace {

// A thing nearer to the aim than this balances nothing.
constexpr double kLeastArmM = 0.010;

// First moment about the aim that is to be made up for, kg m; positive = tip-heavy. Unset where it cannot be told.
std::optional<double> ToMakeUp(const BalanceAnswers& answers) {
  const auto& plan = answers.counterweights;
  const bool stays = plan && plan->potted && plan->stack;
  if (plan && !stays) {
    return plan->moment_without_n_m ? std::optional(plan->moment_without_n_m->value() / kStandardGravity)
                                    : std::nullopt;
  }
  if (!answers.balance_with_reel_m || !answers.aim) return std::nullopt;
  return answers.mass_with_reel_kg->value() * (answers.balance_with_reel_m->value() - answers.aim->at_m.value());
}

// "balances the rod at the holding point without counterweights"
std::string BalancesIt(const BalanceAnswers& answers) {
  return absl::StrCat("balances the rod at ", AimWord(answers.aim->kind), " without counterweights");
}

// The mass that a thing of that mass and arm would need; unset where that is no sensible change.
std::optional<double> MassInstead(double mass_kg, double arm_m, double to_make_up) {
  if (!(std::abs(arm_m) >= kLeastArmM)) return std::nullopt;
  const double added = -to_make_up / arm_m;
  const double mass = mass_kg + added;
  if (!(mass >= kLeastShareOfMass * mass_kg) || added > kMostAddedKg) return std::nullopt;
  return mass;
}

std::string Change(double mass_kg, double before_kg) {
  const double added = (mass_kg - before_kg) * 1000;
  return absl::StrFormat("%.0f g (%.0f g %s)", mass_kg * 1000, std::abs(added), added > 0 ? "more" : "less");
}

void TryReel(const Sums& reel, const BalanceAnswers& answers, double aim, double to_make_up,
             std::vector<BalanceRemedy>& remedies) {
  const double before = reel.mass_kg->value();
  const auto mass = MassInstead(before, reel.moment_kg_m->value() / before - aim, to_make_up);
  if (!mass) return;
  remedies.push_back(
      {BalanceRemedy::Kind::kReel, "", mass, std::nullopt,
       absl::StrFormat("A reel of %s in the same place %s.", Change(*mass, before), BalancesIt(answers))});
}

void TryParts(const Rod& rod, const BalanceAnswers& answers, double aim, double to_make_up,
              std::vector<BalanceRemedy>& remedies) {
  for (const Contribution& counted : answers.parts) {
    const Part* part = rod.FindPart(counted.id);
    if (!part || counted.at != part->at || !counted.mass_kg || !counted.center_m) continue;
    const double before = counted.mass_kg->value();
    const auto mass = MassInstead(before, counted.center_m->value() - aim, to_make_up);
    if (!mass) continue;
    remedies.push_back({BalanceRemedy::Kind::kPart, part->id, mass, std::nullopt,
                        absl::StrFormat("Part '%s' at %s in the same place %s.", part->id, Change(*mass, before),
                                        BalancesIt(answers))});
  }
}

// What lies behind the place where the butt is made longer, and how heavy each metre of it is.
struct Butt {
  double caps_kg = 0;
  double front_m = 0;        // of the caps
  double kg_per_m = 0;
};

std::optional<Butt> ButtOf(const Rod& rod, const BalanceAnswers& answers) {
  Butt butt;
  for (const Contribution& counted : answers.parts) {
    const Part* part = rod.FindPart(counted.id);
    if (!part || counted.at != part->at) continue;
    if (!counted.mass_kg || !counted.start_m || !counted.length_m) return std::nullopt;
    if (part->kind == "butt_cap" || part->kind == "gimbal") {
      butt.caps_kg += counted.mass_kg->value();
      butt.front_m = *counted.start_m + *counted.length_m;
      continue;
    }
    butt.kg_per_m = counted.mass_kg->value() / *counted.length_m;
    return butt;
  }
  return std::nullopt;
}

// Longer by y, with as much mass per metre as the part there: the caps move back by y, and y kg_per_m comes in between, its
// centre y / 2 behind their front. Quadratic in y.
void TryExtension(const Rod& rod, const BalanceAnswers& answers, double aim, double to_make_up,
                  std::vector<BalanceRemedy>& remedies) {
  const auto butt = ButtOf(rod, answers);
  if (!butt || !(to_make_up > 0) || !(butt->kg_per_m > 0)) return;
  const double linear = butt->caps_kg + butt->kg_per_m * (aim - butt->front_m);
  const double longer =
      2 * to_make_up / (linear + std::sqrt(linear * linear + 2 * butt->kg_per_m * to_make_up));
  if (!(longer > 0) || longer > kMostLongerM) return;
  remedies.push_back({BalanceRemedy::Kind::kExtension, "", std::nullopt, longer,
                      absl::StrFormat("A butt that is %.0f mm longer, as heavy per length as the part there, %s and "
                                      "makes it %.0f g heavier.",
                                      longer * 1000, BalancesIt(answers), longer * butt->kg_per_m * 1000)});
}

}  // namespace

void FindRemedies(const Rod& rod, const std::optional<Sums>& reel, BalanceAnswers& answers) {
  const auto to_make_up = ToMakeUp(answers);
  if (!to_make_up || std::abs(*to_make_up) < kBalancedKgM || !reel) return;
  const double aim = answers.aim->at_m.value();
  TryReel(*reel, answers, aim, *to_make_up, answers.instead);
  TryParts(rod, answers, aim, *to_make_up, answers.instead);
  TryExtension(rod, answers, aim, *to_make_up, answers.instead);
}

}  // namespace withy
