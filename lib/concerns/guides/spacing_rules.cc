#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::guides {
namespace {

constexpr Code kOrder = {
    .name = "guides/order",
    .severity = Severity::kWarning,
    .summary = "The guides are not listed from the butt to the tip",
    .why =
        "A guide out of its place in the list is mostly a distance that was typed wrong; sheets and wraps follow "
        "the list.",
    .action =
        "Correct the distance, or put the guide where it belongs in the list. `from_tip` grows towards the "
        "butt.",
};

void JudgeOrder(const View& view, std::vector<Finding>& findings) {
  const Guide* before = nullptr;
  for (const Guide& guide : view.rod.guides) {
    if (!guide.from_tip) continue;
    if (before != nullptr && guide.from_tip->value > before->from_tip->value) {
      const double here = guide.from_tip->value.mm(), there = before->from_tip->value.mm();
      findings.push_back(
          AtGuide(view, kOrder, guide,
                  absl::StrFormat("'%s' at %.1f mm is listed after '%s' at %.1f mm", guide.id, here, before->id, there),
                  {{"from_tip_mm", here}, {"before_mm", there}}));
    }
    before = &guide;
  }
}

constexpr Code kTooClose = {
    .name = "guides/too-close",
    .severity = Severity::kError,
    .summary = "The feet of two guides overlap",
    .why = "Two feet cannot be wrapped in one place.",
    .action = "Move one of the guides, or turn a single foot the other way.",
};

void JudgeTooClose(const View& view, std::vector<Finding>& findings) {
  const std::vector<Guide>& guides = view.rod.guides;
  std::vector<Placed> placed;
  for (int i = 0; i < static_cast<int>(guides.size()); ++i) {
    // all guides have the same origins: their datum is the tip-top
    std::optional<Span> feet = FeetOn(Origin::kOnBlank, guides[i]);
    if (!feet) feet = FeetOn(Origin::kFromButt, guides[i]);
    if (feet) placed.push_back({i, *feet});
  }
  std::vector<Span> spans(guides.size());
  for (const Placed& thing : placed) spans[thing.index] = thing.span;
  for (const auto& [first, second] : Overlaps(placed)) {
    const double distance = (guides[first].from_tip->value - guides[second].from_tip->value).mm();
    const double shared = (std::min(spans[first].end, spans[second].end) - spans[second].start) * 1000;
    findings.push_back(AtGuide(view, kTooClose, guides[second],
                               absl::StrFormat("'%s' and '%s' are %.1f mm apart; their feet overlap by %.1f mm",
                                               guides[first].id, guides[second].id, distance, shared),
                               {{"distance_mm", distance}, {"overlap_mm", shared}}));
    findings.back().related.push_back(guides[first].at);
  }
}

constexpr Code kSpacing = {
    .name = "guides/spacing",
    .severity = Severity::kWarning,
    .summary = "The spacing of the guides grows towards the tip",
    .why =
        "A rod bends most towards its tip and needs its guides closest there. A spacing that is much longer than "
        "the one behind it is mostly a guide that was typed or marked wrong; where it is not, the line cuts the "
        "corner.",
    .action =
        "Measure this guide's distance from the tip-top's ring again. Where the place was found on the loaded "
        "rod, waive the finding with that reason.",
};

// A quarter longer (common practice, no source): less is what a guide moved off a joint makes.
constexpr double kGrowth = 1.25;

void JudgeSpacing(const View& view, std::vector<Finding>& findings) {
  const std::vector<const Guide*> guides = AlongTheRod(view);
  for (std::size_t i = 1; i < guides.size(); ++i) {
    const double here = guides[i]->from_tip->value.mm();
    const double behind = guides[i - 1]->from_tip->value.mm() - here;
    const double ahead = i + 1 < guides.size() ? here - guides[i + 1]->from_tip->value.mm() : here;
    if (!(behind > 0) || ahead <= kGrowth * behind + 1e-6) continue;
    findings.push_back(AtGuide(
        view, kSpacing, *guides[i],
        absl::StrFormat("%.1f mm from '%s' towards the tip, after %.1f mm behind it", ahead, guides[i]->id, behind),
        {{"ahead_mm", ahead}, {"behind_mm", behind}}));
  }
}

}  // namespace

std::vector<Rule<View>> SpacingRules() {
  return {{&kOrder, JudgeOrder}, {&kTooClose, JudgeTooClose}, {&kSpacing, JudgeSpacing}};
}

}  // namespace withy::guides
