#include <algorithm>
#include <string_view>
#include <unordered_set>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::wraps {
namespace {

std::optional<Span> SpanOf(Origin origin, const Wrap& wrap) {
  if (!wrap.length) return std::nullopt;
  return SpanOn(origin, wrap.start, wrap.length->meters());
}

Finding AtWrap(const View& view, const Code& code, const Wrap& wrap, std::string message, std::vector<Number> numbers) {
  Finding finding = MakeFinding(code, wrap.at, std::move(message), std::move(numbers));
  finding.from_tip_mm = view.rod.FromTipMm(wrap.start);
  return finding;
}

constexpr Code kOverlap = {
    .name = "wraps/overlap",
    .severity = Severity::kError,
    .summary = "Two wraps lie in the same place, and neither says that it is on the other",
    .why = "The second climbs over the end of the first, which shows through every finish.",
    .action =
        "Correct a place or a length. Where one is meant to lie on the other, name that one in `on`, or make "
        "it an underwrap.",
};

void JudgeOverlap(const View& view, std::vector<Finding>& findings) {
  const std::vector<Wrap>& wraps = view.rod.wraps;
  std::unordered_set<std::string_view> ids;
  for (const Wrap& wrap : wraps) {
    if (!wrap.id.empty()) ids.insert(wrap.id);
  }
  const auto lies_on_wrap = [&](const Wrap& wrap) {
    return wrap.kind == "underwrap" || wrap.kind == "inlay" || ids.count(wrap.on) > 0;
  };
  for (const Origin origin : OriginsOf(view.rod)) {
    std::vector<Placed> placed;
    std::vector<Span> spans(wraps.size());
    for (int i = 0; i < static_cast<int>(wraps.size()); ++i) {
      const std::optional<Span> span = lies_on_wrap(wraps[i]) ? std::nullopt : SpanOf(origin, wraps[i]);
      if (!span) continue;
      placed.push_back({i, *span});
      spans[i] = *span;
    }
    for (const auto& [first, second] : Overlaps(std::move(placed))) {
      const double shared_mm = 1000 * (std::min(spans[first].end, spans[second].end) - spans[second].start);
      findings.push_back(
          AtWrap(view, kOverlap, wraps[second],
                 absl::StrFormat("%s and %s share %.1f mm", NameOf(wraps[first]), NameOf(wraps[second]), shared_mm),
                 {{"overlap_mm", shared_mm}}));
      findings.back().related.push_back(wraps[first].at);
    }
  }
}

constexpr Code kOffBlank = {
    .name = "wraps/off-blank",
    .severity = Severity::kError,
    .summary = "A wrap reaches beyond the blank",
    .why = "There is nothing to wind it on.",
    .action = "Correct its place or its length. `from_tip` counts from the outermost point of the tip-top.",
};

void JudgeOffBlank(const View& view, std::vector<Finding>& findings) {
  for (const Wrap& wrap : view.rod.wraps) {
    const Part* part = wrap.on.empty() ? nullptr : view.rod.FindPart(wrap.on);
    if (part != nullptr && part->kind != "hook_keeper") continue;
    for (const Origin origin : OriginsOf(view.rod)) {
      const std::optional<Span> span = SpanOf(origin, wrap), blank = BlankOn(origin, view.rod);
      if (!span || !blank) continue;
      const double beyond_mm = 1000 * std::max(blank->start - span->start, span->end - blank->end);
      if (beyond_mm <= kTouch_m * 1000) continue;
      findings.push_back(AtWrap(view, kOffBlank, wrap,
                                absl::StrFormat("%s reaches %.1f mm beyond the blank", NameOf(wrap), beyond_mm),
                                {{"beyond_mm", beyond_mm}}));
      break;
    }
  }
}

constexpr Code kFootNotCovered = {
    .name = "wraps/foot-not-covered",
    .severity = Severity::kWarning,
    .summary = "A wrap ends before the foot that it holds",
    .why = "A foot that stands out of its wrap lifts under load and cuts the finish.",
    .action = "Make the wrap longer than the foot; 3 to 6 mm beyond its end are common practice.",
};

void JudgeFootNotCovered(const View& view, std::vector<Finding>& findings) {
  for (const Wrap& wrap : view.rod.wraps) {
    const Guide* guide = wrap.over_foot && wrap.foot ? view.rod.FindGuide(wrap.on) : nullptr;
    if (guide == nullptr || !guide->foot_length) continue;
    std::optional<Span> span = SpanOf(Origin::kOnBlank, wrap), ring = SpanOn(Origin::kOnBlank, guide->ring, 0);
    if (!span || !ring) continue;
    const double foot_m = guide->foot_length->value.meters();
    const double bare_mm =
        1000 * (*wrap.foot == 0 ? span->start - (ring->start - foot_m) : ring->end + foot_m - span->end);
    if (bare_mm <= kTouch_m * 1000) continue;
    findings.push_back(AtWrap(view, kFootNotCovered, wrap,
                              absl::StrFormat("%.1f mm of the foot of '%s' stand out of its wrap", bare_mm, guide->id),
                              {{"bare_mm", bare_mm}, {"foot_mm", foot_m * 1000}}));
    findings.back().related.push_back(guide->at);
  }
}

constexpr Code kUnderwrapShort = {
    .name = "wraps/underwrap-short",
    .severity = Severity::kWarning,
    .summary = "A wrap reaches beyond the underwrap that is under it",
    .why = "It steps down at the underwrap's end, the foot has no bed there, and the step shows through the finish.",
    .action = "Make the underwrap longer than foot and wrap together, or end the wrap on it.",
};

void JudgeUnderwrapShort(const View& view, std::vector<Finding>& findings) {
  const std::vector<Wrap>& wraps = view.rod.wraps;
  std::vector<Placed> placed;
  for (int i = 0; i < static_cast<int>(wraps.size()); ++i) {
    const auto span = wraps[i].kind == "underwrap" ? SpanOf(Origin::kOnBlank, wraps[i]) : std::nullopt;
    if (span) placed.push_back({i, *span});
  }
  const SpanIndex index(std::move(placed));
  for (const Wrap& wrap : wraps) {
    const std::optional<Span> span = wrap.over_foot ? SpanOf(Origin::kOnBlank, wrap) : std::nullopt;
    const std::optional<int> under = span ? index.Under(*span) : std::nullopt;
    if (!under) continue;
    // an end lies on some underwrap, or only on the blank
    const double end_m = 3 * kTouch_m;
    if (index.Under({span->start, span->start + end_m}) && index.Under({span->end - end_m, span->end})) continue;
    const Span bed = *SpanOf(Origin::kOnBlank, wraps[*under]);
    const double beyond_mm = 1000 * std::max(bed.start - span->start, span->end - bed.end);
    findings.push_back(
        AtWrap(view, kUnderwrapShort, wrap,
               absl::StrFormat("%s reaches %.1f mm beyond %s", NameOf(wrap), beyond_mm, NameOf(wraps[*under])),
               {{"beyond_mm", beyond_mm}}));
    findings.back().related.push_back(wraps[*under].at);
  }
}

constexpr Code kOverMovingPart = {
    .name = "wraps/over-moving-part",
    .severity = Severity::kError,
    .summary = "A wrap lies where a hood or a nut must move",
    .why = "Wrapping thread or finish keeps the hood from opening, or is rubbed through.",
    .action = "Move the wrap out of the travel, or shorten the travel with a winding check.",
};

void JudgeOverMovingPart(const View& view, std::vector<Finding>& findings) {
  const std::vector<Part>& parts = view.rod.handle.parts;
  std::vector<Placed> moving;
  for (int i = 0; i < static_cast<int>(parts.size()); ++i) {
    if (!parts[i].loose || !parts[i].length) continue;
    const Length reach = parts[i].length->value + (parts[i].travel ? parts[i].travel->value : Length());
    const std::optional<Span> span = SpanOn(Origin::kFromButt, parts[i].start, reach.meters());
    if (span) moving.push_back({i, *span});
  }
  const SpanIndex index(std::move(moving));
  for (const Wrap& wrap : view.rod.wraps) {
    const std::optional<Span> span = SpanOf(Origin::kFromButt, wrap);
    const std::optional<int> hit = span ? index.Under(*span) : std::nullopt;
    if (!hit || parts[*hit].id == wrap.on) continue;
    findings.push_back(AtWrap(
        view, kOverMovingPart, wrap,
        absl::StrFormat("%s begins at %.1f mm, where '%s' moves", NameOf(wrap), span->start * 1000, parts[*hit].id),
        {{"start_mm", span->start * 1000}}));
    findings.back().related.push_back(parts[*hit].at);
  }
}

constexpr Code kOverJoint = {
    .name = "wraps/over-joint",
    .severity = Severity::kError,
    .summary = "A wrap bridges a joint of the blank",
    .why = "Wrapping thread and finish tie the two sections together, and the rod no longer comes apart.",
    .action = "End the wrap at the edge of the section. A joint is wrapped with `kind: \"joint\"`.",
};

void JudgeOverJoint(const View& view, std::vector<Finding>& findings) {
  const std::vector<Joint>& joints = view.rod.blank.joints;
  for (const Origin origin : OriginsOf(view.rod)) {
    std::vector<Placed> seams;
    for (int i = 0; i < static_cast<int>(joints.size()); ++i) {
      const std::optional<Span> seam = SeamOn(origin, view.rod, joints[i]);
      if (seam) seams.push_back({i, *seam});
    }
    const SpanIndex index(std::move(seams));
    for (const Wrap& wrap : view.rod.wraps) {
      const std::optional<Span> span = SpanOf(origin, wrap);
      const std::optional<int> hit = span ? index.Under(*span) : std::nullopt;
      if (!hit) continue;
      const double seam_mm = SeamOn(origin, view.rod, joints[*hit])->start * 1000;
      findings.push_back(
          AtWrap(view, kOverJoint, wrap,
                 absl::StrFormat("%s lies across joint '%s' at %.1f mm", NameOf(wrap), joints[*hit].id, seam_mm),
                 {{"joint_mm", seam_mm}}));
      findings.back().related.push_back(joints[*hit].at);
    }
  }
}

}  // namespace

std::vector<Rule<View>> PlaceRules() {
  return {{&kOverlap, JudgeOverlap},
          {&kOffBlank, JudgeOffBlank},
          {&kFootNotCovered, JudgeFootNotCovered},
          {&kUnderwrapShort, JudgeUnderwrapShort},
          {&kOverMovingPart, JudgeOverMovingPart},
          {&kOverJoint, JudgeOverJoint}};
}

}  // namespace withy::wraps
