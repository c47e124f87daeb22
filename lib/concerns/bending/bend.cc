#include "bend.h"

#include <algorithm>
#include <cmath>

#include "strain.h"
#include "withy/units/quantity.h"

namespace withy::bending {
namespace {

// Distances of a reported shape: enough for a smooth curve on paper.
constexpr int kDistances = 48;

// Relative change of the turning moment of all weight about the clamp, of the straight beam.
Uncertain WeightChange(const LoadedBeam& rod) {
  Uncertain change;
  double sum = 0;
  const Beam& beam = rod.blank.beam;
  for (std::size_t i = 0; i < beam.pieces.size(); ++i) {
    const BeamPiece& p = beam.pieces[i];
    const double length = p.s1 - p.s0;
    const double mass = length * (p.mass[0] + p.mass[1] / 2 + p.mass[2] / 3);
    const double moment = p.s0 * mass + length * length * (p.mass[0] / 2 + p.mass[1] / 3 + p.mass[2] / 4);
    sum += moment;
    change = change + Uncertain(moment) * rod.blank.mass_change[i];
  }
  for (std::size_t i = 0; i < beam.masses.size(); ++i) {
    const double moment = beam.masses[i].s * beam.masses[i].mass_kg;
    sum += moment;
    change = change + Uncertain(moment) * rod.mass_change[i];
  }
  return sum > 0 ? change / sum : Uncertain(0);
}

std::vector<BentPoint> PointsOf(const LoadedBeam& rod, const Elastica& shape, double peak_m) {
  const Beam& beam = rod.blank.beam;
  std::vector<double> places = {peak_m};
  for (int i = 0; i <= kDistances; ++i) places.push_back(beam.length() * i / kDistances);
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end()), places.end());
  std::vector<BentPoint> points;
  for (const double s : places) {
    const BeamPoint at = shape.At(s);
    points.push_back({at, StrainAt(beam, rod.blank.outer_m, s, at.moment)});
  }
  return points;
}

}  // namespace

ElasticaLoad LoadOf(const Pull& pull) {
  ElasticaLoad load;
  load.clamp_angle = pull.butt_angle.value();
  load.force_x = pull.load_n.value() * std::cos(pull.load_angle);
  load.force_y = pull.load_n.value() * std::sin(pull.load_angle);
  load.gravity_y = -kStandardGravity;
  return load;
}

// The moment at the clamp is the load's, x Fy - y Fx of the free end, and the weight's, whose lever moves about as the free
// end's does.
FirstOrder ChangesOf(const LoadedBeam& rod, const Pull& pull, const Elastica& solved) {
  const ElasticaLoad load = LoadOf(pull);
  const ElasticaSensitivity by = SensitivityOf(rod.blank.beam, load, solved);
  const Uncertain load_change = pull.load_n.value() > 0 ? pull.load_n / pull.load_n.value() - Uncertain(1) : Uncertain(0);
  const Uncertain weight_change = WeightChange(rod);
  const Uncertain angle_change = pull.butt_angle - Uncertain(pull.butt_angle.value());
  const auto change = [&](double ElasticaSensitivity::Tip::*part) {
    Uncertain sum = load_change * Uncertain(by.to_load.*part) + weight_change * Uncertain(by.to_gravity.*part) +
                    angle_change * Uncertain(by.to_clamp_angle.*part);
    for (std::size_t i = 0; i < by.to_stiffness.size(); ++i) {
      sum = sum + rod.blank.stiffness_change[i] * Uncertain(by.to_stiffness[i].*part);
    }
    return sum;
  };
  FirstOrder first{change(&ElasticaSensitivity::Tip::x), change(&ElasticaSensitivity::Tip::y), {}};
  const BeamPoint& tip = solved.tip();
  const double whole = solved.points.front().moment;
  const double of_load = tip.x * load.force_y - tip.y * load.force_x;
  if (whole == 0) return first;
  Uncertain moment = first.x * Uncertain(load.force_y) - first.y * Uncertain(load.force_x) + load_change * Uncertain(of_load) +
                     weight_change * Uncertain(whole - of_load);
  if (tip.x != 0) moment = moment + first.x * Uncertain((whole - of_load) / tip.x);
  first.clamp_moment = moment / whole;
  return first;
}

BentRod Bend(const LoadedBeam& rod, const Pull& pull) {
  BentRod bent;
  bent.butt_angle = pull.butt_angle.value();
  bent.load_angle = pull.load_angle;
  bent.load_n = pull.load_n;
  bent.shape = SolveElastica(rod.blank.beam, LoadOf(pull));
  if (bent.shape.points.empty()) return bent;
  const PeakStrain peak = PeakStrainOf(rod.blank.beam, rod.blank.outer_m, bent.shape);
  bent.peak_at_m = peak.s;
  bent.points = PointsOf(rod, bent.shape, peak.s);
  bent.peak_strain = Uncertain(peak.strain);
  bent.clamp_moment_n_m = Uncertain(std::abs(bent.shape.points.front().moment));
  const Pull nothing{0, 0, pull.butt_angle};
  const Elastica own = SolveElastica(rod.blank.beam, LoadOf(nothing));
  if (own.state != ElasticaState::kSolved) return bent;
  bent.tip_drop_m = Uncertain(own.tip().y - bent.shape.tip().y);
  if (bent.shape.state != ElasticaState::kSolved) return bent;
  const FirstOrder loaded = ChangesOf(rod, pull, bent.shape);
  bent.tip_drop_m = *bent.tip_drop_m + ChangesOf(rod, nothing, own).y - loaded.y;
  bent.clamp_moment_n_m = *bent.clamp_moment_n_m * (Uncertain(1) + loaded.clamp_moment);
  // The moment moves about as that at the clamp does.
  bent.peak_strain = Uncertain(peak.strain) * (Uncertain(1) + loaded.clamp_moment - rod.blank.stiffness_change[peak.piece] +
                                               rod.blank.outer_change[peak.piece]);
  return bent;
}

}  // namespace withy::bending
