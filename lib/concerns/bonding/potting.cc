#include <algorithm>

#include "bond.h"
#include "withy/bonding/counterweight_stack.h"
#include "withy/rod/weights_cover.h"

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
  const CounterweightStack stack(
      {.mass_kg = 0, .diameter_m = across, .length_m = unit},
      {.start_m = part.cavity->own_at->value.meters(),
       .diameter_m = bore,
       .cover_m = CoverOf(weights).meters(),
       .potting_kg_m3 = 1});
  if (stack.side_by_side() == 0) {
    potting.measure = "take counterweights that go into the cavity";
    return potting;
  }
  const int n = static_cast<int>(std::clamp<double>(count, 0, CounterweightStack::kMostUnits));
  potting.length_m = stack.Layers(n) * unit + stack.room().cover_m;
  if (!(stack.PottingVolume(n) > 0)) return potting;
  potting.volume_m3 = stack.PottingVolume(n);
  potting.center_m = stack.Potting(n).Balance();
  return potting;
}

}  // namespace withy
