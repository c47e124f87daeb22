// The assembled blank as a beam, from a clamp to its tip: stiffness and own mass of what is left of its sections.
//
// Where one section sits in another both bend as one: their stiffness adds, and so does their mass. The plug of a
// spigot joint adds likewise where it is known. A gap that no known plug spans is taken as stiff as a straight line
// between the two ends.
#ifndef WITHY_BENDING_BLANK_BEAM_H_
#define WITHY_BENDING_BLANK_BEAM_H_

#include <vector>

#include "plug.h"
#include "withy/numerics/beam.h"

namespace withy::bending {

struct BlankBeam {
  Beam beam;                    // s from the clamp; no masses
  std::vector<double> outer_m;  // at both ends of each piece: of the outermost tube
  // Of each piece: first-order relative changes about 0, of its stiffness, its own mass and its outer diameter.
  std::vector<Uncertain> stiffness_change, mass_change, outer_change;
};

// As SectionsAnswers::sections.
std::vector<ShapeDoubts> ShapeDoubtsOf(const Rod& rod, const SectionsAnswers& sections, Inputs& inputs);

// REQUIRES: every section has its place, frusta with known walls, and their masses; 0 <= clamp_m < length of the blank;
// metres on the blank. Linear in the number of stations (times the logarithm for sorting).
BlankBeam MakeBlankBeam(const Rod& rod, const SectionsAnswers& sections, const std::vector<ModuliOfSection>& moduli,
                        const std::vector<ShapeDoubts>& doubts, const std::vector<Plug>& plugs, double clamp_m);

}  // namespace withy::bending

#endif  // WITHY_BENDING_BLANK_BEAM_H_
