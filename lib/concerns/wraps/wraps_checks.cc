#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy {
namespace wraps {

std::string NameOf(const Wrap& wrap) {
  return wrap.on.empty() ? absl::StrFormat("'%s'", wrap.id) : absl::StrFormat("'%s' on '%s'", wrap.id, wrap.on);
}

}  // namespace wraps

namespace {

std::vector<Rule<wraps::View>> Rules() {
  return Joined({wraps::PlaceRules(), wraps::ThreadRules()});
}

}  // namespace

void CheckWraps(const Rod& rod, const GuidesAnswers& guides, const WrapsAnswers& answers,
                std::vector<Finding>& findings) {
  Judge(Rules(), wraps::View{rod, guides, answers}, findings);
}

std::vector<Code> WrapsCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
