// The rules of this concern, in groups of one file each.
#ifndef WITHY_WRAPS_RULES_H_
#define WITHY_WRAPS_RULES_H_

#include <set>
#include <string>
#include <vector>

#include "withy/findings/rule.h"
#include "withy/fit/span.h"
#include "withy/guides/guides.h"
#include "withy/rod/rod.h"
#include "withy/wraps/wraps.h"

namespace withy::wraps {

struct View {
  const Rod& rod;
  const GuidesAnswers& guides;
  const WrapsAnswers& answers;
};

std::vector<Rule<View>> PlaceRules();   // a wrap and what is under and beside it
std::vector<Rule<View>> ThreadRules();  // what it is made of and covered with

// "'w-guides' on 'g3'"
std::string NameOf(const Wrap& wrap);

// One entry of the design stands for several wraps: true the first time that it is met.
class OncePerEntry {
 public:
  bool operator()(const Wrap& wrap) { return seen_.insert(wrap.at.ToString()).second; }

 private:
  std::set<std::string> seen_;
};

}  // namespace withy::wraps

#endif  // WITHY_WRAPS_RULES_H_
