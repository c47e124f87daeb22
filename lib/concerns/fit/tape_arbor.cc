#include "withy/fit/tape_arbor.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace withy {
namespace {

constexpr double kTie_m = Insertion::kPositionTie;

// Arc of r = r0 + pitch theta from r = 0 to r, times pitch: the integral of sqrt(r^2 + pitch^2) dr.
double ArcTimesPitch(double r, double pitch) {
  return (r * std::hypot(r, pitch) + pitch * pitch * std::asinh(r / pitch)) / 2;
}

}  // namespace

TapeArbor TapeArborOf(const TapeArborSetup& setup) {
  TapeArbor arbor;
  const double room = setup.bore_m - setup.blank_m - 2 * setup.gap_m;
  if (room > 0 && setup.tape_m > 0) {
    arbor.turns = static_cast<int>(std::min<double>(kMostTurns, std::floor(room / (2 * setup.tape_m) + 1e-9)));
  }
  arbor.built_m = setup.blank_m + 2 * arbor.turns * setup.tape_m;
  arbor.gap_left_m = (setup.bore_m - arbor.built_m) / 2;
  arbor.gap_kept = arbor.gap_left_m >= setup.gap_m - Insertion::kDiameterTie;
  if (arbor.turns == 0) return arbor;
  const double pitch = setup.tape_m / (2 * std::numbers::pi);
  arbor.tape_length_m = (ArcTimesPitch(arbor.built_m / 2, pitch) - ArcTimesPitch(setup.blank_m / 2, pitch)) / pitch;
  arbor.concentric_m = std::numbers::pi * arbor.turns * (setup.blank_m + arbor.turns * setup.tape_m);
  return arbor;
}

std::optional<StationInBore> StationAt(const Insertion& insertion, double cut_m, double z_m) {
  const double rest = insertion.RestAt(cut_m);
  const double end = std::min(insertion.bore_length(), rest + insertion.shaft_length() - cut_m);
  if (z_m < rest - kTie_m || z_m > end + kTie_m) return std::nullopt;
  const double s = cut_m + z_m - rest;
  // At a jump the side towards the mouth; at the mouth there is only the other one.
  const auto side = z_m < insertion.bore_length() - kTie_m ? Profile::Limit::kRight : Profile::Limit::kLeft;
  return StationInBore{s, insertion.shaft().At(s, side), insertion.bore().At(z_m, side)};
}

}  // namespace withy
