// From the design as written to the rod it means.
//
// Rules: measured beats planned beats catalogue beats assumed; the log beats the blank; a correction cancels its entry;
// of a planned and a logged cut of one end the larger holds, and of a butt that is glued in the logged one; station places
// stay as supplied, a cut only moves the ends. The blank's place in the handle: as written, else by a dry fit since the last
// cut, else by the law of the cut, else against the butt cap.
// Anything that cannot be worked out is unset with an `Unknown` or a finding, never guessed.
#ifndef WITHY_ROD_RESOLVE_H_
#define WITHY_ROD_RESOLVE_H_

#include "withy/document/document.h"
#include "withy/rod/rod.h"

namespace withy {

// Never throws, ends for any design in time that grows linearly with its size (n log n in the number of its parts).
Rod Resolve(const Document& document);

}  // namespace withy

#endif  // WITHY_ROD_RESOLVE_H_
