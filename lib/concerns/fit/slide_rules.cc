#include <algorithm>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kSlidesOver = {
    .name = "fit/slides-over",
    .severity = Severity::kError,
    .summary = "A part does not pass over the blank on the way to its place",
    .why =
        "It would fit where it is to lie, but never comes there: the blank is thicker on the side it slides on from.",
    .action =
        "Slide it on from the other end (`slides_on_from`), before what is glued there, or ream it and say `reamed`.",
};

// How much the tightest place of the bore is over the thickest blank that it passes from that end; negative = it does
// not pass. Each point of the bore passes the blank from the end to where it comes to lie.
std::optional<double> RoomOnTheWay(const Rod& rod, const Part& part) {
  const double start = part.start.from_butt_m->value(), end = start + part.length->value.meters();
  const double butt = rod.blank_butt_m->value(), tip = butt + rod.blank.length_m->value();
  const Profile blank = rod.blank.outer.Shifted(butt), bore = part.bore.Shifted(start);
  std::vector<double> at = {start, end};
  for (const Profile::Knot& knot : bore.knots()) at.push_back(knot.x);
  std::optional<double> least;
  for (const double x : at) {
    if (x < std::max(start, butt) || x > std::min(end, tip)) continue;
    const bool from_butt = part.slides_on_from == End::kButt;
    const double thickest = from_butt ? blank.Max(butt, x) : blank.Max(x, tip);
    const double room = std::min(bore.At(x), bore.At(x, Profile::Limit::kLeft)) - thickest;
    if (!least || room < *least) least = room;
  }
  return least;
}

void JudgeSlidesOver(const View& view, std::vector<Finding>& findings) {
  const Rod& rod = view.rod;
  if (!rod.blank_butt_m || !rod.blank.length_m || rod.blank.outer.empty()) return;
  for (std::size_t i = 0; i < rod.handle.parts.size() && i < view.answers.parts.size(); ++i) {
    const Part& part = rod.handle.parts[i];
    const std::optional<double>& at_place_m = view.answers.parts[i].clearance_m;
    if (!part.runs_over_blank() || part.clamps_on || part.reamed || part.fitting != FitKind::kRigid) continue;
    if (part.slides_on_from == End::kUnknown || part.kind == "hook_keeper" || part.kind == "one_piece_handle") continue;
    if (part.bore.empty() || part.bore_known != BoreKnown::kProfile || !part.start.from_butt_m || !part.length)
      continue;
    // where it is too tight at its place, that is told
    if (!at_place_m || *at_place_m < -1e-8) continue;
    const std::optional<double> room_m = RoomOnTheWay(rod, part);
    if (!room_m || *room_m >= -BlankPlusMinus(rod) - 1e-8) continue;
    findings.push_back(
        MakeFinding(kSlidesOver, part.at.Field("slides_on_from"),
                    absl::StrFormat("'%s' slides on from the %s over blank that is %.2f mm thicker than its bore",
                                    part.id, part.slides_on_from == End::kButt ? "butt" : "tip", -*room_m * 1000),
                    {{"clearance_mm", *room_m * 1000}}));
    findings.back().from_tip_mm = rod.FromTipMm(part.start);
  }
}

}  // namespace

std::vector<Rule<View>> SlideRules() {
  return {{&kSlidesOver, JudgeSlidesOver}};
}

}  // namespace withy::fit
