#include <algorithm>

#include "absl/strings/str_format.h"
#include "arbors.h"
#include "rules.h"
#include "withy/sections/slip.h"

namespace withy::fit {
namespace {

// A part with what was computed of it, for the rules that look at one after another.
struct Fitted {
  const Part& part;
  const PartFit& fit;
};

std::vector<Fitted> FittedParts(const View& view) {
  std::vector<Fitted> fitted;
  for (std::size_t i = 0; i < view.rod.handle.parts.size() && i < view.answers.parts.size(); ++i) {
    const Part& part = view.rod.handle.parts[i];
    if (part.runs_over_blank() && !part.clamps_on) fitted.push_back({part, view.answers.parts[i]});
  }
  return fitted;
}

// A finding about the bore of a part, with its place on the rod: where it is tightest on the blank.
void Add(const View& view, const Code& code, const Fitted& fitted, std::string message, std::vector<Number> numbers,
         std::vector<Finding>& findings) {
  const Part& part = fitted.part;
  findings.push_back(
      MakeFinding(code, part.at.Field(part.plugs.empty() ? "bore" : "plugs"), std::move(message), std::move(numbers)));
  findings.back().from_tip_mm = view.rod.FromTipMm(
      fitted.fit.clearance_at_m ? Along{Uncertain(*fitted.fit.clearance_at_m), std::nullopt} : part.start);
}

// Two diameters that differ by less are the same (rounding of inches and millimetres).
constexpr double kSame_m = 1e-8;

constexpr Code kBoreTooSmall = {
    .name = "fit/bore-too-small",
    .severity = Severity::kError,
    .summary = "The bore of a part is smaller than the blank where the part is to lie",
    .why =
        "It stops short of its place, or splits when it is forced, with the adhesive already on. A shrunk part "
        "must go over the blank before it is heated.",
    .action = "Ream the bore to the blank and say `reamed`, take a larger part, or move it towards the tip.",
};

constexpr char kWiderTube[] =
    "Take tube that is wider than the blank before it is heated: shrink tube is neither reamed nor does it stretch.";

bool MustClear(const Part& part) {
  return part.fitting == FitKind::kShrunk || (part.fitting == FitKind::kRigid && !part.reamed);
}

// The blank then is in it as far as it goes.
bool RestsByContact(const Rod& rod, const Part& part) {
  return rod.rest_basis == RestBasis::kLaw && rod.rest_law && rod.rest_law->host() >= 0 &&
         &rod.handle.parts[rod.rest_law->host()] == &part;
}

// No part is reamed to more than this many times its bore: a cork ring's quarter inch goes over a surf butt (common
// practice, no source).
constexpr double kReamMost = 4;

// Bore and blank where a part is tightest, in mm.
struct Tightest {
  double bore_mm = 0, blank_mm = 0;
  bool is_a_slip() const { return bore_mm * kReamMost < blank_mm; }
};

std::optional<Tightest> TightestOf(const View& view, const PartFit& fit) {
  if (!fit.clearance_m || !fit.clearance_at_m) return std::nullopt;
  const std::optional<double> blank_m = view.rod.BlankDiameterAt(*fit.clearance_at_m);
  if (!blank_m) return std::nullopt;
  return Tightest{(*blank_m + *fit.clearance_m) * 1000, *blank_m * 1000};
}

void JudgeSlip(const View& view, const Fitted& fitted, const Tightest& tightest, std::vector<Finding>& findings) {
  std::string message = absl::StrFormat("a bore of %.2f mm in '%s', where the blank is %.2f mm", tightest.bore_mm,
                                        fitted.part.id, tightest.blank_mm);
  std::vector<Number> numbers = {{"clearance_mm", tightest.bore_mm - tightest.blank_mm}};
  if (const std::optional<double> suspected = SlipOf(tightest.bore_mm, tightest.blank_mm)) {
    message += absl::StrFormat("; did you mean %.2f mm?", *suspected);
    numbers.push_back({"suspected_mm", *suspected});
  }
  Add(view, kBoreTooSmall, fitted, std::move(message), std::move(numbers), findings);
  findings.back().help = "Measure the bore again, and look at its unit and its decimal point.";
}

void JudgeTight(const View& view, const Fitted& fitted, double tight_m, std::vector<Finding>& findings) {
  const std::string tight =
      tight_m < 0.000005 ? std::string("less than 0.01") : absl::StrFormat("%.2f", tight_m * 1000);
  Add(view, kBoreTooSmall, fitted,
      absl::StrFormat("the bore of '%s' is %s mm tighter than the blank", fitted.part.id, tight),
      {{"clearance_mm", -tight_m * 1000}}, findings);
  if (fitted.part.fitting == FitKind::kShrunk) findings.back().help = kWiderTube;
  if (tight_m > BlankPlusMinus(view.rod) + kSame_m) return;
  findings.back().severity = Severity::kCannotTell;
  findings.back().message += ", which is less than the calliper can tell";
  findings.back().help = "Try the part on dry, or measure blank and bore with a micrometer.";
}

void JudgeBoreTooSmall(const View& view, std::vector<Finding>& findings) {
  if (view.rod.blank.sections.empty()) return;
  for (const Fitted& fitted : FittedParts(view)) {
    const Part& part = fitted.part;
    if (part.kind == "hook_keeper") continue;
    if (part.bore.empty() && part.plugs.empty() && !part.reamed) {
      if (view.rod.rest_basis == RestBasis::kDryFit && BlankRestsIn(view.rod, part)) continue;  // it went home
      findings.push_back(CannotTell(kBoreTooSmall, part.at,
                                    absl::StrFormat("whether '%s' goes on is not known: its bore is not", part.id),
                                    "Measure the bore at both mouths, or with plugs from the mouth inwards."));
      continue;
    }
    const std::optional<Tightest> tightest = TightestOf(view, fitted.fit);
    if (tightest && part.fitting == FitKind::kRigid && tightest->is_a_slip()) {
      JudgeSlip(view, fitted, *tightest, findings);
    } else if (MustClear(part) && !BlankRestsIn(view.rod, part) && !RestsByContact(view.rod, part) && fitted.fit.clearance_m.value_or(0) < -kSame_m) {
      JudgeTight(view, fitted, -*fitted.fit.clearance_m, findings);
    }
  }
}

constexpr Code kReam = {
    .name = "fit/ream",
    .severity = Severity::kAdvice,
    .summary = "A part is to be reamed: by how much",
    .why =
        "A bore that is reamed in one go comes out too wide at the mouth; one that is known to the tenth can be "
        "crept up on.",
    .action =
        "Ream in steps to the blank's diameter and the glue line, try dry after each, and enter the bore as it "
        "then is.",
};

void JudgeReam(const View& view, std::vector<Finding>& findings) {
  for (const Fitted& fitted : FittedParts(view)) {
    const auto& [part, fit] = fitted;
    if (!part.reamed || part.fitting != FitKind::kRigid || !fit.clearance_m) continue;
    const std::optional<Tightest> tightest = TightestOf(view, fit);
    if (tightest && tightest->is_a_slip()) continue;
    const double ream_mm = (GlueClearanceOf(part) - *fit.clearance_m) * 1000;
    if (ream_mm <= kSame_m) continue;
    Add(view, kReam, fitted, absl::StrFormat("'%s' is to be reamed by up to %.2f mm on the diameter", part.id, ream_mm),
        {{"clearance_mm", *fit.clearance_m * 1000}, {"ream_mm", ream_mm}}, findings);
  }
}

constexpr Code kArborMissing = {
    .name = "fit/arbor-missing",
    .severity = Severity::kWarning,
    .summary = "A part is much wider than the blank, and nothing fills the room",
    .why = "A thick ring of adhesive is heavy and brittle and does not keep the part in the middle of the blank.",
    .action =
        "Build arbors of tape, graphite or foam between bore and blank and enter them in `arbors`, or take a "
        "part with a smaller bore.",
};

// On the diameter: 0.5 mm all round is the most that epoxy is said to bridge well (a supplier's advice).
constexpr double kWidestGlue_m = 0.001;

// A winding check is a ring: no arbor goes into it, another one does.
void TellOfWideWindingCheck(const View& view, const Fitted& fitted, std::vector<Finding>& findings) {
  const double clearance_mm = *fitted.fit.clearance_m * 1000;
  Add(view, kArborMissing, fitted,
      absl::StrFormat("'%s' is %.2f mm wider than the blank, and nothing fills the room", fitted.part.id, clearance_mm),
      {{"clearance_mm", clearance_mm}, {"limit_mm", kWidestGlue_m * 1000}}, findings);
  findings.back().help = "Take the smallest winding check that goes over the blank.";
  for (const WindingCheckFit& check : view.answers.winding_checks) {
    if (&view.rod.handle.parts[check.part] != &fitted.part) continue;
    if (!check.bore_m) {
      findings.back().help = absl::StrFormat(
          "None in stock goes over the blank: take a winding check with a bore of %.2f mm or little more.",
          check.blank_m * 1000);
      continue;
    }
    findings.back().help = absl::StrFormat(
        "Take a winding check with a bore of %.2f mm, %s: it leaves %.2f mm.", *check.bore_m * 1000,
        view.rod.shop.winding_check_bores.empty() ? "the next half millimetre" : "the smallest in stock that goes over",
        (*check.bore_m - check.blank_m) * 1000);
  }
}

void JudgeArborMissing(const View& view, std::vector<Finding>& findings) {
  for (const Fitted& fitted : FittedParts(view)) {
    const auto& [part, fit] = fitted;
    const bool hangs_on_wrap = part.kind == "hook_keeper" || part.kind == "extension_butt";
    if (part.fitting != FitKind::kRigid || !part.arbors.empty() || hangs_on_wrap) continue;
    // plugs that leave room where the blank rests are told as a difference
    if (part.bore_known == BoreKnown::kPlugs && BlankRestsIn(view.rod, part)) continue;
    if (!fit.clearance_m || *fit.clearance_m <= kWidestGlue_m + kSame_m) continue;
    if (part.kind == "winding_check") {
      TellOfWideWindingCheck(view, fitted, findings);
      continue;
    }
    Add(view, kArborMissing, fitted,
        absl::StrFormat("'%s' is at least %.2f mm wider than the blank and has no arbor", part.id,
                        *fit.clearance_m * 1000),
        {{"clearance_mm", *fit.clearance_m * 1000}, {"limit_mm", kWidestGlue_m * 1000}}, findings);
  }
}

constexpr Code kStretchLimit = {
    .name = "fit/stretch-limit",
    .severity = Severity::kError,
    .summary = "A part is stretched further than it stands",
    .why = "Foam and rubber that are pulled on too far split along the rod, on the way or a season later.",
    .action = "Take a part with a larger bore, or open the bore out before it is pulled on.",
};

// Blank over bore, where the maker names no limit (common practice, no source).
constexpr double kStretchMost = 1.5;

void JudgeStretchLimit(const View& view, std::vector<Finding>& findings) {
  for (const Fitted& fitted : FittedParts(view)) {
    const auto& [part, fit] = fitted;
    const double limit = part.stretch_limit.value_or(kStretchMost);
    if (part.fitting != FitKind::kStretched || !fit.most_stretch || *fit.most_stretch <= limit + 1e-6) continue;
    Add(view, kStretchLimit, fitted,
        absl::StrFormat("'%s' is stretched %.2f times, and %.2f is %s", part.id, *fit.most_stretch, limit,
                        part.stretch_limit ? "its limit" : "the most that is common, where its maker names no limit"),
        {{"stretch", *fit.most_stretch}, {"limit", limit}}, findings);
  }
}

constexpr Code kStretchSlack = {
    .name = "fit/stretch-slack",
    .severity = Severity::kWarning,
    .summary = "A part that should grip by being stretched is not",
    .why = "It turns in the hand and lets water in.",
    .action = "Take a smaller bore, build the blank up, or say `kind: \"rigid\"` and give the part arbors.",
};

void JudgeStretchSlack(const View& view, std::vector<Finding>& findings) {
  for (const Fitted& fitted : FittedParts(view)) {
    const auto& [part, fit] = fitted;
    if (part.fitting != FitKind::kStretched || !fit.least_stretch || *fit.least_stretch >= 1 - 1e-6) continue;
    Add(view, kStretchSlack, fitted,
        absl::StrFormat("the blank under '%s' is thinner than its bore: %.2f times", part.id, *fit.least_stretch),
        {{"stretch", *fit.least_stretch}}, findings);
  }
}

constexpr Code kShrinkLimit = {
    .name = "fit/shrink-limit",
    .severity = Severity::kError,
    .summary = "A shrunk part does not close onto the blank",
    .why = "Tube that has shrunk as far as it goes and is still wide turns and wrinkles; more heat harms the blank.",
    .action = "Take a smaller tube or one that shrinks further, or build the blank up.",
};

// Blank over bore, where the maker names no limit: tube sold as 2:1 (common practice, no source).
constexpr double kShrinkLeast = 0.5;

void JudgeShrinkLimit(const View& view, std::vector<Finding>& findings) {
  for (const Fitted& fitted : FittedParts(view)) {
    const auto& [part, fit] = fitted;
    const double limit = part.stretch_limit.value_or(kShrinkLeast);
    if (part.fitting != FitKind::kShrunk || !fit.least_stretch || *fit.least_stretch >= limit - 1e-6) continue;
    Add(view, kShrinkLimit, fitted,
        absl::StrFormat("'%s' would have to shrink to %.2f of itself, and shrinks to %.2f", part.id, *fit.least_stretch,
                        limit),
        {{"shrink", *fit.least_stretch}, {"limit", limit}}, findings);
  }
}

}  // namespace

std::vector<Rule<View>> BoreRules() {
  return {{&kBoreTooSmall, JudgeBoreTooSmall}, {&kReam, JudgeReam},
          {&kArborMissing, JudgeArborMissing}, {&kStretchLimit, JudgeStretchLimit},
          {&kStretchSlack, JudgeStretchSlack}, {&kShrinkLimit, JudgeShrinkLimit}};
}

}  // namespace withy::fit
