// A layout and how it answers to small moves of its guides: what the search goes by.
#ifndef WITHY_GUIDES_LAYOUT_MODEL_H_
#define WITHY_GUIDES_LAYOUT_MODEL_H_

#include <optional>
#include <vector>

#include "withy/guides/placement.h"

namespace withy {

inline constexpr double kShareOfR = 0.1;  // F = J + 0.1 R
inline constexpr double kMissingCosts =
    60;  // rad/m, of the largest missing clearance: more than any layout gains by it

// What the search lowers: J and a share of R, and what missing clearance costs.
double CostOf(const Layout& layout, double share_of_r = kShareOfR);

// A number of a layout and its slopes by the place of each guide.
struct Answer {
  double value = 0;
  std::vector<double> slopes;
  // To first order, with each guide moved by so much.
  double At(const std::vector<double>& moved) const;
};

struct LayoutModel {
  Layout layout;
  std::vector<Answer>
      turns;  // weighted, signed; of each case n + 1: at the guides, and twice the entry. J = largest magnitude
  std::vector<Answer> missing;  // clearance asked for less clearance there is, where asked for
  Answer r;
  // CostOf, to first order, where `spare_m` of missing clearance costs nothing.
  double CostAt(const std::vector<double>& moved, double spare_m = 0) const;
};

// Evaluates layouts of one problem one after the other, each from the one before, and counts.
class LayoutSolver {
 public:
  // REQUIRES: nothing wrong with the problem; it outlives the solver.
  explicit LayoutSolver(const PlacementProblem& problem) : problem_(problem) {}

  Layout Evaluate(const std::vector<double>& s_m);
  // Unset where the layout is not solved.
  std::optional<LayoutModel> ModelAt(const std::vector<double>& s_m);
  int solves() const { return solves_; }

 private:
  const PlacementProblem& problem_;
  std::vector<LayoutCase> near_;
  int solves_ = 0;
};

}  // namespace withy

#endif  // WITHY_GUIDES_LAYOUT_MODEL_H_
