// How a strung rod answers to what pull and stiffness may be off by, to first order.
#ifndef WITHY_LINE_LOAD_BY_TENSION_H_
#define WITHY_LINE_LOAD_BY_TENSION_H_

#include "withy/line_load/line_load.h"

namespace withy::line_load {

// What the stiffness of the whole may be off by, relative, about 0: of each piece, times its share of the strain
// energy. REQUIRES: told().
Uncertain StiffnessChangeOf(const StrungRod& strung);

// Fills in tip_angle, tip_drop_m, clamp_moment_n_m and most_turn of a solved rod, from two solutions with a little more
// and a little less pull; without uncertainty where the rod does not hold a little more. REQUIRES: solved(), tension_n.
void SayWithUncertainty(StrungRod& strung);

}  // namespace withy::line_load

#endif  // WITHY_LINE_LOAD_BY_TENSION_H_
