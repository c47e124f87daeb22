#include "reference/frequency_answers.h"

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "reference/fields.h"
#include "support/tube_beam.h"
#include "withy/numerics/modes.h"

namespace withy::reference {
namespace {

std::vector<double> RadiansPerSecond(const Modes& modes) {
  std::vector<double> omega;
  for (double frequency : modes.frequency_hz) omega.push_back(2 * std::numbers::pi * frequency);
  return omega;
}

// Of length one, and of stiffness and mass per length one at the butt: round and tapering to a tip so thick, or of even
// breadth and tapering to nothing.
Beam Cone(double tip) {
  BeamPiece piece{0, 1, {}, {}};
  AddPower(1, tip, 1, piece.stiffness);
  AddPower(1, tip, 1, piece.mass);
  return {{piece}, {}};
}

Beam Wedge() {
  return {{{0, 1, {1, -3, 3, -1}, {1, -1}}}, {}};
}

Value OmegaHat(const Beam& beam, int count, Allocator& allocator) {
  return Fields(allocator).Put("omega_hat", RadiansPerSecond(ModesOf(beam, count))).Take();
}

// The eigenvalue of a uniform cantilever is the square of beta.
Value Uniform(Allocator& allocator) {
  const std::vector<double> omega = RadiansPerSecond(ModesOf(Cone(1), 5));
  std::vector<double> beta;
  for (double value : omega) beta.push_back(std::sqrt(value));
  return Fields(allocator).Put("beta_n", beta).Put("omega_hat", omega).Take();
}

Value TipMass(const Value& in, Allocator& allocator) {
  Beam beam = Cone(1);
  beam.masses.push_back({1, Get(in, "tip_mass_over_beam_mass")});
  return OmegaHat(beam, 3, allocator);
}

Value TubeWithMasses(const Value& in, Allocator& allocator) {
  const double outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m");
  const TubeEnd butt{0, outer0, outer0 - 2 * Get(in, "wall_butt_m")};
  const TubeEnd tip{Get(in, "L_m"), outer1, outer1 - 2 * Get(in, "wall_tip_m")};
  Beam beam = TubeBeam(butt, tip, Get(in, "E_Pa"), Get(in, "rho_kg_m3"));
  const std::vector<double> bare = ModesOf(beam, 3).frequency_hz;
  for (const Value& mass : in["point_masses"].GetArray())
    beam.masses.push_back({Get(mass, "s_m"), Get(mass, "mass_kg")});
  const Modes modes = ModesOf(beam, 3);
  return Fields(allocator)
      .Put("omega_rad_s", RadiansPerSecond(modes))
      .Put("f_Hz", modes.frequency_hz)
      .Put("bare_blank_f_Hz", bare)
      .Take();
}

}  // namespace

Value AnswerFrequencies(const Value& entry, Allocator& allocator) {
  const std::string type = entry["type"].GetString();
  const Value& in = entry["input"];
  if (type == "uniform_cantilever") return Uniform(allocator);
  if (type == "uniform_cantilever_tip_mass") return TipMass(in, allocator);
  if (type == "complete_wedge") return OmegaHat(Wedge(), 3, allocator);
  if (type == "complete_cone") return OmegaHat(Cone(0), 3, allocator);
  if (type == "truncated_cone") return OmegaHat(Cone(Get(in, "tip_to_butt_diameter_ratio")), 3, allocator);
  if (type == "tapered_tube_point_masses") return TubeWithMasses(in, allocator);
  return Value();
}

}  // namespace withy::reference
