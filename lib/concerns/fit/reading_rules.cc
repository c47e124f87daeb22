#include <algorithm>
#include <cmath>
#include <string>
#include <utility>
#include <vector>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kPlugOutside = {
    .name = "fit/plug-outside",
    .severity = Severity::kError,
    .summary = "A plug goes in further than its part is long",
    .why = "A depth or the length was misread or is in another unit, and the bore between the plugs follows from both.",
    .action = "Drop the plug in again and read its depth from the mouth that it entered at; measure the part's length.",
};

void JudgePlugOutside(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    if (!part.length) continue;
    const double length_mm = part.length->value.mm();
    for (const Plug& plug : part.plugs) {
      if (plug.depth.mm() >= 0 && plug.depth.mm() <= length_mm + kTouch_m * 1000) continue;
      findings.push_back(MakeFinding(
          kPlugOutside, plug.at.Field("depth"),
          absl::StrFormat("a plug %.1f mm deep in '%s', which is %.1f mm long", plug.depth.mm(), part.id, length_mm),
          {{"depth_mm", plug.depth.mm()}, {"part_mm", length_mm}}));
    }
  }
}

constexpr Code kPlugOrder = {
    .name = "fit/plug-order",
    .severity = Severity::kError,
    .summary = "A smaller plug stops before a larger one",
    .why = "Where a larger plug passes, a smaller one does; a diameter or a depth was misread or interchanged.",
    .action = "Drop both plugs in again and read how deep each goes.",
};

// A plug that stops too early, and the larger one from the same mouth that goes deeper.
std::optional<std::pair<const Plug*, const Plug*>> PlugsOutOfOrder(const Part& part) {
  std::vector<const Plug*> largest_first;
  for (const Plug& plug : part.plugs) largest_first.push_back(&plug);
  std::stable_sort(largest_first.begin(), largest_first.end(),
                   [](const Plug* a, const Plug* b) { return a->plug > b->plug; });
  const Plug* deepest_from_butt = nullptr;
  const Plug* deepest_from_tip = nullptr;
  for (const Plug* plug : largest_first) {
    const Plug*& deepest = plug->entered_at == End::kButt ? deepest_from_butt : deepest_from_tip;
    if (deepest == nullptr || plug->depth > deepest->depth) {
      deepest = plug;
    } else if (deepest->plug > plug->plug && deepest->depth > plug->depth) {
      return std::pair{plug, deepest};
    }
  }
  return std::nullopt;
}

void JudgePlugOrder(const View& view, std::vector<Finding>& findings) {
  for (const Part& part : view.rod.handle.parts) {
    const auto wrong = PlugsOutOfOrder(part);
    if (!wrong) continue;
    const auto& [plug, larger] = *wrong;
    findings.push_back(
        MakeFinding(kPlugOrder, plug->at,
                    absl::StrFormat("a plug of %.2f mm goes %.1f mm deep, and one of %.2f mm goes %.1f mm",
                                    plug->plug.mm(), plug->depth.mm(), larger->plug.mm(), larger->depth.mm()),
                    {{"plug_mm", plug->plug.mm()},
                     {"depth_mm", plug->depth.mm()},
                     {"larger_mm", larger->plug.mm()},
                     {"larger_depth_mm", larger->depth.mm()}}));
    findings.back().related.push_back(larger->at);
  }
}

constexpr Code kBoreDiffers = {
    .name = "fit/bore-differs",
    .severity = Severity::kWarning,
    .summary = "The bore of a handle and the place where the blank rests in it do not agree",
    .why =
        "Where a blank comes to rest, bore and blank are equally wide. When they are not, a plug, a dry fit, a cut or "
        "a diameter was misread, and the next cut is worked out from it.",
    .action = "Drop the plugs in again, and try the blank on dry once more; correct the reading that was wrong.",
};

// To what the depth of a plug is read (common practice, no source).
constexpr double kDepth_m = 0.001;

// How fast a bore changes at `x`, seen over a millimetre to either side.
double SlopeAt(const Profile& bore, double x) {
  constexpr double kStep_m = 0.001;
  const double here = bore.At(x);
  return std::max(std::abs(bore.At(x + kStep_m) - here), std::abs(here - bore.At(x - kStep_m))) / kStep_m;
}

// Where the reading of the bore stands that is nearest to a point of the part.
FieldPath NearestReading(const Part& part, double own_m) {
  if (part.plugs.empty() || !part.length) return part.at.Field("bore");
  const auto distance = [&](const Plug& plug) {
    const double depth = plug.depth.meters();
    return std::abs((plug.entered_at == End::kTip ? part.length->value.meters() - depth : depth) - own_m);
  };
  return std::min_element(part.plugs.begin(), part.plugs.end(),
                          [&](const Plug& a, const Plug& b) { return distance(a) < distance(b); })
      ->at;
}

void JudgeBoreDiffers(const View& view, std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < view.rod.handle.parts.size() && i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    const PartFit& fit = view.answers.parts[i];
    if (!BlankRestsIn(view.rod, part) || part.reamed || PlugsOutOfOrder(part)) continue;
    if (RestIsJudgedByContact(view.rod)) continue;  // told as a difference of places: fit/rest-differs
    if (!fit.clearance_m || !fit.clearance_at_m) continue;
    const double start = part.start.from_butt_m->value(), own_m = *fit.clearance_at_m - start;
    const double butt_own_m = view.rod.blank_butt_m->value() - start;
    const double slope = SlopeAt(part.bore, own_m);
    const double allowed = BlankPlusMinus(view.rod) + slope * (view.rod.blank_butt_m->plus_minus() + kDepth_m) + 1e-8;
    // a bore that was measured may have a shelf that the blank comes to rest on; one that plugs stop in has none
    const bool plugged =
        part.bore_known == BoreKnown::kPlugs && butt_own_m >= part.bore.begin() && butt_own_m <= part.bore.end();
    const bool loose = plugged && *fit.clearance_m > allowed;
    if (*fit.clearance_m >= -allowed && !loose) continue;
    const double off_mm = std::abs(*fit.clearance_m) * 1000;
    std::string message = absl::StrFormat("the bore of '%s' is %.2f mm %s than the blank, which rests there", part.id,
                                          off_mm, loose ? "wider" : "tighter");
    // further along than a builder misreads, the place says nothing
    if (off_mm < 50 * slope) message += absl::StrFormat("; it is that wide about %.0f mm away", off_mm / slope);
    findings.push_back(MakeFinding(kBoreDiffers, NearestReading(part, own_m), std::move(message),
                                   {{"clearance_mm", *fit.clearance_m * 1000}}));
    for (const DryFit& fit_logged : view.rod.dry_fits) {
      if (fit_logged.part == part.id) findings.back().related = {fit_logged.at};
    }
    findings.back().from_tip_mm = view.rod.FromTipMm({Uncertain(*fit.clearance_at_m), std::nullopt});
  }
}

constexpr Code kReelFootDiffers = {
    .name = "fit/reel-foot-differs",
    .severity = Severity::kWarning,
    .summary = "The order and the handle put the reel's foot in two places",
    .why = "Reach and balance are reckoned from the one, and the reel will sit at the other.",
    .action =
        "Take `foot_center_from_butt` out of the order, so that the handle says it, or change the handle until the "
        "two agree.",
};

// 2 mm (common practice, no source), where the order names no tolerance.
constexpr double kFootTolerance_mm = 2;

void JudgeReelFootDiffers(const View& view, std::vector<Finding>& findings) {
  const Maybe<Length>& ordered = view.rod.order.reel_foot_center;
  if (!ordered) return;
  for (const Part& part : view.rod.handle.parts) {
    if (!part.foot_center || !part.start.from_butt_m) continue;
    // outside the part it is told as such
    if (part.length && part.foot_center->value > part.length->value) return;
    const double there_mm = part.start.from_butt_m->value() * 1000 + part.foot_center->value.mm();
    const double allowed_mm = ordered->plus_minus ? *ordered->plus_minus * 1000 : kFootTolerance_mm;
    if (std::abs(there_mm - ordered->value.mm()) <= allowed_mm) return;
    findings.push_back(MakeFinding(kReelFootDiffers, ordered->at,
                                   absl::StrFormat("the reel's foot at %.1f mm, where '%s' holds it at %.1f mm",
                                                   ordered->value.mm(), part.id, there_mm),
                                   {{"ordered_mm", ordered->value.mm()}, {"handle_mm", there_mm}}));
    findings.back().related.push_back(part.foot_center->at);
    return;
  }
}

}  // namespace

std::vector<Rule<View>> ReadingRules() {
  return {{&kPlugOutside, JudgePlugOutside},
          {&kPlugOrder, JudgePlugOrder},
          {&kBoreDiffers, JudgeBoreDiffers},
          {&kReelFootDiffers, JudgeReelFootDiffers}};
}

}  // namespace withy::fit
