#include "beyond.h"

#include <algorithm>
#include <cmath>

namespace withy::bending {
namespace {

std::size_t NearestArcEnd(const Elastica& shape, double s_m) {
  std::size_t nearest = 0;
  for (std::size_t i = 0; i + 1 < shape.points.size(); i += Elastica::kArc) {
    if (std::abs(shape.points[i].s - s_m) < std::abs(shape.points[nearest].s - s_m)) nearest = i;
  }
  return nearest;
}

}  // namespace

Beyond BeyondPoint(const LoadedBeam& rod, const Elastica& shape, double s_m) {
  const std::size_t at = NearestArcEnd(shape, s_m);
  const BeamPoint clamp = shape.points[at];
  const BlankBeam& whole = rod.blank;
  Beyond beyond;
  beyond.shape = shape;
  beyond.shape.points.erase(beyond.shape.points.begin(), beyond.shape.points.begin() + static_cast<std::ptrdiff_t>(at));
  for (BeamPoint& point : beyond.shape.points) {
    point.s -= clamp.s;
    point.x -= clamp.x;
    point.y -= clamp.y;
  }
  const double rounding = 1e-12 * whole.beam.length();
  while (whole.beam.pieces[beyond.first_piece].s1 <= clamp.s + rounding) ++beyond.first_piece;
  const auto from = static_cast<std::ptrdiff_t>(beyond.first_piece);
  BlankBeam& blank = beyond.rod.blank;
  blank.beam.pieces.assign(whole.beam.pieces.begin() + from, whole.beam.pieces.end());
  blank.stiffness_change.assign(whole.stiffness_change.begin() + from, whole.stiffness_change.end());
  blank.mass_change.assign(whole.mass_change.begin() + from, whole.mass_change.end());
  BeamPiece& first = blank.beam.pieces.front();
  first = first.From(std::max(first.s0, clamp.s));
  first.s0 = clamp.s;
  for (BeamPiece& piece : blank.beam.pieces) {
    piece.s0 -= clamp.s;
    piece.s1 -= clamp.s;
  }
  for (std::size_t i = 0; i < whole.beam.masses.size(); ++i) {
    const BeamMass& mass = whole.beam.masses[i];
    if (mass.s <= clamp.s) continue;
    blank.beam.masses.push_back({mass.s - clamp.s, mass.mass_kg});
    beyond.rod.mass_change.push_back(rod.mass_change[i]);
    beyond.rod.thing_of_mass.push_back(rod.thing_of_mass[i]);
  }
  return beyond;
}

}  // namespace withy::bending
