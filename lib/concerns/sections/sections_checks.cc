#include "rules.h"

namespace withy {
namespace {

std::vector<Rule<sections::View>> Rules() {
  return Joined({sections::TaperRules(), sections::WallRules(), sections::PieceRules(), sections::CutRules()});
}

}  // namespace

void CheckSections(const Rod& rod, const SectionsAnswers& answers, std::vector<Finding>& findings) {
  Judge(Rules(), sections::View{rod, answers}, findings);
}

std::vector<Code> SectionsCodes() { return CodesOf(Rules()); }

}  // namespace withy
