#include <cmath>
#include <set>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::bending {
namespace {

// Of the finished rod; of the bare blank where that alone can be told.
const std::vector<BentRod>& CasesOf(const View& view) {
  static const std::vector<BentRod> none;
  if (view.answers.finished) return view.answers.finished->cases;
  return view.answers.bare ? view.answers.bare->cases : none;
}

// To whole percent, downwards: more is not known of a place where a shape gives way.
double PercentReached(const BentRod& bent) {
  return std::floor(100 * bent.shape.reached);
}

constexpr Code kLoadFolds = {
    .name = "bending/load-folds",
    .severity = Severity::kWarning,
    .summary = "Under a load case the rod folds: more than one shape holds the load, or none near by",
    .why =
        "A load straight against the butt bends the rod to either side, and which one depends on a breath; or it snaps "
        "over into another shape. The figures are of the part of the load up to there.",
    .action =
        "Turn butt or line by a few degrees, so that it is said to which side the rod bends, or ask for a smaller "
        "load.",
};

void JudgeLoadFolds(const View& view, std::vector<Finding>& findings) {
  for (const BentRod& bent : CasesOf(view)) {
    const bool several = bent.shape.state == ElasticaState::kSeveral;
    if (!several && bent.shape.state != ElasticaState::kNone) continue;
    const double percent = PercentReached(bent);
    findings.push_back(MakeFinding(kLoadFolds, bent.at,
                                   absl::StrFormat("at %.0f %% of load '%s' %s", percent, bent.id,
                                                   several ? "more than one shape holds more" : "the rod snaps over"),
                                   {{"reached_percent", percent}, {"load_n", bent.load_n->value()}}));
  }
}

constexpr Code kAboveRatedLift = {
    .name = "bending/above-rated-lift",
    .severity = Severity::kWarning,
    .summary = "A load case is above the blank's rated lift",
    .why =
        "The maker's limit knows what no calculation here does: where this blank breaks. A shape that can be computed "
        "says "
        "nothing of that.",
    .action = "Ask for a load within the rating. Do not hang more than the rated lift from the rod to try it.",
};

void JudgeAboveRatedLift(const View& view, std::vector<Finding>& findings) {
  const auto& rated = view.rod.blank.rated_lift_n;
  if (!rated) return;
  for (const LoadCase& load : view.rod.load_cases) {
    // a share of rounding: the same force in another unit
    if (!load.load_n || load.load_n->value <= rated->value * (1 + 1e-9)) continue;
    findings.push_back(MakeFinding(kAboveRatedLift, load.load_n->at,
                                   absl::StrFormat("load '%s' pulls with %.2f N, the blank is rated for %.2f N",
                                                   load.id, load.load_n->value, rated->value),
                                   {{"load_n", load.load_n->value}, {"rated_n", rated->value}}));
    findings.back().related.push_back(rated->at);
  }
}

constexpr Code kClampOffRod = {
    .name = "bending/clamp-off-rod",
    .severity = Severity::kError,
    .summary = "The rod is to be held beyond its tip",
    .why =
        "Where it is held, the rod does not bend; there must be blank ahead of it. Unit or origin of the place is "
        "wrong.",
    .action = "Measure from the butt end of the finished rod to the tip-side edge of the clamp.",
};

void JudgeClampOffRod(const View& view, std::vector<Finding>& findings) {
  if (!view.rod.blank_tip_m) return;
  const double tip_mm = view.rod.blank_tip_m->value() * 1000;
  std::set<std::string> told;  // several load cases may be held at one place
  for (const LoadCase& load : view.rod.load_cases) {
    if (!load.clamp || load.clamp->value.mm() < tip_mm || !told.insert(load.clamp->at.ToString()).second) continue;
    findings.push_back(MakeFinding(kClampOffRod, load.clamp->at,
                                   absl::StrFormat("held at %.1f mm from the butt end, and the blank ends at %.1f mm",
                                                   load.clamp->value.mm(), tip_mm),
                                   {{"clamp_mm", load.clamp->value.mm()}, {"tip_mm", tip_mm}}));
  }
}

}  // namespace

std::vector<Rule<View>> LoadRules() {
  return {{&kLoadFolds, JudgeLoadFolds}, {&kAboveRatedLift, JudgeAboveRatedLift}, {&kClampOffRod, JudgeClampOffRod}};
}

}  // namespace withy::bending
