// The rules of this concern, in groups of one file each.
#ifndef WITHY_LINE_LOAD_RULES_H_
#define WITHY_LINE_LOAD_RULES_H_

#include <string>
#include <vector>

#include "withy/findings/rule.h"
#include "withy/line_load/line_load.h"

namespace withy::line_load {

struct View {
  const Rod& rod;
  const LineLoadAnswers& answers;
};

// "'g3'" of a ring of the train, "the tip-top" of the last one, "the reel" of -1.
std::string RingName(const View& view, int ring);
// Where that stands in the design.
FieldPath RingPath(const View& view, int ring);
// From the tip end of the finished rod; unset where that is not known.
std::optional<double> FromTipMm(const View& view, const StrungRod& strung, double s_m);
// Distance below which the line counts as on the blank: less than nothing by more than the numbers may be off.
double TouchesBelowM(const StrungRod& strung);
// Between two rings that both stand on the reel's side, and that on the outside of the bend: only there a straight line can
// lie on the blank.
bool CanTouch(const StrungRod& strung, std::size_t span);

std::vector<Rule<View>> ShapeRules();  // how line and blank lie
std::vector<Rule<View>> LoadRules();   // what the load cases ask for
std::vector<Rule<View>> TestRules();   // against the bench

}  // namespace withy::line_load

#endif  // WITHY_LINE_LOAD_RULES_H_
