#include "curvature_space.h"

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "Eigen/Cholesky"

namespace withy {
namespace {

constexpr int kTerms = CurvatureSpace::kTerms;
constexpr int kState = kTerms + 2;
// Room for a term of degree kTerms + 1 times t^4.
constexpr int kDegrees = kState + 4;

using Legendre = Eigen::Matrix<double, kDegrees, kDegrees>;

// Columns: t P_j = P_j / 2 + ((j + 1) P_(j+1) + j P_(j-1)) / (2 (2 j + 1)), of P_j(2 t - 1) (Abramowitz and
// Stegun 22.7.10).
Legendre TimesT() {
  Legendre product = Legendre::Zero();
  for (int j = 0; j < kDegrees; ++j) {
    product(j, j) = 0.5;
    if (j > 0) product(j - 1, j) = j / (2.0 * (2 * j + 1));
    if (j + 1 < kDegrees) product(j + 1, j) = (j + 1) / (2.0 * (2 * j + 1));
  }
  return product;
}

// Columns: the integral of P_j from 0 to t, (P_(j+1) - P_(j-1)) / (2 (2 j + 1)) (the same, 22.8.5); of P_0, (P_1 + P_0)
// / 2.
Legendre Integral() {
  Legendre integral = Legendre::Zero();
  for (int j = 0; j + 1 < kDegrees; ++j) {
    integral(j + 1, j) = 1 / (2.0 * (2 * j + 1));
    integral(j > 0 ? j - 1 : 0, j) = j > 0 ? -integral(j + 1, j) : 0.5;
  }
  return integral;
}

// The matrices of an element of length, stiffness and mass one times t^k.
struct Unit {
  std::array<Eigen::Matrix<double, kTerms, kTerms>, 5> stiffness;
  std::array<Eigen::Matrix<double, kState, kState>, 3> mass;
};

Unit MakeUnit() {
  Legendre gram = Legendre::Zero();
  for (int j = 0; j < kDegrees; ++j) gram(j, j) = 1 / (2.0 * j + 1);
  const Legendre times_t = TimesT(), integral = Integral(), twice = integral * integral;
  Eigen::Matrix<double, kDegrees, kState> deflection;
  deflection << Legendre::Identity().col(0), integral.col(0), twice.leftCols<kTerms>();
  Unit unit;
  for (std::size_t k = 0; k < unit.stiffness.size(); ++k) {
    unit.stiffness[k] = gram.topLeftCorner<kTerms, kTerms>();
    if (k < unit.mass.size()) unit.mass[k] = deflection.transpose() * gram * deflection;
    gram = gram * times_t;
  }
  return unit;
}

}  // namespace

CurvatureSpace::CurvatureSpace(const ModeMesh& mesh) {
  static const Unit unit = MakeUnit();
  elements_.reserve(mesh.elements.size());
  for (const ModeElement& from : mesh.elements) {
    const double length = from.length();
    Element element{length, from.point_kg, Local::Zero(), Local::Zero(), State::Zero()};
    for (std::size_t k = 0; k < unit.stiffness.size(); ++k) element.stiffness += from.stiffness[k] * unit.stiffness[k];
    for (std::size_t k = 0; k < unit.mass.size(); ++k) element.mass += from.mass[k] * unit.mass[k];
    element.stiffness /= length * length * length;
    element.mass *= length;
    element.flexibility = element.stiffness.llt().solve(Local::Identity());
    elements_.push_back(element);
  }
}

CurvatureSpace::Shapes CurvatureSpace::Start(int count) const {
  Shapes shapes = Shapes::Zero(size() * kTerms, count);
  for (int e = 0; e < size(); ++e) {
    const double x = (e + 0.5) / size(), square = elements_[e].length * elements_[e].length;
    for (int j = 0; j < count; ++j) shapes(e * kTerms, j) = square * (1 - x) * std::cos(j * std::numbers::pi * x);
  }
  return shapes;
}

CurvatureSpace::Shapes CurvatureSpace::PerElement(Local Element::*by, const Shapes& from) const {
  Shapes to(from.rows(), from.cols());
  for (int e = 0; e < size(); ++e) {
    to.middleRows<kTerms>(e * kTerms) = (elements_[e].*by).lazyProduct(from.middleRows<kTerms>(e * kTerms));
  }
  return to;
}

// Over an element the slope grows by the term P_0 alone, the deflection by P_0 and P_1 (all others integrate to
// nothing).
CurvatureSpace::Shapes CurvatureSpace::Inertia(const Shapes& shapes) const {
  using Rows = Eigen::Matrix<double, 1, Eigen::Dynamic, Eigen::RowMajor, 1, kMostShapes>;
  using States = Eigen::Matrix<double, kState, Eigen::Dynamic, Eigen::RowMajor, kState, kMostShapes>;
  const auto columns = shapes.cols();
  Shapes loads(shapes.rows(), columns), start(2 * size(), columns), deflection(size(), columns);
  Rows w = Rows::Zero(columns), slope = Rows::Zero(columns);
  States state(kState, columns), load(kState, columns);
  for (int e = 0; e < size(); ++e) {
    const Element& element = elements_[e];
    state.row(0) = w;
    state.row(1) = element.length * slope;
    state.bottomRows<kTerms>() = shapes.middleRows<kTerms>(e * kTerms);
    load.noalias() = element.mass.lazyProduct(state);
    start.middleRows<2>(2 * e) = load.topRows<2>();
    loads.middleRows<kTerms>(e * kTerms) = load.bottomRows<kTerms>();
    w += state.row(1) + state.row(2) / 2 - state.row(3) / 6;
    slope += state.row(2) / element.length;
    deflection.row(e) = w;
  }
  Rows force = Rows::Zero(columns), moment = Rows::Zero(columns);
  for (int e = size(); e-- > 0;) {
    const Element& element = elements_[e];
    force += element.point_kg * deflection.row(e);
    loads.row(e * kTerms) += force / 2 + moment / element.length;
    loads.row(e * kTerms + 1) -= force / 6;
    moment += element.length * (force + start.row(2 * e + 1));
    force += start.row(2 * e);
  }
  return loads;
}

CurvatureSpace::Energies CurvatureSpace::EnergiesOf(const Eigen::VectorXd& shape) const {
  Energies energies;
  double w = 0, slope = 0;
  for (int e = 0; e < size(); ++e) {
    const Element& element = elements_[e];
    Eigen::Matrix<double, kState, 1> state;
    state << w, element.length * slope, shape.segment<kTerms>(e * kTerms);
    const auto terms = state.tail<kTerms>();
    w += state[1] + state[2] / 2 - state[3] / 6;
    slope += state[2] / element.length;
    energies.potential.push_back(terms.dot(element.stiffness * terms));
    energies.own_kinetic.push_back(state.dot(element.mass * state));
    energies.deflection.push_back(w);
  }
  return energies;
}

}  // namespace withy
