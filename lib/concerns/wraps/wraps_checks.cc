#include "rules.h"

namespace withy {
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
