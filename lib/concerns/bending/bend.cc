#include "bend.h"

#include <algorithm>
#include <cmath>

#include "strain.h"

namespace withy::bending {
namespace {

// Distances of a reported shape: enough for a smooth curve on paper.
constexpr int kDistances = 48;

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
  // At its peak the strain does not change with the place.
  const Uncertain moment = MomentChangeAt(peak.s, rod, pull, bent.shape, loaded);
  bent.peak_strain = Uncertain(peak.strain) * (Uncertain(1) + moment - rod.blank.stiffness_change[peak.piece] +
                                               rod.blank.outer_change[peak.piece]);
  return bent;
}

}  // namespace withy::bending
