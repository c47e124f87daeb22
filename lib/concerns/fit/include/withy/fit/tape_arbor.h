// An arbor built of turns of tape between blank and bore.
//
//   TapeArborOf({.blank_m = 0.012, .bore_m = 0.016, .tape_m = 0.0001, .gap_m = 0.0001}).turns  // 19
#ifndef WITHY_FIT_TAPE_ARBOR_H_
#define WITHY_FIT_TAPE_ARBOR_H_

#include <optional>

#include "withy/numerics/insertion.h"

namespace withy {

// Metres. The number of whole turns, at most kMostTurns, that leave the gap on either side.
struct TapeArborSetup {
  double blank_m = 0;  // diameter under it, > 0
  double bore_m = 0;   // diameter around it
  double tape_m = 0;   // thickness of the tape, > 0
  double gap_m = 0;    // radial gap to leave for adhesive, >= 0
};
inline constexpr int kMostTurns = 100000;

struct TapeArbor {
  int turns = 0;
  double built_m = 0;     // diameter over the tape
  double gap_left_m = 0;  // radial; negative where not even the bare blank goes in
  bool gap_kept = false;
  // Length of the tape's middle line: the arc of the spiral r = blank/2 + tape theta/(2 pi) over all turns, closed form
  // (arc of an Archimedean spiral), and the same turns as circles: pi turns (blank + turns tape).
  double tape_length_m = 0;
  double concentric_m = 0;
};

TapeArbor TapeArborOf(const TapeArborSetup& setup);

// Where z of the bore lies on a shaft that has come to rest, and the diameters there; unset where there is no shaft in
// the bore. Requires: 0 <= cut_m < the shaft's length.
struct StationInBore {
  double shaft_s_m = 0;  // on the shaft as supplied
  double shaft_m = 0, bore_m = 0;
};
std::optional<StationInBore> StationAt(const Insertion& insertion, double cut_m, double z_m);

}  // namespace withy

#endif  // WITHY_FIT_TAPE_ARBOR_H_
