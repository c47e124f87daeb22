#include "first_order.h"

#include <cmath>
#include <numbers>

#include "beyond.h"
#include "withy/units/quantity.h"

namespace withy::bending {
namespace {

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

ElasticaLoad LoadAt(const Pull& pull, double clamp_angle) {
  ElasticaLoad load = LoadOf(pull);
  load.clamp_angle = clamp_angle;
  return load;
}

// A change of the clamp's angle apart: `turn`.
class Changes {
 public:
  Changes(const LoadedBeam& rod, const Pull& pull, double clamp_angle, const Elastica& solved)
      : rod_(rod),
        load_(LoadAt(pull, clamp_angle)),
        solved_(solved),
        by_(SensitivityOf(rod.blank.beam, load_, solved)),
        load_change_(pull.load_n.value() > 0 ? pull.load_n / pull.load_n.value() - Uncertain(1) : Uncertain(0)),
        weight_change_(WeightChange(rod)) {}

  Uncertain Of(double ElasticaSensitivity::Tip::*part) const {
    Uncertain sum = load_change_ * Uncertain(by_.to_load.*part) + weight_change_ * Uncertain(by_.to_gravity.*part);
    for (std::size_t i = 0; i < by_.to_stiffness.size(); ++i) {
      sum = sum + rod_.blank.stiffness_change[i] * Uncertain(by_.to_stiffness[i].*part);
    }
    return sum;
  }
  double ByTurn(double ElasticaSensitivity::Tip::*part) const { return by_.to_clamp_angle.*part; }

  // Moment at the clamp: of the load, x Fy - y Fx of the free end, and of the weight, whose lever moves about as that
  // of the free end does.
  FirstOrder With(const Uncertain& turn) const {
    using Tip = ElasticaSensitivity::Tip;
    const auto change = [&](double Tip::*part) { return Of(part) + turn * Uncertain(ByTurn(part)); };
    FirstOrder first{change(&Tip::x), change(&Tip::y), change(&Tip::angle), {}};
    const BeamPoint& tip = solved_.tip();
    const double whole = solved_.points.front().moment;
    if (whole == 0) return first;
    const double of_load = tip.x * load_.force_y - tip.y * load_.force_x;
    Uncertain moment = first.x * Uncertain(load_.force_y) - first.y * Uncertain(load_.force_x) +
                       load_change_ * Uncertain(of_load) + weight_change_ * Uncertain(whole - of_load);
    const double lever = tip.x * load_.gravity_y - tip.y * load_.gravity_x;
    if (lever != 0) {
      const Uncertain longer = first.x * Uncertain(load_.gravity_y) - first.y * Uncertain(load_.gravity_x);
      moment = moment + longer * Uncertain((whole - of_load) / lever);
    }
    first.clamp_moment = moment / whole;
    return first;
  }

 private:
  const LoadedBeam& rod_;
  const ElasticaLoad load_;
  const Elastica& solved_;
  const ElasticaSensitivity by_;
  const Uncertain load_change_, weight_change_;
};

}  // namespace

Direction DirectionOf(double deg) {
  const double turned = std::remainder(deg, 360);
  if (turned == 0) return {1, 0};
  if (std::abs(turned) == 180) return {-1, 0};
  if (std::abs(turned) == 90) return {0, turned / 90};
  return {std::cos(turned * std::numbers::pi / 180), std::sin(turned * std::numbers::pi / 180)};
}

ElasticaLoad LoadOf(const Pull& pull) {
  const Direction force = DirectionOf(pull.from_butt_deg), down = DirectionOf(-90 - pull.butt_deg);
  ElasticaLoad load;
  load.force_x = pull.load_n.value() * force.x;
  load.force_y = pull.load_n.value() * force.y;
  load.gravity_x = kStandardGravity * down.x;
  load.gravity_y = kStandardGravity * down.y;
  return load;
}

FirstOrder ChangesOf(const LoadedBeam& rod, const Pull& pull, const Elastica& solved) {
  return Changes(rod, pull, 0, solved).With(pull.turn);
}

Uncertain MomentChangeAt(double s_m, const LoadedBeam& rod, const Pull& pull, const Elastica& solved,
                         const FirstOrder& of_whole) {
  const Beyond beyond = BeyondPoint(rod, solved, s_m);
  if (beyond.shape.points.size() == solved.points.size()) return of_whole.clamp_moment;
  const Changes changes(beyond.rod, pull, beyond.shape.points.front().angle, beyond.shape);
  constexpr auto kAngle = &ElasticaSensitivity::Tip::angle;
  // So far bent that the free end knows nothing of the clamp: nor does the moment.
  constexpr double kNothing = 1e-7;
  if (std::abs(changes.ByTurn(kAngle)) < kNothing) return changes.With(Uncertain(0)).clamp_moment;
  return changes.With((of_whole.angle - changes.Of(kAngle)) / changes.ByTurn(kAngle)).clamp_moment;
}

}  // namespace withy::bending
