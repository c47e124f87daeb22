#include <algorithm>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kBondMissing = {
    .name = "fit/bond-missing",
    .severity = Severity::kAdvice,
    .summary = "Nothing says what keeps a part in its place",
    .why =
        "What is to be glued needs its adhesive ready and its surfaces prepared; what is not must be held by "
        "something else.",
    .action =
        "Name the adhesive in `bond`, or say in `held_by` what keeps it (wrap, shrink, press, screw_thread, "
        "clamp).",
};

void JudgeBondMissing(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.bond.empty() || !part.held_by.empty() || part.loose || part.fitting != FitKind::kRigid) continue;
    findings.push_back(MakeFinding(kBondMissing, part.at, absl::StrFormat("nothing says what holds '%s'", part.id)));
  }
  if (view.rod.tip_top && view.rod.tip_top->bond.empty()) {
    findings.push_back(MakeFinding(kBondMissing, view.rod.tip_top->at, "nothing says what holds the tip-top"));
  }
}

constexpr Code kFootCenterOutside = {
    .name = "fit/foot-center-outside",
    .severity = Severity::kError,
    .summary = "The reel's foot would lie outside its reel seat",
    .why = "Reach, balance and the distance to the butt guide are all counted from the middle of the reel's foot.",
    .action = "Measure `foot_center` from the part's own butt end to the middle of the foot with the reel on.",
};

void JudgeFootCenterOutside(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.foot_center || !part.length) continue;
    const double center = part.foot_center->value.mm(), length = part.length->value.mm();
    if (center >= 0 && center <= length) continue;
    findings.push_back(
        MakeFinding(kFootCenterOutside, part.foot_center->at,
                    absl::StrFormat("%.1f mm along '%s', which is %.1f mm long", center, part.id, length),
                    {{"foot_center_mm", center}, {"part_mm", length}}));
  }
}

constexpr Code kReelWithoutReelSeat = {
    .name = "fit/reel-without-reel-seat",
    .severity = Severity::kWarning,
    .summary = "A reel is ordered, and no part of the handle holds one",
    .why = "Where the reel sits decides the grips, the balance and the butt guide.",
    .action = "Add a reel seat or a one-piece handle, or take the reel out of `intent`.",
};

void JudgeReelWithoutReelSeat(const View& view, std::vector<Finding>& findings) {
  const std::vector<Part>& parts = view.rod.handle.parts;
  if (!view.rod.order.has_reel || parts.empty()) return;
  const bool held = std::any_of(parts.begin(), parts.end(), [](const Part& part) {
    return part.has_seat || part.kind == "reel_seat" || part.kind == "one_piece_handle";
  });
  if (held) return;
  findings.push_back(MakeFinding(kReelWithoutReelSeat, FieldPath().Field("intent").Field("reel"),
                                 "no part of the handle holds the reel"));
}

}  // namespace

std::vector<Rule<View>> HoldRules() {
  return {{&kBondMissing, JudgeBondMissing},
          {&kFootCenterOutside, JudgeFootCenterOutside},
          {&kReelWithoutReelSeat, JudgeReelWithoutReelSeat}};
}

}  // namespace withy::fit
