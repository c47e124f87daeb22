#include "withy/balance/counterweights.h"

#include <algorithm>
#include <cmath>

#include "withy/numerics/circle_packing.h"

namespace withy {
namespace {

constexpr double kTieM = 1e-9;
constexpr double kTieNm = 1e-12;

double AreaOfDisc(double diameter_m) { return AreaOf(Shape::kTube, diameter_m, 0); }

int FitIn(const CounterweightUnit& unit, const CounterweightRoom& room, int side_by_side) {
  const double layers = std::floor((room.length_m - room.cover_m + kTieM) / unit.length_m);
  return static_cast<int>(std::clamp<double>(layers * side_by_side, 0, Stack::kMostUnits));
}

}  // namespace

Stack::Stack(const CounterweightUnit& unit, const CounterweightRoom& room)
    : unit_(unit),
      room_(room),
      side_by_side_(SideBySide(room.diameter_m, unit.diameter_m, kTieM)),
      fit_(FitIn(unit, room, side_by_side_)) {}

int Stack::Layers(int n) const {
  const int abreast = std::max(side_by_side_, 1);
  return n / abreast + (n % abreast > 0 ? 1 : 0);
}

double Stack::EndOf(int n) const { return room_.start_m + Layers(n) * unit_.length_m; }

// Full layers are one even column, what is left over lies in the layer after it.
MassProperties Stack::Spread(int n, double one_kg) const {
  const int abreast = std::max(side_by_side_, 1);
  const int full = n / abreast, rest = n % abreast;
  const double edge = full * unit_.length_m;
  MassProperties spread = UniformMass(full * abreast * one_kg, 0, edge);
  spread += UniformMass(rest * one_kg, edge, edge + unit_.length_m);
  return spread.Shifted(room_.start_m);
}

MassProperties Stack::Units(int n) const { return Spread(n, unit_.mass_kg); }

double Stack::PottingVolume(int n) const {
  if (n == 0) return 0;
  return AreaOfDisc(room_.diameter_m) * (Layers(n) * unit_.length_m + room_.cover_m) -
         n * AreaOfDisc(unit_.diameter_m) * unit_.length_m;
}

MassProperties Stack::Potting(int n) const {
  if (n == 0) return {};
  const double end = EndOf(n) + room_.cover_m;
  MassProperties potting =
      UniformMass(room_.potting_kg_m3 * AreaOfDisc(room_.diameter_m) * (end - room_.start_m), room_.start_m, end);
  potting += Spread(n, -room_.potting_kg_m3 * AreaOfDisc(unit_.diameter_m) * unit_.length_m);
  return potting;
}

CounterweightCount CountFor(const Stack& stack, const MassProperties& without, double hold_m, int least) {
  const auto taped_in = [&](int n) {
    MassProperties load = without;
    load += stack.Units(n);
    return load.StaticMomentAbout(hold_m);
  };
  const auto potted = [&](int n) {
    MassProperties load = without;
    load += stack.Units(n);
    load += stack.Potting(n);
    return load.StaticMomentAbout(hold_m);
  };
  // Not monotone: a light unit may weigh less than the potting that it displaces.
  const int most = std::max(stack.fit(), least);
  const auto largest = [&](const auto& moment) -> std::optional<int> {
    for (int n = most; n >= least; --n) {
      if (moment(n) >= -kTieNm) return n;
    }
    return std::nullopt;
  };
  CounterweightCount count;
  count.moment_without_n_m = without.StaticMomentAbout(hold_m);
  const bool butt_heavy = (least > 0 ? potted(least) : count.moment_without_n_m) < -kTieNm;
  if (butt_heavy) return count;
  count.n = largest(potted);
  count.n_if_potting_ignored = largest(taped_in);
  count.status = most == 0        ? CounterweightStatus::kNoRoom
                 : *count.n == most ? CounterweightStatus::kRoomLimited
                                    : CounterweightStatus::kBalanced;
  count.moment_before_potting_n_m = taped_in(*count.n);
  count.moment_after_n_m = potted(*count.n);
  if (*count.n < most) count.moment_with_one_more_n_m = potted(*count.n + 1);
  return count;
}

}  // namespace withy
