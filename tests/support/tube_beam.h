// Pieces of a beam from the diameters of a round tube or rod, as a test works them out for itself.
#ifndef WITHY_TESTS_SUPPORT_TUBE_BEAM_H_
#define WITHY_TESTS_SUPPORT_TUBE_BEAM_H_

#include <array>
#include <cstddef>
#include <numbers>
#include <vector>

#include "withy/numerics/beam.h"

namespace withy {

// Metres; an inner diameter of zero = solid.
struct TubeEnd {
  double s = 0, outer = 0, inner = 0;
};

// scale (a + (b - a) t)^N added to ascending powers of t.
template <std::size_t N>
void AddPower(double a, double b, double scale, std::array<double, N>& powers) {
  std::array<double, N> power{1};
  for (std::size_t n = 1; n < N; ++n) {
    for (std::size_t k = n + 1; k-- > 0;) power[k] = a * power[k] + (k > 0 ? (b - a) * power[k - 1] : 0);
  }
  for (std::size_t k = 0; k < N; ++k) powers[k] += scale * power[k];
}

// Conical between its ends: EI = E pi/64 (D^4 - d^4), mass per length = rho pi/4 (D^2 - d^2), with D and d linear.
inline BeamPiece TubePiece(const TubeEnd& from, const TubeEnd& to, double modulus_pa, double density_kg_m3) {
  BeamPiece piece{from.s, to.s, {}, {}};
  const double bending = modulus_pa * std::numbers::pi / 64, weight = density_kg_m3 * std::numbers::pi / 4;
  AddPower(from.outer, to.outer, bending, piece.stiffness);
  AddPower(from.inner, to.inner, -bending, piece.stiffness);
  AddPower(from.outer, to.outer, weight, piece.mass);
  AddPower(from.inner, to.inner, -weight, piece.mass);
  return piece;
}

// One long cone cut into equal pieces.
inline Beam TubeBeam(const TubeEnd& butt, const TubeEnd& tip, double modulus_pa, double density_kg_m3, int pieces = 1) {
  const auto end = [&](int i) {
    if (i == pieces) return tip;
    const double t = static_cast<double>(i) / pieces;
    return TubeEnd{butt.s + t * (tip.s - butt.s), butt.outer + t * (tip.outer - butt.outer),
                   butt.inner + t * (tip.inner - butt.inner)};
  };
  Beam beam;
  for (int i = 0; i < pieces; ++i) beam.pieces.push_back(TubePiece(end(i), end(i + 1), modulus_pa, density_kg_m3));
  return beam;
}

}  // namespace withy

#endif  // WITHY_TESTS_SUPPORT_TUBE_BEAM_H_
