// From handle, blank and dry fits to the law of the cut.
#ifndef WITHY_ROD_MAKE_REST_LAW_H_
#define WITHY_ROD_MAKE_REST_LAW_H_

#include "resolver.h"

namespace withy {

// Of a bore from a drawing or a catalogue that names no uncertainty (common practice, no source).
inline constexpr double kDrawnBorePlusMinusM = 0.0001;

// Fills in Rod::rest_law where the blank comes to rest in a one-piece handle, before any place is known. Needs the dry
// fits. Left unset: the handle goes on from the tip or gives way, the blank's length is not known, or neither bore and
// taper nor a dry fit tell anything.
void MakeLawOfHandle(Resolver& r);

// Likewise of a blank that runs through, once it is known where its butt face lies.
void MakeLawOfButt(Resolver& r);

}  // namespace withy

#endif  // WITHY_ROD_MAKE_REST_LAW_H_
