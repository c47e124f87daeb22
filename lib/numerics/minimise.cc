#include "withy/numerics/minimise.h"

#include <nlopt.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <memory>
#include <utility>

namespace withy {
namespace {

using Solver = std::unique_ptr<nlopt_opt_s, decltype(&nlopt_destroy)>;

bool AllFinite(const std::vector<double>& values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

// Stands between the solver, which asks for objective and constraints in turn, and the programme, which answers all at
// once. Remembers the best point met: the solver's own last one may be worse.
class Course {
 public:
  Course(const Programme& programme, const MinimiseOptions& options, nlopt_opt solver)
      : programme_(programme), options_(options), solver_(solver) {
    const auto unknowns = programme.low.size();
    const auto rows = static_cast<std::size_t>(programme.constraint_count);
    at_.gradient.assign(unknowns, 0);
    at_.constraints.assign(rows, 0);
    at_.jacobian.assign(rows, std::vector<double>(unknowns, 0));
  }

  const Minimum& best() const { return best_; }

  // Infinite where there is no answer: the line search comes back from there, by nine tenths of its step.
  static double Objective(unsigned count, const double* x, double* gradient, void* self) {
    Course& course = *static_cast<Course*>(self);
    if (!course.MoveTo({x, x + count})) return std::numeric_limits<double>::infinity();
    if (gradient) std::copy(course.at_.gradient.begin(), course.at_.gradient.end(), gradient);
    return course.at_.objective;
  }

  static void Constraints(unsigned, double* values, unsigned count, const double* x, double* jacobian, void* self) {
    Course& course = *static_cast<Course*>(self);
    course.MoveTo({x, x + count});
    std::copy(course.at_.constraints.begin(), course.at_.constraints.end(), values);
    if (!jacobian) return;
    for (const std::vector<double>& row : course.at_.jacobian) jacobian = std::copy(row.begin(), row.end(), jacobian);
  }

 private:
  bool MoveTo(const std::vector<double>& x) {
    if (x == x_) return has_answer_;
    if (best_.evaluations >= options_.most_evaluations) {
      nlopt_force_stop(solver_);
      return false;
    }
    x_ = x;
    for (std::size_t i = 0; i < x.size(); ++i) within_[i] = std::clamp(x[i], programme_.low[i], programme_.high[i]);
    has_answer_ = AllFinite(x) && Evaluate();
    if (has_answer_) Remember();
    if (best_.x.empty()) nlopt_force_stop(solver_);  // no answer at the start
    return has_answer_;
  }

  bool Evaluate() {
    ++best_.evaluations;
    return programme_.evaluate(within_, at_) && std::isfinite(at_.objective) && AllFinite(at_.gradient) &&
           AllFinite(at_.constraints) && std::all_of(at_.jacobian.begin(), at_.jacobian.end(), AllFinite);
  }

  void Remember() {
    double violation = 0;
    for (const double constraint : at_.constraints) violation = std::max(violation, constraint);
    const bool feasible = violation <= options_.feasible, was_feasible = best_.violation <= options_.feasible;
    bool better = best_.x.empty();
    if (!better && feasible != was_feasible)
      better = feasible;
    else if (!better)
      better = feasible ? at_.objective < best_.objective : violation < best_.violation;
    if (!better) return;
    best_.x = within_;
    best_.objective = at_.objective;
    best_.violation = violation;
  }

  const Programme& programme_;
  const MinimiseOptions& options_;
  nlopt_opt solver_;
  std::vector<double> x_, within_ = programme_.low;  // as asked for; within the bounds to the last bit
  bool has_answer_ = false;
  Evaluation at_;
  Minimum best_;
};

// Of a step that is none, for each unknown.
std::vector<double> SmallestSteps(const Programme& programme, double tolerance) {
  std::vector<double> steps;
  for (std::size_t i = 0; i < programme.low.size(); ++i) {
    const double width = programme.high[i] - programme.low[i];
    steps.push_back(tolerance * (std::isfinite(width) && width > 0 ? width : 1));
  }
  return steps;
}

}  // namespace

Minimum Minimise(const Programme& programme, std::vector<double> start, const MinimiseOptions& options) {
  Solver solver(nlopt_create(NLOPT_LD_SLSQP, static_cast<unsigned>(start.size())), &nlopt_destroy);
  Course course(programme, options, solver.get());
  nlopt_set_lower_bounds(solver.get(), programme.low.data());
  nlopt_set_upper_bounds(solver.get(), programme.high.data());
  nlopt_set_min_objective(solver.get(), &Course::Objective, &course);
  const std::vector<double> feasible(static_cast<std::size_t>(programme.constraint_count), options.feasible);
  if (!feasible.empty()) {
    nlopt_add_inequality_mconstraint(solver.get(), static_cast<unsigned>(feasible.size()), &Course::Constraints,
                                     &course, feasible.data());
  }
  nlopt_set_xtol_abs(solver.get(), SmallestSteps(programme, options.tolerance).data());
  double objective = 0;
  const nlopt_result result = nlopt_optimize(solver.get(), start.data(), &objective);
  Minimum best = course.best();
  // Limited by rounding: no step of the line search gains any more.
  best.converged = !best.x.empty() && best.violation <= options.feasible &&
                   (result == NLOPT_SUCCESS || result == NLOPT_XTOL_REACHED || result == NLOPT_ROUNDOFF_LIMITED);
  if (best.x.empty()) best.x = std::move(start);
  return best;
}

}  // namespace withy
