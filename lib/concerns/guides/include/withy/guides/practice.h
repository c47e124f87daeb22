// What is usual: where builders of one technique put the butt guide, how many guides they take, and which rings.
//
//   Practice practice = PracticeFor("fly");
//   practice.butt_guide_from_butt->least          // 0.7112 (28 in)
//   practice.guides->For(2.7432)                  // 9 to 11 guides on a rod of nine feet
//   practice.butt_guide_from_butt->source         // "quoted by builders of fly rods: 28 to 32 in"
//
// Data, not physics: no figure follows from them but the bounds of a search and what `check` advises. A club or a shop
// that does otherwise says so in a plugin (`practices` in its table); its figures stand in place of these, one by one,
// and carry its name. Side of reel and rings: see Order::side.
#ifndef WITHY_GUIDES_PRACTICE_H_
#define WITHY_GUIDES_PRACTICE_H_

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace withy {

inline constexpr char kCommonPractice[] = "common practice, no source";

// From `least` to `most`, both included. Lengths in metres.
struct UsualRange {
  double least = 0, most = 0;
  std::string source;  // kCommonPractice, or who says so
  std::string plugin;  // whose rule it is; empty = withy's own
  bool Holds(double value) const { return value >= least && value <= most; }
};

// How many guides, the tip-top not counted: from per_foot x feet + least to per_foot x feet + most, each to the nearest
// whole number.
struct UsualCount {
  double per_foot = 0;  // for each 0.3048 m of the finished rod; 0 = the same on every rod
  double least = 0, most = 0;
  std::string source, plugin;  // as of UsualRange
  UsualRange For(double rod_m) const;
};

// Unset = there is no usual rule, and nothing is judged by it.
struct Practice {
  std::string technique;                                // a word of intent.technique
  std::optional<UsualRange> butt_guide_from_reel = {};  // middle of the reel's foot to the ring's centre
  std::optional<UsualRange> butt_guide_from_butt = {};  // butt end of the finished rod to the ring's centre
  std::optional<UsualRange> butt_ring = {};             // outer diameter of the butt guide's ring: "ring size"
  std::optional<UsualRange> running_ring = {};          // likewise, of the guide next to the tip-top
  std::optional<UsualCount> guides = {};
};

// withy's own, one for each technique that has its own rules.
const std::vector<Practice>& UsualPractices();

// For that technique; of one without rules of its own those of the technique most like it (trolling: conventional), and
// of an unknown one an empty Practice of that name. `others`: those of plugins; a figure that one of them gives for the
// technique itself stands in place of the usual one, the first of several; the butt guide's place by either origin
// replaces both.
Practice PracticeFor(std::string_view technique, const std::vector<Practice>& others = {});

// Where the ring of the butt guide usually stands, metres from the butt end of the finished rod: the part that both
// rules have in common, or the one that there is. Unset where neither is, the reel's place is needed and not known, or
// they have nothing in common.
std::optional<UsualRange> ButtGuideBounds(const Practice& practice, std::optional<double> reel_foot_m);

}  // namespace withy

#endif  // WITHY_GUIDES_PRACTICE_H_
