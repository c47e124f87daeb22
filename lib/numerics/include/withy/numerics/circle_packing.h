// Equal circles in a circle: how many round bars lie side by side in a bore.
#ifndef WITHY_NUMERICS_CIRCLE_PACKING_H_
#define WITHY_NUMERICS_CIRCLE_PACKING_H_

namespace withy {

// The largest k up to 7 with bore >= r_k d, where r = 1, 2, 1 + 2/sqrt 3, 1 + sqrt 2, 1 + sqrt(2 (1 + 1/sqrt 5)), 3, 3 (the
// proved optimum for one to seven circles; plane geometry). Six fit no sooner than seven, so the answer is never 6. 0 = not
// even one goes in. Both diameters in one unit of length, `tie` in the same: what is short by no more than it fits.
//
//   SideBySide(20, 10, 1e-6)   // 2
//   SideBySide(21.5, 10, 1e-6) // 2: three need 21.547
int SideBySide(double bore, double d, double tie);

}  // namespace withy

#endif  // WITHY_NUMERICS_CIRCLE_PACKING_H_
