#include "rules.h"

namespace withy {
namespace {

std::vector<Rule<bending::View>> Rules() {
  return Joined({bending::LoadRules(), bending::ModulusRules()});
}

}  // namespace

void CheckBending(const Rod& rod, const SectionsAnswers& sections, const BendingAnswers& answers,
                  std::vector<Finding>& findings) {
  Judge(Rules(), bending::View{rod, sections, answers}, findings);
}

std::vector<Code> BendingCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
