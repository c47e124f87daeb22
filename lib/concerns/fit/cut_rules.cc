#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "both_units.h"
#include "plan_basis.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kNoCutGivesLength = {
    .name = "fit/no-cut-gives-length",
    .severity = Severity::kError,
    .summary = "No cut of the butt brings the rod to the length ordered",
    .why =
        "What is off or glued does not come back, and where the butt passes a shoulder the length jumps. It is better "
        "known before the saw than after it.",
    .action = "Choose one of the ways out that the cut plan lists, or agree on a length that can be had.",
};

// The nearest length that can still be had; unset where none is.
std::optional<double> NearestMm(const CutPlan& plan, double ordered_mm) {
  std::optional<double> nearest;
  for (const auto& length_m : {plan.nearest_below_m, plan.nearest_above_m}) {
    if (!length_m) continue;
    if (!nearest || std::abs(*length_m * 1000 - ordered_mm) < std::abs(*nearest - ordered_mm))
      nearest = *length_m * 1000;
  }
  return nearest;
}

void JudgeNoCutGivesLength(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.order.overall_length || !view.answers.cut || view.answers.cut->remedies.empty()) return;
  if (!view.answers.overall_m) return;
  const CutPlan& plan = *view.answers.cut;
  const Known<Length>& ordered = *view.rod.order.overall_length;
  const std::optional<double> nearest_mm = NearestMm(plan, ordered.value.mm());
  if (!nearest_mm) return;
  const double tolerance_mm = LengthTolerance(view.rod) * 1000;
  const double uncertain_mm = view.answers.overall_m->plus_minus() * 1000;
  const double off_mm = std::abs(*nearest_mm - ordered.value.mm());
  if (off_mm <= tolerance_mm + 1e-3) return;
  Finding finding =
      MakeFinding(kNoCutGivesLength, ordered.at,
                  absl::StrFormat("%s is ordered, and the nearest that can be had is %s%s", Both(ordered.value),
                                  Both(Length::Mm(*nearest_mm)), plan.closed_by ? ": the blank is glued in" : ""),
                  {{"ordered_mm", ordered.value.mm()}, {"nearest_mm", *nearest_mm}, {"tolerance_mm", tolerance_mm}});
  if (off_mm - uncertain_mm <= tolerance_mm) finding.severity = Severity::kCannotTell;
  finding.help = plan.remedies.front().text;
  if (!plan.remedies.front().blocked_by.empty()) finding.related.push_back(plan.remedies.front().blocked_by);
  findings.push_back(std::move(finding));
}

constexpr Code kFallsThrough = {
    .name = "fit/falls-through",
    .severity = Severity::kWarning,
    .summary = "The bore of a handle never meets the blank",
    .why =
        "The blank is narrower than the bore everywhere: it goes in until its butt stands on the bottom, nothing holds "
        "it "
        "in the middle, and the length hangs on what it stands on.",
    .action = "Check the bore's diameters and their unit; else say in `stop` what the butt stands on, and plan arbors.",
};

// With the butt cut as planned, where the law of contact is all that tells its place; null otherwise.
const Insertion* InsertionAsPlanned(const std::optional<PlanBasis>& basis) {
  if (!basis || basis->rod.rest_basis != RestBasis::kLaw || basis->host == nullptr || !basis->Told(basis->planned_m))
    return nullptr;
  return basis->law.insertion();
}

void JudgeFallsThrough(const View& view, std::vector<Finding>& findings) {
  const auto basis = PlanBasisOf(view.rod);
  const Insertion* insertion = InsertionAsPlanned(basis);
  if (insertion == nullptr || basis->host->stop) return;
  const Insertion::State state = insertion->At(basis->planned_m);
  const bool only_stop = state.contacts.size() == 1 && state.contacts[0].touch == Insertion::Touch::kStop;
  if (!only_stop || !state.enters) return;
  const double narrowest_mm = insertion->bore().Min(0, insertion->bore_length()) * 1000;
  const double butt_mm = insertion->shaft().At(basis->planned_m) * 1000;
  findings.push_back(MakeFinding(kFallsThrough, basis->host->at.Field("bore"),
                                 absl::StrFormat("'%s' is nowhere narrower than %.2f mm, and the butt is %.2f mm thick",
                                                 basis->host->id, narrowest_mm, butt_mm),
                                 {{"bore_mm", narrowest_mm}, {"butt_mm", butt_mm}}));
}

constexpr Code kDoesNotEnter = {
    .name = "fit/does-not-enter",
    .severity = Severity::kError,
    .summary = "The butt does not go into its handle",
    .why = "The blank is thicker than the handle's front mouth; the two stand end to end.",
    .action =
        "Check both diameters and their units; ream the handle, take a wider one, or cut the butt to where it is "
        "thinner.",
};

void JudgeDoesNotEnter(const View& view, std::vector<Finding>& findings) {
  const auto basis = PlanBasisOf(view.rod);
  const Insertion* insertion = InsertionAsPlanned(basis);
  if (insertion == nullptr || insertion->At(basis->planned_m).enters) return;
  const double mouth_mm = insertion->bore().At(insertion->bore_length(), Profile::Limit::kLeft) * 1000;
  const double butt_mm = insertion->shaft().At(basis->planned_m) * 1000;
  findings.push_back(MakeFinding(kDoesNotEnter, basis->host->at.Field("bore"),
                                 absl::StrFormat("the mouth of '%s' is %.2f mm wide, and the butt %.2f mm thick",
                                                 basis->host->id, mouth_mm, butt_mm),
                                 {{"mouth_mm", mouth_mm}, {"butt_mm", butt_mm}}));
}

constexpr Code kOffAxis = {
    .name = "fit/off-axis",
    .severity = Severity::kWarning,
    .summary = "Play at the handle's mouth lets the blank point off the handle's axis",
    .why =
        "Half a millimetre at the mouth is centimetres at the tip. The adhesive sets wherever the rod happens to lean, "
        "and guides that are in line with the blank are then not in line with the reel.",
    .action =
        "Put an arbor at the neck that takes up the play, and look along the rod from the reel seat while it sets.",
};

// To each side, of what is ahead of the mouth: about what the eye sees along a rod (common practice, no source).
constexpr double kSeen = 1.0 / 200;

// In the front half of what is inside the handle an arbor takes the play up.
bool HeldAtTheFront(const PlanBasis& basis) {
  if (!basis.host->length) return false;
  const double mouth_m = basis.host->length->value.meters(), rest_m = basis.law.RestAt(basis.planned_m);
  return std::any_of(basis.host->arbors.begin(), basis.host->arbors.end(), [&](const Arbor& arbor) {
    return arbor.own_at &&
           arbor.own_at->value.meters() + (arbor.length ? arbor.length->value.meters() : 0) >= (mouth_m + rest_m) / 2;
  });
}

void JudgeOffAxis(const View& view, std::vector<Finding>& findings) {
  const auto basis = PlanBasisOf(view.rod);
  if (!basis || basis->host == nullptr || !view.answers.play || !view.answers.play->off_axis_m) return;
  const MouthPlay& play = *view.answers.play;
  if (*play.off_axis_m <= kSeen * play.ahead_m || HeldAtTheFront(*basis)) return;
  findings.push_back(MakeFinding(
      kOffAxis, basis->host->at,
      absl::StrFormat("%.2f mm of play at the mouth of '%s' lets the tip point up to %.0f mm off to each side",
                      play.play_m * 1000, basis->host->id, *play.off_axis_m * 1000),
      {{"play_mm", play.play_m * 1000},
       {"off_axis_mm", *play.off_axis_m * 1000},
       {"limit_mm", kSeen * play.ahead_m * 1000}}));
}

}  // namespace

std::vector<Rule<View>> CutRules() {
  return {{&kNoCutGivesLength, JudgeNoCutGivesLength},
          {&kFallsThrough, JudgeFallsThrough},
          {&kDoesNotEnter, JudgeDoesNotEnter},
          {&kOffAxis, JudgeOffAxis}};
}

}  // namespace withy::fit
