// What the rules of balance look at, group by group.
#ifndef WITHY_BALANCE_RULES_H_
#define WITHY_BALANCE_RULES_H_

#include <vector>

#include "withy/balance/balance.h"
#include "withy/findings/rule.h"

namespace withy::balance {

struct View {
  const Rod& rod;
  const BalanceAnswers& answers;
};

std::vector<Rule<View>> CounterweightRules();  // how many, and whether they go in
std::vector<Rule<View>> WeighingRules();       // readings of the log that cannot be

}  // namespace withy::balance

#endif  // WITHY_BALANCE_RULES_H_
