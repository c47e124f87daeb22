// The modulus that counts for each part of a section: as written, else what is taken for its material.
#ifndef WITHY_BENDING_USED_MODULUS_H_
#define WITHY_BENDING_USED_MODULUS_H_

#include <optional>

#include "withy/bending/bending.h"

namespace withy::bending {

struct UsedModulus {
  double pa = 0;
  Uncertain change;  // relative, about 0
  Source source = Source::kPlan;
};

struct ModuliOfSection {
  UsedModulus section;
  std::optional<UsedModulus> splice;  // of a solid tip
};

// As SectionsAnswers::sections. Lists what is assumed, and as unknown what has neither a modulus nor a material with a
// figure worth using; unset then.
std::optional<std::vector<ModuliOfSection>> ModuliOf(const Rod& rod, const SectionsAnswers& sections, Inputs& inputs,
                                                     BendingAnswers& answers);

}  // namespace withy::bending

#endif  // WITHY_BENDING_USED_MODULUS_H_
