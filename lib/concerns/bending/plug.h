// The plug of a spigot joint as a part of the beam: over its length it stiffens the sections that it is in, and over a
// gap it is all there is.
#ifndef WITHY_BENDING_PLUG_H_
#define WITHY_BENDING_PLUG_H_

#include <optional>
#include <vector>

#include "used_modulus.h"
#include "withy/sections/tube.h"

namespace withy::bending {

// What diameters and walls of a section or plug may be off by: inputs that every beam of the rod shares.
struct ShapeDoubts {
  Uncertain diameters_m;  // about 0: all diameters together, walls staying
  Uncertain walls_m;      // about 0: all walls together
  Uncertain walls_share;  // about 0, relative: of walls that were inferred from a weighing
};

struct Plug {
  int joint = 0;                // in Rod::blank.joints
  int section = 0;              // that it is fixed in, and whose modulus it is taken to have: in SectionsAnswers
  std::vector<Frustum> frusta;  // on the blank
  Uncertain mass_kg;            // spread as its walls are; 0 where the section's mass holds it
  ShapeDoubts doubts;
};

// The plugs whose place, diameters and walls are written, and that end within the two sections they join. REQUIRES:
// every section has its place. `inputs` may be null: without doubts then.
std::vector<Plug> PlugsOf(const Rod& rod, const SectionsAnswers& sections, Inputs* inputs);

// The plugs take the masses that were counted for them (their doubts are the balance's, too); everything else is handed
// back.
std::vector<OnTheBlank> WithoutPlugs(const Rod& rod, const std::vector<OnTheBlank>& things, std::vector<Plug>& plugs);

}  // namespace withy::bending

#endif  // WITHY_BENDING_PLUG_H_
