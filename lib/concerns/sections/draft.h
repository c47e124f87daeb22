// One section while its mass is being worked out, and the steps of that.
#ifndef WITHY_SECTIONS_DRAFT_H_
#define WITHY_SECTIONS_DRAFT_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/numerics/uncertain.h"
#include "withy/sections/distribution.h"
#include "withy/sections/sections.h"

namespace withy {

struct Draft {
  const Section* section = nullptr;
  std::optional<Distribution> distribution;  // unset = no outer diameters, or an unknown shape
  bool density_known = false;                // given, or taken from the material
  double density_kg_m3 = 0;                  // used; 0 = not known
  double from = 0, to = 0;                   // what is left, as supplied
  // A mass was written for the section. Else it is computed; then it can give way to a weighed total, and without
  // density it counts only if a total fixes it.
  bool stated = false;
  bool measured = false;
  bool fixed_by_total = false;
  std::optional<Uncertain> mass_kg;          // of what is left
  std::optional<Uncertain> moment_kg_m;      // of what is left, about its butt end
};

// Name of the input that all its outer diameters together are.
std::string OuterDiametersOf(const Section& section);

// Fills in what the section itself tells. `inputs` is where its uncertainties come from.
Draft DraftSection(const Section& section, Inputs& inputs, SectionsAnswers& answers, bool& unstated);

// Lets weighed totals of several sections fix their sum: the misfit goes to those that were not measured, each in
// proportion to the square of its uncertainty (least squares with an exact sum). Sets the remainder where all were.
void ApplyTotals(const Rod& rod, std::vector<Draft>& drafts, Inputs& inputs, SectionsAnswers& answers, bool& unstated);

}  // namespace withy

#endif  // WITHY_SECTIONS_DRAFT_H_
