#include "withy/numerics/uncertain.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace withy {
namespace {

TEST(Uncertain, HandWorkedValues) {
  Inputs inputs;
  const Uncertain a = inputs.Add(3, 0.3), b = inputs.Add(4, 0.4);
  EXPECT_EQ((a + b).value(), 7);
  EXPECT_NEAR((a + b).plus_minus(), 0.5, 1e-15);  // 3-4-5
  EXPECT_NEAR((a - b).plus_minus(), 0.5, 1e-15);
  EXPECT_EQ((a * b).value(), 12);
  EXPECT_NEAR((a * b).plus_minus(), std::hypot(4 * 0.3, 3 * 0.4), 1e-15);
  EXPECT_EQ((a / b).value(), 0.75);
  EXPECT_NEAR((a / b).plus_minus(), std::hypot(0.3 / 4, 3 * 0.4 / 16), 1e-15);
  EXPECT_NEAR((-a).plus_minus(), 0.3, 1e-15);
  EXPECT_EQ((a * 2).plus_minus(), 0.6);
  EXPECT_EQ(Uncertain(5).plus_minus(), 0);
}

TEST(Uncertain, OneInputTwiceIsNotTwoInputs) {
  Inputs inputs;
  const Uncertain length = inputs.Add(2209.8, 1.6);
  const Uncertain twice = length + length;
  EXPECT_NEAR(twice.plus_minus(), 3.2, 1e-14);
  EXPECT_EQ((length - length).plus_minus(), 0);
  EXPECT_NEAR((length / twice).plus_minus(), 0, 1e-18);
}

// cov(a + 2 b, a - b) = var a - 2 var b for independent a, b.
TEST(Uncertain, CovarianceIsOverSharedInputs) {
  Inputs inputs;
  const Uncertain a = inputs.Add(3, 0.3), b = inputs.Add(4, 0.4);
  EXPECT_EQ(Covariance(a, b), 0);
  EXPECT_NEAR(Covariance(a, a), 0.09, 1e-15);
  EXPECT_NEAR(Covariance(a + b * 2, a - b), 0.09 - 2 * 0.16, 1e-15);
}

TEST(Uncertain, NeitherOverflowsNorVanishes) {
  Inputs inputs;
  EXPECT_NEAR((inputs.Add(0, 3e200) + inputs.Add(0, 4e200)).plus_minus() / 5e200, 1, 1e-15);
  EXPECT_NEAR((inputs.Add(0, 3e-200) + inputs.Add(0, 4e-200)).plus_minus() / 5e-200, 1, 1e-15);
}

// The balance point of three parts, the figure this is for.
template <typename T>
T Balance(const T& m1, const T& x1, const T& m2, const T& x2, const T& m3, const T& x3) {
  return (m1 * x1 + m2 * x2 + m3 * x3) / (m1 + m2 + m3);
}

TEST(Uncertain, AgreesWithMonteCarlo) {
  // JCGM 101:2008 (propagation of distributions by a Monte Carlo method) with normal inputs, small against their
  // values.
  const double value[6] = {60, 900, 100, 300, 12, 150}, spread[6] = {0.5, 4, 1, 2, 0.2, 3};
  Inputs inputs;
  Uncertain in[6];
  for (int i = 0; i < 6; ++i) in[i] = inputs.Add(value[i], spread[i]);
  const Uncertain first_order = Balance(in[0], in[1], in[2], in[3], in[4], in[5]);

  std::mt19937_64 random(42);
  std::normal_distribution<double> normal;
  const int trials = 200000;
  double sum = 0, squares = 0;
  for (int t = 0; t < trials; ++t) {
    double x[6];
    for (int i = 0; i < 6; ++i) x[i] = value[i] + spread[i] * normal(random);
    const double y = Balance(x[0], x[1], x[2], x[3], x[4], x[5]) - first_order.value();
    sum += y;
    squares += y * y;
  }
  const double deviation = std::sqrt(squares / trials - (sum / trials) * (sum / trials));
  EXPECT_NEAR(first_order.plus_minus() / deviation, 1,
              0.01);  // the trial's own spread is 1 / sqrt(2 * trials) = 0.16 %
}

TEST(Uncertain, AgreesWithFiniteDifferences) {
  const double value[6] = {60, 900, 100, 300, 12, 150}, spread[6] = {0.5, 4, 1, 2, 0.2, 3};
  Inputs inputs;
  Uncertain in[6];
  for (int i = 0; i < 6; ++i) in[i] = inputs.Add(value[i], spread[i]);
  double squares = 0;
  for (int i = 0; i < 6; ++i) {
    double up[6], down[6];
    std::copy(value, value + 6, up);
    std::copy(value, value + 6, down);
    const double step = 1e-5 * value[i];
    up[i] += step;
    down[i] -= step;
    const double slope = (Balance(up[0], up[1], up[2], up[3], up[4], up[5]) -
                          Balance(down[0], down[1], down[2], down[3], down[4], down[5])) /
                         (2 * step);
    squares += slope * slope * spread[i] * spread[i];
  }
  EXPECT_NEAR(Balance(in[0], in[1], in[2], in[3], in[4], in[5]).plus_minus() / std::sqrt(squares), 1, 1e-8);
}

TEST(Uncertain, SharesOfTheVariance) {
  // 3^2 + 4^2 = 25: 9 / 25 = 36 % and 16 / 25 = 64 %.
  Inputs inputs;
  const Uncertain sum = inputs.Add(100, 3, "side") - inputs.Add(7, 4, "base") + inputs.Add(5, 0, "exact");
  const auto shares = sum.Shares();
  ASSERT_EQ(shares.size(), 2u);
  EXPECT_EQ(inputs.at(shares[0].input).name, "side");
  EXPECT_EQ(inputs.at(shares[0].input).value, 100);
  EXPECT_NEAR(shares[0].of_variance, 0.36, 1e-15);
  EXPECT_EQ(inputs.at(shares[1].input).name, "base");
  EXPECT_EQ(inputs.at(shares[1].input).plus_minus, 4);
  EXPECT_NEAR(shares[1].of_variance, 0.64, 1e-15);
}

TEST(Uncertain, AnInputThatCountsTwiceHasFourTimesTheShare) {
  // 2 a + b with the same uncertainty: 4 / 5 and 1 / 5.
  Inputs inputs;
  const Uncertain a = inputs.Add(1, 0.1), b = inputs.Add(1, 0.1);
  const auto shares = (a + b + a).Shares();
  ASSERT_EQ(shares.size(), 2u);
  EXPECT_NEAR(shares[0].of_variance, 0.8, 1e-15);
  EXPECT_NEAR(shares[1].of_variance, 0.2, 1e-15);
}

TEST(Uncertain, AnExactValueHasNoShares) {
  Inputs inputs;
  EXPECT_TRUE(Uncertain(3).Shares().empty());
  const Uncertain a = inputs.Add(1, 0.1);
  EXPECT_TRUE(inputs.Add(1, std::numeric_limits<double>::infinity()).Shares().empty());
  double sum = 0;
  for (const auto& share : (a - a).Shares()) sum += share.of_variance;
  EXPECT_EQ(sum, 0);
}

TEST(Uncertain, ACopyOfTheInputsGoesOnByItself) {
  Inputs first;
  first.Add(1, 0.1, "a");
  Inputs second = first;
  const Uncertain b = second.Add(2, 0.1, "b");
  const Uncertain c = first.Add(3, 0.1, "c");
  EXPECT_EQ(second.at(b.Shares()[0].input).name, "b");
  EXPECT_EQ(first.at(c.Shares()[0].input).name, "c");
}

}  // namespace
}  // namespace withy
