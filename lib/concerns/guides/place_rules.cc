#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::guides {
namespace {

constexpr Code kPlaceUnknown = {
    .name = "guides/place-unknown",
    .severity = Severity::kCannotTell,
    .summary = "A guide has no place on the rod yet",
    .why = "Spacing, wraps, wrapping thread and balance all need to know where it stands.",
    .action =
        "Tape it on, load the rod, move it until the line follows the bend, and enter the distance from the "
        "tip-top's ring centre in `from_tip`.",
};

void JudgePlaceUnknown(const View& view, std::vector<Finding>& findings) {
  for (const Guide& guide : view.rod.guides) {
    if (guide.from_tip) continue;
    findings.push_back(
        MakeFinding(kPlaceUnknown, guide.at, absl::StrFormat("where '%s' stands is not known", guide.id)));
  }
}

constexpr Code kOffBlank = {
    .name = "guides/off-blank",
    .severity = Severity::kError,
    .summary = "A guide stands where there is no blank",
    .why = "The distance is longer than the rod, in another unit, or measured from another point.",
    .action = "Measure from the tip-top's ring centre to this ring's centre again.",
};

void JudgeOffBlank(const View& view, std::vector<Finding>& findings) {
  for (const Guide& guide : view.rod.guides) {
    for (const Origin origin : OriginsOf(view.rod)) {
      const std::optional<Span> blank = BlankOn(origin, view.rod), ring = SpanOn(origin, guide.ring, 0);
      if (!blank || !ring || (ring->start >= blank->start && ring->start <= blank->end)) continue;
      const bool behind = ring->start < blank->start;
      const double off_mm = (behind ? blank->start - ring->start : ring->start - blank->end) * 1000;
      findings.push_back(AtGuide(view, kOffBlank, guide,
                                 absl::StrFormat("'%s' would stand %.1f mm %s of the blank", guide.id, off_mm,
                                                 behind ? "behind the butt end" : "beyond the tip end"),
                                 {{"place_mm", ring->start * 1000},
                                  {"blank_butt_mm", blank->start * 1000},
                                  {"blank_tip_mm", blank->end * 1000}}));
      break;
    }
  }
}

constexpr Code kOnJoint = {
    .name = "guides/on-joint",
    .severity = Severity::kError,
    .summary = "The foot of a guide bridges a joint of the blank",
    .why = "Wrapped down on both sections it ties them together, and the rod no longer comes apart.",
    .action = "Move the guide to one side of the joint, feet and wraps included.",
};

void JudgeOnJoint(const View& view, std::vector<Finding>& findings) {
  const std::vector<Joint>& joints = view.rod.blank.joints;
  std::vector<Placed> seams;
  for (int i = 0; i < static_cast<int>(joints.size()); ++i) {
    const std::optional<Span> seam = SeamOn(Origin::kOnBlank, view.rod, joints[i]);
    if (seam) seams.push_back({i, *seam});
  }
  const SpanIndex index(std::move(seams));
  for (const Guide& guide : view.rod.guides) {
    const std::optional<Span> feet = FeetOn(Origin::kOnBlank, guide);
    const std::optional<int> hit = feet ? index.Under(*feet) : std::nullopt;
    if (!hit) continue;
    const double seam_mm = SeamOn(Origin::kOnBlank, view.rod, joints[*hit])->start * 1000;
    findings.push_back(AtGuide(view, kOnJoint, guide,
                               absl::StrFormat("'%s' has its feet across joint '%s', %.1f mm along the blank", guide.id,
                                               joints[*hit].id, seam_mm),
                               {{"on_blank_mm", seam_mm}}));
    findings.back().related.push_back(joints[*hit].at);
  }
}

constexpr Code kUnderHandle = {
    .name = "guides/under-handle",
    .severity = Severity::kError,
    .summary = "A guide stands where the handle is",
    .why = "Its foot would lie under a grip, or in the way of a hood that must open.",
    .action = "Move the guide towards the tip, or shorten what is in front of the reel.",
};

void JudgeUnderHandle(const View& view, std::vector<Finding>& findings) {
  const std::vector<Part>& parts = view.rod.handle.parts;
  std::vector<Placed> placed;
  for (int i = 0; i < static_cast<int>(parts.size()); ++i) {
    if (!parts[i].length) continue;
    const Length reach =
        parts[i].length->value + (parts[i].loose && parts[i].travel ? parts[i].travel->value : Length());
    const std::optional<Span> span = SpanOn(Origin::kFromButt, parts[i].start, reach.meters());
    if (span) placed.push_back({i, *span});
  }
  const SpanIndex index(std::move(placed));
  for (const Guide& guide : view.rod.guides) {
    const std::optional<Span> feet = FeetOn(Origin::kFromButt, guide);
    const std::optional<int> hit = feet ? index.Under(*feet) : std::nullopt;
    if (!hit) continue;
    findings.push_back(AtGuide(
        view, kUnderHandle, guide,
        absl::StrFormat("'%s' would stand at %.1f mm, where '%s' %s", guide.id, guide.ring.from_butt_m->value() * 1000,
                        parts[*hit].id, parts[*hit].loose ? "opens to" : "is"),
        {{"from_butt_mm", guide.ring.from_butt_m->value() * 1000}}));
    findings.back().related.push_back(parts[*hit].at);
  }
}

constexpr Code kReelDistance = {
    .name = "guides/reel-distance",
    .severity = Severity::kWarning,
    .summary = "The butt guide stands too close to the reel",
    .why =
        "The line leaves a spool to the left and right, or in wide loops, and needs room to run together before "
        "the first ring from the reel.",
    .action = "Measure both places again: the guide's from the tip-top's ring, the reel's foot from the butt end.",
};

// Common practice, no source: shorter than any rod wants, ice rods included.
constexpr Length kLeastDistance = Length::Mm(150);

// From the middle of the reel's foot to the butt guide's ring, in mm; unset where it cannot be told.
std::optional<double> ReelDistance(const View& view) {
  const std::vector<const Guide*> guides = AlongTheRod(view);
  if (guides.empty() || !view.rod.order.reel_foot_m || !guides.front()->ring.from_butt_m) return std::nullopt;
  const std::optional<Span> blank = BlankOn(Origin::kFromButt, view.rod);
  if (blank && guides.front()->ring.from_butt_m->value() < blank->start) return std::nullopt;  // told as off the blank
  return (guides.front()->ring.from_butt_m->value() - view.rod.order.reel_foot_m->value()) * 1000;
}

void JudgeReelDistance(const View& view, std::vector<Finding>& findings) {
  if (!NearTheReel(view)) return;
  const Guide& guide = *AlongTheRod(view).front();
  const double distance = *ReelDistance(view);
  findings.push_back(AtGuide(view, kReelDistance, guide,
                             absl::StrFormat("'%s' stands %.1f mm %s the middle of the reel's foot", guide.id,
                                             std::abs(distance), distance < 0 ? "behind" : "before"),
                             {{"distance_mm", distance}, {"least_mm", kLeastDistance.mm()}}));
}

}  // namespace

bool NearTheReel(const View& view) {
  const std::optional<double> distance = ReelDistance(view);
  return distance && *distance < kLeastDistance.mm();
}

std::vector<Rule<View>> PlaceRules() {
  return {{&kPlaceUnknown, JudgePlaceUnknown},
          {&kOffBlank, JudgeOffBlank},
          {&kOnJoint, JudgeOnJoint},
          {&kUnderHandle, JudgeUnderHandle},
          {&kReelDistance, JudgeReelDistance}};
}

}  // namespace withy::guides
