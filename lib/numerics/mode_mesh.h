// A beam cut into elements short enough for polynomials of low degree to tell how it rings.
#ifndef WITHY_NUMERICS_MODE_MESH_H_
#define WITHY_NUMERICS_MODE_MESH_H_

#include <array>
#include <vector>

#include "withy/numerics/beam.h"

namespace withy {

struct ModeElement {
  int piece = 0;                      // which piece it is a part of
  double s0 = 0, s1 = 0;              // metres
  std::array<double, 5> stiffness{};  // N m2, ascending powers of t = (s - s0) / (s1 - s0)
  std::array<double, 3> mass{};       // kg/m, likewise
  double point_kg = 0;                // the masses at s1

  double length() const { return s1 - s0; }
};

struct ModeMesh {
  std::vector<ModeElement> elements;
  std::vector<int> element_of_mass;  // of each mass the element at whose far end it sits; -1 = on the clamp
};

// Ends of pieces and masses are ends of elements. Within an element the stiffness changes by no more than a quarter, and
// the phase of a wave of the beam's `modes`-th mode, the integral of (omega^2 m / EI)^(1/4), by no more than 0.7 radian;
// that phase over the whole beam is taken as modes x pi (of a uniform cantilever it is about (modes - 1/2) pi).
// REQUIRES: nothing is wrong with the beam, except that its stiffness may run out to zero at the free end.
ModeMesh MeshForModes(const Beam& beam, int modes);

}  // namespace withy

#endif  // WITHY_NUMERICS_MODE_MESH_H_
