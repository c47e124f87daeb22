#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kArborBinds = {
    .name = "fit/arbor-binds",
    .severity = Severity::kError,
    .summary = "An arbor binds in the bore before the blank comes home",
    .why =
        "The bore is narrower on the way than where the arbor is to lie. The rod comes out too long by what is "
        "missing, "
        "and it shows only with the adhesive on.",
    .action =
        "Build the arbor no thicker than the narrowest bore that it passes, or let adhesive and a slotted arbor fill "
        "the wider place.",
};

void JudgeArborBinds(const View& view, std::vector<Finding>& findings) {
  for (std::size_t i = 0; i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    for (std::size_t k = 0; k < view.answers.parts[i].arbors.size(); ++k) {
      const ArborFit& fit = view.answers.parts[i].arbors[k];
      if (!fit.held_out_m || *fit.held_out_m <= kTouch_m) continue;
      findings.push_back(MakeFinding(
          kArborBinds, part.arbors[k].at,
          absl::StrFormat(
              "%.2f mm thick, it stops where the bore of '%s' is narrower, %.1f mm from the part's butt end, and "
              "holds the blank %.1f mm out",
              *fit.outer_m * 1000, part.id, *fit.binds_at_m * 1000, *fit.held_out_m * 1000),
          {{"outer_mm", *fit.outer_m * 1000},
           {"binds_at_mm", *fit.binds_at_m * 1000},
           {"held_out_mm", *fit.held_out_m * 1000}}));
      if (fit.start_m) findings.back().from_tip_mm = view.rod.FromTipMm({Uncertain(*fit.start_m), std::nullopt});
    }
  }
}

constexpr Code kArborBridges = {
    .name = "fit/arbor-bridges",
    .severity = Severity::kWarning,
    .summary = "An arbor bridges a hollow",
    .why = "Between its ends there is more room than adhesive fills well: it carries at its ends alone, and rocks.",
    .action = "Build two short arbors, one on either side of the hollow, or one that follows it.",
};

// On the radius: more than that between an arbor and what it should touch is bridged badly by epoxy (a supplier's
// advice).
constexpr double kBridged_m = 0.0005;

// How much further the middle of a profile is away than both of its ends, on the radius; `away` is 1 where wider is
// away, -1 where thinner is.
double HollowOf(const Profile& profile, double from, double to, int away) {
  const double left = profile.At(from, Profile::Limit::kRight), right = profile.At(to, Profile::Limit::kLeft);
  const double furthest =
      away > 0 ? profile.Max(from, to) - std::max(left, right) : std::min(left, right) - profile.Min(from, to);
  return furthest / 2;
}

// The largest step of a profile, on the radius.
double StepOf(const Profile& profile, double from, double to) {
  double largest = 0;
  const Profile part = profile.Slice(from, to);
  const auto& knots = part.knots();
  for (std::size_t i = 1; i < knots.size(); ++i) {
    if (knots[i].x - knots[i - 1].x <= 1e-9) largest = std::max(largest, std::abs(knots[i].y - knots[i - 1].y) / 2);
  }
  return largest;
}

void JudgeArborBridges(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.blank_butt_m || view.rod.blank.outer.empty()) return;
  const Profile blank = view.rod.blank.outer.Shifted(view.rod.blank_butt_m->value());
  for (std::size_t i = 0; i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    for (std::size_t k = 0; k < view.answers.parts[i].arbors.size(); ++k) {
      const ArborFit& fit = view.answers.parts[i].arbors[k];
      const Arbor& arbor = part.arbors[k];
      if (!fit.start_m || !fit.length_m || !arbor.own_at) continue;
      const double own_m = arbor.own_at->value.meters(), from = *fit.start_m, to = from + *fit.length_m;
      const double bore_m = fit.bore_m ? std::max(HollowOf(part.bore, own_m, own_m + *fit.length_m, 1),
                                                  StepOf(part.bore, own_m, own_m + *fit.length_m))
                                       : 0;
      const double blank_m = fit.blank_m ? std::max(HollowOf(blank, from, to, -1), StepOf(blank, from, to)) : 0;
      const double hollow_m = std::max(bore_m, blank_m);
      if (hollow_m <= kBridged_m + 1e-8) continue;
      findings.push_back(MakeFinding(kArborBridges, arbor.at,
                                     absl::StrFormat("between its ends the %s goes %.2f mm away from it",
                                                     bore_m >= blank_m ? "bore" : "blank", hollow_m * 1000),
                                     {{"hollow_mm", hollow_m * 1000}, {"limit_mm", kBridged_m * 1000}}));
      findings.back().from_tip_mm = view.rod.FromTipMm({Uncertain(from), std::nullopt});
    }
  }
}

}  // namespace

std::vector<Rule<View>> ArborWayRules() {
  return {{&kArborBinds, JudgeArborBinds}, {&kArborBridges, JudgeArborBridges}};
}

}  // namespace withy::fit
