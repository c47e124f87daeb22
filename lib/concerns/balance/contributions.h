// Everything on the rod that has mass, one by one.
#ifndef WITHY_BALANCE_CONTRIBUTIONS_H_
#define WITHY_BALANCE_CONTRIBUTIONS_H_

#include "withy/balance/balance.h"

namespace withy {

// A contribution on its way into the sums.
struct Counted {
  Contribution shown;
  std::optional<Uncertain> moment_kg_m;    // about the butt end
  double own_inertia_kg_m2 = 0;            // about the transverse axis through its own balance point
  bool measured = false;
  bool glued_part = false;                 // of the handle, with a bond
};

struct Collection {
  Inputs& inputs;
  std::vector<Counted> things;
  bool unstated_mass = false;              // some mass said no uncertainty
  bool uncounted_arbors = false;
  std::vector<Assumption> assumptions;
};

void CollectSections(const Rod& rod, const SectionsAnswers& sections, Collection& all);
void CollectHandle(const Rod& rod, Collection& all);
void CollectGuides(const Rod& rod, Collection& all);
void CollectWraps(const Rod& rod, const WrapsAnswers& wraps, Collection& all);

}  // namespace withy

#endif  // WITHY_BALANCE_CONTRIBUTIONS_H_
