#include "bench_reading_model.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "withy/numerics/modes.h"
#include "withy/units/quantity.h"

namespace withy::bending {
namespace {

// Differences of this are taken: two orders below the step's own error.
constexpr ElasticaOptions kExact = {.tolerance = 1e-10};

ElasticaLoad OwnWeight() {
  ElasticaLoad load;
  load.gravity_y = -kStandardGravity;
  return load;
}

}  // namespace

Bench::Clamped* Bench::ClampAt(double clamp_m) {
  const auto found = clamped_.find(clamp_m);
  if (found != clamped_.end()) return &found->second;
  if (!blank_.length_m() || clamp_m < 0 || clamp_m >= *blank_.length_m()) return nullptr;
  Clamped clamped;
  clamped.beam = blank_.BeamFrom(clamp_m);
  clamped.unloaded = SolveElastica(clamped.beam, OwnWeight(), kExact);
  return &clamped_.emplace(clamp_m, std::move(clamped)).first->second;
}

std::optional<double> Bench::Drop(const ReadingModel& reading) {
  Clamped* clamped = ClampAt(reading.clamp_m);
  if (!clamped || clamped->unloaded.state != ElasticaState::kSolved) return std::nullopt;
  const double free = clamped->beam.length();
  const double hung = std::min(reading.load_at_m - reading.clamp_m, free);
  const double read = std::min(reading.read_at_m - reading.clamp_m, free);
  if (!(hung > 0) || !(read > 0)) return std::nullopt;
  ElasticaLoad load = OwnWeight();
  const double weight = -reading.load_kg * kStandardGravity;
  if (hung == free) {
    load.force_y = weight;
  } else {
    load.forces.push_back({hung, 0, weight});
  }
  const Elastica bent = SolveElastica(clamped->beam, load, kExact);
  if (bent.state != ElasticaState::kSolved) return std::nullopt;
  return clamped->unloaded.At(read).y - bent.At(read).y;
}

std::optional<double> Bench::Frequency(const ReadingModel& reading) {
  Clamped* clamped = ClampAt(reading.clamp_m);
  if (!clamped) return std::nullopt;
  Beam beam = clamped->beam;
  const double at = std::min(reading.load_at_m - reading.clamp_m, beam.length());
  if (reading.load_kg > 0 && at > 0) beam.masses.push_back({at, reading.load_kg});
  const Modes modes = ModesOf(beam, 1);
  if (!modes.why.empty() || modes.frequency_hz.empty()) return std::nullopt;
  return modes.frequency_hz.front();
}

std::optional<double> Bench::Read(const ReadingModel& reading) {
  if (reading.kind == ReadingKind::kDrop) return Drop(reading);
  if (reading.kind == ReadingKind::kFrequency) return Frequency(reading);
  double mass = 0, moment = 0;
  for (const WeighedPiece& piece : reading.pieces) {
    const MassProperties p = blank_.PropertiesOf(piece.position, piece.from_m, piece.to_m);
    mass += p.mass_kg;
    moment += p.s_kg_m + p.mass_kg * (piece.start_m - piece.from_m);
  }
  if (!(mass > 0)) return std::nullopt;
  return reading.kind == ReadingKind::kMass ? mass : moment / mass;
}

}  // namespace withy::bending
