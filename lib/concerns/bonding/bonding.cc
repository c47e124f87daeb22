#include "withy/bonding/bonding.h"

#include "joints.h"
#include "rules.h"

namespace withy {

BondingAnswers ComputeBonding(const Rod& rod, const SectionsAnswers&, const FitAnswers& fit, Inputs& inputs) {
  BondingAnswers answers;
  CollectJoints(rod, fit, inputs, answers);
  PlanMixing(rod, answers);
  return answers;
}

namespace {

std::vector<Rule<bonding::View>> Rules() {
  return Joined({bonding::LineRules(), bonding::AdhesiveRules(), bonding::BatchRules()});
}

}  // namespace

void CheckBonding(const Rod& rod, const FitAnswers& fit, const BondingAnswers& answers,
                  std::vector<Finding>& findings) {
  Judge(Rules(), bonding::View{rod, fit, answers}, findings);
}

std::vector<Code> BondingCodes() {
  return CodesOf(Rules());
}

}  // namespace withy
