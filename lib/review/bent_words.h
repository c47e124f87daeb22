// Words for a bent rod, wherever it is spoken of.
#ifndef WITHY_REVIEW_BENT_WORDS_H_
#define WITHY_REVIEW_BENT_WORDS_H_

#include <string>

namespace withy {

inline constexpr double kLevelDeg = 0.5;  // what would be printed as 0

// "45 deg", without sign.
std::string DegreesText(double deg);

// "45 deg above the horizontal", "level"; beyond a right angle "pointing back, 20 deg past straight down", as it is seen.
std::string DirectionText(double deg);

// "tip points 33 deg below the horizontal", "tip points back, 20 deg past straight down".
std::string TipDirectionText(double deg);

// "450 g (4.41 N) straight down", as a weight only where it pulls as one; "4.41 N, 20 deg below the horizontal".
// `where` follows what pulls: " at the tip".
std::string PullText(double load_n, double direction_deg, const std::string& where);

// What of the load the figures are of, where it is not all of it; empty where it is. `state` is that of the report.
std::string FoldedText(const std::string& state, double reached);

}  // namespace withy

#endif  // WITHY_REVIEW_BENT_WORDS_H_
