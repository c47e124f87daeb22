#include "withy/fit/length_verdict.h"

#include <algorithm>
#include <cmath>

namespace withy {
namespace {

constexpr double kTie_m = Insertion::kPositionTie;

}  // namespace

LengthBand LengthBandAt(const Insertion& insertion, double cut_m, const FitAccuracy& accuracy) {
  LengthBand band;
  band.length_m = insertion.LengthAt(cut_m);
  band.per_diameter = insertion.SensitivityAt(cut_m);
  const double u_diameter = std::hypot(accuracy.blank_diameter_m, accuracy.bore_diameter_m);
  const double steeper = std::max(band.per_diameter.thicker, band.per_diameter.thinner);
  band.u_m = std::hypot(steeper * u_diameter, accuracy.blank_length_m);
  band.with_thinner_m = insertion.Thicker(-2 * u_diameter).LengthAt(cut_m);
  band.with_thicker_m = insertion.Thicker(2 * u_diameter).LengthAt(cut_m);
  band.jump = insertion.LargestJump(cut_m, -2 * u_diameter, 2 * u_diameter, kJump_m) > 0;
  return band;
}

LengthVerdict JudgeLength(const LengthBand& band, double target_m, double tolerance_m) {
  const double off = std::abs(band.length_m - target_m);
  if (off + 2 * band.u_m <= tolerance_m + kTie_m) return LengthVerdict::kMeets;
  if (off - 2 * band.u_m > tolerance_m + kTie_m) return LengthVerdict::kMisses;
  return LengthVerdict::kCannotTell;
}

}  // namespace withy
