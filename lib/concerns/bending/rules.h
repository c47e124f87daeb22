// The rules of this concern, in groups of one file each.
#ifndef WITHY_BENDING_RULES_H_
#define WITHY_BENDING_RULES_H_

#include <vector>

#include "withy/bending/bending.h"
#include "withy/findings/rule.h"

namespace withy::bending {

struct View {
  const Rod& rod;
  const SectionsAnswers& sections;
  const BendingAnswers& answers;
};

std::vector<Rule<View>> LoadRules();     // what the load cases ask for
std::vector<Rule<View>> ModulusRules();  // what stiffness rests on

}  // namespace withy::bending

#endif  // WITHY_BENDING_RULES_H_
