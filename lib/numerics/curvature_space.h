// How a clamped beam can move across its axis, told by its curvature alone: over each element a polynomial in Legendre
// terms, free to jump between elements.
//
// Slope and deflection follow by integrating from the clamp, shear and moment of a load by integrating from the free
// end. So the stiffness couples nothing beyond its own element, the inertia takes one sweep out and one back, and no
// digits are lost to differences of deflections between neighbours, as they are with deflections for unknowns: the
// rounding of those grows with the fourth power of the number of elements. By Rayleigh and Ritz each frequency comes
// from above.
#ifndef WITHY_NUMERICS_CURVATURE_SPACE_H_
#define WITHY_NUMERICS_CURVATURE_SPACE_H_

#include <vector>

#include "Eigen/Core"
#include "mode_mesh.h"

namespace withy {

class CurvatureSpace {
 public:
  static constexpr int kTerms = 5;        // of an element: curvature of degree four
  static constexpr int kMostShapes = 16;  // at once
  // One shape in each column; of each element kTerms rows, the coefficients of length^2 x curvature over P_j(2 t - 1).
  using Shapes = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor, Eigen::Dynamic, kMostShapes>;

  explicit CurvatureSpace(const ModeMesh& mesh);

  // `count` shapes to start from: curvature (1 - x) cos(j pi x), x the fraction of the elements, one step to an
  // element.
  Shapes Start(int count) const;
  // The loads that bend the beam to these shapes, and the shapes it takes under these loads.
  Shapes Stiffness(const Shapes& shapes) const { return PerElement(&Element::stiffness, shapes); }
  Shapes Bent(const Shapes& loads) const { return PerElement(&Element::flexibility, loads); }
  // The loads of the beam's own mass and of the points on it, of these shapes as accelerations.
  Shapes Inertia(const Shapes& shapes) const;

  // Of one shape, twice the potential energy of each element, and at 1 rad/s twice the kinetic energy of each one's own
  // mass and the deflection of each one's far end.
  struct Energies {
    std::vector<double> potential, own_kinetic, deflection;
  };
  Energies EnergiesOf(const Eigen::VectorXd& shape) const;

 private:
  using Local = Eigen::Matrix<double, kTerms, kTerms>;
  // Of an element's state: deflection at its start, length x slope there, then its kTerms rows.
  using State = Eigen::Matrix<double, kTerms + 2, kTerms + 2>;
  struct Element {
    double length, point_kg;
    Local stiffness, flexibility;
    State mass;
  };
  Shapes PerElement(Local Element::*by, const Shapes& from) const;
  int size() const { return static_cast<int>(elements_.size()); }

  std::vector<Element> elements_;
};

}  // namespace withy

#endif  // WITHY_NUMERICS_CURVATURE_SPACE_H_
