#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/rod/saw.h"

namespace withy::sections {
namespace {

constexpr Code kCutAtJoint = {
    .name = "sections/cut-at-joint",
    .severity = Severity::kWarning,
    .summary = "A cut takes the end of a section that goes into a joint",
    .why =
        "Male and female end are made for each other over a short length. A few millimetres off either, and the "
        "joint seats deeper, stands open or does not hold.",
    .action =
        "Cut the free end instead. Where this end must be cut, measure both sides of the joint again and enter "
        "the rows.",
};

void JudgeCutAtJoint(const View& view, std::vector<Finding>& findings) {
  for (const Joint& joint : view.rod.blank.joints) {
    const Section* lower = view.rod.FindSection(joint.lower);
    const Section* upper = view.rod.FindSection(joint.upper);
    for (const EndCut* cut : {lower ? &lower->cut_tip : nullptr, upper ? &upper->cut_butt : nullptr}) {
      if (cut == nullptr || cut->amount <= Length()) continue;
      findings.push_back(MakeFinding(
          kCutAtJoint, cut->at, absl::StrFormat("%.1f mm come off an end of joint '%s'", cut->amount.mm(), joint.id),
          {{"cut_mm", cut->amount.mm()}}));
      findings.back().related.push_back(joint.at);
    }
  }
}

constexpr Code kCutLargerThanSingle = {
    .name = "sections/cut-larger-than-single",
    .severity = Severity::kAdvice,
    .summary = "More is to come off than one cut should take",
    .why =
        "The bores and the taper decide where the blank comes to rest, and no reading of them is perfect. A cut "
        "in stages, with a dry fit after each, cannot take too much.",
    .action = "Cut less than this first, fit dry, log both, and look again at what is left to cut.",
};

void JudgeCutLargerThanSingle(const View& view, std::vector<Finding>& findings) {
  const Length limit = view.rod.shop.largest_single_cut ? view.rod.shop.largest_single_cut->value : kUsualLargestCut;
  for (const Section& section : view.rod.blank.sections) {
    for (const EndCut* cut : {&section.cut_butt, &section.cut_tip}) {
      const Length left = cut->amount - cut->done;
      // a hundredth of a millimetre: the same limit in another unit
      if (left <= limit + Length::Mm(0.01)) continue;
      findings.push_back(MakeFinding(
          kCutLargerThanSingle, cut->at,
          absl::StrFormat("%.1f mm are still to come off, and one cut takes %.1f mm at most", left.mm(), limit.mm()),
          {{"cut_mm", left.mm()}, {"limit_mm", limit.mm()}}));
    }
  }
}

}  // namespace

std::vector<Rule<View>> CutRules() {
  return {{&kCutAtJoint, JudgeCutAtJoint}, {&kCutLargerThanSingle, JudgeCutLargerThanSingle}};
}

}  // namespace withy::sections
