// What keeps guides where they are, and from where they may not be.
#include <algorithm>
#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "rules.h"
#include "train_parts.h"
#include "withy/fit/span.h"

namespace withy::guides {
namespace {

constexpr double kBeyondFootM =
    0.004;                       // thread past the foot: as of a wrap that does not say (common practice, no source)
constexpr double kFootM = 0.02;  // of a guide that does not say: a large single foot (common practice, no source)

void Include(const Wrap& wrap, const Guide& guide, GuideReach& reach) {
  if (wrap.on != guide.id || !wrap.foot || !wrap.length) return;
  double far_m = wrap.length->meters();
  // Where it lies tells what it leaves bare beside the ring.
  if (wrap.start.on_blank_m && guide.ring.on_blank_m) {
    const double start = wrap.start.on_blank_m->value() - guide.ring.on_blank_m->value();
    far_m = *wrap.foot == 0 ? -start : start + far_m;
  }
  double& side = *wrap.foot == 0 ? reach.to_butt_m : reach.to_tip_m;
  side = std::max(side, far_m);
}

std::optional<Span> SpanOf(const Along& start, double length_m) {
  return SpanOn(Origin::kFromButt, start, length_m);
}

bool IsKeeper(const Part& part) {
  return part.kind == "hook_keeper";
}

// A wrap on a thing that is no guide, by the obstacle that the thing is.
std::optional<Obstacle> ObstacleOf(const Rod& rod, const Wrap& wrap) {
  for (const Joint& joint : rod.blank.joints) {
    if (!joint.id.empty() && joint.id == wrap.on) return Obstacle::kJoint;
  }
  const Part* part = rod.FindPart(wrap.on);
  return part && IsKeeper(*part) ? std::optional(Obstacle::kKeeper) : std::nullopt;
}

}  // namespace

GuideReach ReachOf(const Rod& rod, const Guide& guide, std::vector<std::string>& notes) {
  double foot_m = kFootM;
  if (guide.foot_length && guide.foot_length->value.meters() > 0) {
    foot_m = guide.foot_length->value.meters();
  } else {
    notes.push_back(absl::StrFormat("The foot of '%s' is not known: 20 mm is taken; write foot_length.", guide.id));
  }
  GuideReach reach;
  const bool both = guide.feet() == 2, to_tip = guide.foot_towards == End::kTip;
  if (both || !to_tip) reach.to_butt_m = foot_m + kBeyondFootM;
  if (both || to_tip) reach.to_tip_m = foot_m + kBeyondFootM;
  const bool wrapped = std::any_of(rod.wraps.begin(), rod.wraps.end(), [&guide](const Wrap& wrap) {
    return wrap.on == guide.id && wrap.foot && wrap.length && !guide.id.empty();
  });
  if (!wrapped) return reach;
  reach.to_butt_m = both || !to_tip ? foot_m : 0;
  reach.to_tip_m = both || to_tip ? foot_m : 0;
  for (const Wrap& wrap : rod.wraps) Include(wrap, guide, reach);
  return reach;
}

std::string StaysBecause(const Rod& rod, const Guide& guide) {
  if (!guide.from_tip) return "";
  if (guide.locked) return "placed by hand (locked)";
  const auto closed = [&rod](std::string_view id) {
    for (const Closed::Kind kind : {Closed::Kind::kGlued, Closed::Kind::kWrapped, Closed::Kind::kCoated}) {
      if (const Closed* fact = id.empty() ? nullptr : rod.FindClosed(kind, id)) return fact;
    }
    return static_cast<const Closed*>(nullptr);
  };
  const Closed* fact = closed(guide.id);
  for (const Wrap& wrap : rod.wraps) {
    if (fact == nullptr && wrap.on == guide.id && wrap.foot) fact = closed(wrap.id);
  }
  if (fact != nullptr) return absl::StrCat("wrapped, by ", fact->at.ToString());
  // As of one that an entry of the log has moved.
  return guide.from_tip->source == Source::kMeasured ? "its place is measured, not planned" : "";
}

std::optional<double> FrontOfHandle(const Rod& rod) {
  std::optional<double> front;
  for (const Part& part : rod.handle.parts) {
    if (IsKeeper(part) || !part.length) continue;
    const double travel = part.loose && part.travel ? part.travel->value.meters() : 0;
    const std::optional<Span> span = SpanOf(part.start, part.length->value.meters() + travel);
    if (span) front = std::max(front.value_or(span->end), span->end);
  }
  return front;
}

std::vector<TakenStretch> TakenStretches(const Rod& rod) {
  std::vector<TakenStretch> taken;
  for (const Joint& joint : rod.blank.joints) {
    if (const std::optional<Span> seam = SeamOn(Origin::kFromButt, rod, joint)) {
      taken.push_back({seam->start, seam->end, Obstacle::kJoint});
    }
  }
  for (const Part& part : rod.handle.parts) {
    if (!IsKeeper(part) || !part.length) continue;
    if (const std::optional<Span> span = SpanOf(part.start, part.length->value.meters())) {
      taken.push_back({span->start, span->end, Obstacle::kKeeper});
    }
  }
  for (const Wrap& wrap : rod.wraps) {
    const std::optional<Obstacle> by = wrap.length ? ObstacleOf(rod, wrap) : std::nullopt;
    const std::optional<Span> span = by ? SpanOf(wrap.start, wrap.length->meters()) : std::nullopt;
    if (span) taken.push_back({span->start, span->end, *by});
  }
  return taken;
}

std::optional<std::pair<double, double>> InConeWithin(const Rod& rod, Guide guide, double low_m, double high_m) {
  constexpr int kSteps = 200;
  int longest = -1, begins = 0, from = 0;
  for (int i = 0; i <= kSteps; ++i) {
    guide.ring.on_blank_m.reset();
    guide.ring.from_butt_m = Uncertain(low_m + (high_m - low_m) * i / kSteps);
    const std::optional<bool> in = InLineCone(rod, guide);
    if (!in) return std::pair(low_m, high_m);
    if (!*in) begins = i + 1;
    if (i - begins > longest) {
      longest = i - begins;
      from = begins;
    }
  }
  if (longest < 0) return std::nullopt;
  const double step = (high_m - low_m) / kSteps;
  return std::pair(low_m + from * step, from + longest == kSteps ? high_m : low_m + (from + longest) * step);
}

double TipTopFrom(const Rod& rod, double tip_ring_m) {
  double from = tip_ring_m;
  if (rod.tip_top && rod.blank_tip_m) {
    const double tube_m = rod.tip_top->tube_length ? std::max(0.0, rod.tip_top->tube_length->value.meters()) : 0;
    from = std::min(from, rod.blank_tip_m->value() - tube_m);
  }
  for (const Wrap& wrap : rod.wraps) {
    if (!rod.tip_top || rod.tip_top->id.empty() || wrap.on != rod.tip_top->id || !wrap.length) continue;
    if (const std::optional<Span> span = SpanOf(wrap.start, wrap.length->meters())) from = std::min(from, span->start);
  }
  return from;
}

}  // namespace withy::guides
