// Nonlinear weighted least squares by Levenberg and Marquardt, and how far to trust what comes out.
//
//   auto residuals = [&](const std::vector<double>& x, std::vector<double>& r) { r[0] = ...; return true; };
//   LeastSquaresFit fit = FitLeastSquares(residuals, {0.1, 0.2}, 6);
//   fit.x, fit.covariance[0][0], fit.condition
//
// Residuals are (model - measured) / standard uncertainty, so that the covariance is that of the unknowns (Gauss and
// Markov; no scaling by the scatter). Solver: Eigen's port of MINPACK's lmder; singular values by Jacobi rotations.
#ifndef WITHY_NUMERICS_LEAST_SQUARES_H_
#define WITHY_NUMERICS_LEAST_SQUARES_H_

#include <functional>
#include <vector>

namespace withy {

// Fills `residuals`, which comes with the right size. False where the model has no answer at x: the solver then takes a
// shorter step.
using ResidualFunction = std::function<bool(const std::vector<double>& x, std::vector<double>& residuals)>;

// Rows of a matrix.
using Rows = std::vector<std::vector<double>>;

struct LeastSquaresFit {
  bool converged = false;  // false also where the model has no answer at the start
  std::vector<double> x;
  std::vector<double> residuals;  // at x; empty, as are those below, where the model has no answer at the start
  Rows jacobian;                  // by residual, then by unknown
  std::vector<double> singular_values;  // of the Jacobian, largest first, one for each unknown
  Rows directions;                      // unit vectors over the unknowns, one per singular value
  Rows covariance;                      // empty where the smallest singular value is nothing
  double condition = 0;                 // largest over smallest singular value; infinite where that is nothing
};

// A singular value below this share of the largest is nothing: the readings do not see that direction. Derivatives by
// differences are good to a few in a million.
inline constexpr double kUnseen = 1e-5;

// REQUIRES: start not empty, residual_count >= 0; there may be fewer residuals than unknowns: what they do not see
// comes out anyhow, and `directions` says what that is. Derivatives by central differences of `step` (unknowns of order
// one: take logarithms).
LeastSquaresFit FitLeastSquares(const ResidualFunction& residuals, std::vector<double> start, int residual_count,
                                double step = 1e-4);

// Each residual over its own standard deviation, sqrt(1 - leverage), as if its uncertainty were known (Baarda's w-test,
// 1968): normal with variance 1 where nothing is wrong. 0 for a residual that nothing checks (leverage 1).
std::vector<double> StudentisedResiduals(const LeastSquaresFit& fit);

// (J'J + 1 / floor^2)^-1: the covariance of `unknowns` unknowns that readings of this Jacobian would give where each is
// known to `floor` anyway. Requires floor > 0.
Rows CovarianceOf(const Rows& jacobian, double floor, int unknowns);

// A combination of unknowns, and how well it is known.
struct PrincipalAxis {
  double deviation = 0;           // standard, along the direction
  std::vector<double> direction;  // unit vector
};
// Of a covariance, the one that is known worst first.
std::vector<PrincipalAxis> PrincipalAxesOf(const Rows& covariance);

}  // namespace withy

#endif  // WITHY_NUMERICS_LEAST_SQUARES_H_
