// The elastica in finite elements: the angle theta(s) is continuous and, in each element, a polynomial of some degree.
//
// Its equations are those of the total potential energy, integral of EI theta'^2 / 2 - F(s) . t(s) ds - M theta(L),
// with F the force that acts beyond s and t the tangent: for each shape function phi
//
//   R = integral of EI theta' phi' - F . n phi ds - M phi(L) = 0,    n = (-sin theta, cos theta),
//
// which holds for a follower as well, though that has no potential. The derivative by theta is a chain of elements,
// each tied to the next by one angle; it is eliminated from the clamp to the free end in one pass (L D L^T), the last
// row of a follower with it, so that the cost is linear in the number of elements.
#ifndef WITHY_LIB_NUMERICS_ELASTICA_ELEMENTS_H_
#define WITHY_LIB_NUMERICS_ELASTICA_ELEMENTS_H_

#include <vector>

#include "elastica_mesh.h"
#include "lobatto.h"
#include "withy/numerics/beam.h"
#include "withy/numerics/elastica.h"

namespace withy {

// A function over the beam in the shape functions of the elements: of element e, the rise from its left to its right
// node, then its bubbles. Rises are kept, not angles, so that a very short element loses no digits.
class ChainFunction {
 public:
  static constexpr int kStride = kMostDegree;
  explicit ChainFunction(std::size_t elements = 0) : values_(elements * kStride) {}
  double* of(std::size_t element) { return &values_[element * kStride]; }
  const double* of(std::size_t element) const { return &values_[element * kStride]; }
  void Add(const ChainFunction& other, double factor);

  double start = 0;    // at the clamp
  double end = 0;      // at the free end; kept by those who change the rises
  double largest = 0;  // of a correction: its largest nodal value or bubble

 private:
  std::vector<double> values_;
};

class ElasticaElements {
 public:
  // Right-hand sides that are eliminated with the matrix: minus the residual; its derivative by the share of the load,
  // and by the angle of the free end (of a follower); derivatives of where the free end is.
  enum Column { kResidual, kByShare, kByTipAngle, kTipX, kTipY, kColumns };

  ElasticaElements(const Beam& beam, const ElasticaLoad& load, std::vector<BeamElement> mesh, int degree);
  void SetDegree(int degree);

  int degree() const { return degree_; }
  const std::vector<BeamElement>& mesh() const { return mesh_; }
  ChainFunction& angle() { return angle_; }
  const ChainFunction& angle() const { return angle_; }

  // Eliminates about the present angles under `share` of the load. `columns` of kTipX or kColumns.
  void Factor(double share, int columns = kTipX);
  // After Factor. Unstable: there are shapes nearby of less potential energy (of a follower: the determinant is
  // negative).
  bool Unstable() const;
  // The correction of Newton (kResidual), or how the angles answer to the share of the load (kByShare). Into `answer`.
  void Solve(Column column, ChainFunction& answer) const;
  // The answer of the transposed matrix, for a right-hand side that is kTipX, kTipY, or (kColumns) one at the free end.
  void SolveTransposed(int column, ChainFunction& answer) const;

  // Integrals over element e of EI theta' a', and over the beam of the tangent: where the free end is.
  double StiffnessProduct(std::size_t e, const ChainFunction& a) const;
  struct Place {
    double x = 0, y = 0;
  };
  Place Tip() const;

 private:
  struct Eliminated {
    double below[ShapeTable::kMostShapes][ShapeTable::kMostShapes];  // of L
    double inverse[ShapeTable::kMostShapes];                         // of D
    double side[kColumns][ShapeTable::kMostShapes];                  // L^-1 of the columns, by shape
  };
  struct Front;
  template <int kDegree>
  void FactorOfDegree(double share, int columns);
  template <int kDegree>
  void Eliminate(std::size_t e, int columns, Front& front);
  void Back(int column, double at_tip, double of_tip_angle, ChainFunction& answer) const;

  const Beam& beam_;
  const ElasticaLoad& load_;
  std::vector<BeamElement> mesh_;
  int degree_ = 0;
  ChainFunction angle_;
  std::vector<double> stiffness_;  // integral of EI phi_i' phi_j' of each element: bubbles, then the rise; packed lower
  std::vector<double> force_;      // x and y of the dead force at each point of Gauss
  std::vector<Eliminated> eliminated_;
  int negative_ = 0;      // pivots below zero, but for the last
  double tip_pivot_ = 0;  // the last, with what a follower adds
  double tip_side_[kColumns] = {};
};

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_ELASTICA_ELEMENTS_H_
