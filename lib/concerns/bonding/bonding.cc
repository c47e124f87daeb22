#include "withy/bonding/bonding.h"

namespace withy {

BondingAnswers ComputeBonding(const Rod&, const SectionsAnswers&, const FitAnswers&, Inputs&) {
  return {};
}

void CheckBonding(const Rod&, const FitAnswers&, const BondingAnswers&, std::vector<Finding>&) {}

std::vector<Code> BondingCodes() {
  return {};
}

}  // namespace withy
