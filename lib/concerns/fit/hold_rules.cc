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

constexpr Code kReelSeatOutside = {
    .name = "fit/reel-seat-outside",
    .severity = Severity::kError,
    .summary = "A handle is shorter than the reel seat in it",
    .why = "Screw thread or neck would lie where there is no handle: a length was misread, is in another unit or is of "
           "another part, and the arbors under it are planned from it.",
    .action = "Measure the part, its screw thread and its neck again, from the part's own butt end.",
};

// Rounding.
constexpr double kBeyond_mm = 0.1;

void JudgeWithinPart(const Part& part, const Known<Length>& known, const char* what, const char* number,
                     std::vector<Finding>& findings) {
  const double length_mm = part.length->value.mm();
  if (known.value.mm() >= 0 && known.value.mm() <= length_mm + kBeyond_mm) return;
  findings.push_back(MakeFinding(
      kReelSeatOutside, known.at,
      absl::StrFormat("%s of '%s': %.1f mm, and the part is %.1f mm long", what, part.id, known.value.mm(), length_mm),
      {{number, known.value.mm()}, {"part_mm", length_mm}}));
}

void JudgeReelSeatOutside(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.length) continue;
    if (part.screw_thread_length) {
      JudgeWithinPart(part, *part.screw_thread_length, "screw thread", "screw_thread_mm", findings);
    }
    if (part.neck) JudgeWithinPart(part, *part.neck, "neck", "neck_mm", findings);
    const Part* host = part.on.empty() ? nullptr : view.rod.FindPart(part.on);
    if (part.kind != "reel_seat" || host == nullptr || !host->length) continue;
    const double seat_mm = part.length->value.mm(), host_mm = host->length->value.mm();
    if (seat_mm <= host_mm + kBeyond_mm) continue;
    findings.push_back(MakeFinding(
        kReelSeatOutside, part.length->at,
        absl::StrFormat("'%s' is %.1f mm long, and '%s', which it sits on, %.1f mm", part.id, seat_mm, host->id, host_mm),
        {{"reel_seat_mm", seat_mm}, {"part_mm", host_mm}}));
    findings.back().related.push_back(host->at);
  }
}

}  // namespace

std::vector<Rule<View>> HoldRules() {
  return {{&kBondMissing, JudgeBondMissing},
          {&kFootCenterOutside, JudgeFootCenterOutside},
          {&kReelSeatOutside, JudgeReelSeatOutside},
          {&kReelWithoutReelSeat, JudgeReelWithoutReelSeat}};
}

}  // namespace withy::fit
