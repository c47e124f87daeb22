// Jumps of the length while the shaft gets thicker: a pair of pieces that did not interfere begins to.
#include <algorithm>
#include <vector>

#include "insertion_pairs.h"
#include "withy/numerics/insertion.h"

namespace withy {

double Insertion::LargestJump(double cut, double from, double to, double least) const {
  struct Onset {
    double by = 0, reach = 0;
  };
  std::vector<Onset> onsets;
  const double from_reach = std::max(ReachAt(cut, from, Count::kInterfering, stop_ - cut), stop_ - cut);
  ForEachPair(cut, to, Count::kInterfering, from_reach, [&](const ContactPair& pair) {
    const Onset onset{to - pair.Worst(), pair.TouchingReach()};
    if (onset.by >= from - kDiameterTie && onset.reach - from_reach > least) onsets.push_back(onset);
  });
  std::sort(onsets.begin(), onsets.end(), [](const Onset& a, const Onset& b) { return a.by < b.by; });
  // The reach never decreases with `by`, so a jump is no larger than from what has been reached before the onset.
  double reached = from_reach, largest = 0;
  for (const Onset& onset : onsets) {
    if (onset.reach - reached <= std::max(largest, least)) continue;
    const double before = std::max(reached, ReachAt(cut, onset.by, Count::kInterfering, reached));
    reached = std::max(before, ReachAt(cut, onset.by, Count::kTouching, before));
    largest = std::max(largest, reached - before);
  }
  return largest > least ? largest : 0;
}

}  // namespace withy
