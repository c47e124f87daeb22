// Where no cut gives the length ordered: what blocks it, and the ways out, cheapest first.
#include <cmath>
#include <string>

#include "absl/strings/str_format.h"
#include "both_units.h"
#include "plan_basis.h"
#include "withy/units/format.h"

namespace withy::fit {
namespace {

// No more comes off a tip before it is another rod (common practice, no source).
constexpr double kMostOffTip_m = 0.1524;

std::string BothOf(double m) {
  return Both(Length::Meters(m));
}

// Rounded up, for what has to be reached.
std::string NoLessThan(double m) {
  constexpr double kHair = 1e-6;  // of a step: rounding of what is a whole number of steps
  const auto up = [](double steps) { return std::ceil(steps - kHair); };
  const Length mm = Length::Meters(up(m * 1e4) / 1e4), sixteenths = Length::Meters(up(m / 0.0254 * 16) / 16 * 0.0254);
  return FormatMm(mm, 1) + " (" + FormatInches(sixteenths, 16) + ")";
}

// What the ways out are judged by.
struct Miss {
  const PlanBasis& basis;
  const CutPlan& plan;
  double now_m = 0;     // overall, as the rod now is
  double target_m = 0;  // overall
  FieldPath blocked_by = {};
  std::vector<Remedy> remedies = {};

  void Add(Remedy::Kind kind, std::string text, double overall_m) {
    remedies.push_back({kind, blocked_by, std::move(text), overall_m});
  }
};

void ByAnotherCut(Miss& miss) {
  const bool jump = miss.plan.outcome == CutPlan::Outcome::kJump;
  const bool beyond = miss.plan.outcome == CutPlan::Outcome::kTargetTooShort;
  if (beyond && miss.plan.limit_m > miss.basis.done_m) {
    miss.Add(Remedy::Kind::kCut,
             absl::StrFormat("Cut the butt by %s in all, which is half of the section: the rod comes out at %s.",
                             BothOf(miss.plan.limit_m), BothOf(*miss.plan.nearest_above_m)),
             *miss.plan.nearest_above_m);
  }
  if (!jump || !miss.plan.nearest_below_m || !miss.basis.law.insertion()) return;
  const auto cut = miss.basis.law.LeastCut(*miss.basis.target_m);
  if (!cut) return;
  miss.Add(Remedy::Kind::kCut,
           absl::StrFormat("Cut the butt by %s in all: the butt passes the shoulder, and the rod comes out at %s.",
                           NoLessThan(*cut), BothOf(*miss.plan.nearest_below_m)),
           *miss.plan.nearest_below_m);
}

// The most that can come off the butt before it passes the shoulder, whatever the diameters leave open; in whole
// millimetres, one of them left for the saw (common practice, no source). The length just before a jump is never had,
// only come near to.
struct BeforeJump {
  double cut_m = 0, margin_m = 0, overall_m = 0;
};

std::optional<BeforeJump> CutBeforeJump(const PlanBasis& basis) {
  constexpr double kMark_m = 0.001;
  const RestLaw& law = basis.law;
  const auto jump_m = law.insertion() != nullptr ? law.LeastCut(*basis.target_m) : std::nullopt;
  if (!jump_m) return std::nullopt;
  const auto earliest_m = law.insertion()->Thicker(-law.DiameterErrorAt(*jump_m)).LeastCut(*basis.target_m);
  const double cut_m = std::floor((earliest_m.value_or(0) - kMark_m) * 1000) / 1000;
  if (cut_m < basis.done_m) return std::nullopt;
  return BeforeJump{cut_m, *jump_m - cut_m, *basis.Overall(law.LengthAt(cut_m).value)};
}

void OffTheTip(Miss& miss, const std::string& what, double off_m, const std::string& then) {
  if (!(off_m > 0) || off_m > kMostOffTip_m) return;
  std::string text = absl::StrFormat("%s %s off the tip%s.", what, BothOf(off_m), then);
  const TipTop* tip_top = miss.basis.rod.tip_top ? &*miss.basis.rod.tip_top : nullptr;
  if (tip_top != nullptr && miss.basis.rod.FindClosed(Closed::Kind::kGlued, tip_top->id) != nullptr) {
    text += " The tip-top is glued on and has to be warmed off first.";
  }
  miss.Add(Remedy::Kind::kTip, std::move(text), miss.target_m);
}

void ByTheTipBeforeTheJump(Miss& miss) {
  const auto before = CutBeforeJump(miss.basis);
  if (!before) return;
  OffTheTip(miss,
            absl::StrFormat("Cut the butt by %s in all, %.0f mm short of where it passes the shoulder (no nearer: that "
                            "place is not known better), and then",
                            BothOf(before->cut_m), before->margin_m * 1000),
            before->overall_m - miss.target_m, "");
}

void ByTheTip(Miss& miss) {
  if (miss.plan.outcome == CutPlan::Outcome::kJump) return ByTheTipBeforeTheJump(miss);
  if (!miss.plan.tip) return;
  std::string then;
  if (miss.plan.tip->tube_in64) {
    then += absl::StrFormat("; the tip-top then needs a tube of %s in",
                            FormatIn64(Length::In64(*miss.plan.tip->tube_in64)));
  }
  if (miss.plan.tip->stiffer) then += absl::StrFormat(", and the tip is %.2f times as stiff", *miss.plan.tip->stiffer);
  OffTheTip(miss, "Cut", miss.now_m - miss.target_m, then);
}

// Where the blank is held out of the handle by what is missing, there must be enough of it left inside.
constexpr double kLeastHeld = 0.5;

// How deep the blank is in the handle once the butt has passed the shoulder.
std::optional<double> DepthBeyondJump(const Miss& miss) {
  const auto cut_m = miss.basis.law.LeastCut(*miss.basis.target_m);
  if (!cut_m || miss.basis.host == nullptr || !miss.basis.host->length) return std::nullopt;
  return miss.basis.host->length->value.meters() - miss.basis.law.RestAt(*cut_m);
}

void ByAPlug(Miss& miss) {
  const bool jump = miss.plan.outcome == CutPlan::Outcome::kJump && miss.plan.nearest_below_m;
  const double missing_m = miss.target_m - (jump ? *miss.plan.nearest_below_m : miss.now_m);
  if (!(missing_m > 0) || miss.plan.outcome == CutPlan::Outcome::kClosed) return;
  if (miss.plan.host < 0) {
    miss.Add(Remedy::Kind::kPlug,
             absl::StrFormat("Lengthen the butt by %s with a plug behind the blank or a longer butt cap.",
                             BothOf(missing_m)),
             miss.target_m);
    return;
  }
  const std::optional<double> depth_m = jump ? DepthBeyondJump(miss) : miss.plan.now.depth_m;
  if (!depth_m || *depth_m - missing_m < kLeastHeld * *depth_m) return;
  miss.Add(Remedy::Kind::kPlug,
           absl::StrFormat("%s plug behind the butt face in '%s' that holds the blank out by %s; %.0f mm of it stay "
                           "inside, and arbors have to centre it.",
                           jump ? "Cut to where the butt passes the shoulder, and put a" : "Put a", miss.basis.host->id,
                           BothOf(missing_m), (*depth_m - missing_m) * 1000),
           miss.target_m);
}

void ByTakingItOff(Miss& miss) {
  if (miss.basis.closed == nullptr) return;
  miss.Add(
      Remedy::Kind::kRemove,
      absl::StrFormat("Take '%s' off again, with heat or by cutting it away, log it as removed, and plan the cut anew: "
                      "%s are to %s.",
                      miss.basis.closed->id, BothOf(std::abs(miss.now_m - miss.target_m)),
                      miss.now_m > miss.target_m ? "come off" : "be added"),
      miss.target_m);
}

void ByTheOrder(Miss& miss) {
  const std::optional<double>& below = miss.plan.nearest_below_m;
  const std::optional<double>& above = miss.plan.nearest_above_m;
  if (!below && !above) return;
  const bool take_below = below && (!above || miss.target_m - *below <= *above - miss.target_m);
  const double nearest_m = take_below ? *below : *above;
  miss.Add(Remedy::Kind::kOrder,
           absl::StrFormat("Agree on %s instead of %s.", BothOf(nearest_m), BothOf(miss.target_m)), nearest_m);
}

}  // namespace

std::vector<Remedy> RemediesOf(const PlanBasis& basis, const CutPlan& plan) {
  if (!plan.outcome || !basis.target_m) return {};
  if (plan.outcome == CutPlan::Outcome::kReached || plan.outcome == CutPlan::Outcome::kDoesNotEnter) return {};
  Miss miss{.basis = basis, .plan = plan};
  miss.now_m = *basis.Overall(basis.Now());
  miss.target_m = *basis.Overall(*basis.target_m);
  if (plan.outcome == CutPlan::Outcome::kClosed && std::abs(miss.now_m - miss.target_m) <= basis.tolerance_m) return {};
  if (plan.closed_by) {
    miss.blocked_by = *plan.closed_by;
  } else if (plan.outcome == CutPlan::Outcome::kTargetTooLong) {
    // what is off stays off
    if (const Closed* cut = basis.rod.FindClosed(Closed::Kind::kCut, basis.butt.id, End::kButt))
      miss.blocked_by = cut->at;
  }
  ByAnotherCut(miss);
  ByTheTip(miss);
  ByAPlug(miss);
  ByTakingItOff(miss);
  ByTheOrder(miss);
  return std::move(miss.remedies);
}

}  // namespace withy::fit
