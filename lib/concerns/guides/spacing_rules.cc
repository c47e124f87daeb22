#include <algorithm>
#include <utility>

#include "absl/strings/str_format.h"
#include "places.h"
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
  const Places places(view.rod.guides);
  if (places.InOrder()) return;
  const std::optional<int> culprit = places.Culprit();
  const Guide* before = nullptr;
  for (int i = 0; i < static_cast<int>(view.rod.guides.size()); ++i) {
    const Guide& guide = view.rod.guides[i];
    if (!guide.from_tip) continue;
    const Guide* last = std::exchange(before, &guide);
    if (last == nullptr || guide.from_tip->value <= last->from_tip->value) continue;
    const bool last_is_wrong = culprit && *culprit != i;
    const Guide &wrong = last_is_wrong ? *last : guide, &other = last_is_wrong ? guide : *last;
    const double here = wrong.from_tip->value.mm(), there = other.from_tip->value.mm();
    findings.push_back(AtGuide(view, kOrder, wrong,
                               absl::StrFormat("'%s' at %.1f mm is listed %s '%s' at %.1f mm", wrong.id, here,
                                               last_is_wrong ? "before" : "after", other.id, there),
                               {{"from_tip_mm", here}, {last_is_wrong ? "after_mm" : "before_mm", there}}));
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

void Add(const View& view, const Places& places, int i, std::vector<Finding>& findings) {
  const std::optional<double> ahead = places.Ahead(i), behind = places.Ahead(i - 1);
  std::string message = absl::StrFormat("'%s' stands", view.rod.guides[i].id);
  std::vector<Number> numbers;
  if (ahead) {
    message += absl::StrFormat(" %.1f mm from the next one towards the tip", *ahead);
    numbers.push_back({"ahead_mm", *ahead});
  }
  if (behind) {
    message += absl::StrFormat("%s %.1f mm from the one behind it", ahead ? " and" : "", *behind);
    numbers.push_back({"behind_mm", *behind});
  }
  findings.push_back(AtGuide(view, kSpacing, view.rod.guides[i], std::move(message), std::move(numbers)));
}

void JudgeSpacing(const View& view, std::vector<Finding>& findings) {
  const Places places(view.rod.guides);
  if (!places.InOrder()) return;  // told as such; spacings of a list in another order say nothing
  if (const std::optional<int> culprit = places.Culprit()) return Add(view, places, *culprit, findings);
  for (int i = 0; i < static_cast<int>(view.rod.guides.size()); ++i) {
    if (places.Grows(i)) Add(view, places, i, findings);
  }
}

}  // namespace

std::vector<Rule<View>> SpacingRules() {
  return {{&kOrder, JudgeOrder}, {&kTooClose, JudgeTooClose}, {&kSpacing, JudgeSpacing}};
}

}  // namespace withy::guides
