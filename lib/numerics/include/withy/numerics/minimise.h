// Smooth minimisation under smooth constraints, with gradients: sequential quadratic programming.
//
//   Programme programme;
//   programme.low = {0, 0}; programme.high = {1, 2};
//   programme.evaluate = [](const std::vector<double>& x, Evaluation& at) { ...; return true; };
//   Minimum found = Minimise(programme, {0.5, 0.5});
//
// Solver: SLSQP (Kraft 1988) of NLopt. A maximum is minimised by its epigraph: one more unknown t, and t >= each member.
#ifndef WITHY_NUMERICS_MINIMISE_H_
#define WITHY_NUMERICS_MINIMISE_H_

#include <functional>
#include <vector>

namespace withy {

// At one x: all that the programme asks about.
struct Evaluation {
  double objective = 0;
  std::vector<double> gradient;                  // by unknown
  std::vector<double> constraints;               // each to be <= 0
  std::vector<std::vector<double>> jacobian;     // of constraint (row) by unknown
};

struct Programme {
  std::vector<double> low, high;                 // of each unknown; low <= high, infinite where there is no bound
  int constraint_count = 0;
  // Fills an Evaluation that comes with the right sizes. False where there is no answer at x: the solver takes a shorter step.
  std::function<bool(const std::vector<double>& x, Evaluation& at)> evaluate;
};

struct MinimiseOptions {
  double tolerance = 1e-9;                       // of a step, over the width between low and high (as it is where that is infinite)
  double feasible = 1e-9;                        // how far above 0 a constraint may end
  int most_evaluations = 200;
};

struct Minimum {
  bool converged = false;                        // false: out of evaluations, nothing feasible, or no answer at the start
  std::vector<double> x;                         // the best feasible point met; else the least infeasible one
  double objective = 0;
  double violation = 0;                          // largest constraint there, not below 0
  int evaluations = 0;
};

// REQUIRES: start within the bounds, sizes that agree. Deterministic.
Minimum Minimise(const Programme& programme, std::vector<double> start, const MinimiseOptions& options = {});

}  // namespace withy

#endif  // WITHY_NUMERICS_MINIMISE_H_
