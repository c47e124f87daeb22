// Two measurements of one thing: the later one is used, and where they differ by more than both allow, it is said.
#ifndef WITHY_ROD_MEASUREMENTS_H_
#define WITHY_ROD_MEASUREMENTS_H_

#include "resolver.h"

namespace withy {

// What a reading that says no uncertainty is taken to allow, for this comparison only. Common practice, no source:
// kitchen scales, a steel rule, a calliper.
inline constexpr double kUnstatedMassKg = 0.0002;
inline constexpr double kUnstatedLengthM = 0.001;
inline constexpr double kUnstatedDiameterM = 0.00005;

// Only where both are measured. `a` is the earlier one.
void CompareMasses(Resolver& r, const Known<Mass>& a, const Known<Mass>& b);
void CompareLengths(Resolver& r, const Known<Length>& a, const Known<Length>& b);
// The earlier table's measured rows against those of the later one: one finding, at the row that differs most.
void CompareTapers(Resolver& r, const TaperTable& before, const TaperTable& after);

}  // namespace withy

#endif  // WITHY_ROD_MEASUREMENTS_H_
