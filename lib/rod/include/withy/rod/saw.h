// What the saw takes where the shop does not say (common practice, no source): the kerf of a fine blade, the most at one cut,
// and the last cut of a butt. One default for all who plan or judge cuts.
#ifndef WITHY_ROD_SAW_H_
#define WITHY_ROD_SAW_H_

#include "withy/units/quantity.h"

namespace withy {

inline constexpr Length kUsualKerf = Length::Mm(1);
inline constexpr Length kUsualLargestCut = Length::Inches(3);
inline constexpr Length kUsualLastCut = Length::Inches(0.25);

}  // namespace withy

#endif  // WITHY_ROD_SAW_H_
