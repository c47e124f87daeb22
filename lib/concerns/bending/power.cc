#include "power.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr double kCoinKg = 0.0025;

// Target grains of line numbers 1 to 9 (AFFTA single-hand standard).
constexpr std::array<double, 9> kTargetGrains = {60, 80, 100, 120, 140, 160, 185, 210, 240};
constexpr double kLeastKg = 0.039, kMostKg = 0.173;

}  // namespace

std::optional<double> LineNumberFor(double load_kg) {
  if (!(load_kg >= kLeastKg && load_kg <= kMostKg)) return std::nullopt;
  const double grains = (load_kg * 1000 + 12.085) / 0.80194;
  const auto after = std::upper_bound(kTargetGrains.begin() + 1, kTargetGrains.end() - 1, grains);
  const double low = *(after - 1), high = *after;
  return static_cast<double>(after - kTargetGrains.begin()) + (grains - low) / (high - low);
}

const char* ActionFor(double tip_angle) {
  const double deg = tip_angle * 180 / std::numbers::pi;
  return deg < 59 ? "slow" : deg < 63 ? "moderate" : deg <= 66 ? "moderate fast" : "fast";
}

namespace bending {
namespace {

Pull Hung(double weight_n) {
  return {weight_n, -std::numbers::pi / 2, 0};
}

// Tip deflection over load for small loads: the integral of (L - s)^2 / EI, by Simpson's rule over each piece; a start
// for the search only.
double Compliance(const Beam& beam) {
  double sum = 0;
  for (const BeamPiece& piece : beam.pieces) {
    const auto f = [&](double s) { return (beam.length() - s) * (beam.length() - s) / piece.StiffnessAt(s); };
    sum += (piece.s1 - piece.s0) / 6 * (f(piece.s0) + 4 * f((piece.s0 + piece.s1) / 2) + f(piece.s1));
  }
  return sum;
}

struct Search {
  const LoadedBeam& rod;
  double tip_at_rest = 0, wanted = 0;

  // Newton's rule with the tangent stiffness; a step beyond what is bracketed is replaced by the middle. The drop rises
  // ever more slowly with the load, so from a load that is too small every step falls short: it converges from one
  // side.
  std::optional<Elastica> Find(double& weight_n) const {
    double low = 0, high = 0;  // 0 = none yet
    for (int i = 0; i < 40; ++i) {
      const Elastica shape = SolveElastica(rod.blank.beam, LoadOf(Hung(weight_n)));
      if (shape.state != ElasticaState::kSolved) {
        high = weight_n;
        weight_n = (low + high) / 2;
        continue;
      }
      const double missing = wanted - (tip_at_rest - shape.tip().y);
      if (std::abs(missing) < 1e-10 * wanted) return shape;
      (missing > 0 ? low : high) = weight_n;
      const double by_load = -SensitivityOf(rod.blank.beam, LoadOf(Hung(weight_n)), shape).to_load.y;
      double next = by_load > 0 ? weight_n * (1 + missing / by_load) : 2 * weight_n;
      if (next <= low || (high > 0 && next >= high)) next = high > 0 ? (low + high) / 2 : 2 * weight_n;
      if (std::abs(next - weight_n) < 1e-13 * weight_n) return shape;
      weight_n = next;
    }
    return std::nullopt;
  }
};

}  // namespace

std::optional<Power> PowerOf(const LoadedBeam& rod) {
  const Beam& beam = rod.blank.beam;
  const Elastica own = SolveElastica(beam, LoadOf(Hung(0)));
  const double compliance = Compliance(beam);
  if (own.state != ElasticaState::kSolved || !(compliance > 0) || !std::isfinite(compliance)) return std::nullopt;
  const double wanted = beam.length() / 3;
  double weight_n = wanted / compliance;
  const auto shape = Search{rod, own.tip().y, wanted}.Find(weight_n);
  if (!shape) return std::nullopt;
  // The drop stays: what would change it must be made good by the load.
  const Pull pull = Hung(weight_n);
  const double by_load = -SensitivityOf(beam, LoadOf(pull), *shape).to_load.y;
  const Uncertain change = ChangesOf(rod, Hung(0), own).y - ChangesOf(rod, pull, *shape).y;
  Power power;
  power.load_kg = Uncertain(weight_n / kStandardGravity) * (Uncertain(1) - change / by_load);
  power.coins = power.load_kg.value() / kCoinKg;
  power.tip_angle = -shape->tip().angle;
  power.line_number = LineNumberFor(power.load_kg.value());
  return power;
}

}  // namespace bending
}  // namespace withy
