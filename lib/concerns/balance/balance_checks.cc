#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <string>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy {
namespace {

using balance::ToleranceOf;
using balance::View;

constexpr Code kTarget = {
    .name = "balance/target",
    .severity = Severity::kWarning,
    .summary = "The rod does not balance where it is ordered to",
    .why =
        "A rod that is heavy in the tip tires the hand. Where it balances is known before the handle is glued, "
        "and easily changed until then.",
    .action = "Move the reel, change the grips, or plan counterweights in the butt.",
};

std::string MeasureFor(const View& view) {
  for (const Unknown& unknown : view.answers.unknowns) {
    if (unknown.figure.find("balance.") == 0) return unknown.measure;
  }
  return "Weigh the parts and the reel with its line, and find the blank's balance point.";
}

std::string Counterweights(int n) {
  if (n == 0) return "no counterweights";
  return absl::StrFormat("%d counterweight%s", n, n == 1 ? "" : "s");
}

// What another number of counterweights would do, where none is potted yet: the number that the plan stops at, just
// tip-heavy, and where that is off the order and another is not, this one beside it.
std::string CountForTarget(const View& view, const Known<Length>& ordered) {
  const auto& plan = view.answers.counterweights;
  if (!plan || !plan->stack || plan->potted) return "";
  const int planned = static_cast<int>(std::min<std::uint32_t>(plan->planned.value_or(0), CounterweightStack::kMostUnits));
  const auto added = [&plan](int n) {
    MassProperties units = plan->stack->Units(n);
    units += plan->stack->Potting(n);
    return units;
  };
  MassProperties bare =
      PointMass(view.answers.mass_with_reel_kg->value(), view.answers.balance_with_reel_m->value(), 0);
  bare += added(planned) * -1;
  const auto balance_with = [&](int n) {
    MassProperties load = bare;
    load += added(n);
    return load.Balance();
  };
  const auto off = [&](int n) { return std::abs(balance_with(n) - ordered.value.meters()); };
  const double tolerance = ToleranceOf(ordered).meters();
  const int count = plan->status ? plan->count.value_or(0) : planned;
  int best = count;
  for (int n = 0; n <= plan->stack->fit() && off(count) > tolerance; ++n) {
    if (off(n) <= tolerance && off(n) < off(best)) best = n;
  }
  if (best == planned) return "";
  std::string text = absl::StrFormat(" With %s in '%s' instead of %d it balances at %.0f mm", Counterweights(best), plan->part,
                                     planned, balance_with(best) * 1000);
  if (best != count && count > 0) {
    absl::StrAppendFormat(&text, "; with %d, the most that leave it tip-heavy of that point, at %.0f mm", count,
                          balance_with(count) * 1000);
  }
  return text + ".";
}

// Meets, misses or cannot be told, as the length is: by whether the uncertainty leaves it open.
void JudgeTarget(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.order.balance_from_butt) return;
  const Known<Length>& ordered = *view.rod.order.balance_from_butt;
  if (!view.answers.balance_with_reel_m) {
    findings.push_back(CannotTell(kTarget, ordered.at,
                                  absl::StrFormat("whether it balances at %.0f mm is not known", ordered.value.mm()),
                                  MeasureFor(view)));
    return;
  }
  const double tolerance_mm = ToleranceOf(ordered).mm();
  const double balance_mm = view.answers.balance_with_reel_m->value() * 1000;
  const double uncertain_mm = view.answers.balance_with_reel_m->plus_minus() * 1000;
  const double off_mm = std::abs(balance_mm - ordered.value.mm());
  if (off_mm + uncertain_mm <= tolerance_mm) return;
  const std::vector<Number> numbers = {{"balance_mm", balance_mm},
                                       {"ordered_mm", ordered.value.mm()},
                                       {"tolerance_mm", tolerance_mm},
                                       {"plus_minus_mm", uncertain_mm}};
  const std::string figures = absl::StrFormat("%.0f mm (give or take %.0f) where %.0f mm is ordered, within %.0f",
                                              balance_mm, uncertain_mm, ordered.value.mm(), tolerance_mm);
  if (off_mm - uncertain_mm > tolerance_mm) {
    findings.push_back(MakeFinding(kTarget, ordered.at, "balances with the reel at " + figures, numbers,
                                   std::string(kTarget.action) + CountForTarget(view, ordered)));
    return;
  }
  Finding finding = CannotTell(kTarget, ordered.at, "too uncertain to tell: " + figures,
                               "Weigh blank, handle and reel, and give `plus_minus` with each.");
  finding.numbers = numbers;
  findings.push_back(std::move(finding));
}

constexpr Code kMassSum = {
    .name = "balance/mass-sum",
    .severity = Severity::kWarning,
    .summary = "The whole rod weighs something else than its parts",
    .why = "Something was not counted, counted twice, or weighed with the reel on; the balance is wrong by its share.",
    .action = "Weigh the rod again, without reel and line, and look for a part whose mass was guessed.",
};

// What adhesive, and finish that is not counted, may add to the sum of the parts: a tenth (common practice, no source).
// Beyond that the uncertainty of the scales and of all parts together decides.
constexpr double kAdhesiveShare = 0.10;

void JudgeMassSum(const View& view, std::vector<Finding>& findings) {
  if (!view.answers.remainder_kg) return;
  const double remainder_g = view.answers.remainder_kg->value() * 1000;
  const double uncertain_g = view.answers.remainder_kg->plus_minus() * 1000;
  const Known<Mass>& weighed = *view.rod.wholes[view.answers.whole].mass;
  const double weighed_g = weighed.value.grams();
  if (remainder_g >= -uncertain_g - 1e-6 && remainder_g <= uncertain_g + kAdhesiveShare * weighed_g) return;
  findings.push_back(MakeFinding(kMassSum, weighed.at,
                                 absl::StrFormat("weighed %.1f g, which is %.1f g %s than its parts", weighed_g,
                                                 std::abs(remainder_g), remainder_g < 0 ? "less" : "more"),
                                 {{"mass_g", weighed_g}, {"remainder_g", remainder_g}, {"plus_minus_g", uncertain_g}}));
}

constexpr Code kPartDensity = {
    .name = "balance/part-density",
    .severity = Severity::kWarning,
    .summary = "A part's mass does not go with its size",
    .why = "It would be lighter than foam or heavier than brass: a unit, a diameter or a decimal point is wrong.",
    .action = "Weigh the part again, without arbors and weights, and look at its profile.",
};

// g/cm3: foam of 0.1 and brass of 8.7 with room to either side (density tables; the room is common practice, no
// source).
constexpr double kLightest = 0.03;
constexpr double kHeaviest = 10;

// Volume of a solid of revolution whose diameter is a profile, over [0, length]; exact for straight pieces.
double VolumeOf(const Profile& diameter, double length) {
  const Profile part = diameter.Slice(0, length);
  double volume = 0;
  for (std::size_t i = 1; i < part.knots().size(); ++i) {
    const auto &p = part.knots()[i - 1], &q = part.knots()[i];
    volume += std::numbers::pi / 12 * (q.x - p.x) * (p.y * p.y + p.y * q.y + q.y * q.y);
  }
  return volume;
}

void JudgePartDensity(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    const bool shape_known = !part.outer.empty() && !part.bore.empty() && part.bore_known == BoreKnown::kProfile;
    if (!part.mass || !part.length || !shape_known || part.length->value <= Length()) continue;
    const double length_m = part.length->value.meters();
    const double volume_m3 = VolumeOf(part.outer, length_m) - VolumeOf(part.bore, length_m);
    if (!(volume_m3 > 0)) continue;
    const double density = part.mass->value.kilograms() / volume_m3 / 1000;
    if (density >= kLightest && density <= kHeaviest) continue;
    findings.push_back(MakeFinding(kPartDensity, part.mass->at,
                                   absl::StrFormat("%.2f g in %.1f cm3 of '%s' make %.3g g/cm3",
                                                   part.mass->value.grams(), volume_m3 * 1e6, part.id, density),
                                   {{"mass_g", part.mass->value.grams()}, {"density_g_per_cm3", density}}));
  }
}

std::vector<Rule<View>> Rules() {
  return Joined<View>({{{&kTarget, JudgeTarget}, {&kMassSum, JudgeMassSum}, {&kPartDensity, JudgePartDensity}},
                       balance::CounterweightRules(),
                       balance::WeighingRules()});
}

}  // namespace

Length balance::ToleranceOf(const Known<Length>& ordered) {
  return ordered.plus_minus ? Length::Meters(*ordered.plus_minus) : Length::Inches(0.5);
}

bool balance::MeetsOrder(const View& view) {
  const Maybe<Length>& ordered = view.rod.order.balance_from_butt;
  if (!ordered || !view.answers.balance_with_reel_m) return false;
  const double off_m = std::abs(view.answers.balance_with_reel_m->value() - ordered->value.meters());
  return off_m <= ToleranceOf(*ordered).meters();
}

void CheckBalance(const Rod& rod, const SectionsAnswers&, const WrapsAnswers&, const BalanceAnswers& answers,
                  std::vector<Finding>& findings) {
  Judge(Rules(), View{rod, answers}, findings);
}

std::vector<Code> BalanceCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
