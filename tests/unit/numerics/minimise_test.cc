// Minimisation under constraints against published problems with known solutions, and cases with none.
//
// Problems: W. Hock and K. Schittkowski, Test Examples for Nonlinear Programming Codes (1981), and the minimax problem
// CB2 of C. Charalambous and J. W. Bandler (1976). Data and solutions from memory; that they agree to six digits proves
// the memory.
#include "withy/numerics/minimise.h"

#include <algorithm>
#include <cmath>
#include <complex>
#include <functional>
#include <limits>
#include <utility>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

using ::testing::DoubleNear;
using ::testing::ElementsAre;
using ::testing::Pointwise;

using Vector = std::vector<double>;
constexpr double kInfinite = std::numeric_limits<double>::infinity();

using Number = std::complex<double>;
using Numbers = std::vector<Number>;
// The objective first, then constraints to be <= 0.
using Functions = std::function<Numbers(const Numbers& x)>;

// Derivatives by a step into the imaginary: exact to rounding.
Programme ProgrammeOf(const Functions& functions, Vector low, Vector high, int constraints) {
  Programme programme{std::move(low), std::move(high), constraints, {}};
  programme.evaluate = [functions](const Vector& x, Evaluation& at) {
    for (std::size_t j = 0; j < x.size(); ++j) {
      constexpr double kStep = 1e-30;
      Numbers beside(x.begin(), x.end());
      beside[j] += Number(0, kStep);
      const Numbers values = functions(beside);
      at.objective = values[0].real();
      at.gradient[j] = values[0].imag() / kStep;
      for (std::size_t i = 1; i < values.size(); ++i) {
        at.constraints[i - 1] = values[i].real();
        at.jacobian[i - 1][j] = values[i].imag() / kStep;
      }
    }
    return true;
  };
  return programme;
}

Number Square(Number x) {
  return x * x;
}
Number Fourth(Number x) {
  return Square(Square(x));
}

Vector Free(std::size_t count, double sign) {
  return Vector(count, sign * kInfinite);
}

// Number 43 (Rosen and Suzuki).
Numbers RosenSuzuki(const Numbers& x) {
  const Number a = x[0], b = x[1], c = x[2], d = x[3];
  return {a * a + b * b + 2.0 * c * c + d * d - 5.0 * a - 5.0 * b - 21.0 * c + 7.0 * d,
          a * a + b * b + c * c + d * d + a - b + c - d - 8.0, a * a + 2.0 * b * b + c * c + 2.0 * d * d - a - d - 10.0,
          2.0 * a * a + b * b + c * c + 2.0 * a - b - d - 5.0};
}

TEST(Minimise, RosenAndSuzuki) {
  const Minimum found = Minimise(ProgrammeOf(RosenSuzuki, Free(4, -1), Free(4, 1), 3), {0, 0, 0, 0});
  EXPECT_TRUE(found.converged);
  EXPECT_NEAR(found.objective, -44, 1e-6);
  EXPECT_THAT(found.x, Pointwise(DoubleNear(1e-4), Vector{0, 1, 2, -1}));
  EXPECT_LE(found.violation, 1e-9);
}

// Number 71; its equation sum x^2 = 40 binds from above.
TEST(Minimise, BoundsAndAProduct) {
  const auto functions = [](const Numbers& x) {
    return Numbers{x[0] * x[3] * (x[0] + x[1] + x[2]) + x[2], 25.0 - x[0] * x[1] * x[2] * x[3],
                   x[0] * x[0] + x[1] * x[1] + x[2] * x[2] + x[3] * x[3] - 40.0};
  };
  const Minimum found = Minimise(ProgrammeOf(functions, Vector(4, 1), Vector(4, 5), 2), {1, 5, 5, 1});
  EXPECT_NEAR(found.objective, 17.0140173, 1e-6);
  EXPECT_THAT(found.x, Pointwise(DoubleNear(1e-5), Vector{1, 4.7429994, 3.8211503, 1.3794082}));
}

// Number 76: a quadratic with linear rows.
TEST(Minimise, AQuadraticProgramme) {
  const auto functions = [](const Numbers& x) {
    const Number a = x[0], b = x[1], c = x[2], d = x[3];
    return Numbers{a * a + b * b / 2.0 + c * c + d * d / 2.0 - a * c + c * d - a - 3.0 * b + c - d,
                   a + 2.0 * b + c + d - 5.0, 3.0 * a + b + 2.0 * c - d - 4.0, 1.5 - b - 4.0 * c};
  };
  const Minimum found = Minimise(ProgrammeOf(functions, Vector(4, 0), Free(4, 1), 3), Vector(4, 0.5));
  EXPECT_NEAR(found.objective, -4.681818181, 1e-8);
  EXPECT_THAT(found.x, Pointwise(DoubleNear(1e-5), Vector{0.2727273, 2.090909, 0, 0.5454545}));
}

// Number 100: seven unknowns, powers up to six.
TEST(Minimise, SevenUnknowns) {
  const auto functions = [](const Numbers& x) {
    const Number a = x[0], b = x[1], c = x[2], d = x[3], e = x[4], f = x[5], g = x[6];
    return Numbers{Square(a - 10.0) + 5.0 * Square(b - 12.0) + Fourth(c) + 3.0 * Square(d - 11.0) +
                       10.0 * Square(e) * Fourth(e) + 7.0 * f * f + Fourth(g) - 4.0 * f * g - 10.0 * f - 8.0 * g,
                   2.0 * a * a + 3.0 * Fourth(b) + c + 4.0 * d * d + 5.0 * e - 127.0,
                   7.0 * a + 3.0 * b + 10.0 * c * c + d - e - 282.0, 23.0 * a + b * b + 6.0 * f * f - 8.0 * g - 196.0,
                   4.0 * a * a + b * b - 3.0 * a * b + 2.0 * c * c + 5.0 * f - 11.0 * g};
  };
  // The constraints are of order 100.
  const Minimum found =
      Minimise(ProgrammeOf(functions, Free(7, -1), Free(7, 1), 4), {1, 2, 0, 4, 0, 1, 1}, {.feasible = 1e-7});
  EXPECT_TRUE(found.converged);
  EXPECT_NEAR(found.objective, 680.6300573, 1e-6);
  EXPECT_THAT(found.x, Pointwise(DoubleNear(1e-3),
                                 Vector{2.330499, 1.951372, -0.4775414, 4.365726, -0.6244870, 1.038131, 1.594227}));
}

// CB2: the least maximum of three functions, by its epigraph.
TEST(Minimise, AMaximumByItsEpigraph) {
  const auto functions = [](const Numbers& x) {
    return Numbers{x[2], x[0] * x[0] + Fourth(x[1]) - x[2], Square(2.0 - x[0]) + Square(2.0 - x[1]) - x[2],
                   2.0 * std::exp(x[1] - x[0]) - x[2]};
  };
  const Minimum found = Minimise(ProgrammeOf(functions, Free(3, -1), Free(3, 1), 3), {2, 2, 20});
  EXPECT_NEAR(found.objective, 1.9522245, 1e-7);
  EXPECT_THAT(found.x, Pointwise(DoubleNear(1e-5), Vector{1.139038, 0.899560, 1.9522245}));
}

TEST(Minimise, GivesTheBestPointItMetWhenStopped) {
  double best = kInfinite;
  Programme programme = ProgrammeOf(RosenSuzuki, Free(4, -1), Free(4, 1), 3);
  const auto evaluate = programme.evaluate;
  int asked = 0;
  programme.evaluate = [&](const Vector& x, Evaluation& at) {
    ++asked;
    evaluate(x, at);
    if (*std::max_element(at.constraints.begin(), at.constraints.end()) <= 1e-9) best = std::min(best, at.objective);
    return true;
  };
  for (int most = 1; most < 12; ++most) {
    best = kInfinite;
    asked = 0;
    const Minimum found = Minimise(programme, {0, 0, 0, 0}, {.most_evaluations = most});
    EXPECT_EQ(found.evaluations, asked);
    EXPECT_LE(asked, most);
    EXPECT_EQ(found.objective, best);
  }
}

// x <= -1 and x >= 1: the least infeasible lies half way, one off.
TEST(Minimise, NothingFeasible) {
  const auto functions = [](const Numbers& x) { return Numbers{x[0] * x[0], x[0] + 1.0, 1.0 - x[0]}; };
  const Minimum found = Minimise(ProgrammeOf(functions, {-4}, {4}, 2), {0.5});
  EXPECT_FALSE(found.converged);
  EXPECT_GE(found.violation, 1);
  EXPECT_LE(found.violation, 1.5);
}

// x - log x is least at 1 and has no answer left of 0: a long first step meets the edge.
TEST(Minimise, TakesAShorterStepWhereThereIsNoAnswer) {
  Programme programme{{-100}, {100}, 0, {}};
  programme.evaluate = [](const Vector& x, Evaluation& at) {
    if (x[0] <= 0) return false;
    at.objective = x[0] - std::log(x[0]);
    at.gradient[0] = 1 - 1 / x[0];
    return true;
  };
  EXPECT_NEAR(Minimise(programme, {0.9}).x[0], 1, 1e-6);
  EXPECT_NEAR(Minimise(programme, {0.01}).x[0], 1, 1e-6);
  EXPECT_NEAR(Minimise(programme, {1.9}).x[0], 1, 1e-6);
}

TEST(Minimise, NoAnswerAtTheStartOrNotANumber) {
  Programme programme{{0}, {1}, 0, {}};
  programme.evaluate = [](const Vector&, Evaluation&) { return false; };
  Minimum found = Minimise(programme, {0.5});
  EXPECT_FALSE(found.converged);
  EXPECT_THAT(found.x, ElementsAre(0.5));
  EXPECT_EQ(found.evaluations, 1);
  programme.evaluate = [](const Vector&, Evaluation& at) {
    at.objective = std::nan("");
    return true;
  };
  found = Minimise(programme, {0.5});
  EXPECT_FALSE(found.converged);
  EXPECT_EQ(found.evaluations, 1);
}

// Where low = high the unknown is none.
TEST(Minimise, AFixedUnknown) {
  const auto functions = [](const Numbers& x) { return Numbers{Square(x[0] - 1.0) + Square(x[1] - 1.0)}; };
  const Minimum found = Minimise(ProgrammeOf(functions, {0, 0.25}, {4, 0.25}, 0), {3, 0.25});
  EXPECT_THAT(found.x, ElementsAre(DoubleNear(1, 1e-6), 0.25));
}

}  // namespace
}  // namespace withy::testing
