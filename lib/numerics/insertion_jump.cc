// Jumps of the length while the shaft gets thicker: a pair of pieces that did not interfere begins to.
#include <algorithm>
#include <vector>

#include "insertion_pairs.h"
#include "withy/numerics/insertion.h"

namespace withy {

double Insertion::LargestJump(double cut, double from, double to) const {
  struct Onset {
    double by = 0, reach = 0;
  };
  std::vector<Onset> onsets;
  const double from_reach = std::max(ReachAt(cut, from, Count::kInterfering), stop_ - cut);
  ForEachPair(cut, to, Count::kInterfering, from_reach, [&](const ContactPair& pair) {
    const double by = to - pair.Worst();
    if (by >= from - kDiameterTie) onsets.push_back({by, pair.TouchingReach()});
  });
  std::sort(onsets.begin(), onsets.end(), [](const Onset& a, const Onset& b) { return a.by < b.by; });
  // The reach never decreases with `by`: an onset behind what has been reached before it makes no jump.
  double reached = from_reach, largest = 0;
  for (const Onset& onset : onsets) {
    if (onset.reach <= reached + kPositionTie) continue;
    const double before = std::max(ReachAt(cut, onset.by, Count::kInterfering), stop_ - cut);
    reached = std::max(ReachAt(cut, onset.by, Count::kTouching), before);
    largest = std::max(largest, reached - before);
  }
  return largest > kPositionTie ? largest : 0;
}

}  // namespace withy
