#include "withy/review/balance_text.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "absl/strings/str_cat.h"
#include "bench_text.h"
#include "cautions.h"
#include "figure_text.h"
#include "show_tables.h"
#include "text_parts.h"
#include "withy/balance/balance.h"
#include "withy/units/format.h"
#include "work_step.h"

namespace withy {
namespace {

constexpr double kLight_g = 0.5;     // less is not listed by itself
constexpr double kLevel_n_m = 5e-4;  // what would be printed as 0.000

// "0.214 N m, tip-heavy"
std::string MomentText(double n_m, std::optional<double> plus_minus) {
  const std::string amount = UncertainText(std::abs(n_m), plus_minus, 3) + " N m, ";
  if (std::abs(n_m) < kLevel_n_m) return amount + "level";
  return amount + (n_m > 0 ? "tip-heavy" : "butt-heavy");
}

// "0.0912 kg m2"
std::string InertiaText(double kg_m2) {
  return FormatFixed(kg_m2, 4) + " kg m2";
}

std::string RestsOn(std::string_view word) {
  if (word == "weighed") return "the whole rod as weighed";
  if (word == "half built") return "the half-built rod as weighed, and what comes after";
  return word == "parts" ? "the sum of its parts" : "";
}

std::string Wanted(const v1::Design& design, LengthUnits units) {
  const v1::Intent& intent = design.intent();
  const std::optional<double> at = MmOf(intent.balance_from_butt());
  if (!at) return "";
  return BenchText(*at, PlusMinusMmOf(intent.balance_from_butt()), units) + " from the butt end";
}

std::string AsItIs(const v1::Design& design, const v1::BalanceReport& balance, const ShowOptions& options) {
  const LengthUnits units = options.units;
  const auto from_butt = [&](double mm, std::optional<double> plus_minus) {
    return BenchText(mm, plus_minus, units) + " from the butt end";
  };
  std::string lines;
  if (const std::string wanted = Wanted(design, units); !wanted.empty()) lines += LineText("ordered", wanted);
  if (const std::optional<double> hold = MmOf(design.intent().holding_point_from_butt())) {
    lines += LineText("held at", BenchText(hold, units) + " from the butt end");
  }
  if (balance.has_aim_from_butt_mm()) {
    lines += LineText("aim", BenchText(balance.aim_from_butt_mm(), units) + " from the butt end, " + balance.aim(),
                      options.style);
  }
  if (balance.has_mass_g()) {
    lines += LineText("rod", UncertainText(balance.mass_g(), WITHY_FIGURE(balance, mass_plus_minus_g), 1) + " g");
  }
  if (balance.has_balance_from_butt_mm()) {
    lines += LineText("balances at", from_butt(balance.balance_from_butt_mm(),
                                               WITHY_FIGURE(balance, balance_from_butt_plus_minus_mm)));
  }
  if (balance.has_mass_with_reel_g()) {
    lines += LineText("with the reel", FormatFixed(balance.mass_with_reel_g(), 1) + " g");
  }
  if (balance.has_balance_with_reel_mm()) {
    lines += LineText("balances at", from_butt(balance.balance_with_reel_mm(),
                                               WITHY_FIGURE(balance, balance_with_reel_plus_minus_mm)));
  }
  if (balance.has_moment_about_hold_n_m()) {
    lines += LineText("about the hold", MomentText(balance.moment_about_hold_n_m(),
                                                   WITHY_FIGURE(balance, moment_about_hold_plus_minus_n_m)));
  }
  if (balance.has_swing_inertia_kg_m2()) {
    lines += LineText("to swing, with reel", InertiaText(balance.swing_inertia_kg_m2()));
  }
  if (balance.has_remainder_g()) {
    lines += LineText("weighed beyond parts", FormatFixed(balance.remainder_g(), 1) + " g");
  }
  if (const std::string rests_on = RestsOn(balance.rests_on()); !rests_on.empty()) {
    lines += LineText("this rests on", rests_on);
  }
  return lines;
}

// The heaviest first, what is light only counted.
std::string Masses(const v1::BalanceReport& balance, const ShowOptions& options) {
  v1::Report heavy;
  auto& parts = *heavy.mutable_balance()->mutable_parts();
  double light_g = 0;
  int light = 0;
  for (const v1::PlacedPart& part : balance.parts()) {
    if (part.has_mass_g() && part.mass_g() < kLight_g) {
      light_g += part.mass_g(), ++light;
    } else {
      *parts.Add() = part;
    }
  }
  std::stable_sort(parts.begin(), parts.end(),
                   [](const v1::PlacedPart& a, const v1::PlacedPart& b) { return a.mass_g() > b.mass_g(); });
  const std::string table = MassTable(heavy, options);
  if (light == 0) return table;
  return table + BulletText(absl::StrCat("and ", light, " of less than ", FormatFixed(kLight_g, 1), " g, together ",
                                         FormatFixed(light_g, 1), " g: 'withy show' lists them"),
                            options.style);
}

std::string StatusText(const v1::CounterweightPlan& plan, bool potted) {
  if (plan.status() == "balanced") return "one more would make it butt-heavy";
  if (plan.status() == "room limited") return "no more fit; it stays tip-heavy";
  if (plan.status() == "no room") return "none fit";
  if (plan.status() == "butt-heavy already") {
    return potted ? "it is butt-heavy with those that are potted" : "none: it is butt-heavy without any";
  }
  return plan.status();
}

// What is potted first is on no edge before it is too late.
std::string ConfidenceText(std::string_view word, bool potted_first) {
  if (word == "sure") return "sure within what is known";
  if (potted_first) {
    const std::string instead = ", and no trial decides what is potted first: pot them last";
    if (word == "one more or less") return "it may be one more or less" + instead;
    return word == "cannot tell" ? "cannot tell" + instead : "";
  }
  if (word == "one more or less") return "it may be one more or less: trial weights on the knife edge decide";
  return word == "cannot tell" ? "cannot tell: weigh the rod with trial weights in, guides and finish on" : "";
}

// What to put in.
std::string ToPutIn(const v1::CounterweightPlan& plan, bool potted, const TextStyle& style) {
  std::string lines;
  if (!plan.part().empty()) lines += LineText("in", Visible(plan.part()));
  const bool too_many = potted && plan.status() == "butt-heavy already";
  if (plan.has_count() && !too_many) {
    const std::string each =
        plan.has_unit_mass_g() ? absl::StrCat(" of ", FormatFixed(plan.unit_mass_g(), 2), " g") : "";
    const std::string all = plan.has_mass_g() ? absl::StrCat(", ", FormatFixed(plan.mass_g(), 1), " g in all") : "";
    lines += LineText(potted ? "it would take" : "put in",
                      plan.count() == 0 ? "none"
                                        : absl::StrCat(Counted(static_cast<int>(plan.count()), "counterweight"), each, all));
  }
  if (!plan.status().empty()) lines += LineText("", StatusText(plan, potted), style);
  if (plan.has_count_planned())
    lines += LineText(potted ? "potted for good" : "design or log say", absl::StrCat(plan.count_planned()));
  if (plan.has_fit()) {
    lines += LineText("fit in the cavity",
                      absl::StrCat(plan.fit(), plan.side_by_side() > 1 ? absl::StrCat(", ", plan.side_by_side(),
                                                                                      " side by side in each layer")
                                                                       : ""));
  }
  if (plan.has_moment_without_n_m()) lines += LineText("without any", MomentText(plan.moment_without_n_m(), {}));
  return lines;
}

// With none to put in there is nowhere to stop and nothing to pot.
std::string WhereToStop(const v1::CounterweightPlan& plan, const LengthUnits units, const TextStyle& style) {
  std::string lines;
  const bool none = plan.has_count() && plan.count() == 0;
  const bool nowhere = none || plan.status() == "butt-heavy already";
  if (plan.has_moment_before_potting_n_m() && !nowhere) {
    lines += LineText("stop at", MomentText(plan.moment_before_potting_n_m(), {}) + ", before potting");
  }
  if (plan.has_stop_short_at_tip_g() && !nowhere) {
    lines += LineText("",
                      absl::StrCat("that is ", FormatFixed(plan.stop_short_at_tip_g(), 1),
                                   " g hung at the tip-top's ring just lifted level"),
                      style);
  }
  if (plan.has_moment_after_n_m() && !none) {
    lines +=
        LineText("after potting", MomentText(plan.moment_after_n_m(), WITHY_FIGURE(plan, moment_after_plus_minus_n_m)));
  }
  if (plan.has_balance_after_mm()) {
    lines += LineText("balances then at", BenchText(plan.balance_after_mm(), units) + " from the butt end");
  }
  if (plan.has_moment_with_one_more_n_m()) {
    lines += LineText("with one more", MomentText(plan.moment_with_one_more_n_m(), {}));
  }
  if (plan.has_count_if_potting_ignored() && plan.count_if_potting_ignored() != plan.count()) {
    lines += LineText("potting forgotten", absl::StrCat("it would have been ", plan.count_if_potting_ignored()));
  }
  if (plan.status() == "no room") return lines;
  const bool first = plan.potted().starts_with("first");
  if (!plan.confidence().empty()) lines += LineText("how sure", ConfidenceText(plan.confidence(), first), style);
  return lines;
}

std::string Potting(const v1::CounterweightPlan& plan, const TextStyle& style) {
  if (plan.has_count() && plan.count() == 0) return "";
  std::string lines;
  if (plan.has_potting_ml()) {
    lines += LineText(
        "potting",
        absl::StrCat(FormatFixed(plan.potting_ml(), 1), " ml",
                     plan.has_potting_g() ? absl::StrCat(", ", FormatFixed(plan.potting_g(), 1), " g cured") : ""));
  }
  if (!plan.potted().empty()) lines += LineText("when", plan.potted(), style);
  if (plan.has_added_mass_g()) {
    lines += LineText("what it costs",
                      absl::StrCat(FormatFixed(plan.added_mass_g(), 1), " g",
                                   plan.has_added_inertia_kg_m2()
                                       ? absl::StrCat(" and ", InertiaText(plan.added_inertia_kg_m2()), " to swing")
                                       : ""));
  }
  return lines;
}

// About the aim, reel on, with what stays in; unset where it cannot be told.
std::optional<double> MomentAtAim(const v1::BalanceReport& balance, bool potted) {
  const v1::CounterweightPlan& plan = balance.counterweights();
  if (balance.has_counterweights() && !potted) return WITHY_FIGURE(plan, moment_without_n_m);
  if (!balance.has_balance_with_reel_mm() || !balance.has_aim_from_butt_mm()) return std::nullopt;
  const double arm_mm = balance.balance_with_reel_mm() - balance.aim_from_butt_mm();
  return kStandardGravity * balance.mass_with_reel_g() * arm_mm * 1e-6;
}

bool Balances(std::optional<double> n_m) { return !n_m || std::abs(*n_m) < kStandardGravity * kBalancedKgM; }

std::string NoRemedy(const v1::BalanceReport& balance, double n_m) {
  return absl::StrCat("Nothing alone brings it to ", balance.aim(), " (", MomentText(n_m, {}),
                      "): no reel or part in its place of half its mass to ", FormatFixed(kMostAddedKg * 1000, 0),
                      " g more, and no butt up to ", FormatFixed(kMostLongerM * 1000, 0), " mm longer.");
}

std::string Instead(const v1::BalanceReport& balance, bool potted, const TextStyle& style) {
  std::string items;
  for (const v1::BalanceRemedy& remedy : balance.instead()) items += BulletText(remedy.text(), style);
  const std::optional<double> moment = MomentAtAim(balance, potted);
  if (balance.instead().empty() && !Balances(moment)) items += BulletText(NoRemedy(balance, *moment), style);
  if (!balance.has_counterweights() && !Balances(moment)) {
    items += BulletText("No part of the handle has a `cavity`, so no counterweights are planned.", style);
  }
  return items;
}

// "balance.mass_g" in words.
std::string InWords(const std::string& figure) {
  if (figure == "balance.mass_g") return "what it weighs";
  if (figure == "balance.balance_from_butt_mm") return "where it balances";
  if (figure == "balance.balance_with_reel_mm") return "where it balances with its reel";
  if (figure == "balance.moment_about_hold_n_m") return "how it lies in the hand";
  if (figure == "balance.counterweights.count") return "how many counterweights";
  return Visible(figure);
}

std::string CannotBeTold(const v1::Report& report, const TextStyle& style) {
  std::string items;
  for (const v1::Unknown& unknown : report.unknown()) {
    if (!unknown.figure().starts_with("balance.")) continue;
    items += BulletText(absl::StrCat(InWords(unknown.figure()), ": ", Visible(unknown.measure())), style);
  }
  return items;
}

bool UsesLead(const v1::Design& design, const std::string& part_id) {
  for (const v1::Part& part : design.handle().parts()) {
    if (part.id() == part_id && part.weights().material() == "lead") return true;
  }
  return false;
}

std::string Cautions(const v1::Design& design, const v1::CounterweightPlan& plan, const TextStyle& style) {
  if (plan.count() == 0 && plan.count_planned() == 0) return "";
  std::string items;
  if (UsesLead(design, plan.part())) items += BulletText(caution::kLead, style);
  return items + BulletText(caution::kEpoxy, style) + BulletText(caution::kExotherm, style);
}

}  // namespace

std::string BalanceText(std::string_view file, const v1::Design& design, const v1::Report& report,
                        const ShowOptions& options) {
  const v1::BalanceReport& balance = report.balance();
  const v1::CounterweightPlan& plan = balance.counterweights();
  const TextStyle& style = options.style;
  std::string text = TitleText(file, design, report, style);
  text += SectionText("Balance, from the butt end of the finished rod", AsItIs(design, balance, options), style);
  text += SectionText("Cannot be told yet, and what would tell it", CannotBeTold(report, style), style);
  const bool potted = IsClosed(report, "potted", plan.part());
  if (balance.has_counterweights()) {
    text += SectionText("Counterweights",
                        ToPutIn(plan, potted, style) +
                            WhereToStop(plan, options.units, style) + Potting(plan, style),
                        style);
  }
  text += SectionText("Without counterweights", Instead(balance, potted, style), style);
  text += SectionText("What everything weighs, the heaviest first", Masses(balance, options), style);
  return text + SectionText("Mind", Cautions(design, plan, style), style);
}

}  // namespace withy
