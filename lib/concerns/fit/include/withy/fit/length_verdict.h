// Does the rod come out at the length, as well as bore and blank are known?
//
// First order, with the exact derivatives of the contact (JCGM 100:2008, 5.1.2): of the two sides of a kink the steeper
// one counts, bore and blank act through their difference alone, and the cut is exact. What first order cannot see, a
// jump beside a point that looks smooth, is looked for exactly over the whole band.
#ifndef WITHY_FIT_LENGTH_VERDICT_H_
#define WITHY_FIT_LENGTH_VERDICT_H_

#include "withy/numerics/insertion.h"

namespace withy {

// Standard uncertainties (k = 1) in metres, >= 0, each common to the whole profile.
struct FitAccuracy {
  double blank_diameter_m = 0;
  double bore_diameter_m = 0;
  double blank_length_m = 0;
};

// How far the length at one cut can be trusted.
struct LengthBand {
  double length_m = 0;
  Insertion::Sensitivity per_diameter;            // d length / d blank diameter, towards thicker and thinner, m per m
  double u_m = 0;                                 // standard uncertainty of the length, first order
  double with_thinner_m = 0, with_thicker_m = 0;  // exact lengths with blank and bore 2 u off, either way
  // The length falls by more than kJump_m at once somewhere within these 2 u: a verdict of kMeets is not to be trusted.
  bool jump = false;
};
inline constexpr double kJump_m = 1e-4;

// Requires: 0 <= cut_m < the shaft's length.
LengthBand LengthBandAt(const Insertion& insertion, double cut_m, const FitAccuracy& accuracy);

enum class LengthVerdict { kMeets, kMisses, kCannotTell };

// Against a target and what it may be off by, >= 0. Meets where the whole band of 2 u is within it, misses where no
// part of it is. The jump is left to the caller.
LengthVerdict JudgeLength(const LengthBand& band, double target_m, double tolerance_m);

}  // namespace withy

#endif  // WITHY_FIT_LENGTH_VERDICT_H_
