#include <algorithm>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

const std::vector<Part>& PartsOf(const View& view) {
  return view.rod.handle.parts;
}

// The parts on the blank itself that have a place and a length.
std::vector<Placed> OnBlank(const View& view) {
  std::vector<Placed> placed;
  for (int i = 0; i < static_cast<int>(PartsOf(view).size()); ++i) {
    const Part& part = PartsOf(view)[i];
    if (!part.on.empty() || !part.length) continue;
    const std::optional<Span> span = SpanOn(Origin::kFromButt, part.start, part.length->value.meters());
    if (span) placed.push_back({i, *span});
  }
  return placed;
}

constexpr Code kOverlap = {
    .name = "fit/overlap",
    .severity = Severity::kError,
    .summary = "Two parts of the handle lie in the same place",
    .why = "Two solid parts cannot. In a glue-up the second one stops short, with the adhesive already on.",
    .action = "Correct a place or a length; or say in `on` which part the other one sits on.",
};

void JudgeOverlap(const View& view, std::vector<Finding>& findings) {
  const std::vector<Placed> placed = OnBlank(view);
  std::vector<Span> spans(PartsOf(view).size());
  for (const Placed& thing : placed) spans[thing.index] = thing.span;
  for (const auto& [first, second] : Overlaps(placed)) {
    const double shared_mm = 1000 * (std::min(spans[first].end, spans[second].end) - spans[second].start);
    const Part& part = PartsOf(view)[second];
    Finding finding = MakeFinding(
        kOverlap, part.at, absl::StrFormat("'%s' and '%s' share %.1f mm", PartsOf(view)[first].id, part.id, shared_mm),
        {{"overlap_mm", shared_mm}});
    finding.related.push_back(PartsOf(view)[first].at);
    finding.from_tip_mm = view.rod.FromTipMm(part.start);
    findings.push_back(std::move(finding));
  }
}

constexpr Code kOffHost = {
    .name = "fit/off-host",
    .severity = Severity::kError,
    .summary = "A part that sits on another does not lie where that one is",
    .why = "A hood or a nut runs on its reel seat; beside it there is nothing that it could sit on.",
    .action = "Correct its place: it is counted as `place` says, from the butt end or after the part named there.",
};

void JudgeOffHost(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : PartsOf(view)) {
    const Part* host = part.on.empty() ? nullptr : view.rod.FindPart(part.on);
    if (host == nullptr || !host->length || !part.length) continue;
    const std::optional<Span> span = SpanOn(Origin::kFromButt, part.start, part.length->value.meters());
    const std::optional<Span> under = SpanOn(Origin::kFromButt, host->start, host->length->value.meters());
    if (!span || !under || (span->start < under->end + kTouch_m && span->end > under->start - kTouch_m)) continue;
    findings.push_back(MakeFinding(
        kOffHost, part.place_written ? part.at.Field("place") : part.at,
        absl::StrFormat("'%s' lies from %.1f to %.1f mm, and '%s' from %.1f to %.1f mm", part.id, span->start * 1000,
                        span->end * 1000, host->id, under->start * 1000, under->end * 1000),
        {{"start_mm", span->start * 1000},
         {"end_mm", span->end * 1000},
         {"host_start_mm", under->start * 1000},
         {"host_end_mm", under->end * 1000}}));
    findings.back().related.push_back(host->at);
    findings.back().from_tip_mm = view.rod.FromTipMm(part.start);
  }
}

constexpr Code kGap = {
    .name = "fit/gap",
    .severity = Severity::kWarning,
    .summary = "A narrow slot is left between two parts of the handle",
    .why =
        "A closed stack leaves no gap and a split grip a wide one. A few millimetres of bare blank are mostly a "
        "length that was measured wrong, and look like it.",
    .action = "Place the part `after` the one before it, with a `gap` where the slot is meant.",
};

// Slots between these are asked about (common practice, no source).
constexpr double kSlotLeast_m = 0.0003;
constexpr double kSlotMost_m = 0.010;

void JudgeGap(const View& view, std::vector<Finding>& findings) {
  std::vector<Placed> placed = OnBlank(view);
  std::stable_sort(placed.begin(), placed.end(),
                   [](const Placed& a, const Placed& b) { return a.span.start < b.span.start; });
  double reached_m = 0;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    const Part& part = PartsOf(view)[placed[i].index];
    const double slot_m = placed[i].span.start - reached_m;
    reached_m = i == 0 ? placed[i].span.end : std::max(reached_m, placed[i].span.end);
    if (i == 0 || !part.place_written || part.gap_written || slot_m < kSlotLeast_m || slot_m > kSlotMost_m) continue;
    Finding finding = MakeFinding(kGap, part.at.Field("place"),
                                  absl::StrFormat("%.1f mm of bare blank before '%s'", slot_m * 1000, part.id),
                                  {{"gap_mm", slot_m * 1000}});
    finding.related.push_back(PartsOf(view)[placed[i - 1].index].at);
    finding.from_tip_mm = view.rod.FromTipMm(part.start);
    findings.push_back(std::move(finding));
  }
}

constexpr Code kPartOffBlank = {
    .name = "fit/part-off-blank",
    .severity = Severity::kError,
    .summary = "A part lies where there is no blank",
    .why = "It has nothing to be glued to.",
    .action = "Correct its place, or the place of the blank in the handle.",
};

void JudgePartOffBlank(const View& view, std::vector<Finding>& findings) {
  const std::optional<Span> blank = BlankOn(Origin::kFromButt, view.rod);
  if (!blank) return;
  for (const Placed& thing : OnBlank(view)) {
    const Part& part = PartsOf(view)[thing.index];
    const bool off = thing.span.start > blank->end - kTouch_m || thing.span.end < blank->start + kTouch_m;
    if (!off || !part.runs_over_blank() || part.kind == "extension_butt") continue;
    findings.push_back(
        MakeFinding(kPartOffBlank, part.at,
                    absl::StrFormat("'%s' begins at %.1f mm, and the blank reaches from %.1f to %.1f mm", part.id,
                                    thing.span.start * 1000, blank->start * 1000, blank->end * 1000),
                    {{"start_mm", thing.span.start * 1000},
                     {"blank_butt_mm", blank->start * 1000},
                     {"blank_tip_mm", blank->end * 1000}}));
  }
}

constexpr Code kHoodTravel = {
    .name = "fit/hood-travel",
    .severity = Severity::kError,
    .summary = "A moving part runs into another before the end of its travel",
    .why = "A hood that cannot open does not take the reel, and nobody notices before the glue has cured.",
    .action = "Move the part that is in the way, or correct the travel.",
};

// The first part on the blank that a moving one meets on its way to the tip. What it passes over, and what sits on it,
// is not in the way.
void JudgeHoodTravel(const View& view, std::vector<Finding>& findings) {
  std::vector<Placed> fixed = OnBlank(view);
  std::erase_if(fixed, [&](const Placed& thing) { return PartsOf(view)[thing.index].loose; });
  std::stable_sort(fixed.begin(), fixed.end(),
                   [](const Placed& a, const Placed& b) { return a.span.start < b.span.start; });
  for (const Part& part : PartsOf(view)) {
    if (!part.loose || !part.travel || !part.length) continue;
    const std::optional<Span> span = SpanOn(Origin::kFromButt, part.start, part.length->value.meters());
    if (!span) continue;
    const double reach_m = span->end + part.travel->value.meters();
    auto next = std::lower_bound(fixed.begin(), fixed.end(), span->end - kTouch_m,
                                 [](const Placed& thing, double x) { return thing.span.start < x; });
    const auto passes_over = [&](const Part& other) {
      return !part.bore.empty() && !other.outer.empty() && part.length && other.length &&
             other.outer.Max(0, other.length->value.meters()) <= part.bore.Min(0, part.length->value.meters());
    };
    while (next != fixed.end() && passes_over(PartsOf(view)[next->index])) ++next;
    if (next == fixed.end() || next->span.start >= reach_m - kTouch_m) continue;
    const double missing_mm = (reach_m - next->span.start) * 1000;
    Finding finding = MakeFinding(kHoodTravel, part.travel->at,
                                  absl::StrFormat("'%s' meets '%s' %.1f mm before the end of its travel", part.id,
                                                  PartsOf(view)[next->index].id, missing_mm),
                                  {{"travel_mm", part.travel->value.mm()}, {"missing_mm", missing_mm}});
    finding.related.push_back(PartsOf(view)[next->index].at);
    findings.push_back(std::move(finding));
  }
}

constexpr Code kTravelUnknown = {
    .name = "fit/travel-unknown",
    .severity = Severity::kCannotTell,
    .summary = "A part moves, and nobody has said how far",
    .why = "What stands beside a hood or a nut must leave it room to open.",
    .action = "Measure how far it moves from its closed place to where the reel's foot slips in, and enter `travel`.",
};

void JudgeTravelUnknown(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : PartsOf(view)) {
    if (!part.loose || part.travel) continue;
    findings.push_back(
        MakeFinding(kTravelUnknown, part.at, absl::StrFormat("how far '%s' moves is not known", part.id)));
  }
}

}  // namespace

std::vector<Rule<View>> StackRules() {
  return {{&kOverlap, JudgeOverlap},           {&kOffHost, JudgeOffHost},       {&kGap, JudgeGap},
          {&kPartOffBlank, JudgePartOffBlank}, {&kHoodTravel, JudgeHoodTravel}, {&kTravelUnknown, JudgeTravelUnknown}};
}

}  // namespace withy::fit
