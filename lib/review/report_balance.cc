// Mass, balance and counterweights in the report.
#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

void ReportContribution(const Contribution& part, v1::PlacedPart& to) {
  to.set_id(part.id);
  to.set_at(part.at.ToString());
  Put(part.start_m, kMm, [&](double mm) { to.set_start_mm(mm); });
  Put(part.length_m, kMm, [&](double mm) { to.set_length_mm(mm); });
  PutWithPlusMinus(part.mass_kg, kGrams, [&](double g) { to.set_mass_g(g); },
                   [&](double g) { to.set_mass_plus_minus_g(g); });
  Put(part.center_m, kMm, [&](double mm) { to.set_center_mm(mm); });
  if (part.mass_kg) to.set_mass_from(SourceWord(part.mass_from));
  const auto& steps = part.at.steps();
  const bool weights = std::any_of(steps.begin(), steps.end(), [](const auto& step) { return step.field == "weights"; });
  if (weights) to.set_weights_of(part.id);
}

const char* StatusWord(CounterweightStatus status) {
  switch (status) {
    case CounterweightStatus::kBalanced: return "balanced";
    case CounterweightStatus::kRoomLimited: return "room limited";
    case CounterweightStatus::kNoRoom: return "no room";
    case CounterweightStatus::kButtHeavy: return "butt-heavy already";
  }
  return "";
}

const char* ConfidenceWord(Confidence confidence) {
  switch (confidence) {
    case Confidence::kSure: return "sure";
    case Confidence::kOneMoreOrLess: return "one more or less";
    case Confidence::kCannotTell: break;
  }
  return "cannot tell";
}

const char* RestsOnWord(RestsOn rests_on) {
  switch (rests_on) {
    case RestsOn::kParts: return "parts";
    case RestsOn::kWeighed: return "weighed";
    case RestsOn::kHalfBuilt: return "half built";
  }
  return "";
}

const char* RemedyWord(BalanceRemedy::Kind kind) {
  switch (kind) {
    case BalanceRemedy::Kind::kReel: return "reel";
    case BalanceRemedy::Kind::kPart: return "part";
    case BalanceRemedy::Kind::kExtension: return "extension";
  }
  return "";
}

std::string WhatRestsOnCalculation(const CounterweightPlan& plan) {
  if (plan.potted) return absl::StrFormat("potted: the %d in it stay", *plan.planned);
  if (!plan.potted_first) {
    return "last: balanced with trial weights taped in and all else on the rod; the potting's own mass alone is calculated";
  }
  std::string text = "first: guides, wraps, finish and reel are on no scales then, and the count rests on calculation alone";
  if (plan.moment_after_n_m && plan.moment_after_n_m->plus_minus() > 0) {
    absl::StrAppendFormat(&text, ", which leaves %.3f N m open", plan.moment_after_n_m->plus_minus());
  }
  return text;
}

void ReportMoments(const CounterweightPlan& plan, v1::CounterweightPlan& to) {
  Put(plan.moment_without_n_m, kAsIs, [&](double n_m) { to.set_moment_without_n_m(n_m); });
  Put(plan.moment_before_potting_n_m, kAsIs, [&](double n_m) { to.set_moment_before_potting_n_m(n_m); });
  PutWithPlusMinus(plan.moment_after_n_m, kAsIs, [&](double n_m) { to.set_moment_after_n_m(n_m); },
                   [&](double n_m) { to.set_moment_after_plus_minus_n_m(n_m); });
  Put(plan.moment_with_one_more_n_m, kAsIs, [&](double n_m) { to.set_moment_with_one_more_n_m(n_m); });
  Put(plan.stop_short_at_tip_kg, kGrams, [&](double g) { to.set_stop_short_at_tip_g(g); });
  Put(plan.balance_after_m, kMm, [&](double mm) { to.set_balance_after_mm(mm); });
}

void ReportCounterweights(const CounterweightPlan& plan, v1::CounterweightPlan& to) {
  to.set_part(plan.part);
  if (plan.planned) to.set_count_planned(*plan.planned);
  to.set_unit_mass_g(plan.unit_kg.value() * kGrams);
  to.set_potted(WhatRestsOnCalculation(plan));
  if (plan.stack) {
    to.set_fit(plan.stack->fit());
    to.set_side_by_side(plan.stack->side_by_side());
  }
  if (plan.status) {
    to.set_status(StatusWord(*plan.status));
    to.set_confidence(ConfidenceWord(plan.confidence));
  }
  if (plan.count) {
    to.set_count(*plan.count);
    to.set_mass_g(*plan.count * plan.unit_kg.value() * kGrams);
    to.set_potting_g(plan.stack->Potting(*plan.count).mass_kg * kGrams);
    to.set_potting_ml(plan.stack->PottingVolume(*plan.count) * kMl);
  }
  if (plan.count_if_potting_ignored) to.set_count_if_potting_ignored(*plan.count_if_potting_ignored);
  ReportMoments(plan, to);
  Put(plan.added_kg, kGrams, [&](double g) { to.set_added_mass_g(g); });
  Put(plan.added_inertia_kg_m2, kAsIs, [&](double value) { to.set_added_inertia_kg_m2(value); });
}

}  // namespace

void ReportBalance(const BalanceAnswers& answers, v1::BalanceReport& report) {
  PutWithPlusMinus(answers.mass_kg, kGrams, [&](double g) { report.set_mass_g(g); },
                   [&](double g) { report.set_mass_plus_minus_g(g); });
  PutWithPlusMinus(answers.balance_m, kMm, [&](double mm) { report.set_balance_from_butt_mm(mm); },
                   [&](double mm) { report.set_balance_from_butt_plus_minus_mm(mm); });
  Put(answers.mass_with_reel_kg, kGrams, [&](double g) { report.set_mass_with_reel_g(g); });
  PutWithPlusMinus(answers.balance_with_reel_m, kMm, [&](double mm) { report.set_balance_with_reel_mm(mm); },
                   [&](double mm) { report.set_balance_with_reel_plus_minus_mm(mm); });
  PutWithPlusMinus(answers.moment_about_hold_n_m, kAsIs, [&](double n_m) { report.set_moment_about_hold_n_m(n_m); },
                   [&](double n_m) { report.set_moment_about_hold_plus_minus_n_m(n_m); });
  Put(answers.inertia_about_hold_kg_m2, kAsIs, [&](double value) { report.set_inertia_about_hold_kg_m2(value); });
  Put(answers.swing_inertia_kg_m2, kAsIs, [&](double value) { report.set_swing_inertia_kg_m2(value); });
  for (const Contribution& part : answers.parts) ReportContribution(part, *report.add_parts());
  Put(answers.remainder_kg, kGrams, [&](double g) { report.set_remainder_g(g); });
  if (answers.mass_kg) report.set_rests_on(RestsOnWord(answers.rests_on));
  if (answers.aim) {
    report.set_aim_from_butt_mm(answers.aim->at_m.value() * kMm);
    report.set_aim(AimWord(answers.aim->kind));
  }
  if (answers.counterweights) ReportCounterweights(*answers.counterweights, *report.mutable_counterweights());
  for (const BalanceRemedy& remedy : answers.instead) {
    v1::BalanceRemedy& to = *report.add_instead();
    to.set_kind(RemedyWord(remedy.kind));
    to.set_what(remedy.what);
    Put(remedy.mass_kg, kGrams, [&](double g) { to.set_mass_g(g); });
    Put(remedy.longer_m, kMm, [&](double mm) { to.set_longer_mm(mm); });
    to.set_text(remedy.text);
  }
}

}  // namespace withy
