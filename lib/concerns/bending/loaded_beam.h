// The beam of the finished rod: the blank with everything that sits on it ahead of the clamp.
#ifndef WITHY_BENDING_LOADED_BEAM_H_
#define WITHY_BENDING_LOADED_BEAM_H_

#include <string>
#include <vector>

#include "blank_beam.h"

namespace withy::bending {

struct LoadedBeam {
  BlankBeam blank;
  std::vector<int> thing_of_mass;      // of each of blank.beam.masses: in the list of things
  std::vector<Uncertain> mass_change;  // likewise: first-order relative change, about 0
};

// `ring_m` from the clamp: where that is beyond the blank the beam goes on to it, as stiff as the blank's tip and
// without mass of its own. `clamp_m` is the clamp's place where the things count from. Of a thing across the clamp the
// part ahead counts.
LoadedBeam LoadBeam(BlankBeam blank, const std::vector<OnTheBlank>& things, double clamp_m, double ring_m);

// The first thing ahead of the clamp (or perhaps ahead of it) that does not say its mass or its place; null where all
// do.
const OnTheBlank* NotKnown(const std::vector<OnTheBlank>& things, double clamp_m);

}  // namespace withy::bending

#endif  // WITHY_BENDING_LOADED_BEAM_H_
