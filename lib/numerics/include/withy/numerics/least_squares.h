// Nonlinear weighted least squares by Levenberg and Marquardt, and how far to trust what comes out.
//
//   auto residuals = [&](const std::vector<double>& x, std::vector<double>& r) { ...; return true; };
//   LeastSquaresFit fit = FitLeastSquares(residuals, {0.1, 0.2}, 6);
//   fit.x, fit.covariance[0][0], fit.condition
//
// Residuals are (model - measured) / standard uncertainty, so that the covariance is that of the unknowns (Gauss and Markov;
// no scaling by the scatter). Solver: Eigen's.
#ifndef WITHY_NUMERICS_LEAST_SQUARES_H_
#define WITHY_NUMERICS_LEAST_SQUARES_H_

#include <functional>
#include <vector>

namespace withy {

// False where the model has no answer at x: the solver then takes a shorter step.
using ResidualFunction = std::function<bool(const std::vector<double>& x, std::vector<double>& residuals)>;

struct LeastSquaresFit {
  bool converged = false;
  std::vector<double> x;
  std::vector<double> residuals;
  std::vector<std::vector<double>> jacobian;          // by residual, then by unknown
  std::vector<double> singular_values;                // of the Jacobian, largest first
  std::vector<std::vector<double>> directions;        // unit vectors over the unknowns, one per singular value
  std::vector<std::vector<double>> covariance;        // empty where the smallest singular value is nothing
  double condition = 0;                               // largest over smallest singular value; infinite where that is 0
};

// REQUIRES: start not empty, residual_count > 0. Derivatives by central differences of `step` (unknowns of order one: take
// logarithms).
LeastSquaresFit FitLeastSquares(const ResidualFunction& residuals, std::vector<double> start, int residual_count,
                                double step = 1e-5);

// Studentised residuals (each over its own standard deviation, leverage taken out) of a converged fit.
std::vector<double> StudentisedResiduals(const LeastSquaresFit& fit);

}  // namespace withy

#endif  // WITHY_NUMERICS_LEAST_SQUARES_H_
