// The rules of this concern, in groups of one file each.
#ifndef WITHY_BONDING_RULES_H_
#define WITHY_BONDING_RULES_H_

#include <vector>

#include "withy/bonding/bonding.h"
#include "withy/findings/rule.h"

namespace withy::bonding {

struct View {
  const Rod& rod;
  const FitAnswers& fit;
  const BondingAnswers& answers;
};

std::vector<Rule<View>> LineRules();      // the room that the adhesive fills
std::vector<Rule<View>> AdhesiveRules();  // what the data sheet says, and whether it was kept to
std::vector<Rule<View>> BatchRules();     // what is mixed at once

}  // namespace withy::bonding

#endif  // WITHY_BONDING_RULES_H_
