#include "withy/fit/span.h"

#include <algorithm>

namespace withy {
namespace {

void SortByStart(std::vector<Placed>& things) {
  std::stable_sort(things.begin(), things.end(),
                   [](const Placed& a, const Placed& b) { return a.span.start < b.span.start; });
}

}  // namespace

std::vector<Origin> OriginsOf(const Rod& rod) {
  if (rod.blank_butt_m) return {Origin::kFromButt};
  return {Origin::kFromButt, Origin::kOnBlank};
}

std::optional<Span> SpanOn(Origin origin, const Along& start, double length_m) {
  const std::optional<Uncertain>& begin = origin == Origin::kFromButt ? start.from_butt_m : start.on_blank_m;
  if (!begin || !(length_m >= 0)) return std::nullopt;
  return Span{begin->value(), begin->value() + length_m};
}

std::optional<Span> BlankOn(Origin origin, const Rod& rod) {
  if (!rod.blank.length_m) return std::nullopt;
  if (origin == Origin::kOnBlank) return Span{0, rod.blank.length_m->value()};
  if (!rod.blank_butt_m) return std::nullopt;
  return Span{rod.blank_butt_m->value(), rod.blank_butt_m->value() + rod.blank.length_m->value()};
}

std::optional<Span> SeamOn(Origin origin, const Rod& rod, const Joint& joint) {
  if (!joint.upper_start_m || !joint.lower_end_m) return std::nullopt;
  const std::optional<Span> blank = BlankOn(origin, rod);
  if (!blank) return std::nullopt;
  Span seam{std::min(*joint.lower_end_m, *joint.upper_start_m), std::max(*joint.lower_end_m, *joint.upper_start_m)};
  // where one section goes into the other, the outer one's mouth is what shows
  if (joint.kind == JointKind::kTipOverButt) seam.start = seam.end = *joint.upper_start_m;
  if (joint.kind == JointKind::kPutIn) seam.start = seam.end = *joint.lower_end_m;
  return Span{blank->start + seam.start, blank->start + seam.end};
}

std::vector<std::pair<int, int>> Overlaps(std::vector<Placed> things) {
  SortByStart(things);
  std::vector<std::pair<int, int>> pairs;
  for (std::size_t i = 1, furthest = 0; i < things.size(); ++i) {
    const double shared = std::min(things[furthest].span.end, things[i].span.end) - things[i].span.start;
    if (shared > kTouch_m) pairs.emplace_back(things[furthest].index, things[i].index);
    if (things[i].span.end > things[furthest].span.end) furthest = i;
  }
  return pairs;
}

SpanIndex::SpanIndex(std::vector<Placed> things) : things_(std::move(things)) {
  SortByStart(things_);
  for (int i = 0; i < static_cast<int>(things_.size()); ++i) {
    const bool further = i == 0 || things_[i].span.end > things_[furthest_.back()].span.end;
    furthest_.push_back(further ? i : furthest_.back());
  }
}

std::optional<int> SpanIndex::Under(const Span& span) const {
  const auto after = std::lower_bound(things_.begin(), things_.end(), span.end - kTouch_m,
                                      [](const Placed& thing, double x) { return thing.span.start < x; });
  if (after == things_.begin()) return std::nullopt;
  const Placed& candidate = things_[furthest_[after - things_.begin() - 1]];
  if (candidate.span.end <= span.start + kTouch_m) return std::nullopt;
  return candidate.index;
}

}  // namespace withy
