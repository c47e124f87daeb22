// Dry fits as logged, and what they and the cuts between them say of each other.
#ifndef WITHY_ROD_DRY_FITS_H_
#define WITHY_ROD_DRY_FITS_H_

#include "resolver.h"

namespace withy {

// Fills in Rod::dry_fits, without `stale`.
void ReadDryFits(Resolver& r);

// Of each part its fits one after the other. What came off elsewhere than the butt between two of them shortens by as
// much; a cut of the butt by at least as much (the thinner butt goes at least as deep) and by at most twice as much. A
// fit that differs without a cut is `rod/measurements-differ`, a cut that the fits contradict `rod/cut-against-fits`.
// Not compared where the part was reamed or something broke in between.
void CompareDryFits(Resolver& r);

}  // namespace withy

#endif  // WITHY_ROD_DRY_FITS_H_
