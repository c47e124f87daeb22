// Gauss rules on [0, 1] and the shape functions of a beam element.
#ifndef WITHY_LIB_NUMERICS_LOBATTO_H_
#define WITHY_LIB_NUMERICS_LOBATTO_H_

#include <array>

namespace withy {

// P_0 .. P_degree of Legendre, shifted to [0, 1].
template <std::size_t N>
void Legendre(double t, int degree, std::array<double, N>& p) {
  const double x = 2 * t - 1;
  p[0] = 1;
  if (degree > 0) p[1] = x;
  for (int k = 1; k < degree; ++k) {
    p[static_cast<std::size_t>(k + 1)] =
        ((2 * k + 1) * x * p[static_cast<std::size_t>(k)] - k * p[static_cast<std::size_t>(k - 1)]) / (k + 1);
  }
}

constexpr int kMostDegree = 9;

// Shape functions of polynomial degree `degree` on an element t in [0, 1], in the order in which they are eliminated:
// degree - 1 bubbles phi_j = integral of P_j from 0 to t (nought at both ends; Szabo and Babuska, Finite Element
// Analysis, 1991), then 1 - t of the left node, then t of the right node.
struct ShapeTable {
  static constexpr int kMostPoints = kMostDegree + 2, kMostShapes = kMostDegree + 1;
  // Gauss and Legendre, degree + 1 points: enough for forces, whose integrals then converge faster than the shapes.
  double t[kMostPoints] = {}, weight[kMostPoints] = {};
  double value[kMostPoints][kMostShapes] = {};
  // degree + 2 points, exact for the square of a slope times a stiffness of the fourth degree.
  double stiff_t[kMostPoints] = {}, stiff_weight[kMostPoints] = {};
  double slope[kMostPoints][kMostShapes] = {};  // by t, at those points
};
const ShapeTable& ShapesOf(int degree);  // 1 to kMostDegree

// The nodes of Gauss and Lobatto that divide [0, 1] into kIntervals, and what integrates a polynomial through them.
struct LobattoTable {
  static constexpr int kIntervals = 8, kNodes = kIntervals + 1;
  double t[kNodes] = {};
  double integral[kNodes][kNodes] = {};           // [k][j]: from 0 to t[k], of the j-th Lagrange polynomial
  double legendre[kNodes][kMostDegree + 1] = {};  // [k][j]: P_j at t[k]
  double bubble[kNodes][kMostDegree] = {};        // [k][j]: phi_j at t[k], j from 1
  double barycentric[kNodes] = {};                // weights of the barycentric formula
  double Weight(int j) const { return integral[kIntervals][j]; }
};
const LobattoTable& Lobatto();

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_LOBATTO_H_
