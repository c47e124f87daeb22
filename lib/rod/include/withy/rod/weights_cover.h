// How thick the potting over the foremost counterweight is: as the design says, else 3 mm (common practice, no source).
// One default for all who count what a cavity holds.
#ifndef WITHY_ROD_WEIGHTS_COVER_H_
#define WITHY_ROD_WEIGHTS_COVER_H_

#include "withy/rod/handle.h"

namespace withy {

inline constexpr Length kAssumedCover = Length::Mm(3);

// Unset or negative = not told.
inline bool TellsCover(const Weights& weights) { return weights.cover && weights.cover->value.meters() >= 0; }
inline Length CoverOf(const Weights& weights) { return TellsCover(weights) ? weights.cover->value : kAssumedCover; }

}  // namespace withy

#endif  // WITHY_ROD_WEIGHTS_COVER_H_
