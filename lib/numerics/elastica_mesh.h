// A beam under its load, cut into elements over which stiffness, force and shape change gently.
#ifndef WITHY_LIB_NUMERICS_ELASTICA_MESH_H_
#define WITHY_LIB_NUMERICS_ELASTICA_MESH_H_

#include <optional>
#include <vector>

#include "withy/numerics/beam.h"
#include "withy/numerics/elastica.h"

namespace withy {

struct BeamElement {
  double s0 = 0, s1 = 0;
  int piece = 0;
  double mass_beyond = 0;           // kg past the piece, with all that hangs at s1 and past it
  double force_x = 0, force_y = 0;  // dead forces at s1 and past it, N; no weight
  double length() const { return s1 - s0; }
};

// Unset where more than `kMostElements` were needed: the load is out of all proportion to the beam.
// `fineness` doubles the number of elements per unit.
constexpr int kMostElements = 20000;
std::optional<std::vector<BeamElement>> MeshOf(const Beam& beam, const ElasticaLoad& load, int fineness);

// The elements between given ends, as MeshOf made them.
std::vector<BeamElement> MeshOf(const Beam& beam, const ElasticaLoad& load, const std::vector<double>& ends);

// What stands in the equation of an element at t in [0, 1] of it: stiffness, and the dead force that acts beyond there.
struct BeamSection {
  double stiffness = 0;
  double mass_beyond = 0;
  double force_x = 0, force_y = 0;  // with weight
};
BeamSection SectionAt(const Beam& beam, const ElasticaLoad& load, const BeamElement& element, double t);

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_ELASTICA_MESH_H_
