#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::fit {
namespace {

constexpr Code kJointOrder = {
    .name = "fit/joint-order",
    .severity = Severity::kError,
    .summary = "A joint does not put a section and the next one together",
    .why =
        "Each joint takes or adds length. One between the wrong sections, or a second one between the same, "
        "counts for nothing or twice.",
    .action =
        "Name the section on the butt side in `lower` and the next one in `upper`. A spare section needs no "
        "joint of its own.",
};

void JudgeJointOrder(const View& view, std::vector<Finding>& findings) {
  const Blank& blank = view.rod.blank;
  std::vector<bool> joined(blank.assembled.size(), false);
  for (const Joint& joint : blank.joints) {
    std::size_t i = 0;
    const auto joins = [&](std::size_t k) {
      return blank.sections[blank.assembled[k]].id == joint.lower &&
             blank.sections[blank.assembled[k + 1]].id == joint.upper;
    };
    while (i + 1 < blank.assembled.size() && !joins(i)) ++i;
    const bool in_order = i + 1 < blank.assembled.size() && !joined[i];
    if (in_order) joined[i] = true;
    if (in_order || joint.lower.empty() || joint.upper.empty()) continue;
    findings.push_back(MakeFinding(kJointOrder, joint.at,
                                   absl::StrFormat("'%s' does not join '%s' and '%s' as neighbours, or does so again",
                                                   joint.id, joint.lower, joint.upper)));
  }
}

// Male end and female mouth of a joint in which one section goes into the other.
struct Sockets {
  double male_m = 0;        // outer diameter of the end that goes in
  double male_deep_m = 0;   // outer diameter where the mouth comes to lie, at full overlap
  double mouth_m = 0;       // inner diameter of the mouth
  double plus_minus_m = 0;  // of their difference
};

// Inner diameter at an end, where the wall was read there (not drawn on from far away).
std::optional<double> InnerAt(const Section& section, double s_m) {
  if (section.wall.empty() || section.outer.empty()) return std::nullopt;
  constexpr double kNear_m = 0.05;
  if (s_m < section.wall.begin() - kNear_m || s_m > section.wall.end() + kNear_m) return std::nullopt;
  return section.outer.At(s_m) - 2 * section.wall.At(s_m);
}

std::optional<Sockets> SocketsOf(const View& view, const Joint& joint) {
  const Section* lower = view.rod.FindSection(joint.lower);
  const Section* upper = view.rod.FindSection(joint.upper);
  if (lower == nullptr || upper == nullptr || lower->outer.empty() || upper->outer.empty()) return std::nullopt;
  if (!lower->to_m || !upper->from_m || !joint.overlap) return std::nullopt;
  const double tip = lower->to_m->value(), butt = upper->from_m->value(), overlap = joint.overlap->value.meters();
  const bool over = joint.kind == JointKind::kTipOverButt;
  if (!over && joint.kind != JointKind::kPutIn) return std::nullopt;
  const std::optional<double> mouth = over ? InnerAt(*upper, butt) : InnerAt(*lower, tip);
  if (!mouth) return std::nullopt;
  Sockets sockets;
  sockets.mouth_m = *mouth;
  sockets.male_m = over ? lower->outer.At(tip) : upper->outer.At(butt);
  sockets.male_deep_m = over ? lower->outer.At(tip - overlap) : upper->outer.At(butt + overlap);
  sockets.plus_minus_m =
      std::hypot(lower->taper.diameter_plus_minus_m.value_or(0), upper->taper.diameter_plus_minus_m.value_or(0));
  return sockets;
}

constexpr Code kJointTight = {
    .name = "fit/joint-tight",
    .severity = Severity::kError,
    .summary = "The end of one section does not go into the mouth of the other",
    .why = "A joint that does not take its own overlap leaves the rod too long, and one that is forced splits.",
    .action = "Measure the end and the mouth again. A spigot is sanded to fit; a wound section is not.",
};

void JudgeJointTight(const View& view, std::vector<Finding>& findings) {
  for (const Joint& joint : view.rod.blank.joints) {
    const std::optional<Sockets> sockets = SocketsOf(view, joint);
    if (!sockets || sockets->male_m <= sockets->mouth_m + sockets->plus_minus_m + 1e-8) continue;
    findings.push_back(MakeFinding(kJointTight, joint.at,
                                   absl::StrFormat("an end of %.2f mm does not go into a mouth of %.2f mm",
                                                   sockets->male_m * 1000, sockets->mouth_m * 1000),
                                   {{"end_mm", sockets->male_m * 1000}, {"mouth_mm", sockets->mouth_m * 1000}}));
  }
}

constexpr Code kJointLoose = {
    .name = "fit/joint-loose",
    .severity = Severity::kWarning,
    .summary = "A joint is loose at its mouth when seated",
    .why =
        "It knocks, turns and in the end splits the mouth, or goes in deeper than the overlap says and shortens "
        "the rod.",
    .action = "Push the joint home dry, mark it, and measure the overlap and both diameters again.",
};

// More room than this at the mouth is no fit (common practice, no source).
constexpr double kLoose_m = 0.0003;

void JudgeJointLoose(const View& view, std::vector<Finding>& findings) {
  for (const Joint& joint : view.rod.blank.joints) {
    const std::optional<Sockets> sockets = SocketsOf(view, joint);
    if (!sockets) continue;
    const double thickest_m = std::max(sockets->male_m, sockets->male_deep_m);
    const double room_m = sockets->mouth_m - thickest_m;
    if (room_m <= kLoose_m + sockets->plus_minus_m) continue;
    findings.push_back(
        MakeFinding(kJointLoose, joint.at,
                    absl::StrFormat("%.2f mm in a mouth of %.2f mm", thickest_m * 1000, sockets->mouth_m * 1000),
                    {{"end_mm", thickest_m * 1000}, {"mouth_mm", sockets->mouth_m * 1000}}));
  }
}

}  // namespace

std::vector<Rule<View>> JointRules() {
  return {{&kJointOrder, JudgeJointOrder}, {&kJointTight, JudgeJointTight}, {&kJointLoose, JudgeJointLoose}};
}

}  // namespace withy::fit
