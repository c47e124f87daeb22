// Least squares against a certified solution, a closed form, a search without derivatives, and cases with no answer.
#include "withy/numerics/least_squares.h"

#include <algorithm>
#include <cmath>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

// NIST Statistical Reference Datasets, nonlinear regression, Misra1a: y = b1 (1 - exp(-b2 x)), 14 observations of the
// adsorption in dental research. Data and certified values from memory; that they agree to eight digits proves the
// memory.
constexpr double kMisra1a[][2] = {{10.07, 77.6},  {14.73, 114.9}, {17.94, 141.1}, {23.93, 190.8}, {29.61, 239.9},
                                  {35.18, 289.0}, {40.02, 332.8}, {44.82, 378.4}, {50.76, 434.8}, {55.05, 477.3},
                                  {61.01, 536.8}, {66.40, 593.1}, {75.47, 689.1}, {81.78, 760.0}};
constexpr double kB1 = 238.94212918, kB2 = 5.5015643181e-4, kSquares = 0.12455138894;
constexpr double kDeviation = 0.10187876330, kDeviationB1 = 2.7070075241, kDeviationB2 = 7.2668688436e-6;

bool Misra1a(const std::vector<double>& x, std::vector<double>& r) {
  for (std::size_t i = 0; i < std::size(kMisra1a); ++i) {
    r[i] = std::exp(x[0]) * -std::expm1(-std::exp(x[1]) * kMisra1a[i][1]) - kMisra1a[i][0];
  }
  return true;
}

TEST(FitLeastSquares, ReachesTheCertifiedSolutionFromBothStarts) {
  for (const auto& [b1, b2] : {std::pair(500.0, 1e-4), std::pair(250.0, 5e-4)}) {
    const LeastSquaresFit fit = FitLeastSquares(Misra1a, {std::log(b1), std::log(b2)}, 14);
    ASSERT_TRUE(fit.converged);
    EXPECT_NEAR(std::exp(fit.x[0]) / kB1, 1, 1e-8);
    EXPECT_NEAR(std::exp(fit.x[1]) / kB2, 1, 1e-8);
    double squares = 0;
    for (double r : fit.residuals) squares += r * r;
    EXPECT_NEAR(squares / kSquares, 1, 1e-8);
    // Certified standard deviations: of log b they are sd / b; with residuals in units, times the residual deviation.
    EXPECT_NEAR(std::sqrt(fit.covariance[0][0]) * kDeviation, kDeviationB1 / kB1, 1e-6 * kDeviationB1 / kB1);
    EXPECT_NEAR(std::sqrt(fit.covariance[1][1]) * kDeviation, kDeviationB2 / kB2, 1e-6 * kDeviationB2 / kB2);
  }
}

// y = a + b x through (0, 1), (1, 3), (2, 4), (3, 7), deviation 1 each. Normal equations by hand: n = 4, sum x = 6, xx
// = 14, y = 15, xy = 32: b = (4 x 32 - 6 x 15) / (4 x 14 - 36) = 1.9, a = (15 - 1.9 x 6) / 4 = 0.9. Covariance: the
// inverse of [4 6; 6 14] = [14 -6; -6 4] / 20. Leverage of the ends 1/4 + 1.5^2 / 5 = 0.7, of the middle 0.3; residuals
// a + b x - y: -0.1, -0.2, 0.7, -0.4. Singular values: the roots of the eigenvalues of [4 6; 6 14], 9 +- sqrt(61).
bool Line(const std::vector<double>& x, std::vector<double>& r) {
  const double y[] = {1, 3, 4, 7};
  for (int i = 0; i < 4; ++i) r[static_cast<std::size_t>(i)] = x[0] + x[1] * i - y[i];
  return true;
}

TEST(FitLeastSquares, ALineWorkedByHand) {
  const LeastSquaresFit fit = FitLeastSquares(Line, {0.5, 0.5}, 4);
  EXPECT_THAT(fit.x, ::testing::ElementsAre(::testing::DoubleNear(0.9, 1e-9), ::testing::DoubleNear(1.9, 1e-9)));
  EXPECT_NEAR(fit.covariance[0][0], 0.7, 1e-9);
  EXPECT_NEAR(fit.covariance[0][1], -0.3, 1e-9);
  EXPECT_NEAR(fit.covariance[1][1], 0.2, 1e-9);
  EXPECT_NEAR(fit.singular_values[0], std::sqrt(9 + std::sqrt(61.0)), 1e-9);
  EXPECT_NEAR(fit.condition, std::sqrt((9 + std::sqrt(61.0)) / (9 - std::sqrt(61.0))), 1e-8);
  const std::vector<double> studentised = StudentisedResiduals(fit);
  EXPECT_NEAR(studentised[0], -0.1 / std::sqrt(0.3), 1e-8);
  EXPECT_NEAR(studentised[2], 0.7 / std::sqrt(0.7), 1e-8);
}

// Two unknowns of which only the sum is seen once, each known to 3 anyway: the difference stays at 3 x sqrt(2), and the
// sum has 1 / (1 + 1 / 18).
TEST(CovarianceOf, WhatIsNotSeenStaysAtTheFloor) {
  const Rows covariance = CovarianceOf({{1, 1}}, 3, 2);
  EXPECT_NEAR(covariance[0][0] + covariance[1][1] - 2 * covariance[0][1], 18, 1e-9);
  EXPECT_NEAR(covariance[0][0] + covariance[1][1] + 2 * covariance[0][1], 1 / (1 + 1.0 / 18), 1e-9);
}

// [5 4; 4 5] = 9 along (1, 1) / sqrt(2) and 1 across it.
TEST(PrincipalAxesOf, WorstFirst) {
  const std::vector<PrincipalAxis> axes = PrincipalAxesOf({{5, 4}, {4, 5}});
  ASSERT_EQ(axes.size(), 2u);
  EXPECT_NEAR(axes[0].deviation, 3, 1e-12);
  EXPECT_NEAR(axes[0].direction[0], axes[0].direction[1], 1e-12);
  EXPECT_NEAR(axes[1].deviation, 1, 1e-12);
  EXPECT_NEAR(std::abs(axes[1].direction[0]), std::sqrt(0.5), 1e-12);
}

// A search that knows no derivatives: the best of a grid around the best so far, a little less wide each time.
TEST(FitLeastSquares, AgreesWithASearchWithoutDerivatives) {
  const auto model = [](const std::vector<double>& x, std::vector<double>& r) {
    for (int i = 0; i < 6; ++i) {
      r[static_cast<std::size_t>(i)] =
          std::exp(-x[0] * i) + x[1] * i * i - (std::exp(-0.3 * i) + 0.02 * i * i + 0.01 * (i % 3 - 1));
    }
    return true;
  };
  std::vector<double> best = {0.5, 0.1};
  const auto squares = [&](const std::vector<double>& x) {
    std::vector<double> r(6);
    model(x, r);
    double sum = 0;
    for (double value : r) sum += value * value;
    return sum;
  };
  for (double width = 0.5; width > 1e-9; width /= 1.1) {
    const std::vector<double> center = best;
    for (int i = -4; i <= 4; ++i) {
      for (int j = -4; j <= 4; ++j) {
        const std::vector<double> x = {center[0] + width * i / 4, center[1] + 0.1 * width * j / 4};
        if (squares(x) < squares(best)) best = x;
      }
    }
  }
  const LeastSquaresFit fit = FitLeastSquares(model, {0.5, 0.1}, 6);
  EXPECT_NEAR(fit.x[0], best[0], 1e-6);
  EXPECT_NEAR(fit.x[1], best[1], 1e-6);
}

// Of a x b only the product is seen: it is found, and the direction along which it does not change is told.
TEST(FitLeastSquares, TellsTheDirectionThatIsNotSeen) {
  const auto product = [](const std::vector<double>& x, std::vector<double>& r) {
    r[0] = x[0] + x[1] - std::log(6.0);
    return true;
  };
  const LeastSquaresFit fit = FitLeastSquares(product, {0, 0}, 1);
  EXPECT_NEAR(fit.x[0] + fit.x[1], std::log(6.0), 1e-9);
  EXPECT_TRUE(std::isinf(fit.condition));
  EXPECT_TRUE(fit.covariance.empty());
  EXPECT_NEAR(std::abs(fit.directions[1][0] - fit.directions[1][1]), std::sqrt(2.0), 1e-6);
}

// sqrt(x) = 3 from x = 100: the first steps of Gauss and Newton lead to where there is no root.
TEST(FitLeastSquares, StepsBackFromWhereTheModelHasNoAnswer) {
  const auto root = [](const std::vector<double>& x, std::vector<double>& r) {
    if (x[0] < 0) return false;
    r[0] = std::sqrt(x[0]) - 3;
    return true;
  };
  const LeastSquaresFit fit = FitLeastSquares(root, {100}, 1);
  EXPECT_TRUE(fit.converged);
  EXPECT_NEAR(fit.x[0], 9, 1e-8);
  const LeastSquaresFit none = FitLeastSquares(root, {-1}, 1);
  EXPECT_FALSE(none.converged);
  EXPECT_TRUE(none.residuals.empty());
  EXPECT_TRUE(StudentisedResiduals(none).empty());
}

}  // namespace
}  // namespace withy::testing
