// Dry fits as logged, and what they and the cuts between them say of each other.
#ifndef WITHY_ROD_DRY_FITS_H_
#define WITHY_ROD_DRY_FITS_H_

#include "resolver.h"

namespace withy {

// Fills in Rod::dry_fits, without `impossible` and `stale`.
void ReadDryFits(Resolver& r);

// Fills in `impossible`: each is `rod/fit-too-long` or `rod/fit-too-short`.
void JudgeDryFits(Resolver& r);

// Of each part its fits one after the other. What came off elsewhere than the butt between two of them shortens by as
// much; a cut of the butt by at least as much (the thinner butt goes at least as deep) and by at most twice as much. A
// fit that differs without a cut is `rod/measurements-differ`, a cut that the fits contradict `rod/cut-against-fits`.
// Not compared where the part was reamed or something broke in between.
void CompareDryFits(Resolver& r);

// Off all ends of the assembled blank but its butt, planned or done.
double CutElsewhere(const Blank& blank);

// What the fit would read, the blank cut elsewhere as it is now or is to be. Requires: fit.overall.
double LengthOfFit(const Resolver& r, const DryFit& fit);

// Off the butt before that entry of the log.
double CutButtBefore(const Resolver& r, int order);

// Fills in `rest_m` of the handle that is glued on, from the last fit before the glue-up.
void TellRestOfGlued(Resolver& r);

// The butt face of the blank at that fit, from the part's own butt end. Requires: fit.overall. Unset = cannot be told.
std::optional<double> RestAtFit(const Rod& rod, const DryFit& fit);

}  // namespace withy

#endif  // WITHY_ROD_DRY_FITS_H_
