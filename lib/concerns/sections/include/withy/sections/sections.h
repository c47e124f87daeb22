// Sections: what is each piece of the blank, after its cuts: mass, balance point, wall, stiffness?
//
// A measured mass scales the computed distribution; where the wall is not known it is inferred from the mass; where
// neither is known it is assumed and said so. A weighing of several sections fixes their sum: the misfit is shared out
// by least squares, each section in proportion to the square of its uncertainty.
#ifndef WITHY_SECTIONS_SECTIONS_H_
#define WITHY_SECTIONS_SECTIONS_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"
#include "withy/sections/tube.h"

namespace withy {

// One section of the assembled rod. Coordinates as supplied, metres.
struct SectionAnswer {
  int section = 0;                          // in Rod::blank.sections
  std::vector<Frustum> frusta;              // of what is left; walls given, inferred or assumed; empty = not known
  Source wall_from = Source::kPlan;         // kComputed = inferred from the mass, kAssumed
  bool wall_known = false;
  double density_kg_m3 = 0;                 // used; 0 = not known
  Source mass_from = Source::kComputed;
  std::optional<Uncertain> mass_kg;         // of what is left
  std::optional<Uncertain> moment_kg_m;     // of what is left, about its own butt end after the cut
  std::optional<MassProperties> properties;  // of what is left, about its own butt end after the cut, nominal
  std::optional<double> mass_if_computed_kg;  // of what was weighed, from wall and density alone, where both are given
  std::optional<double> mass_if_only_cut_kg;  // of what was weighed, by the weighing before it and what came off since
  std::optional<double> share_of_solid;     // mass over a solid's of these diameters, where the wall is inferred from it
  std::vector<double> frusta_kg;            // of each, scaled to mass_kg; empty = not known
  std::vector<double> ei_n_m2;              // at the ends of the frusta, frusta.size() + 1; empty = not known
};

struct SectionsAnswers {
  std::vector<SectionAnswer> sections;      // as Rod::blank.assembled
  std::optional<Uncertain> butt_diameter_m;  // after the cuts
  std::optional<Uncertain> tip_diameter_m;   // likewise, under the tip-top
  std::optional<double> remainder_kg;       // a weighed total less the sum of measured parts, where nothing can give way
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

// Never fails; cost linear in the number of stations. `inputs` goes on from Rod::inputs.
SectionsAnswers ComputeSections(const Rod& rod, Inputs& inputs);

void CheckSections(const Rod& rod, const SectionsAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> SectionsCodes();
std::vector<Figure> SectionsFigures();

}  // namespace withy

#endif  // WITHY_SECTIONS_SECTIONS_H_
