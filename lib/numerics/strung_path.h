// The way from the straight beam to the one under the whole tension.
#ifndef WITHY_LIB_NUMERICS_STRUNG_PATH_H_
#define WITHY_LIB_NUMERICS_STRUNG_PATH_H_

#include "strung_system.h"

namespace withy {

struct StrungPathEnd {
  ElasticaState state = ElasticaState::kNotConverged;
  double share = 0;  // of the tension, at which the unknowns stand
};

// Takes Newton's steps from an allowance that is shared by all.
class StrungNewton {
 public:
  StrungNewton(StrungSystem& system, int most_steps) : system_(system), most_steps_(most_steps) {}

  // Raises the tension from zero in steps, each predicted along the tangent of the path and corrected by Newton, and
  // none so long that the path could be left for another. Where no step however small goes on, the state says what is
  // there, as of the elastica: a branch, or a fold.
  StrungPathEnd RaiseTension();

  // From near the solution under the whole tension. False where Newton does not come home at once, or to a shape that
  // is not on the path.
  bool ComeHome();

  // At a share of the tension, from close by, until the end is off by no more than `allowed` (over the length) as far
  // as can be told: by how much sections integrated more finely move it. Into `error`. False where it stays above.
  bool Settle(double share, double allowed, double& error);

  int steps() const { return steps_; }

 private:
  bool Factor(double share, double tolerance);
  bool Correct(double share, double most, double enough, double tolerance);
  bool GoCarefully(double share);

  StrungSystem& system_;
  int most_steps_;
  int steps_ = 0;
  std::vector<double> correction_;
};

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_STRUNG_PATH_H_
