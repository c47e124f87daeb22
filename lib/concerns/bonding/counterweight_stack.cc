#include "withy/bonding/counterweight_stack.h"

#include <algorithm>
#include <cmath>

#include "withy/numerics/circle_packing.h"

namespace withy {
namespace {

constexpr double kTieM = 1e-9;

double AreaOfDisc(double diameter_m) { return AreaOf(Shape::kTube, diameter_m, 0); }

int FitIn(const CounterweightUnit& unit, const CounterweightRoom& room, int side_by_side) {
  constexpr double kMost = CounterweightStack::kMostUnits;
  const double layers = std::clamp(std::floor((room.length_m - room.cover_m + kTieM) / unit.length_m), 0.0, kMost);
  return static_cast<int>(std::min(layers * side_by_side, kMost));
}

}  // namespace

CounterweightStack::CounterweightStack(const CounterweightUnit& unit, const CounterweightRoom& room)
    : unit_(unit),
      room_(room),
      side_by_side_(SideBySide(room.diameter_m, unit.diameter_m, kTieM)),
      fit_(FitIn(unit, room, side_by_side_)) {}

int CounterweightStack::Layers(int n) const {
  const int abreast = std::max(side_by_side_, 1);
  return n / abreast + (n % abreast > 0 ? 1 : 0);
}

double CounterweightStack::EndOf(int n) const { return room_.start_m + Layers(n) * unit_.length_m; }

// Full layers are one even column, what is left over lies in the layer after it.
MassProperties CounterweightStack::Spread(int n, double one_kg) const {
  const int abreast = std::max(side_by_side_, 1);
  const int full = n / abreast, rest = n % abreast;
  const double edge = full * unit_.length_m;
  MassProperties spread = UniformMass(full * abreast * one_kg, 0, edge);
  spread += UniformMass(rest * one_kg, edge, edge + unit_.length_m);
  return spread.Shifted(room_.start_m);
}

MassProperties CounterweightStack::Units(int n) const { return Spread(n, unit_.mass_kg); }

double CounterweightStack::PottingVolume(int n) const {
  if (n == 0) return 0;
  return AreaOfDisc(room_.diameter_m) * (Layers(n) * unit_.length_m + room_.cover_m) -
         n * AreaOfDisc(unit_.diameter_m) * unit_.length_m;
}

MassProperties CounterweightStack::Potting(int n) const {
  if (n == 0) return {};
  const double end = EndOf(n) + room_.cover_m;
  MassProperties potting =
      UniformMass(room_.potting_kg_m3 * AreaOfDisc(room_.diameter_m) * (end - room_.start_m), room_.start_m, end);
  potting += Spread(n, -room_.potting_kg_m3 * AreaOfDisc(unit_.diameter_m) * unit_.length_m);
  return potting;
}

}  // namespace withy
