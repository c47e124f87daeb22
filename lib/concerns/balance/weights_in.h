// The counterweights of one part: their units, their room, and what a number of them adds to the rod.
#ifndef WITHY_BALANCE_WEIGHTS_IN_H_
#define WITHY_BALANCE_WEIGHTS_IN_H_

#include <cstdint>
#include <optional>
#include <string>

#include "contributions.h"
#include "withy/balance/counterweights.h"

namespace withy {

// Mass and moment about the butt end. Unset = cannot be told.
struct Sums {
  std::optional<Uncertain> mass_kg;
  std::optional<Uncertain> moment_kg_m;
};
Sums operator+(const Sums& a, const Sums& b);
Sums operator-(const Sums& a, const Sums& b);

struct WeightsIn {
  const Part* part = nullptr;            // null = none has a cavity or weights
  FieldPath at;                          // of the weights
  std::optional<std::uint32_t> planned;  // potted by the log, else by the design
  bool potted = false;
  int potted_since = -1;  // the entry of the log that says so; -1 = none
  Uncertain unit_kg;
  std::optional<CounterweightStack> stack;            // at nominal places; unset = `measure` says what to do
  std::string measure;
  Uncertain moved_m;                     // 0, as uncertain as the part's place
  Uncertain potting = Uncertain(1);      // 1, as uncertain as the mass of what pots them

  std::uint32_t OnFinishedRod() const { return planned.value_or(0); }
  // Of so many units, and of what they are potted in.
  Sums Units(std::uint32_t n) const;
  Sums Potting(std::uint32_t n) const;
};

// The part whose counterweights are planned: the first with weights and a cavity, else with weights, else with a
// cavity. Null where there is none.
const Part* PartForWeights(const Rod& rod);

// Of that part. Lists what it assumes.
WeightsIn WeightsOf(const Rod& rod, const Part* part, Collection& all);

// Puts the weights of all parts but `planned`, as many as are designed or potted, into `all.things`, and says so.
void CountOtherWeights(const Rod& rod, const Part* planned, Collection& all);

// Puts those of the finished rod into `all.things`, behind their part.
void CountWeights(const WeightsIn& weights, Collection& all);

}  // namespace withy

#endif  // WITHY_BALANCE_WEIGHTS_IN_H_
