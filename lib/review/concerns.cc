// The explicit list of concerns.
#include <utility>

#include "answers.h"
#include "on_the_blank.h"

namespace withy {

Answers ComputeAnswers(const Rod& rod, const std::vector<Practice>& practices) {
  Inputs inputs = rod.inputs;
  Answers answers;
  answers.sections = ComputeSections(rod, inputs);
  answers.fit = ComputeFit(rod, answers.sections);
  answers.bonding = ComputeBonding(rod, answers.sections, answers.fit, inputs);
  answers.guides = ComputeGuides(rod, practices);
  answers.wraps = ComputeWraps(rod);
  answers.balance = ComputeBalance(rod, answers.sections, answers.fit, answers.bonding, answers.wraps, inputs);
  // What sits on the blank is known now.
  answers.bending = ComputeBending(rod, answers.sections, OnTheBlankOf(rod, answers.balance.parts), inputs);
  answers.line_load = ComputeLineLoad(rod, answers.bending, inputs);
  answers.inputs = std::move(inputs);
  return answers;
}

void CheckAnswers(const Rod& rod, const Answers& answers, std::vector<Finding>& findings) {
  CheckSections(rod, answers.sections, findings);
  CheckBending(rod, answers.sections, answers.bending, findings);
  CheckLineLoad(rod, answers.line_load, findings);
  CheckFit(rod, answers.sections, answers.fit, findings);
  CheckBonding(rod, answers.fit, answers.bonding, findings);
  CheckGuides(rod, answers.fit, answers.guides, findings);
  CheckWraps(rod, answers.guides, answers.wraps, findings);
  CheckBalance(rod, answers.sections, answers.wraps, answers.balance, findings);
}

}  // namespace withy
