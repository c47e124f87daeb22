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

// How far off its ordered balance point the rod may be: as ordered, else 1/2 in (common practice, no source).
Length ToleranceOf(const Known<Length>& balance_ordered);
// By the best estimate the rod as designed balances where the order says, within its tolerance. False where it does not
// say.
bool MeetsOrder(const View& view);

std::vector<Rule<View>> CounterweightRules();  // how many, and whether they go in
std::vector<Rule<View>> WeighingRules();       // readings of the log that cannot be

}  // namespace withy::balance

#endif  // WITHY_BALANCE_RULES_H_
