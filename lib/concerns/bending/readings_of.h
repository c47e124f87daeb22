// The readings of a rod's bare blank that say something of its wall, modulus or density.
#ifndef WITHY_BENDING_READINGS_OF_H_
#define WITHY_BENDING_READINGS_OF_H_

#include <vector>

#include "bench_reading_model.h"

namespace withy::bending {

// Expanded uncertainty of a reading that says none: common practice, no source. A steel rule against a tip at rest; a
// blank on an edge; a stopwatch started and stopped by hand.
inline constexpr double kUnstatedDropM = 0.002;
inline constexpr double kUnstatedBalanceM = 0.001;
inline constexpr double kUnstatedTimeS = 0.3;

struct ReadingsFound {
  std::vector<ReadingModel> usable;
  std::vector<IdentifiedReading> unusable;  // each says why
  bool unstated = false;                    // some say no uncertainty
};

// `blank` says where sections lie. Masses and balance points that were measured: of each section, else of the whole
// blank.
ReadingsFound ReadingsOf(const Rod& rod, const TrialBlank& blank);

}  // namespace withy::bending

#endif  // WITHY_BENDING_READINGS_OF_H_
