#include "withy/numerics/modes.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>
#include <numeric>
#include <optional>
#include <utility>

#include "Eigen/Core"
#include "Eigen/Eigenvalues"
#include "curvature_space.h"
#include "mode_mesh.h"

namespace withy {
namespace {

constexpr int kMostModes = 10;
// Beyond the wanted ones: each step divides the error of 1/omega^2 by (f_first_left_out / f_wanted)^4.
constexpr int kSpareShapes = 3;
constexpr int kMostSteps = 100;
constexpr double kSettled = 1e-12;     // relative change of 1/omega^2 in one step; what is left is far below it
constexpr double kOutOfReach = 1e-16;  // 1/omega^2 beside the largest: a shape that moves no mass

using Shapes = CurvatureSpace::Shapes;
using Square = Eigen::MatrixXd;

// The lowest shapes, lowest frequency first.
struct Lowest {
  Shapes shapes;
  Eigen::VectorXd inverse_square;  // 1/omega^2 of each
};

// How to turn shapes among themselves to where neither energy couples two of them (Rayleigh and Ritz), from the
// potential and the kinetic energy of each pair. Shapes that hold nothing new are left out.
struct Turn {
  Square by;
  Eigen::VectorXd inverse_square;
};

Turn TurnOf(Square potential, Square kinetic) {
  Eigen::VectorXd scale = potential.diagonal();
  const double least = 1e-30 * scale.maxCoeff();
  for (double& value : scale) value = value > least ? 1 / std::sqrt(value) : 0;
  potential = scale.asDiagonal() * potential * scale.asDiagonal();
  kinetic = scale.asDiagonal() * kinetic * scale.asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Square> independent(potential);
  const Eigen::VectorXd& spread = independent.eigenvalues();
  const auto kept = std::count_if(spread.begin(), spread.end(), [](double value) { return value > 1e-12; });
  if (kept == 0) return {Square(potential.rows(), 0), {}};
  Square by = independent.eigenvectors().rightCols(kept) * spread.tail(kept).cwiseSqrt().cwiseInverse().asDiagonal();
  const Eigen::SelfAdjointEigenSolver<Square> uncoupled(by.transpose() * kinetic * by);
  by *= uncoupled.eigenvectors().rowwise().reverse();
  // By the quotient of each rather than by the eigenvalue: as many digits of the smallest as of the largest.
  Eigen::VectorXd quotient =
      by.cwiseProduct(kinetic * by).colwise().sum().cwiseQuotient(by.cwiseProduct(potential * by).colwise().sum());
  return {scale.asDiagonal() * by, std::move(quotient)};
}

bool Settled(const Eigen::VectorXd& before, const Eigen::VectorXd& now, int count) {
  const auto told = std::min<Eigen::Index>({count, before.size(), now.size()});
  for (Eigen::Index i = 0; i < told && now[i] > kOutOfReach * now[0]; ++i) {
    if (!(std::abs(now[i] - before[i]) <= kSettled * now[i])) return false;
  }
  return true;
}

// Subspace iteration (Bathe, Finite Element Procedures, 11.6). Unset where it does not settle.
std::optional<Lowest> LowestOf(const CurvatureSpace& beam, int count) {
  Shapes shapes = beam.Start(count + kSpareShapes);
  Shapes loads = beam.Stiffness(shapes);
  Eigen::VectorXd before;
  for (int step = 0; step < kMostSteps; ++step) {
    Shapes inertia = beam.Inertia(shapes);
    Turn turn = TurnOf(shapes.transpose() * loads, shapes.transpose() * inertia);
    if (turn.by.cols() == 0 || (step > 0 && Settled(before, turn.inverse_square, count))) {
      return Lowest{shapes * turn.by, std::move(turn.inverse_square)};
    }
    before = std::move(turn.inverse_square);
    loads = inertia * turn.by;
    shapes = beam.Bent(loads);
  }
  return std::nullopt;
}

double Sum(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

void PutShares(const Beam& beam, const ModeMesh& mesh, const CurvatureSpace::Energies& energies, Modes& modes) {
  std::vector<double> of_mass, of_stiffness(beam.pieces.size()), of_own_mass(beam.pieces.size());
  for (std::size_t i = 0; i < beam.masses.size(); ++i) {
    const int element = mesh.element_of_mass[i];
    const double w = element < 0 ? 0 : energies.deflection[element];
    of_mass.push_back(beam.masses[i].mass_kg * w * w);
  }
  for (std::size_t e = 0; e < mesh.elements.size(); ++e) {
    of_stiffness[mesh.elements[e].piece] += energies.potential[e];
    of_own_mass[mesh.elements[e].piece] += energies.own_kinetic[e];
  }
  const double potential = Sum(of_stiffness), kinetic = Sum(of_mass) + Sum(of_own_mass);
  for (double& share : of_mass) share /= kinetic;
  for (double& share : of_own_mass) share /= kinetic;
  for (double& share : of_stiffness) share /= potential;
  modes.share_of_mass.push_back(std::move(of_mass));
  modes.share_of_stiffness.push_back(std::move(of_stiffness));
  modes.share_of_own_mass.push_back(std::move(of_own_mass));
}

// A cone may run out to a point: its free end is judged as if a trace of stiffness were left, and then carries no mass.
std::string WhatKeepsItFromRinging(Beam beam) {
  if (!beam.pieces.empty()) {
    auto& stiffness = beam.pieces.back().stiffness;
    const double most = std::abs(*std::max_element(stiffness.begin(), stiffness.end()));
    if (std::abs(Sum({stiffness.begin(), stiffness.end()})) <= 1e-12 * most) {
      stiffness[0] += 1e-9 * most;
      for (const BeamMass& mass : beam.masses) {
        if (mass.s >= beam.length() && mass.mass_kg > 0) return "a mass hangs on a free end that has no stiffness";
      }
    }
  }
  return WhatIsWrongWith(beam);
}

}  // namespace

Modes ModesOf(const Beam& beam, int count) {
  Modes modes;
  if (count < 1 || count > kMostModes) {
    modes.why = std::to_string(count) + " modes asked for: 1 to " + std::to_string(kMostModes) + " can be told";
    return modes;
  }
  modes.why = WhatKeepsItFromRinging(beam);
  if (!modes.why.empty()) return modes;
  const ModeMesh mesh = MeshForModes(beam, count);
  const CurvatureSpace space(mesh);
  const std::optional<Lowest> lowest = LowestOf(space, count);
  if (!lowest) {
    modes.why = "the natural frequencies do not settle";
    return modes;
  }
  const auto& found = lowest->inverse_square;
  const auto moves_mass = [&](double value) { return value > kOutOfReach * found[0]; };
  const auto told = std::count_if(found.begin(), found.end(), moves_mass);
  if (told == 0) {
    modes.why = "nothing rings: the beam has no mass, or its stiffness and mass are out of all proportion";
    return modes;
  }
  if (told < count) {
    modes.why =
        "too little of the beam has mass: it has " + std::to_string(told) + " of " + std::to_string(count) + " modes";
    return modes;
  }
  for (int i = 0; i < count; ++i) {
    modes.frequency_hz.push_back(1 / (2 * std::numbers::pi * std::sqrt(found[i])));
    PutShares(beam, mesh, space.EnergiesOf(lowest->shapes.col(i)), modes);
  }
  return modes;
}

}  // namespace withy
