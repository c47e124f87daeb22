// Adhesive for the rod as it will be after the cuts to come.
#ifndef WITHY_REVIEW_AFTER_CUTS_H_
#define WITHY_REVIEW_AFTER_CUTS_H_

#include "answers.h"
#include "withy/document/document.h"

namespace withy {

// Where the cut plan takes more off the butt than log and design do, every other figure is of a blank that nobody will
// glue. Fills `volume_after_cuts_ml` and `mix_after_cuts_ml` of `report` with those of the design that has the whole
// cut in it, resolved anew; leaves them unset where no cut is to come or the volume cannot be told. `rod` is that of
// `document`.
void ReportAfterCuts(const Document& document, const Rod& rod, v1::Report& report);

}  // namespace withy

#endif  // WITHY_REVIEW_AFTER_CUTS_H_
