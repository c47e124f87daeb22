#include "power.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

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
  return {weight_n, 0, -90, {}};
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

// A weight that all but does it, and what one more step of Newton's rule adds to it.
struct Hanging {
  double weight_n = 0;
  Elastica shape;
  double step = 0;      // relative, of the weight
  double by_load = 0;   // d(drop) / d(load) x load
  double by_angle = 0;  // likewise of the tip's angle
};

// Newton's rule with the tangent stiffness; a step beyond what is bracketed is replaced by the middle. The drop rises
// ever more slowly with the load, so from a load that is too small every step falls short: it converges from one side.
std::optional<Hanging> HangFor(double wanted, double tip_at_rest, double weight_n, const Beam& beam) {
  double low = 0, high = 0;  // 0 = none yet
  for (int i = 0; i < 40; ++i) {
    const ElasticaLoad load = LoadOf(Hung(weight_n));
    Elastica shape = SolveElastica(beam, load);
    if (shape.state != ElasticaState::kSolved) {
      high = weight_n;
      weight_n = (low + high) / 2;
      continue;
    }
    const double missing = wanted - (tip_at_rest - shape.tip().y);
    (missing > 0 ? low : high) = weight_n;
    const ElasticaSensitivity::Tip by = SensitivityOf(beam, load, shape).to_load;
    const double step = by.y < 0 ? missing / -by.y : 1;
    // The step after this one would be about its square.
    if (std::abs(step) < 1e-5) return Hanging{weight_n, std::move(shape), step, -by.y, by.angle};
    double next = weight_n * (1 + step);
    if (next <= low || (high > 0 && next >= high)) next = high > 0 ? (low + high) / 2 : 2 * weight_n;
    weight_n = next;
  }
  return std::nullopt;
}

}  // namespace

std::optional<Power> PowerOf(const LoadedBeam& rod, const std::optional<Power>& near) {
  const Beam& beam = rod.blank.beam;
  const Elastica own = SolveElastica(beam, LoadOf(Hung(0)));
  const double compliance = Compliance(beam);
  if (own.state != ElasticaState::kSolved || !(compliance > 0) || !std::isfinite(compliance)) return std::nullopt;
  const double wanted = beam.length() / 3;
  // A third of the length is beyond small deflections: tapered rods need a third to a half more than these say.
  const double start = near ? near->load_kg.value() * kStandardGravity : 1.35 * wanted / compliance;
  const auto hanging = HangFor(wanted, own.tip().y, start, beam);
  if (!hanging) return std::nullopt;
  // The drop stays: what would change it must be made good by the load.
  const Uncertain change = ChangesOf(rod, Hung(0), own).y - ChangesOf(rod, Hung(hanging->weight_n), hanging->shape).y;
  Power power;
  power.load_kg = Uncertain(hanging->weight_n * (1 + hanging->step) / kStandardGravity) *
                  (Uncertain(1) - change / hanging->by_load);
  power.coins = power.load_kg.value() / kCoinKg;
  power.tip_angle = -(hanging->shape.tip().angle + hanging->step * hanging->by_angle);
  power.line_number = LineNumberFor(power.load_kg.value());
  return power;
}

}  // namespace bending
}  // namespace withy
