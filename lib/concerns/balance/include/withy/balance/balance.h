// Balance: what does the rod weigh, where does it balance, how does it turn about the hand?
//
// Everything whose mass and place are known is counted, each with its uncertainty (first order, correlations kept).
// Adhesive is not counted, which is listed as an assumption, until the whole rod is weighed: that fixes the sum. What it
// says beyond the parts and their uncertainty is counted as one more thing, where things are glued; within it the parts
// give way, each in proportion to its uncertainty (least squares with the sum exact). A weighed balance point of the whole
// fixes the moment likewise.
#ifndef WITHY_BALANCE_BALANCE_H_
#define WITHY_BALANCE_BALANCE_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/bonding/bonding.h"
#include "withy/findings/finding.h"
#include "withy/fit/fit.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"
#include "withy/wraps/wraps.h"

namespace withy {

// One thing counted. Places from the butt end of the finished rod, metres.
struct Contribution {
  std::string id;
  FieldPath at;
  std::optional<double> start_m, length_m;
  std::optional<Uncertain> mass_kg;
  std::optional<Uncertain> center_m;
  Source mass_from = Source::kPlan;
};

struct BalanceAnswers {
  // Unset where the mass or place of anything on the rod is not known and the whole was not weighed; `unknowns` says which.
  std::optional<Uncertain> mass_kg;
  std::optional<Uncertain> balance_m;
  std::optional<Uncertain> mass_with_reel_kg, balance_with_reel_m;
  std::optional<Uncertain> moment_about_hold_n_m;  // with the reel on; positive = tip-heavy
  std::optional<double> inertia_about_hold_kg_m2;  // without reel
  std::vector<Contribution> parts;                 // sections, handle, guides, tip-top, wraps
  std::optional<Uncertain> remainder_kg;           // weighed whole less the sum of the parts before they gave way
  int whole = -1;                                  // in Rod::weighings: the one of the whole that counts; -1 = none
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

BalanceAnswers ComputeBalance(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& fit,
                              const BondingAnswers& bonding, const WrapsAnswers& wraps, Inputs& inputs);

void CheckBalance(const Rod& rod, const SectionsAnswers& sections, const WrapsAnswers& wraps,
                  const BalanceAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> BalanceCodes();
std::vector<Figure> BalanceFigures();

}  // namespace withy

#endif  // WITHY_BALANCE_BALANCE_H_
