// The taken-down rod.
#ifndef WITHY_FIT_PIECES_H_
#define WITHY_FIT_PIECES_H_

#include "withy/fit/fit.h"

namespace withy {

// Pieces and the longest of them; of the butt piece the handle behind the blank counts, of the tip piece the tip-top, of
// a piece with a spigot fixed in it what stands out.
void FillPieces(const Rod& rod, FitAnswers& answers);

}  // namespace withy

#endif  // WITHY_FIT_PIECES_H_
