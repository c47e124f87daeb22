// Wraps: how many turns, how much thread, how much do thread and finish weigh?
//
// A wrap is taken as close wound on the blank's taper: one layer of n turns of pitch p on a cone is n turns on its mean
// centre-line diameter (helix: sqrt((pi D)^2 + p^2) per turn; the error against the cone's own spiral is below 1e-5 for any
// blank). A foot or another wrap under it is not counted, which is listed as an assumption: the wrap takes a little more
// thread.
#ifndef WITHY_WRAPS_WRAPS_H_
#define WITHY_WRAPS_WRAPS_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/guides/guides.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"

namespace withy {

// Length of thread of diameter `thread_m` close wound in `layers` layers, square packing, over `length_m` of a blank from
// `diameter0_m` to `diameter1_m`; metres, turns of all layers. Requires finite values >= 0, thread_m > 0.
struct Winding {
  double turns = 0;
  double thread_length_m = 0;
};
Winding Wind(double length_m, double diameter0_m, double diameter1_m, double thread_m, int layers);

// One wrap; all values unset = cannot be told.
struct WrapAnswer {
  std::optional<double> blank_start_m, blank_end_m;  // blank diameters under its edges
  std::optional<double> turns;
  std::optional<double> thread_length_m;
  std::optional<double> thread_kg;
  std::optional<double> finish_kg;   // all coats, dry, as a film on the outside; 0 where it has none
  std::vector<double> coats_kg;      // of that, by finish, as Wrap::coats; empty where finish_kg is unset
  // Of thread and finish together. Above 0 only where it is not known what the wrap lies on: then both masses are the mean of
  // what they are on the blank's smallest and largest diameter, and this is half of the difference.
  double mass_plus_minus_kg = 0;
};

struct ThreadUse {
  std::string thread;
  double length_m = 0;
  bool complete = true;   // false: some wrap's length cannot be told
};

struct WrapsAnswers {
  std::vector<WrapAnswer> wraps;    // as Rod::wraps
  std::vector<ThreadUse> threads;   // as Rod::threads, those in use
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

WrapsAnswers ComputeWraps(const Rod& rod);

void CheckWraps(const Rod& rod, const GuidesAnswers& guides, const WrapsAnswers& answers,
                std::vector<Finding>& findings);
std::vector<Code> WrapsCodes();
std::vector<Figure> WrapsFigures();

}  // namespace withy

#endif  // WITHY_WRAPS_WRAPS_H_
