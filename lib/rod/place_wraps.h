// Where a wrap lies that has no place of its own but follows from what it is on. Each returns its butt-side edge.
#ifndef WITHY_ROD_PLACE_WRAPS_H_
#define WITHY_ROD_PLACE_WRAPS_H_

#include "withy/rod/rod.h"

namespace withy {
namespace v1 {
class Wrap;  // as written
}

// From the bare foot beside the ring outwards; with length and margin both written, from the margin inwards.
Along PlaceOnGuide(const v1::Wrap& written, const Guide& guide, const Wrap& wrap);
// Against the open end of the section that would split.
Along PlaceOnJoint(const Joint& joint, const Wrap& wrap);
// On the blank, against the butt-side end of the tip-top's tube.
Along PlaceOnTip(const Rod& rod, const Wrap& wrap);
// A ramp against the face it runs up to; anything else from the part's butt-side face, over its whole length where none
// is written.
Along PlaceOnPart(const Part& part, Wrap& wrap);

}  // namespace withy

#endif  // WITHY_ROD_PLACE_WRAPS_H_
