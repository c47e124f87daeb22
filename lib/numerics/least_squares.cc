#include "withy/numerics/least_squares.h"

#include <Eigen/Dense>
#include <algorithm>
#include <cmath>
#include <limits>
#include <unsupported/Eigen/NonLinearOptimization>
#include <utility>

namespace withy {
namespace {

using Eigen::MatrixXd;
using Eigen::VectorXd;

// So large that no step there is taken, and its square still finite.
constexpr double kNoAnswer = 1e100;
constexpr double kSmallestStep = 1e-10;  // of the unknowns, relative: what derivatives by differences can tell
constexpr double kSmallestGain = 1e-12;  // of the sum of squares, relative
constexpr int kMostEvaluations = 200;

std::vector<double> ListOf(const VectorXd& x) {
  return {x.data(), x.data() + x.size()};
}

MatrixXd MatrixOf(const Rows& rows, Eigen::Index columns) {
  MatrixXd matrix(static_cast<Eigen::Index>(rows.size()), columns);
  for (Eigen::Index i = 0; i < matrix.rows(); ++i) {
    for (Eigen::Index j = 0; j < columns; ++j) {
      matrix(i, j) = rows[static_cast<std::size_t>(i)][static_cast<std::size_t>(j)];
    }
  }
  return matrix;
}

Rows RowsOf(const MatrixXd& matrix) {
  Rows rows;
  for (Eigen::Index i = 0; i < matrix.rows(); ++i) rows.push_back(ListOf(matrix.row(i)));
  return rows;
}

// The model as MINPACK wants it: at least as many residuals as unknowns, so zeros fill up.
class Problem {
 public:
  using Scalar = double;
  using InputType = VectorXd;
  using ValueType = VectorXd;
  using JacobianType = MatrixXd;
  enum { InputsAtCompileTime = Eigen::Dynamic, ValuesAtCompileTime = Eigen::Dynamic };

  Problem(const ResidualFunction& residuals, int count, int unknowns, double step)
      : residuals_(residuals), count_(count), values_(std::max(count, unknowns)), step_(step) {}

  int values() const { return values_; }

  // False where the model has no answer.
  bool Evaluate(const VectorXd& x, VectorXd& r) const {
    std::vector<double> list(static_cast<std::size_t>(count_), 0.0);
    r = VectorXd::Zero(values_);
    const bool has_answer = residuals_(ListOf(x), list);
    for (int i = 0; i < count_; ++i) {
      if (!has_answer || !std::isfinite(list[static_cast<std::size_t>(i)])) return false;
      r[i] = list[static_cast<std::size_t>(i)];
    }
    return has_answer;
  }

  int operator()(const VectorXd& x, VectorXd& r) const {
    if (!Evaluate(x, r)) r.setConstant(kNoAnswer);
    return 0;
  }

  // One-sided where the model ends on the other side.
  int df(const VectorXd& x, MatrixXd& jacobian) const {
    jacobian = MatrixXd::Zero(values_, x.size());
    VectorXd here, ahead, behind;
    if (!Evaluate(x, here)) return 0;
    for (Eigen::Index j = 0; j < x.size(); ++j) {
      VectorXd moved = x;
      moved[j] = x[j] + step_;
      const bool has_ahead = Evaluate(moved, ahead);
      moved[j] = x[j] - step_;
      const bool has_behind = Evaluate(moved, behind);
      if (has_ahead && has_behind) {
        jacobian.col(j) = (ahead - behind) / (2 * step_);
      } else if (has_ahead || has_behind) {
        jacobian.col(j) = (has_ahead ? ahead - here : here - behind) / step_;
      }
    }
    return 0;
  }

 private:
  const ResidualFunction& residuals_;
  int count_, values_;
  double step_;
};

void Judge(const MatrixXd& jacobian, int count, LeastSquaresFit& fit) {
  fit.jacobian = RowsOf(jacobian.topRows(count));
  const Eigen::JacobiSVD<MatrixXd> svd(jacobian, Eigen::ComputeThinU | Eigen::ComputeThinV);
  fit.singular_values = ListOf(svd.singularValues());
  fit.directions = RowsOf(svd.matrixV().transpose());
  const double largest = fit.singular_values.front(), smallest = fit.singular_values.back();
  const bool seen = smallest > kUnseen * largest;
  fit.condition = seen ? largest / smallest : std::numeric_limits<double>::infinity();
  if (!seen) return;
  const MatrixXd scaled = svd.matrixV() * svd.singularValues().cwiseInverse().asDiagonal();
  fit.covariance = RowsOf(scaled * scaled.transpose());
}

}  // namespace

LeastSquaresFit FitLeastSquares(const ResidualFunction& residuals, std::vector<double> start, int residual_count,
                                double step) {
  LeastSquaresFit fit;
  const int unknowns = static_cast<int>(start.size());
  Problem problem(residuals, residual_count, unknowns, step);
  VectorXd x = Eigen::Map<const VectorXd>(start.data(), unknowns), r;
  if (!problem.Evaluate(x, r)) {
    fit.x = std::move(start);
    return fit;
  }
  Eigen::LevenbergMarquardt<Problem> solver(problem);
  solver.parameters.xtol = kSmallestStep;
  solver.parameters.ftol = kSmallestGain;
  solver.parameters.maxfev = kMostEvaluations;
  const auto status = solver.minimize(x);
  fit.converged = status > 0 && status != Eigen::LevenbergMarquardtSpace::TooManyFunctionEvaluation;
  fit.x = ListOf(x);
  MatrixXd jacobian;
  problem.Evaluate(x, r);
  problem.df(x, jacobian);
  fit.residuals = ListOf(r.head(residual_count));
  Judge(jacobian, residual_count, fit);
  return fit;
}

std::vector<double> StudentisedResiduals(const LeastSquaresFit& fit) {
  constexpr double kChecked = 1e-6;  // of 1 - leverage: below it the reading agrees whatever it says
  std::vector<double> studentised;
  if (fit.residuals.empty()) return studentised;
  const auto unknowns = static_cast<Eigen::Index>(fit.x.size());
  const MatrixXd jacobian = MatrixOf(fit.jacobian, unknowns);
  const Eigen::JacobiSVD<MatrixXd> svd(jacobian, Eigen::ComputeThinU | Eigen::ComputeThinV);
  const VectorXd& values = svd.singularValues();
  for (Eigen::Index i = 0; i < jacobian.rows(); ++i) {
    double leverage = 0;
    for (Eigen::Index j = 0; j < values.size(); ++j) {
      if (values[j] > kUnseen * values[0]) leverage += svd.matrixU()(i, j) * svd.matrixU()(i, j);
    }
    const double left = 1 - leverage;
    studentised.push_back(left > kChecked ? fit.residuals[static_cast<std::size_t>(i)] / std::sqrt(left) : 0);
  }
  return studentised;
}

Rows CovarianceOf(const Rows& jacobian, double floor, int unknowns) {
  const MatrixXd j = MatrixOf(jacobian, unknowns);
  MatrixXd information = j.transpose() * j;
  information.diagonal().array() += 1 / (floor * floor);
  return RowsOf(information.ldlt().solve(MatrixXd::Identity(unknowns, unknowns)));
}

std::vector<PrincipalAxis> PrincipalAxesOf(const Rows& covariance) {
  std::vector<PrincipalAxis> axes;
  if (covariance.empty()) return axes;
  const auto size = static_cast<Eigen::Index>(covariance.size());
  const Eigen::SelfAdjointEigenSolver<MatrixXd> eigen(MatrixOf(covariance, size));
  for (Eigen::Index i = size - 1; i >= 0; --i) {  // in rising order there
    axes.push_back({std::sqrt(std::max(0.0, eigen.eigenvalues()[i])), ListOf(eigen.eigenvectors().col(i))});
  }
  return axes;
}

}  // namespace withy
