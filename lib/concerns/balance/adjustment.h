// Values that are known only so far, made to agree with what was measured of their sums.
#ifndef WITHY_BALANCE_ADJUSTMENT_H_
#define WITHY_BALANCE_ADJUSTMENT_H_

#include <vector>

#include "contributions.h"

namespace withy {

// Something that the values add up to, and by how much it misses what was measured (measured less reckoned, with the
// uncertainty of both).
struct Constraint {
  Uncertain reckoned, misfit;
};

// Least squares with the constraints exact: each value takes of the misfit in proportion to its covariance with what was
// reckoned; covariances to first order. At most two constraints; one that nothing can give way to, or that follows from
// the other, is left out.
class Adjustment {
 public:
  explicit Adjustment(const std::vector<Constraint>& constraints);
  bool possible() const { return !used_.empty(); }
  Uncertain Adjusted(const Uncertain& value) const;

 private:
  std::vector<Constraint> used_;
  double var0_ = 0, var1_ = 0, cov_ = 0;  // of the reckoned sums
};

// Mass and moment of one thing. Left alone where its mass is exact, or would fall to nothing: the finding about the sum
// speaks of that.
void GiveWay(const Adjustment& adjustment, Counted& counted);

}  // namespace withy

#endif  // WITHY_BALANCE_ADJUSTMENT_H_
