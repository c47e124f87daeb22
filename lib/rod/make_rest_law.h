// From handle, blank and dry fits to the law of the cut.
#ifndef WITHY_ROD_MAKE_REST_LAW_H_
#define WITHY_ROD_MAKE_REST_LAW_H_

#include "resolver.h"

namespace withy {

// What the design leaves open about a contact. Common practice, no source, but for the first: bond lines of 0.05 to
// 0.13 mm are recommended for rod epoxy.
inline constexpr double kGlueClearanceM = 0.0001;       // 0.05 mm all round
inline constexpr double kDrawnBorePlusMinusM = 0.0001;  // a bore from a drawing or a catalogue

// Fills in Rod::rest_law where the blank comes to rest in a one-piece handle, before any place is known. Needs the dry
// fits. Left unset: the handle goes on from the tip or gives way, the blank's length is not known, or neither bore and
// taper nor a dry fit tell anything.
void MakeLawOfHandle(Resolver& r);

// Likewise of a blank that runs through, once it is known where its butt face lies.
void MakeLawOfButt(Resolver& r);

}  // namespace withy

#endif  // WITHY_ROD_MAKE_REST_LAW_H_
