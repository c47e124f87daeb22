#include "withy/numerics/modes.h"

#include <cmath>
#include <cstddef>
#include <functional>
#include <limits>
#include <numbers>
#include <numeric>
#include <string>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/tube_beam.h"

namespace withy {
namespace {

using Function = std::function<double(double)>;
using testing::DoubleNear;
using testing::HasSubstr;

std::vector<double> Omega(const Modes& modes) {
  EXPECT_EQ(modes.why, "");
  std::vector<double> omega;
  for (double frequency : modes.frequency_hz) omega.push_back(2 * std::numbers::pi * frequency);
  return omega;
}

// The first `count` zeros above `from`, by steps and bisection.
std::vector<double> Zeros(const Function& f, double from, double step, std::size_t count) {
  std::vector<double> zeros;
  for (double a = from; zeros.size() < count && a < from + 1e5 * step; a += step) {
    double low = a, high = a + step;
    if (f(low) * f(high) > 0) continue;
    for (int halving = 0; halving < 80; ++halving) {
      const double middle = std::midpoint(low, high);
      (f(low) * f(middle) <= 0 ? high : low) = middle;
    }
    zeros.push_back(std::midpoint(low, high));
  }
  return zeros;
}

void ExpectRelative(const std::vector<double>& got, const std::vector<double>& want, double tolerance) {
  ASSERT_EQ(got.size(), want.size());
  for (std::size_t i = 0; i < want.size(); ++i) EXPECT_NEAR(got[i] / want[i], 1, tolerance) << "mode " << i + 1;
}

Beam Uniform(double length = 1, double stiffness = 1, double mass = 1) {
  return {{{0, length, {stiffness}, {mass}}}, {}};
}

// cos b cosh b = -1, omega = b^2 (Blevins, Formulas for Natural Frequency and Mode Shape, 1979, clamped-free beam;
// divided by cosh b so that it stays in bounds).
TEST(Modes, UniformCantilever) {
  const auto zeros = Zeros([](double b) { return std::cos(b) + 1 / std::cosh(b); }, 0.1, 0.1, 10);
  std::vector<double> want;
  for (double b : zeros) want.push_back(b * b);
  ExpectRelative(Omega(ModesOf(Uniform(), 10)), want, 1e-10);
  EXPECT_NEAR(want[0], 3.5160, 5e-5);  // Thomson, Theory of Vibration, appendix D: 3.5160, 22.0345, 61.6972
  EXPECT_NEAR(want[2], 61.6972, 5e-5);
}

// 56.8 N m2 and 20 g/m over 2 m: omega = 3.51602 sqrt(56.8 / (0.02 x 2^4)) = 3.51602 x 13.3229 = 46.8436 rad/s
// = 7.45539 Hz.
TEST(Modes, HertzOfAUniformRod) {
  EXPECT_NEAR(ModesOf(Uniform(2, 56.8, 0.02), 1).frequency_hz.at(0), 7.45539, 1e-5);
}

// 1 + cos b cosh b + mu b (cos b sinh b - sin b cosh b) = 0, mu = tip mass over the beam's (shear of the free end =
// mass times acceleration there; the frequency equation in Blevins 1979 and Thomson).
TEST(Modes, TipMass) {
  for (double mu : {0.01, 0.3, 2.0, 40.0}) {
    const auto zeros = Zeros(
        [mu](double b) { return 1 / std::cosh(b) + std::cos(b) + mu * b * (std::cos(b) * std::tanh(b) - std::sin(b)); },
        0.1, 0.05, 4);
    std::vector<double> want;
    for (double b : zeros) want.push_back(b * b);
    Beam beam = Uniform();
    beam.masses.push_back({1, mu});
    ExpectRelative(Omega(ModesOf(beam, 4)), want, 1e-9);
  }
}

// A spring of stiffness 3 EI / L^3 with a mass on it: sqrt(3 x 50 / (0.2 x 1.5^3)) = sqrt(222.222) = 14.90712 rad/s.
// Without mass of its own the beam rings in no second way.
TEST(Modes, WeightlessBeamWithOneMass) {
  Beam beam = Uniform(1.5, 50, 0);
  beam.masses.push_back({1.5, 0.2});
  EXPECT_THAT(Omega(ModesOf(beam, 1)), testing::ElementsAre(DoubleNear(14.90712, 1e-5)));
  EXPECT_THAT(ModesOf(beam, 2).why, HasSubstr("1 of 2 modes"));
}

// Mabie and Rogers, J. Acoust. Soc. Am. 51 (1972) 1771: a beam that tapers 4 to 1 in breadth and in depth, referred to
// the thin end (four times the figure referred to the butt). Their figures lie up to 0.034 % below what three other
// methods agree on.
TEST(Modes, DoubleTaperOfMabieAndRogers) {
  BeamPiece piece{0, 1, {}, {}};
  AddPower(1, 0.25, 1, piece.stiffness);
  AddPower(1, 0.25, 1, piece.mass);
  std::vector<double> thin_end;
  for (double omega : Omega(ModesOf({{piece}, {}}, 5))) thin_end.push_back(4 * omega);
  ExpectRelative(thin_end, {23.289, 73.9, 165.23, 299.7, 478.1}, 4e-4);
}

// Second method, exact for beams of uniform pieces: deflection, slope, moment and shear carried from the clamp to the
// free end by Krylov's functions, masses as jumps of the shear; a mode is where no moment and shear at the clamp leave
// the end free (transfer matrices; Pestel and Leckie, Matrix Methods in Elastomechanics, 1963).
class TransferMatrix {
 public:
  // Pieces of uniform stiffness and mass; masses at ends of pieces.
  explicit TransferMatrix(Beam beam) : beam_(std::move(beam)) {}

  // Zero at the natural frequencies.
  double operator()(double omega) const {
    const State a = EndOf({0, 0, 1, 0}, omega), b = EndOf({0, 0, 0, 1}, omega);
    return a.moment * b.shear - a.shear * b.moment;
  }

 private:
  struct State {
    double w, slope, moment, shear;  // EI w'' and EI w'''
  };
  State EndOf(State from, double omega) const {
    for (const BeamPiece& piece : beam_.pieces) {
      const double stiffness = piece.stiffness[0], k = std::pow(omega * omega * piece.mass[0] / stiffness, 0.25);
      const double x = k * (piece.s1 - piece.s0);
      const double s = (std::cosh(x) + std::cos(x)) / 2, t = (std::sinh(x) + std::sin(x)) / 2;
      const double u = (std::cosh(x) - std::cos(x)) / 2, v = (std::sinh(x) - std::sin(x)) / 2;
      // w and its derivatives over 1, k, k^2, k^3.
      const double w0 = from.w, w1 = from.slope / k, w2 = from.moment / (stiffness * k * k);
      const double w3 = from.shear / (stiffness * k * k * k);
      from.w = s * w0 + t * w1 + u * w2 + v * w3;
      from.slope = k * (v * w0 + s * w1 + t * w2 + u * w3);
      from.moment = stiffness * k * k * (u * w0 + v * w1 + s * w2 + t * w3);
      from.shear = stiffness * k * k * k * (t * w0 + u * w1 + v * w2 + s * w3);
      for (const BeamMass& mass : beam_.masses) {
        if (mass.s == piece.s1) from.shear += mass.mass_kg * omega * omega * from.w;
      }
    }
    return from;
  }
  Beam beam_;
};

TEST(Modes, SteppedBeamAgainstTransferMatrices) {
  const Beam beam{{{0, 0.7, {90}, {0.12}}, {0.7, 1.3, {14}, {0.05}}, {1.3, 2.1, {1.5}, {0.015}}},
                  {{0.7, 0.03}, {2.1, 0.004}}};
  const auto want = Zeros(TransferMatrix(beam), 1, 1, 6);
  ExpectRelative(Omega(ModesOf(beam, 6)), want, 1e-9);
}

TEST(Modes, MassesWithinAPieceAgainstTransferMatrices) {
  Beam whole = Uniform(2, 30, 0.05);
  whole.masses = {{1.37, 0.02}, {0.4, 0.05}, {0, 3}, {0.4, 0.01}};  // in any order, two at one place, one on the clamp
  Beam cut = whole;
  cut.pieces = {{0, 0.4, {30}, {0.05}}, {0.4, 1.37, {30}, {0.05}}, {1.37, 2, {30}, {0.05}}};
  ExpectRelative(Omega(ModesOf(whole, 5)), Zeros(TransferMatrix(cut), 1, 1, 5), 1e-9);
}

// A rod of 60 stations and more is told as well as the one long cone that it is: no digits are lost to many pieces.
TEST(Modes, DoNotDependOnTheCut) {
  const TubeEnd butt{0, 0.0125, 0.0105}, tip{2.1, 0.002, 0.0011};
  const auto one = Omega(ModesOf(TubeBeam(butt, tip, 1.1e11, 1550), 3));
  for (int pieces : {7, 60, 1000})
    ExpectRelative(Omega(ModesOf(TubeBeam(butt, tip, 1.1e11, 1550, pieces), 3)), one, 1e-9);
}

class Shares : public testing::Test {
 protected:
  Shares() : beam(TubeBeam({0, 0.0125, 0.0105}, {2.1, 0.002, 0.0011}, 1.1e11, 1550, 5)) {
    beam.masses = {{0, 0.2}, {0.45, 0.012}, {1.4, 0.0014}, {2.1, 0.0012}};
    modes = ModesOf(beam, 3);
  }
  // The change of ln f per change of ln p, by central differences; `scale` makes p so many times as large.
  double Sensitivity(std::size_t mode, const std::function<void(Beam&, double)>& scale) const {
    constexpr double kStep = 1e-4;
    Beam more = beam, less = beam;
    scale(more, 1 + kStep);
    scale(less, 1 - kStep);
    return std::log(ModesOf(more, 3).frequency_hz[mode] / ModesOf(less, 3).frequency_hz[mode]) / (2 * kStep);
  }
  Beam beam;
  Modes modes;
};

double Sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

TEST_F(Shares, AddUpToOne) {
  for (std::size_t mode = 0; mode < 3; ++mode) {
    EXPECT_NEAR(Sum(modes.share_of_stiffness[mode]), 1, 1e-14);
    EXPECT_NEAR(Sum(modes.share_of_own_mass[mode]) + Sum(modes.share_of_mass[mode]), 1, 1e-14);
    EXPECT_EQ(modes.share_of_mass[mode][0], 0) << "what sits on the clamp does not move";
  }
}

// d(ln f) = (share_of_stiffness d(ln EI) - share_of_mass d(ln m)) / 2: Rayleigh's quotient is stationary in the shape.
TEST_F(Shares, AreTheSensitivitiesOfTheFrequencies) {
  for (std::size_t mode = 0; mode < 3; ++mode) {
    for (std::size_t i = 0; i < beam.pieces.size(); ++i) {
      const auto stiffen = [i](Beam& b, double factor) {
        for (double& term : b.pieces[i].stiffness) term *= factor;
      };
      const auto load = [i](Beam& b, double factor) {
        for (double& term : b.pieces[i].mass) term *= factor;
      };
      EXPECT_NEAR(modes.share_of_stiffness[mode][i] / 2, Sensitivity(mode, stiffen), 1e-7);
      EXPECT_NEAR(-modes.share_of_own_mass[mode][i] / 2, Sensitivity(mode, load), 1e-7);
    }
    for (std::size_t i = 0; i < beam.masses.size(); ++i) {
      const auto load = [i](Beam& b, double factor) { b.masses[i].mass_kg *= factor; };
      EXPECT_NEAR(-modes.share_of_mass[mode][i] / 2, Sensitivity(mode, load), 1e-7);
    }
  }
}

TEST(Modes, SayWhatIsWrong) {
  EXPECT_THAT(ModesOf(Uniform(), 0).why, HasSubstr("0 modes"));
  EXPECT_THAT(ModesOf(Uniform(), 11).why, HasSubstr("1 to 10"));
  EXPECT_THAT(ModesOf({}, 3).why, HasSubstr("no pieces"));
  EXPECT_THAT(ModesOf(Uniform(1, -1), 3).why, HasSubstr("stiffness"));
  EXPECT_THAT(ModesOf(Uniform(1, std::numeric_limits<double>::quiet_NaN()), 3).why, HasSubstr("stiffness"));
  EXPECT_THAT(ModesOf(Uniform(1, 1, 0), 3).why, HasSubstr("has no mass"));
  EXPECT_THAT(ModesOf(Uniform(1, 1e-300, 1), 3).why, HasSubstr("out of all proportion"));
  Beam beam = Uniform();
  beam.masses.push_back({1, -0.1});
  EXPECT_THAT(ModesOf(beam, 3).why, HasSubstr("mass"));
  EXPECT_TRUE(ModesOf(beam, 3).frequency_hz.empty());
}

// A cone may run out to a point, but nothing can hang there: the point gives way without end.
TEST(Modes, NothingHangsOnAPoint) {
  Beam cone = TubeBeam({0, 0.01, 0}, {1, 0, 0}, 1e11, 1500);
  EXPECT_EQ(ModesOf(cone, 3).why, "");
  cone.masses.push_back({1, 0.001});
  EXPECT_THAT(ModesOf(cone, 3).why, HasSubstr("free end that has no stiffness"));
}

}  // namespace
}  // namespace withy
