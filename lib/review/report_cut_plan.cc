// The cut plan in the report.
#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

const char* OutcomeWord(CutPlan::Outcome outcome) {
  switch (outcome) {
    case CutPlan::Outcome::kReached:
      return "reached";
    case CutPlan::Outcome::kJump:
      return "jump";
    case CutPlan::Outcome::kTargetTooLong:
      return "too long a target";
    case CutPlan::Outcome::kTargetTooShort:
      return "too short a target";
    case CutPlan::Outcome::kDoesNotEnter:
      return "does not enter";
    case CutPlan::Outcome::kClosed:
      break;
  }
  return "closed";
}

const char* VerdictWord(LengthVerdict verdict) {
  switch (verdict) {
    case LengthVerdict::kMeets:
      return "meets";
    case LengthVerdict::kMisses:
      return "misses";
    case LengthVerdict::kCannotTell:
      break;
  }
  return "cannot tell";
}

const char* TouchWord(BlankContact::Kind kind) {
  switch (kind) {
    case BlankContact::Kind::kStop:
      return "stop";
    case BlankContact::Kind::kStep:
      return "step";
    case BlankContact::Kind::kArbor:
      return "arbor";
    case BlankContact::Kind::kTaper:
      break;
  }
  return "taper";
}

const char* RemedyWord(Remedy::Kind kind) {
  switch (kind) {
    case Remedy::Kind::kCut:
      return "cut";
    case Remedy::Kind::kTip:
      return "tip";
    case Remedy::Kind::kPlug:
      return "plug";
    case Remedy::Kind::kRemove:
      return "remove";
    case Remedy::Kind::kOrder:
      break;
  }
  return "order";
}

const char* BoreWord(const Rod& rod, const CutPlan& plan) {
  if (plan.law == RestLaw::From::kDryFits) return "dry fits";
  if (plan.host < 0) return "";
  return rod.handle.parts[plan.host].bore_known == BoreKnown::kPlugs ? "plugs" : "profile";
}

void ReportLength(const LengthAtCut& at, v1::LengthAtCut& to) {
  to.set_cut_mm(at.cut_m * kMm);
  to.set_overall_mm(at.overall_m * kMm);
  Put(at.overall_before_m, kMm, [&](double mm) { to.set_overall_before_mm(mm); });
  to.set_shorter_per_mm(at.shorter_per);
}

void ReportContact(const BlankContact& contact, v1::Contact& to) {
  to.set_kind(TouchWord(contact.kind));
  Put(contact.from_m, kMm, [&](double mm) { to.set_from_mm(mm); });
  Put(contact.to_m, kMm, [&](double mm) { to.set_to_mm(mm); });
  Put(contact.bore_m, kMm, [&](double mm) { to.set_bore_mm(mm); });
  Put(contact.on_blank_m, kMm, [&](double mm) { to.set_on_blank_mm(mm); });
}

void ReportResting(const Resting& resting, v1::Resting& to) {
  Put(resting.butt_m, kMm, [&](double mm) { to.set_butt_mm(mm); });
  Put(resting.depth_m, kMm, [&](double mm) { to.set_depth_mm(mm); });
  Put(resting.shorter_per, kAsIs, [&](double ratio) { to.set_shorter_per_mm(ratio); });
  for (const BlankContact& contact : resting.contacts) ReportContact(contact, *to.add_contacts());
}

void ReportStage(const StagedCut& stage, v1::StagedCut& to) {
  to.set_take_mm(stage.take_m * kMm);
  to.set_total_mm(stage.total_m * kMm);
  to.set_leave_mm(stage.leave_m * kMm);
  to.set_expect_mm(stage.expect_m * kMm);
  to.set_expect_from_mm(stage.expect_from_m * kMm);
  to.set_expect_to_mm(stage.expect_to_m * kMm);
  Put(stage.overall_m, kMm, [&](double mm) { to.set_overall_mm(mm); });
  Put(stage.depth_mark_m, kMm, [&](double mm) { to.set_depth_mark_mm(mm); });
  to.set_decides(stage.decides);
}

void ReportDryFit(const DryFitSeen& fit, v1::DryFitSeen& to) {
  to.set_at(fit.at.ToString());
  to.set_cut_mm(fit.cut_m * kMm);
  to.set_read_mm(fit.read_m * kMm);
  Put(fit.expected_m, kMm, [&](double mm) { to.set_expected_mm(mm); });
  Put(fit.tighter_m, kMm, [&](double mm) { to.set_tighter_mm(mm); });
  to.set_rest_mm(fit.rest_m * kMm);
  Put(fit.bore_m, kMm, [&](double mm) { to.set_bore_mm(mm); });
}

void ReportRemedy(const Remedy& remedy, v1::Remedy& to) {
  to.set_kind(RemedyWord(remedy.kind));
  to.set_blocked_by(remedy.blocked_by.ToString());
  to.set_text(remedy.text);
  Put(remedy.overall_m, kMm, [&](double mm) { to.set_overall_mm(mm); });
}

void ReportTip(const TipLever& tip, v1::TipLever& to) {
  to.set_cut_mm(tip.cut_m * kMm);
  to.set_tip_diameter_mm(tip.tip_m * kMm);
  Put(tip.tube_in64, kAsIs, [&](double in64) { to.set_tube_in64(in64); });
  Put(tip.stiffer, kAsIs, [&](double factor) { to.set_stiffer(factor); });
}

void ReportPlan(const Rod& rod, const CutPlan& plan, v1::CutPlan& to) {
  if (plan.host >= 0) to.set_host(rod.handle.parts[plan.host].id);
  to.set_bore_from(BoreWord(rod, plan));
  to.set_cut_done_mm(plan.done_m * kMm);
  to.set_cut_planned_mm(plan.planned_m * kMm);
  Put(plan.cut_for_target_m, kMm, [&](double mm) { to.set_cut_for_target_mm(mm); });
  Put(plan.cut_for_target_plus_minus_m, kMm, [&](double mm) { to.set_cut_for_target_plus_minus_mm(mm); });
  if (plan.outcome) to.set_outcome(OutcomeWord(*plan.outcome));
  Put(plan.nearest_below_m, kMm, [&](double mm) { to.set_nearest_below_mm(mm); });
  Put(plan.nearest_above_m, kMm, [&](double mm) { to.set_nearest_above_mm(mm); });
  ReportResting(plan.now, *to.mutable_now());
  ReportResting(plan.planned, *to.mutable_planned());
  to.set_jump_near(plan.jump_near);
  Put(plan.tighter_m, kMm, [&](double mm) { to.set_tighter_than_read_mm(mm); });
  for (const LengthAtCut& at : plan.lengths) ReportLength(at, *to.add_lengths());
  for (const StagedCut& stage : plan.stages) ReportStage(stage, *to.add_stages());
  for (const DryFitSeen& fit : plan.dry_fits) ReportDryFit(fit, *to.add_dry_fits());
  for (const Remedy& remedy : plan.remedies) ReportRemedy(remedy, *to.add_remedies());
  if (plan.tip) ReportTip(*plan.tip, *to.mutable_tip());
}

}  // namespace

void ReportCutPlan(const Rod& rod, const FitAnswers& answers, v1::FitReport& report) {
  if (answers.cut) ReportPlan(rod, *answers.cut, *report.mutable_cut_plan());
  if (answers.verdict) report.mutable_cut_plan()->set_verdict(VerdictWord(*answers.verdict));
  if (!answers.measure.empty() && (answers.cut || answers.verdict)) {
    report.mutable_cut_plan()->set_measure(answers.measure);
  }
}

}  // namespace withy
