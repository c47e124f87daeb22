#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::bonding {
namespace {

// Two gaps that differ by less are the same (rounding of inches and millimetres).
constexpr double kSame_m = 1e-8;

Finding AtJoint(const View& view, const Code& code, const GluedJoint& joint, std::string message,
                std::vector<Number> numbers) {
  Finding finding = MakeFinding(code, joint.at, std::move(message), std::move(numbers));
  if (joint.from_m) finding.from_tip_mm = view.rod.FromTipMm(Along{Uncertain(*joint.from_m), std::nullopt});
  return finding;
}

const Adhesive* AdhesiveOf(const View& view, const GluedJoint& joint) {
  return joint.adhesive_index < 0 ? nullptr : &view.rod.adhesives[joint.adhesive_index];
}

bool IsKind(const View& view, const GluedJoint& joint, const char* kind) {
  const Adhesive* adhesive = AdhesiveOf(view, joint);
  return adhesive != nullptr && adhesive->kind == kind;
}

const Part* PartOf(const View& view, const GluedJoint& joint) {
  return joint.kind == Glued::kPart ? view.rod.FindPart(joint.what) : nullptr;
}

// The bore of such a part against the blank, and the tube of a tip-top, are judged where fit and guides are judged.
bool IsJudgedElsewhere(const View& view, const GluedJoint& joint) {
  const Part* part = PartOf(view, joint);
  return joint.kind == Glued::kTipTop || (part != nullptr && part->on.empty());
}

// The gap that its adhesive bridges: with arbors that between them and the bore. More than a metre is no gap.
std::optional<double> LineOf(const GluedJoint& joint) {
  const std::optional<double> line = joint.arbor_gap_m ? joint.arbor_gap_m : joint.gap_m;
  return line && std::abs(*line) < 1 ? line : std::nullopt;
}

constexpr Code kLineThick = {
    .name = "bonding/line-thick",
    .severity = Severity::kWarning,
    .summary = "A bond line is too thick",
    .why =
        "Epoxy holds best at 0.1 to 0.2 mm all round and is tolerated up to 0.5 mm; beyond that it is weak, heavy, and "
        "the part comes to lie off its axis.",
    .action = "Build the inner side up with tape or an arbor until 0.1 to 0.2 mm are left all round.",
};

// All round: 0.5 mm and more are no more than tolerated (a supplier's advice).
constexpr double kThick_m = 0.0005;

void JudgeLineThick(const View& view, std::vector<Finding>& findings) {
  for (const GluedJoint& joint : view.answers.joints) {
    const std::optional<double> line = LineOf(joint);
    if (!line || joint.done || *line <= kThick_m + kSame_m) continue;
    // a bare bore on the blank is told as an arbor that is missing, an arbor that does not fit as such
    if (joint.arbor_gap_m && !joint.volume_m3) continue;
    if (IsJudgedElsewhere(view, joint) && !joint.arbor_gap_m) continue;
    findings.push_back(AtJoint(view, kLineThick, joint,
                               absl::StrFormat("%.2f mm of adhesive all round '%s'", *line * 1000, joint.what),
                               {{"gap_mm", *line * 1000}, {"limit_mm", kThick_m * 1000}}));
  }
}

constexpr Code kLineNone = {
    .name = "bonding/line-none",
    .severity = Severity::kError,
    .summary = "There is no room for adhesive",
    .why = "What is wider than its bore does not go in, and what fits it exactly wipes the adhesive off on the way.",
    .action = "Measure both again; then open the bore, or sand down what goes into it, until 0.1 mm is left all round.",
};

void JudgeLineNone(const View& view, std::vector<Finding>& findings) {
  for (const GluedJoint& joint : view.answers.joints) {
    if (!joint.gap_m || joint.done || *joint.gap_m > kSame_m || *joint.gap_m < -1) continue;
    if (IsJudgedElsewhere(view, joint)) continue;
    findings.push_back(AtJoint(view, kLineNone, joint,
                               absl::StrFormat("%.2f mm are left all round '%s'", *joint.gap_m * 1000, joint.what),
                               {{"gap_mm", *joint.gap_m * 1000}}));
  }
}

constexpr Code kLineThin = {
    .name = "bonding/line-thin",
    .severity = Severity::kAdvice,
    .summary = "A bond line of paste epoxy is thin",
    .why =
        "Less than 0.05 mm all round leaves paste nowhere to stay: it is scraped off as the part slides home, and the "
        "joint is dry inside.",
    .action =
        "Ream the bore or sand the inner side for 0.1 mm all round, or take a liquid epoxy; turn the part as it slides "
        "on.",
};

// All round: 0.05 to 0.13 mm hold best (a supplier's advice).
constexpr double kThin_m = 0.00005;

void JudgeLineThin(const View& view, std::vector<Finding>& findings) {
  for (const GluedJoint& joint : view.answers.joints) {
    const Part* part = PartOf(view, joint);
    // spigots and turned arbors are made to fit snugly, and go on a short way (common practice, no source)
    if (part == nullptr || !joint.gap_m || joint.done || !IsKind(view, joint, "epoxy_paste")) continue;
    if (*joint.gap_m <= kSame_m || *joint.gap_m >= kThin_m - kSame_m) continue;
    // rings and checks only have to stay where they are
    if (part->kind == "winding_check" || part->kind == "trim_ring") continue;
    findings.push_back(AtJoint(view, kLineThin, joint,
                               absl::StrFormat("%.3f mm of paste all round '%s'", *joint.gap_m * 1000, joint.what),
                               {{"gap_mm", *joint.gap_m * 1000}, {"limit_mm", kThin_m * 1000}}));
  }
}

constexpr Code kCyanoacrylateGap = {
    .name = "bonding/cyanoacrylate-gap",
    .severity = Severity::kWarning,
    .summary = "Cyanoacrylate is to bridge a wide gap",
    .why = "It holds in a line thinner than 0.05 mm, is weak from 0.25 mm on, and breaks under knocks.",
    .action = "Take an epoxy, or build the inner side up.",
};

// All round: from there on it weakens (maker's data).
constexpr double kCyanoacrylate_m = 0.00025;

void JudgeCyanoacrylateGap(const View& view, std::vector<Finding>& findings) {
  for (const GluedJoint& joint : view.answers.joints) {
    const std::optional<double> line = LineOf(joint);
    if (!line || joint.done || !IsKind(view, joint, "cyanoacrylate") || *line <= kCyanoacrylate_m + kSame_m) continue;
    findings.push_back(AtJoint(view, kCyanoacrylateGap, joint,
                               absl::StrFormat("%.2f mm of cyanoacrylate all round '%s'", *line * 1000, joint.what),
                               {{"gap_mm", *line * 1000}, {"limit_mm", kCyanoacrylate_m * 1000}}));
  }
}

}  // namespace

std::vector<Rule<View>> LineRules() {
  return {{&kLineThick, JudgeLineThick},
          {&kLineNone, JudgeLineNone},
          {&kLineThin, JudgeLineThin},
          {&kCyanoacrylateGap, JudgeCyanoacrylateGap}};
}

}  // namespace withy::bonding
