#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::line_load {
namespace {

constexpr Code kFolds = {
    .name = "line_load/folds",
    .severity = Severity::kWarning,
    .summary = "Pulled through its rings the rod folds: more than one shape holds the load, or none near by",
    .why =
        "A pull along the rod, or back at the hand, bends it to either side, or snaps it over into another shape. The "
        "figures are of the part of the pull up to there.",
    .action =
        "Turn butt or line by a few degrees, so that it is said to which side the rod bends, or ask for a smaller "
        "pull.",
};

void JudgeFolds(const View& view, std::vector<Finding>& findings) {
  for (const StrungRod& strung : view.answers.cases) {
    const bool several = strung.bent.state == ElasticaState::kSeveral;
    if (!several && strung.bent.state != ElasticaState::kNone) continue;
    // Downwards: more is not known of a place where a shape gives way.
    const double percent = std::floor(100 * strung.bent.reached);
    const double tension_n = strung.tension_n->value();
    findings.push_back(MakeFinding(kFolds, strung.at,
                                   absl::StrFormat("at %.0f %% of load '%s' %s", percent, strung.id,
                                                   several ? "more than one shape holds more" : "the rod snaps over"),
                                   {{"reached_percent", percent}, {"tension_n", tension_n}}));
  }
}

constexpr Code kCautionAngle = {
    .name = "line_load/caution-angle",
    .severity = Severity::kWarning,
    .summary = "A load is pulled at an angle at which blanks break",
    .why =
        "Held high, a rod bends in its tip alone, which was not made to lift. Makers' advice is to lift with the butt "
        "at no "
        "more than 60 degrees above the horizontal; to fight a fish with no more than a right angle from butt to line "
        "is "
        "common practice, no source. A broken blank flies.",
    .action =
        "Lower the butt, or bring the line in by walking. Never load a rod that you stand in line with, and wear eye "
        "protection.",
};

constexpr double kHighestButtDeg = 60;
constexpr double kWidestLineDeg = 90;
constexpr double kRoundingDeg = 1e-9;

// A weight that hangs is lifted; a line with a direction of its own is a fish's.
void JudgeCautionAngle(const View& view, std::vector<Finding>& findings) {
  for (const LoadCase& load : view.rod.load_cases) {
    if (load.at_tip || !load.load_n || load.load_n->value <= 0) continue;
    const double butt_deg = load.butt_angle_deg.value;
    if (butt_deg > kHighestButtDeg + kRoundingDeg) {
      findings.push_back(MakeFinding(
          kCautionAngle, load.butt_angle_deg.at,
          absl::StrFormat("load '%s' is pulled with the butt %.0f degrees above the horizontal", load.id, butt_deg),
          {{"butt_deg", butt_deg}, {"limit_deg", kHighestButtDeg}}));
    } else if (load.line_angle_deg && std::abs(load.line_angle_deg->value) > kWidestLineDeg + kRoundingDeg) {
      const double line_deg = std::abs(load.line_angle_deg->value);
      findings.push_back(MakeFinding(
          kCautionAngle, load.line_angle_deg->at,
          absl::StrFormat("load '%s' pulls %.0f degrees from the butt, back towards the hand", load.id, line_deg),
          {{"line_deg", line_deg}, {"limit_deg", kWidestLineDeg}}));
    }
  }
}

constexpr Code kClampAheadOfGuide = {
    .name = "line_load/clamp-ahead-of-guide",
    .severity = Severity::kWarning,
    .summary = "The rod is to be held ahead of its butt guide: what the load does cannot be told",
    .why =
        "All that lies behind the clamp is held, the guide with it, and the line would run back over the hand. The place "
        "of the guide or that of the clamp is wrong.",
    .action = "Measure both again: the guide from the tip-top's ring, the clamp from the butt end to its tip-side edge.",
};

void JudgeClampAheadOfGuide(const View& view, std::vector<Finding>& findings) {
  if (!view.answers.train || view.answers.train->guides.empty()) return;
  const double guide_mm = view.answers.train->ring_m.front() * 1000;
  for (const StrungRod& strung : view.answers.cases) {
    const double clamp_mm = strung.clamp_m * 1000;
    const bool on_rod = strung.clamp_m < view.answers.train->ring_m.back();
    if (strung.told() || !on_rod || clamp_mm < guide_mm) continue;
    findings.push_back(MakeFinding(
        kClampAheadOfGuide, strung.at,
        absl::StrFormat("load '%s' is held %.1f mm from the butt end, and %s, the butt guide, stands at %.1f mm",
                        strung.id, clamp_mm, RingName(view, 0), guide_mm),
        {{"clamp_mm", clamp_mm}, {"guide_mm", guide_mm}}));
    findings.back().related = {RingPath(view, 0)};
  }
}

}  // namespace

std::vector<Rule<View>> LoadRules() {
  return {{&kFolds, JudgeFolds}, {&kCautionAngle, JudgeCautionAngle}, {&kClampAheadOfGuide, JudgeClampAheadOfGuide}};
}

}  // namespace withy::line_load
