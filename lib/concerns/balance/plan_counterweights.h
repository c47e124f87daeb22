// How many counterweights the finished rod takes.
#ifndef WITHY_BALANCE_PLAN_COUNTERWEIGHTS_H_
#define WITHY_BALANCE_PLAN_COUNTERWEIGHTS_H_

#include <optional>

#include "weights_in.h"
#include "withy/balance/balance.h"

namespace withy {

// Fills in answers.counterweights. `others` is everything else with the reel on; unset = cannot be told. What is open
// is added to the unknowns. Uses answers.hold_m and answers.aim.
void PlanCounterweights(const Rod& rod, const WeightsIn& weights, const std::optional<Sums>& others,
                        BalanceAnswers& answers);

}  // namespace withy

#endif  // WITHY_BALANCE_PLAN_COUNTERWEIGHTS_H_
