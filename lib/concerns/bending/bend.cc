#include "bend.h"

#include <algorithm>
#include <cmath>
#include <numbers>

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

// From the frame of the butt to that of the world.
void Turn(double butt_deg, Elastica& shape) {
  const Direction butt = DirectionOf(butt_deg);
  for (BeamPoint& point : shape.points) {
    const double forward = point.x * butt.x - point.y * butt.y;
    point.y = point.x * butt.y + point.y * butt.x;
    point.x = forward;
    point.angle += butt_deg * std::numbers::pi / 180;
  }
}

}  // namespace

BentRod Bend(const LoadedBeam& rod, const Pull& pull) {
  const Direction butt = DirectionOf(pull.butt_deg);
  const auto up = [&butt](const auto& x, const auto& y) { return Uncertain(butt.y) * x + Uncertain(butt.x) * y; };
  BentRod bent;
  bent.load_n = pull.load_n;
  bent.shape = SolveElastica(rod.blank.beam, LoadOf(pull));
  if (bent.shape.points.empty()) return bent;
  const PeakStrain peak = PeakStrainOf(rod.blank.beam, rod.blank.outer_m, bent.shape);
  bent.peak_at_m = peak.s;
  bent.peak_strain = Uncertain(peak.strain);
  bent.clamp_moment_n_m = Uncertain(std::abs(bent.shape.points.front().moment));
  const Pull nothing{0, pull.butt_deg, -90, pull.turn};
  const Elastica own = SolveElastica(rod.blank.beam, LoadOf(nothing));
  const bool sags = own.state == ElasticaState::kSolved;
  if (sags) bent.tip_drop_m = up(own.tip().x - bent.shape.tip().x, own.tip().y - bent.shape.tip().y);
  if (bent.shape.state == ElasticaState::kSolved) {
    const FirstOrder loaded = ChangesOf(rod, pull, bent.shape);
    if (sags) {
      const FirstOrder light = ChangesOf(rod, nothing, own);
      bent.tip_drop_m = *bent.tip_drop_m + up(light.x - loaded.x, light.y - loaded.y);
    }
    bent.clamp_moment_n_m = *bent.clamp_moment_n_m * (Uncertain(1) + loaded.clamp_moment);
    // At its peak the strain does not change with the place.
    const Uncertain moment = MomentChangeAt(peak.s, rod, pull, bent.shape, loaded);
    bent.peak_strain = Uncertain(peak.strain) * (Uncertain(1) + moment - rod.blank.stiffness_change[peak.piece] +
                                                 rod.blank.outer_change[peak.piece]);
  }
  Turn(pull.butt_deg, bent.shape);
  bent.points = PointsOf(rod, bent.shape, peak.s);
  return bent;
}

}  // namespace withy::bending
