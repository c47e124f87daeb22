// From a rod to the problem of placing its guides, and from what is found back to places on the rod.
//
//   absl::StatusOr<TrainPlan> plan = PlanTrain(rod, bending, {});          // what pulls, what is in the way, what
//   stays put TrainProposal proposal = ProposeTrain(rod, *plan, {.grid_m = 0.0254 / 8}); proposal.proposed.layout.s_m
//   // FromTip(*plan, s) is what the bench measures
//
// The problem itself, what is made small and why: placement.h. Loads are the design's that pull through the line. Where
// these are fewer than two different ones a third of the strength of the line is added where that is more (what a drag is
// set to: common practice, no source), and of the heaviest, as the full load, 0.22 and 0.55. A fixed spool gets a straight pull as well, 0.06 of the full load
// at a weight of 3: it keeps the path of the unloaded line straight, which the rings of falling height would else bend
// at the second one. These four figures are those of the loads that the objective was tried with (placement.h).
//
// The offset of a ring, axis of the blank to its centre, is ring height and half the blank there. While a layout is
// sought it stays with the guide; then it is taken anew at the places found, and once more sought.
#ifndef WITHY_GUIDES_TRAIN_PLAN_H_
#define WITHY_GUIDES_TRAIN_PLAN_H_

#include <optional>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "withy/bending/bending.h"
#include "withy/guides/placement.h"
#include "withy/guides/practice.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"

namespace withy {

// A load that the guides are placed for, as the design would write it.
struct TrainLoad {
  LoadCase as_load_case;  // one that was added has an empty `at`
  double weight = 1;
  std::optional<double> clearance_m = {};  // unset = not asked for
};

// What takes a stretch of the rod from the guides.
enum class Obstacle { kReel, kHandle, kJoint, kKeeper, kTipTop };

// How far feet and wrapping thread of a guide reach from its ring's plane, metres.
struct GuideReach {
  double to_butt_m = 0, to_tip_m = 0;
};

// A stretch of the rod where there may be no foot, and what takes it. Metres from the butt end of the finished rod.
struct TakenStretch {
  double from_m = 0, to_m = 0;
  Obstacle by = Obstacle::kJoint;
};

struct TrainPlan {
  PlacementProblem problem;
  double clamp_m = 0;               // from the butt end of the finished rod: where the problem counts from
  std::vector<int> guides;          // in Rod::guides, butt first: as the problem numbers them
  std::vector<TrainLoad> loads;     // as problem.cases
  std::vector<GuideReach> reaches;  // of each guide
  std::vector<TakenStretch> taken;
  Obstacle first_low_by = Obstacle::kReel;  // what keeps guide 1 from standing further back
  std::vector<std::string> notes;           // what had to be taken for granted, a sentence each
};

struct TrainWishes {
  bool gaps_never_grow = true;  // towards the tip
  Practice practice;            // where the butt guide usually stands (PracticeFor)
};

// FailedPrecondition where the design does not tell enough: what is missing, and what to write or measure.
absl::StatusOr<TrainPlan> PlanTrain(const Rod& rod, const BendingAnswers& bending, const TrainWishes& wishes);

// Distance from the tip-top's ring centre of a place of the problem, metres; and of all.
inline double FromTip(const TrainPlan& plan, double s_m) {
  return plan.problem.beam.length() - s_m;
}
std::vector<double> FromTip(const TrainPlan& plan, const std::vector<double>& s_m);

// The problem with the offsets that the rings have at these places.
PlacementProblem WithOffsetsAt(const Rod& rod, const TrainPlan& plan, const std::vector<double>& s_m);

// What a layout is held by at guide `k`: "", or a word of PlacedFor.bound_by. `within_m`: what counts as there.
std::string BoundBy(const TrainPlan& plan, const std::vector<double>& s_m, int k, double within_m);

// A layout with the offsets that it really has.
struct JudgedLayout {
  std::vector<double> offsets_m;
  Layout layout;
};
JudgedLayout JudgeLayout(const Rod& rod, const TrainPlan& plan, const std::vector<double>& s_m);
// Where the rod's guides stand now; unset where not all of them have a place.
std::optional<JudgedLayout> JudgeAsItIs(const Rod& rod, const TrainPlan& plan);

struct ProposeOptions {
  double grid_m = 0;    // distances from the tip-top's ring are whole multiples of it; 0 = no grid
  bool compare = true;  // with another rule for gaps, one guide fewer and one more, 3 mm off
};

struct TrainProposal {
  bool feasible = false;
  bool no_room = false;  // there is no layout at all that keeps feet clear of what is in the way; none is proposed
  std::string why;       // of not feasible, and of nothing found at all
  TrainPlan plan;        // as it was given; a clearance that cannot be had is no more asked for, and noted
  std::optional<JudgedLayout> proposed;  // unset: no layout could be worked out at all
  std::vector<JudgedLayout> classics;    // arithmetic, geometric, even gaps
  std::optional<JudgedLayout> other_rule, one_fewer, one_more;
  std::vector<MovedGuide> moved;  // each by 3 mm; empty unless compared
  int solves = 0;
};

// Bounded: at most some 3500 solutions of the strung beam.
TrainProposal ProposeTrain(const Rod& rod, const TrainPlan& plan, const ProposeOptions& options);

// Those of report.placement.
std::vector<Figure> PlacementFigures();

}  // namespace withy

#endif  // WITHY_GUIDES_TRAIN_PLAN_H_
