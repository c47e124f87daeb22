#include "withy/fit/cut_plan.h"

#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "plan_basis.h"

namespace withy {
namespace {

// 1/8 in (common practice, no source), where the order names no tolerance.
constexpr Length kTolerance = Length::Inches(0.125);
// A micrometre: the same length in two units.
constexpr double kSame_m = 1e-6;

// What stands between the design and its finished length, the first thing first.
std::string WhatTellsTheLength(const Rod& rod) {
  if (!rod.not_understood.empty()) return "make the log entry understood that may be a cut";
  if (!rod.blank.length_m && rod.rest_basis != RestBasis::kDryFit) {
    return "measure the sections, and how far they seat in one another";
  }
  if (!rod.blank_tip_m) return rod.rest_measure;
  if (!rod.tip_top) return "describe the tip-top: it lengthens the rod";
  return "measure the tip-top from the tip end of its tube to its outermost point (tip_top.end_beyond_tube)";
}

}  // namespace

double LengthTolerance(const Rod& rod) {
  const Maybe<Length>& ordered = rod.order.overall_length;
  return ordered && ordered->plus_minus ? *ordered->plus_minus : kTolerance.meters();
}

std::optional<LengthVerdict> VerdictOf(const Rod& rod) {
  if (!rod.order.overall_length) return std::nullopt;
  if (!rod.overall_m) return LengthVerdict::kCannotTell;
  // worked out past a dry fit that cannot be
  const bool past_fit = rod.rest_basis == RestBasis::kLaw && rod.rest_law && rod.rest_law->Contradicted();
  if (past_fit) return LengthVerdict::kCannotTell;
  const double off_m = std::abs(rod.overall_m->value() - rod.order.overall_length->value.meters());
  const double tolerance_m = LengthTolerance(rod), uncertain_m = rod.overall_m->plus_minus();
  if (off_m - uncertain_m > tolerance_m) return LengthVerdict::kMisses;
  if (off_m + uncertain_m > tolerance_m + kSame_m) return LengthVerdict::kCannotTell;
  const auto basis = fit::PlanBasisOf(rod);
  // a place that was read, or written, is not in doubt for a jump beside it
  const bool jump = rod.rest_basis == RestBasis::kLaw && basis && basis->law.JumpNear(basis->planned_m);
  return jump ? LengthVerdict::kCannotTell : LengthVerdict::kMeets;
}

std::optional<CutPlan> PlanCut(const Rod& rod) {
  const auto basis = fit::PlanBasisOf(rod);
  if (!basis) return std::nullopt;
  CutPlan plan;
  plan.law = basis->law.from();
  plan.done_m = basis->done_m;
  plan.planned_m = basis->planned_m;
  plan.limit_m = basis->limit_m;
  plan.beyond_m = basis->beyond_m;
  if (basis->host != nullptr) plan.host = basis->law.host();
  plan.jump_near = basis->law.JumpNear(basis->planned_m);
  if (plan.law == RestLaw::From::kContact && !basis->law.seen().empty()) plan.tighter_m = basis->law.tighter_m();
  plan.contradicted = basis->law.Contradicted();
  plan.now = fit::RestingNow(*basis);
  plan.planned = fit::RestingAsPlanned(*basis);
  fit::AimAtTarget(*basis, plan);
  plan.lengths = fit::LengthsOf(*basis);
  plan.dry_fits = fit::DryFitsOf(*basis);
  if (plan.outcome != CutPlan::Outcome::kDoesNotEnter && !plan.contradicted) plan.tip = fit::TipLeverOf(*basis);
  fit::PlanStages(*basis, plan);
  plan.remedies = fit::RemediesOf(*basis, plan);
  return plan;
}

std::string MeasureForLength(const Rod& rod, const std::optional<CutPlan>& plan) {
  if (!rod.overall_m) return WhatTellsTheLength(rod);
  if (plan && plan->contradicted && plan->host >= 0) {
    return absl::StrFormat(
        "push '%s' home once more and log the fit, and read its bore again: the latest dry fit is none that bore and "
        "blank as read can have",
        rod.handle.parts[plan->host].id);
  }
  const bool open = VerdictOf(rod) == LengthVerdict::kCannotTell || (plan && plan->no_sure_cut);
  if (!open) return "";
  if (plan && plan->host >= 0) {
    const std::string& host = rod.handle.parts[plan->host].id;
    if (plan->dry_fits.empty() && rod.rest_basis == RestBasis::kLaw) {
      return absl::StrFormat(
          "try '%s' on dry before any cut, and log how far it is from its butt end to the blank's tip end", host);
    }
    if (rod.rest_basis == RestBasis::kLaw && !plan->no_sure_cut) {
      return absl::StrFormat("take the next cut of the plan, try '%s' on dry again and log the fit", host);
    }
    return absl::StrFormat("push '%s' home once more and read its dry fit more closely, with `plus_minus`", host);
  }
  return "measure the blank and the tip-top more closely, and give `plus_minus` with it";
}

}  // namespace withy
