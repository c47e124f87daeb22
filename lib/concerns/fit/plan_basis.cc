#include "plan_basis.h"

#include <algorithm>

namespace withy::fit {
namespace {

// Beyond half of the butt section it is another blank (common practice, no source).
constexpr double kMostOfSection = 0.5;

// Of what is glued the first that fixes the blank in its place. Where it runs through, any part around it does.
const Closed* WhatGluesTheBlank(const Rod& rod, const Part* host) {
  if (host != nullptr) return rod.FindClosed(Closed::Kind::kGlued, host->id);
  for (const Closed& closed : rod.closed) {
    if (closed.kind != Closed::Kind::kGlued) continue;
    const Part* part = rod.FindPart(closed.id);
    if (part != nullptr && part->runs_over_blank() && !part->loose) return &closed;
  }
  return nullptr;
}

}  // namespace

std::optional<PlanBasis> PlanBasisOf(const Rod& rod) {
  if (!rod.rest_law || rod.blank.assembled.empty() || !rod.not_understood.empty()) return std::nullopt;
  const RestLaw& law = *rod.rest_law;
  const Section& butt = rod.blank.sections[rod.blank.assembled.front()];
  const double done_m = butt.cut_butt.done.meters();
  const double planned_m = std::max(done_m, butt.cut_butt.amount.meters());
  if (!butt.length || !(done_m >= 0) || !(planned_m < law.blank_m())) return std::nullopt;
  PlanBasis basis{.rod = rod, .law = law, .butt = butt, .done_m = done_m, .planned_m = planned_m};
  const bool through = law.from() == RestLaw::From::kThrough;
  if (!through && law.host() >= 0) basis.host = &rod.handle.parts[law.host()];
  basis.limit_m = std::max(planned_m, kMostOfSection * std::min(butt.length->value.meters(), law.blank_m()));
  if (law.host() < 0) {
    basis.host_start_m = 0;
  } else if (const auto& start = rod.handle.parts[law.host()].start.from_butt_m) {
    basis.host_start_m = start->value();
  }
  if (basis.host_start_m && rod.overall_m && rod.blank_tip_m) {
    basis.beyond_m = *basis.host_start_m + (*rod.overall_m - *rod.blank_tip_m).value();
  }
  // what a tip-top adds is open, and the rod no shorter for it
  if (!rod.tip_top && rod.blank_tip_m) basis.beyond_m = basis.host_start_m;
  if (rod.order.overall_length && basis.beyond_m) {
    basis.target_m = rod.order.overall_length->value.meters() - *basis.beyond_m;
  }
  basis.tolerance_m = LengthTolerance(rod);
  basis.closed = WhatGluesTheBlank(rod, basis.host);
  return basis;
}

}  // namespace withy::fit
