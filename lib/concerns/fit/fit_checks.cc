#include "rules.h"

namespace withy {
namespace {

std::vector<Rule<fit::View>> Rules() {
  return Joined({fit::LengthRules(), fit::StackRules(), fit::BoreRules(), fit::ArborRules(), fit::HoldRules(),
                 fit::JointRules()});
}

}  // namespace

void CheckFit(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& answers,
              std::vector<Finding>& findings) {
  Judge(Rules(), fit::View{rod, sections, answers}, findings);
}

std::vector<Code> FitCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
