// Balance: what does the rod weigh, where does it balance, how does it turn about the hand, and how many counterweights make
// it just tip-heavy?
//
// Everything whose mass and place are known is counted, each with its uncertainty (first order, correlations kept): parts,
// guides, wraps, arbors, adhesive, counterweights and their potting. A weighing of the whole rod fixes the sum: what it says
// beyond the parts and their uncertainty is counted as one more thing, where things are glued; within it the parts give
// way, each in proportion to its uncertainty (least squares with the sum exact). Its balance point fixes the moment
// likewise. A half-built rod fixes what was on the scales, and the rest comes on top as it is reckoned.
#ifndef WITHY_BALANCE_BALANCE_H_
#define WITHY_BALANCE_BALANCE_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/balance/counterweight_plan.h"
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

// What the sums rest on: those of the parts; a weighing of the whole as it will be; one of the whole as it then was.
enum class RestsOn { kParts, kWeighed, kHalfBuilt };

// Where the rod is to balance with its reel: counterweights, and what would do without them, are worked out for this
// point. Where the order names a balance point that one, without its tolerance; else where it is held.
struct Aim {
  enum class Kind { kOrder, kHold, kReelFoot };
  Kind kind = Kind::kHold;
  Uncertain at_m;  // from the butt end
};
// "the order's balance point", "the holding point", "the reel foot".
const char* AimWord(Aim::Kind kind);

// The most that a remedy may ask for: more is another rod (own choice).
inline constexpr double kLeastShareOfMass = 0.5;  // of reel or part, of what it weighs
inline constexpr double kMostAddedKg = 0.100;     // to it
inline constexpr double kMostLongerM = 0.300;     // of the butt
// Half a gram at the tip of a short rod: with a first moment about the aim below this the rod balances.
inline constexpr double kBalancedKgM = 0.0005;

// A change that alone would balance the rod at its aim, without counterweights (but with those that are potted).
struct BalanceRemedy {
  enum class Kind { kReel, kPart, kExtension };
  Kind kind = Kind::kReel;
  std::string what;                // id of the part
  std::optional<double> mass_kg;   // that reel or part would need
  std::optional<double> longer_m;  // that the butt would have to grow by
  std::string text;                // what to do, a whole sentence
};

struct BalanceAnswers {
  // Unset where the mass or place of anything on the rod is not known and the whole was not weighed; `unknowns` says which.
  std::optional<Uncertain> mass_kg;
  std::optional<Uncertain> balance_m;
  std::optional<Uncertain> mass_with_reel_kg, balance_with_reel_m;
  std::optional<Uncertain> hold_m;                 // the point it is held at: as ordered, else the middle of the reel foot
  std::optional<Uncertain> moment_about_hold_n_m;  // with the reel on; positive = tip-heavy
  std::optional<Aim> aim;                          // unset = neither order nor reel says
  std::optional<double> inertia_about_hold_kg_m2;  // without reel
  std::optional<double> swing_inertia_kg_m2;       // with it
  std::vector<Contribution> parts;                 // sections, handle, adhesive, guides, tip-top, wraps
  RestsOn rests_on = RestsOn::kParts;
  std::optional<Uncertain> remainder_kg;           // weighed less the sum of what was on, before it gave way
  int whole = -1;                                  // in Rod::wholes: the one whose mass counts; -1 = none
  std::optional<CounterweightPlan> counterweights;  // unset = no cavity for any
  std::vector<BalanceRemedy> instead;              // empty where it balances, the moment cannot be told, or none will do
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
