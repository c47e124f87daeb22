#include <cmath>
#include <numbers>

#include "bond.h"
#include "withy/numerics/circle_packing.h"

namespace withy {
namespace {

double Positive(const Maybe<Length>& length) { return length ? length->value.meters() : 0; }

}  // namespace

Potting PottingOf(const Part& part, double count) {
  Potting potting;
  const Weights& weights = *part.weights;
  const double across = Positive(weights.unit_diameter), unit = Positive(weights.unit_length);
  const double bore = part.cavity ? Positive(part.cavity->diameter) : 0;
  if (!(across > 0) || !(unit > 0) || !(bore > 0) || !part.cavity->own_at) {
    potting.measure = "measure the counterweights and the cavity they go in";
    return potting;
  }
  const int abreast = SideBySide(bore, across, 1e-9);
  if (abreast == 0) {
    potting.measure = "take counterweights that go into the cavity";
    return potting;
  }
  constexpr double kQuarterPi = std::numbers::pi / 4;
  const double full = std::floor(count / abreast), rest = count - full * abreast;
  potting.length_m = std::ceil(count / abreast) * unit + (weights.cover ? Positive(weights.cover) : kCover_m);
  // The cavity filled up to the cover, less the units in their layers: volumes and their first moments.
  const double filled = kQuarterPi * bore * bore * potting.length_m, one = kQuarterPi * across * across * unit;
  const double volume = filled - count * one;
  const double moment =
      filled * potting.length_m / 2 - one * unit * (abreast * full * full / 2 + rest * (full + 0.5));
  if (count <= 0 || !(volume > 0)) return potting;
  potting.volume_m3 = volume;
  potting.center_m = part.cavity->own_at->value.meters() + moment / volume;
  return potting;
}

}  // namespace withy
