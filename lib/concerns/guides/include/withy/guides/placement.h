// Where the guides go, as a pure problem: a beam, rings of given offsets, loads through the line. Knows no documents.
//
//   PlacementProblem problem = ...;                       // SI, radians; positions from the clamp towards the tip
//   Placement found = PlaceGuides(problem);
//   if (found.feasible) found.best.s_m, found.best.j;
//   Placement ruled = OnGrid(problem, found.best, 0.0254 / 8);
//
// What is small in a good layout. Guide k turns the line by beta_ck under load c and is pressed by 2 T sin(|beta_ck| /
// 2), so the turn tells line path and ring load at once. The turns of one load sum up to a total that hardly depends on
// the layout: the least largest is the evenest. Over several loads the evenest of each cannot be had, the least largest
// of all can:
//
//   J = max over cases c of weight_c max(|beta_c1|, ..., |beta_cn|, 2 |gamma_c|)
//
// gamma_c = angle of the tip less the line's direction on its way into the tip-top. The whole turn at the tip-top is
// not in J: rod and load make most of it wherever the guides stand, and it would then rule and crowd the guides at the
// tip. Twice, since the tip-top closes only one half of a span. To break ties, R = root mean square of weight_c times
// the beam's turn within the spans between rings; what is minimised is F = J + 0.1 R. Source: own formulation, as are
// its factors 2 and 0.1; model of the line in strung_beam.h. J is what to quote.
//
// J has kinks, where one guide stops ruling and another begins: F is minimised in its epigraph form (minimise.h).
#ifndef WITHY_GUIDES_PLACEMENT_H_
#define WITHY_GUIDES_PLACEMENT_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/numerics/beam.h"
#include "withy/numerics/strung_beam.h"

namespace withy {

struct PlacementCase {
  std::string id;                      // for messages
  double tension_n = 0;                // beyond the tip-top, above 0
  double phi = 0;                      // of the line there: radians clockwise from the butt's forward axis
  double clamp_angle = 0;              // radians; of no consequence, as the beam is weightless
  double weight = 1;                   // above 0
  std::optional<double> clearance_m;   // least gap of line to blank; 0 = may touch; unset = not asked for
};

// Where the ring of one guide may not stand: from < s < to.
struct ClosedStretch {
  double from_m = 0, to_m = 0;
};

struct PlacementProblem {
  Beam beam;                           // clamp (butt) at 0, tip-top's ring at its end; weight is ignored
  std::vector<double> outer_m;         // diameter of the blank at both ends of each piece of the beam
  int side = 1;                        // +1: rings on the outside of a bend with 0 < phi < pi (on top); -1: underneath
  double reel_s_m = 0, reel_offset_m = 0;
  std::vector<double> offsets_m;       // axis of the blank to the ring's centre, guide 1 to n from the butt; stays with
                                       // the number, not with the place
  std::vector<double> turned;          // radians about the axis from `side`, of each guide; empty = none
  double tip_offset_m = 0;
  double tip_turned = 0;               // likewise, of the tip-top
  double first_low_m = 0, first_high_m = 0, last_high_m = 0;  // of guide 1, of guide n
  std::vector<double> least_gaps_m;    // n of them: guide k to k + 1; the last one guide n to the tip-top
  std::vector<std::optional<double>> locked_m;     // of each guide, or empty; a locked guide may break rules, the
                                                   // others keep theirs towards it
  std::vector<std::vector<ClosedStretch>> closed;  // of each guide, or empty
  bool gaps_never_grow = true;         // towards the tip, the gap to the tip-top included
  std::vector<PlacementCase> cases;    // at least one
  int count() const { return static_cast<int>(offsets_m.size()); }
};

struct LayoutCase {
  StrungBeam solved;                   // without points
  std::vector<double> turns;           // n + 1, the last at the tip-top; radians, anticlockwise positive
  double entry = 0;                    // gamma, radians
  std::vector<double> span_turns;      // n: of the beam from ring k to the next, radians
  std::vector<double> clearances_m;    // n + 1: reel to ring 1, ..., ring n to tip-top
  std::vector<double> forces_n;        // n + 1: magnitude at each ring
};

struct Layout {
  std::vector<double> s_m;             // of each guide
  bool solved = false;                 // under every case; else `why`, and what follows is 0
  std::string why;                     // "load case heavy: the rod folds at 0.83 of the load"
  double j = 0, r = 0, f = 0;          // radians
  int worst_case = 0, worst_ring = 0;  // where J is met, from 0; ring n = the line's way into the tip-top
  double clearance_violation_m = 0;    // most missing, not below 0
  double position_violation_m = 0;     // of bounds, gaps, gaps that grow where that is ruled out, closed stretches; not
                                       // of what locked guides alone break
  std::vector<LayoutCase> cases;
};

// What a layout counts as free of violations with: metres.
inline constexpr double kPlaceTolerance = 1e-6;
inline constexpr double kClearanceTolerance = 5e-5;

// What keeps a problem from being one, whatever the layout: empty where it is one. "guide 3: locked at 3 m".
std::string WhatIsWrongWith(const PlacementProblem& problem);

// Any layout; s_m of the right size, strictly rising within 0 < s < length, or it ends as not solved.
Layout EvaluateLayout(const PlacementProblem& problem, const std::vector<double>& s_m);
// Within both tolerances.
bool IsFeasible(const Layout& layout);

struct Placement {
  bool feasible = false;
  std::string why;                     // of not feasible: what cannot be met, or what is wrong with the problem
  Layout best;                         // not feasible: that of the least F + 60 rad/m x missing clearance, or the one
                                       // nearest to the rules for places; empty of bad input
  int solves = 0;                      // of one load case each
};

struct PlaceOptions {
  int most_solves = 600;
};

// The least F; where R would take more than a thousandth of J for itself, the least J + 0.01 R: it is there to break
// ties. From several classic starts until two end on the same layout or solves run out, then, where a ring landed in a
// closed stretch, on either side of that, best first. Deterministic. Nine guides under three loads take some 80 solves,
// about 20 ms (tests/bench/placement_bench.cc).
Placement PlaceGuides(const PlacementProblem& problem, const PlaceOptions& options = {});

// The same with each distance from the tip-top a whole multiple of grid_m, except locked guides: the layout nearest to
// `best` (least squares) that keeps every rule for places, and from there to better neighbours. Not feasible, with why:
// none within four steps, or clearance is missed.
Placement OnGrid(const PlacementProblem& problem, const Layout& best, double grid_m, const PlaceOptions& options = {});

// --- Classic layouts (classic_layouts.cc): the trade's progressions, distances from the tip-top rising by a rule.
// Places from the clamp, guide 1 to n. Common practice, no source: next to the tip 4 in, guide 1 in the middle of where
// it may stand. They heed neither locks nor closed stretches nor the least gaps.
inline constexpr double kFromTipM = 0.1016;

// Gaps that grow by a fixed step from the tip: D_j = j X + I j (j - 1) / 2.
std::vector<double> ArithmeticLayout(const PlacementProblem& problem, double from_tip_m = kFromTipM);
// By a fixed ratio: D_j = X (q^j - 1) / (q - 1).
std::vector<double> GeometricLayout(const PlacementProblem& problem, double from_tip_m = kFromTipM);
// All gaps from guide 1 to the tip-top the same.
std::vector<double> EqualLayout(const PlacementProblem& problem);

// D_j = offset + j X + I j (j - 1) / 2 for j = 1, 2, ... from the tip-top.
struct ArithmeticRule {
  double first = 0;                    // X
  double increment = 0;                // I
  double offset = 0;                   // 0 of the rule proper
  double DistanceAt(int j) const { return offset + j * first + increment * j * (j - 1) / 2; }
};
// The rule proper through the first and the last of `count` >= 2 distances.
ArithmeticRule ArithmeticThrough(double first, double last, int count);
// Least squares through distances from the tip-top, at least three: the quadratic in j.
ArithmeticRule FitArithmetic(const std::vector<double>& distances);

// --- What if (what_if.cc).
struct MovedGuide {
  double j_ratio = 1;                  // J over the layout's own, at worst of the two ways
  double clearance_violation_m = 0;    // likewise
};
// Of each guide alone moved by +-by_m along the blank.
std::vector<MovedGuide> MovedBy(const PlacementProblem& problem, const Layout& layout, double by_m = 0.003);

// The problem without the last guide before the tip-top, and with one more there like it. Unset: none left, or locked.
std::optional<PlacementProblem> OneFewer(const PlacementProblem& problem);
std::optional<PlacementProblem> OneMore(const PlacementProblem& problem);

}  // namespace withy

#endif  // WITHY_GUIDES_PLACEMENT_H_
