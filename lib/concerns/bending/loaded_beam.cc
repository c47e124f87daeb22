#include "loaded_beam.h"

#include <algorithm>
#include <cmath>

namespace withy::bending {
namespace {

constexpr double kSameM = 1e-6;
// A thing shorter than this share of the beam is a point: its own second moment then is below 4e-5 of what it has about
// the clamp, were it at the middle.
constexpr double kShort = 0.01;

void ReachRing(double ring_m, BlankBeam& blank) {
  const double tip = blank.beam.length();
  if (ring_m <= tip + kSameM) return;
  const double stiffness = blank.beam.pieces.back().StiffnessAt(tip);
  blank.beam.pieces.push_back({tip, ring_m, {stiffness}, {}});
  const double outer = blank.outer_m.back();
  blank.outer_m.insert(blank.outer_m.end(), {outer, outer});
  const Uncertain stiffness_change = blank.stiffness_change.back(), outer_change = blank.outer_change.back();
  blank.stiffness_change.push_back(stiffness_change);
  blank.outer_change.push_back(outer_change);
  blank.mass_change.emplace_back();
}

}  // namespace

const OnTheBlank* NotKnown(const std::vector<OnTheBlank>& things, double clamp_m) {
  for (const OnTheBlank& thing : things) {
    if (thing.center_m && *thing.center_m + thing.length_m / 2 <= clamp_m) continue;
    if (!thing.center_m || !thing.mass_kg) return &thing;
  }
  return nullptr;
}

LoadedBeam LoadBeam(BlankBeam blank, const std::vector<OnTheBlank>& things, double clamp_m, double ring_m) {
  ReachRing(ring_m, blank);
  LoadedBeam loaded{std::move(blank), {}, {}};
  const double end = loaded.blank.beam.length();
  for (std::size_t i = 0; i < things.size(); ++i) {
    const OnTheBlank& thing = things[i];
    if (!thing.center_m || !thing.mass_kg || !(thing.mass_kg->value() > 0)) continue;
    const double from = *thing.center_m - clamp_m - thing.length_m / 2, to = from + thing.length_m;
    if (to <= 0) continue;
    const double ahead = to - std::max(0.0, from), middle = to - ahead / 2;
    const double mass = thing.length_m > 0 ? thing.mass_kg->value() * ahead / thing.length_m : thing.mass_kg->value();
    const Uncertain change = *thing.mass_kg / thing.mass_kg->value() - Uncertain(1);
    const auto add = [&](double s, double kg) {
      loaded.blank.beam.masses.push_back({std::clamp(s, 0.0, end), kg});
      loaded.thing_of_mass.push_back(static_cast<int>(i));
      loaded.mass_change.push_back(change);
    };
    if (ahead < kShort * end) {
      add(middle, mass);
      continue;
    }
    // Two halves at Gauss' points of its length: mass, moment and second moment are those of an even spread.
    const double apart = ahead / (2 * std::sqrt(3.0));
    add(middle - apart, mass / 2);
    add(middle + apart, mass / 2);
  }
  return loaded;
}

}  // namespace withy::bending
