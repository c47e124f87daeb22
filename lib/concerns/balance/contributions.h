// Everything on the rod that has mass, one by one.
#ifndef WITHY_BALANCE_CONTRIBUTIONS_H_
#define WITHY_BALANCE_CONTRIBUTIONS_H_

#include <string>
#include <utility>
#include <vector>

#include "withy/balance/balance.h"

namespace withy {

// A contribution on its way into the sums.
struct Counted {
  Contribution shown;
  std::optional<Uncertain> moment_kg_m;    // about the butt end
  double own_inertia_kg_m2 = 0;            // about the transverse axis through its own balance point
  bool measured = false;
  bool glued_part = false;                 // of the handle, with a bond
  // What it cannot be on the rod without: itself, and what it is on or in.
  std::vector<std::string> needs;
  // Of a wrap: its finishes and the share of its mass that each is.
  std::vector<std::pair<std::string, double>> films;
  // Of counterweights and their potting: the entry of the log that has potted them, before which they are not on; -1 =
  // none.
  std::optional<int> potted_since;
};

struct Collection {
  Inputs& inputs;
  std::vector<Counted> things;
  bool unstated_mass = false;              // some mass said no uncertainty
  std::vector<Assumption> assumptions;
  std::vector<Assumption> uncounted;  // of no account once the whole was weighed
};

// A thing of known mass with its balance point `center`, spread evenly over `length_m` where that is known.
struct Thing {
  std::string id = "";
  FieldPath at = {};
  Maybe<Mass> mass = std::nullopt;
  Along start = {};
  std::optional<double> length_m = std::nullopt;
  std::optional<Uncertain> center_m = std::nullopt;
};
// The new last one of `all.things`.
Counted& Count(Collection& all, Thing thing);

// A point of the part's own, from the butt end; unset where the part has no place.
std::optional<Uncertain> At(const Along& start, double own_m);
// Index of the log entry that a path leads into; -1 = none.
int EntryOf(const FieldPath& at);
// Unset where it is not known or not positive.
std::optional<double> LengthOf(const Maybe<Length>& length);

void CollectSections(const Rod& rod, const SectionsAnswers& sections, Collection& all);
void CollectHandle(const Rod& rod, const FitAnswers& fit, Collection& all);
void CollectGuides(const Rod& rod, Collection& all);
void CollectWraps(const Rod& rod, const WrapsAnswers& wraps, Collection& all);
// All but the potting of counterweights.
void CollectAdhesives(const BondingAnswers& bonding, Collection& all);

// One arbor of a part (arbor_mass.cc).
void CollectArbor(const Rod& rod, const Arbor& arbor, const ArborFit& fit, Collection& all);
// Says of arbors that fit proposes for a part that has none: they are not counted, and about what they would weigh.
void SayProposed(const Part& part, const std::vector<ArborFit>& proposed, Collection& all);

}  // namespace withy

#endif  // WITHY_BALANCE_CONTRIBUTIONS_H_
