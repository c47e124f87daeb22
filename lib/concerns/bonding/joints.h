// The glued joints of a rod, in the order of work.
#ifndef WITHY_BONDING_JOINTS_H_
#define WITHY_BONDING_JOINTS_H_

#include "withy/bonding/bonding.h"

namespace withy {

// Fills `answers.joints`, and what was assumed for them or could not be told.
void CollectJoints(const Rod& rod, const FitAnswers& fit, Inputs& inputs, BondingAnswers& answers);

// Fills `answers.batches` with what is still open.
void PlanMixing(const Rod& rod, BondingAnswers& answers);

}  // namespace withy

#endif  // WITHY_BONDING_JOINTS_H_
