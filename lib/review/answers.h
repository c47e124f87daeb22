// The answers of all concerns together, and what is made of them.
#ifndef WITHY_REVIEW_ANSWERS_H_
#define WITHY_REVIEW_ANSWERS_H_

#include "withy/balance/balance.h"
#include "withy/bending/bending.h"
#include "withy/bonding/bonding.h"
#include "withy/fit/fit.h"
#include "withy/guides/guides.h"
#include "withy/line_load/line_load.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"
#include "withy/v1/report.pb.h"
#include "withy/v1/rod.pb.h"
#include "withy/wraps/wraps.h"

namespace withy {

struct Answers {
  SectionsAnswers sections;
  BendingAnswers bending;
  LineLoadAnswers line_load;
  FitAnswers fit;
  BondingAnswers bonding;
  GuidesAnswers guides;
  WrapsAnswers wraps;
  BalanceAnswers balance;
  Inputs inputs;  // of every Uncertain above and of the rod
};

// The concerns in their fixed order: each sees the answers of those before it. `practices`: of plugins.
Answers ComputeAnswers(const Rod& rod, const std::vector<Practice>& practices = {});
void CheckAnswers(const Rod& rod, const Answers& answers, std::vector<Finding>& findings);

// In mm, g and the other fixed units. A figure that is not finite is left out, and listed as unknown.
v1::Report MakeReport(const Rod& rod, const Answers& answers);
v1::Rod MakeRodView(const Rod& rod);

}  // namespace withy

#endif  // WITHY_REVIEW_ANSWERS_H_
