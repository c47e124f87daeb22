#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::line_load {
namespace {

constexpr Code kStaticTestDiffers = {
    .name = "line_load/static-test-differs",
    .severity = Severity::kAdvice,
    .summary = "The static test on the bench showed something else than what is worked out",
    .why =
        "The bench has the last word. What differs tells that stiffness, heights or places in the design are not those "
        "of "
        "the rod, and every figure of the loaded rod with them.",
    .action =
        "Go by what was seen. Measure ring heights and places again, or hang known weights from the bare blank and let "
        "`withy calibrate` find its stiffness.",
};

// A drop read by a tape with the weight still swinging (common practice, no source).
constexpr double kReadM = 0.005;

// Own weight bends a rod that hangs under a load by less than by itself: by half of that, and half either way.
void JudgeDrop(const StaticTest& test, const StrungRod& strung, std::vector<Finding>& findings) {
  if (!test.tip_drop || !strung.tip_drop_m || !strung.own_drop_m) return;
  const double seen = test.tip_drop->value.meters();
  const double computed = strung.tip_drop_m->value() + *strung.own_drop_m / 2;
  const double allowed = std::hypot(strung.tip_drop_m->plus_minus(), test.tip_drop->plus_minus.value_or(kReadM)) +
                         std::abs(*strung.own_drop_m) / 2;
  if (std::abs(seen - computed) <= allowed) return;
  findings.push_back(MakeFinding(
      kStaticTestDiffers, test.tip_drop->at,
      absl::StrFormat("the tip dropped by %.0f mm, and by %.0f mm as worked out: the two may differ by %.0f mm",
                      seen * 1000, computed * 1000, allowed * 1000),
      {{"seen_mm", seen * 1000}, {"computed_mm", computed * 1000}, {"allowed_mm", allowed * 1000}}));
}

// Nearer than this nobody can tell by eye, nor by heights and diameters read to a tenth (common practice, no source).
constexpr double kCloseM = 0.0005;

// Of the spans that can touch: all, or those that begin at the guides named. -1 = none.
int ClosestSpan(const View& view, const StrungRod& strung, const std::vector<std::string>& after) {
  const std::vector<int>& guides = view.answers.train->guides;
  int closest = -1;
  for (std::size_t k = 0; k < strung.clearances.size(); ++k) {
    if (!CanTouch(strung, k)) continue;
    const bool named = k > 0 && std::count(after.begin(), after.end(), view.rod.guides[guides[k - 1]].id) > 0;
    if (!after.empty() && !named) continue;
    if (closest < 0 || strung.clearances[k].least < strung.clearances[closest].least) closest = static_cast<int>(k);
  }
  return closest;
}

void JudgeTouch(const View& view, const StaticTest& test, const StrungRod& strung, std::vector<Finding>& findings) {
  const int span = ClosestSpan(view, strung, test.line_touched ? test.touched_after : std::vector<std::string>());
  if (span < 0) return;
  const double least_m = strung.clearances[span].least;
  if (test.line_touched ? least_m < kCloseM : least_m > -kCloseM) return;
  const std::string where = RingName(view, span - 1) + " and " + RingName(view, span);
  const std::string message =
      test.line_touched
          ? absl::StrFormat("the line touched the blank, and stays %.2f mm clear of it between %s as worked out",
                            least_m * 1000, where)
          : absl::StrFormat(
                "the line stayed clear of the blank, and would cut %.2f mm into it between %s as worked out",
                -least_m * 1000, where);
  findings.push_back(
      MakeFinding(kStaticTestDiffers, test.load.at.Field("line_touched"), message, {{"clearance_mm", least_m * 1000}}));
  findings.back().related = {RingPath(view, span - 1), RingPath(view, span)};
  findings.back().from_tip_mm = FromTipMm(view, strung, strung.clearances[span].s);
}

void JudgeStaticTests(const View& view, std::vector<Finding>& findings) {
  for (const StrungRod& strung : view.answers.tests) {
    if (!strung.solved()) continue;
    const StaticTest& test = view.rod.static_tests[strung.load_case];
    JudgeDrop(test, strung, findings);
    JudgeTouch(view, test, strung, findings);
  }
}

}  // namespace

std::vector<Rule<View>> TestRules() {
  return {{&kStaticTestDiffers, JudgeStaticTests}};
}

}  // namespace withy::line_load
