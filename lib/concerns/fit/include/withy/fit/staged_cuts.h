// A cut in stages, with a dry fit between them: the fewest saw cuts that remove a total, the last one small.
//
//   StagedCuts(0.152, {.kerf_m = 0.001, .largest_m = 0.0762, .last_m = 0.00635})  // three: 72.8, 72.8, 6.4 mm
//
// Each stage is measured from the old face to the new one; the finished edge is marked and the kerf, on the waste side,
// is part of what the stage removes. Own derivation.
#ifndef WITHY_FIT_STAGED_CUTS_H_
#define WITHY_FIT_STAGED_CUTS_H_

#include <optional>
#include <vector>

namespace withy {

// Metres, 0 <= kerf <= last <= largest.
struct CutStages {
  double kerf_m = 0;     // width of the saw's cut: no stage can remove less
  double largest_m = 0;  // the most that one stage may remove
  double last_m = 0;     // the most that the last stage may remove
};

// What each stage removes; they add up to the total. Empty where nothing is to come off. Unset where it cannot be done:
// less is to come off than so many kerfs take, or it would take more than kMostStages.
inline constexpr int kMostStages = 10000;
std::optional<std::vector<double>> StagedCuts(double total_m, const CutStages& stages);

}  // namespace withy

#endif  // WITHY_FIT_STAGED_CUTS_H_
