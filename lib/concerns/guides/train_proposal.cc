// Looking for the layout, and for what it is compared with.
#include <algorithm>
#include <cmath>
#include <utility>

#include "absl/strings/str_format.h"
#include "train_parts.h"

namespace withy {
namespace {

constexpr double kOffByM = 0.003;
// A first look tells the places well enough for the diameters there.
constexpr int kFirstLook = 150, kWholeSearch = 600, kComparison = 400;
// Guides times loads that these are for; larger ones are looked for less long, but so long at least.
constexpr double kUsualSize = 60;
constexpr int kLeastSearch = 30;

class Proposer {
 public:
  Proposer(const Rod& rod, const TrainPlan& plan, const ProposeOptions& options)
      : rod_(rod), options_(options), first_offsets_m_(plan.problem.offsets_m) {
    proposal_.plan = plan;
  }

  TrainProposal Run() {
    Placement found = Search(plan(), Budget(kWholeSearch));
    if (LetGoOfHeaviest(found)) found = Search(plan(), Budget(kWholeSearch));
    if (!found.best.solved) {
      proposal_.no_room = found.best.s_m.empty() && WhatIsWrongWith(plan().problem).empty();
      proposal_.why = proposal_.no_room ? NoRoom() : found.why.empty() ? found.best.why : found.why;
      return std::move(proposal_);
    }
    found = Rounded(plan().problem, std::move(found), Budget(kWholeSearch));
    proposal_.proposed = JudgeLayout(rod_, plan(), found.best.s_m);
    const Layout& layout = proposal_.proposed->layout;
    Count(1);
    proposal_.feasible = layout.solved && IsFeasible(layout);
    if (!proposal_.feasible)
      proposal_.why = found.why.empty() ? "no layout was found that keeps all limits" : found.why;
    if (const std::string close = LockedTooClose(); !close.empty()) {
      proposal_.feasible = false;
      proposal_.why = proposal_.why.empty() ? close : absl::StrFormat("%s; %s", close, proposal_.why);
    }
    if (!layout.solved) proposal_.proposed.reset();
    if (proposal_.proposed) Compare();
    return std::move(proposal_);
  }

 private:
  TrainPlan& plan() { return proposal_.plan; }
  void Count(int layouts) { proposal_.solves += layouts * static_cast<int>(plan().problem.cases.size()); }

  // No search can mend what two rings that both stay break.
  std::string LockedTooClose() {
    const PlacementProblem& problem = plan().problem;
    for (std::size_t k = 0; k < problem.locked_m.size(); ++k) {
      const bool last = k + 1 == problem.locked_m.size();
      if (!problem.locked_m[k] || (!last && !problem.locked_m[k + 1])) continue;
      const double gap_m = (last ? problem.beam.length() : *problem.locked_m[k + 1]) - *problem.locked_m[k];
      if (gap_m >= problem.least_gaps_m[k] - kPlaceTolerance) continue;
      const std::string& id = rod_.guides[plan().guides[k]].id;
      const std::string next = last ? "the tip-top" : absl::StrFormat("'%s'", rod_.guides[plan().guides[k + 1]].id);
      return absl::StrFormat(
          "'%s' stays %.1f mm from %s, and their feet and thread need %.1f mm: unlock it or correct its from_tip", id,
          gap_m * 1000, next, problem.least_gaps_m[k] * 1000);
    }
    return "";
  }

  std::string NoRoom() {
    const PlacementProblem& problem = plan().problem;
    double needed_m = 0;
    for (const double gap : problem.least_gaps_m) needed_m += gap;
    const double there_m = problem.beam.length() - problem.first_low_m;
    if (needed_m <= there_m) return "guides that stay, joints or keepers leave the others no room";
    return absl::StrFormat(
        "feet and thread of %d guides need %.0f mm, and from the butt guide's first place to the tip-top there are "
        "%.0f mm",
        problem.count(), needed_m * 1000, there_m * 1000);
  }

  // What one solution costs grows with rings, and what one layout costs with loads.
  int Budget(int solves) {
    const PlacementProblem& problem = plan().problem;
    const double size = static_cast<double>(problem.count()) * static_cast<double>(problem.cases.size());
    return std::max(kLeastSearch, static_cast<int>(solves * std::min(1.0, kUsualSize / size)));
  }

  // Leaves the offsets of the places found in the plan's problem.
  Placement Search(TrainPlan& plan, int most_solves) {
    const Placement look = PlaceGuides(plan.problem, {Budget(kFirstLook)});
    proposal_.solves += look.solves;
    if (!look.best.solved) return look;
    plan.problem = WithOffsetsAt(rod_, plan, look.best.s_m);
    Placement found = PlaceGuides(plan.problem, {most_solves});
    proposal_.solves += found.solves;
    return found;
  }

  Placement Rounded(const PlacementProblem& problem, Placement found, int most_solves) {
    if (!(options_.grid_m > 0) || !found.best.solved) return found;
    Placement rounded = OnGrid(problem, found.best, options_.grid_m, {most_solves});
    proposal_.solves += rounded.solves;
    // The grid is the reason only where there is a layout off it.
    if (!found.feasible && !rounded.feasible && !found.why.empty()) rounded.why = std::move(found.why);
    return rounded;
  }

  // With rings on top the line lies nearest to the blank under the heaviest load. A rod is cast and wound with less.
  bool LetGoOfHeaviest(const Placement& found) {
    if (found.feasible || !found.best.solved || found.best.clearance_violation_m <= kClearanceTolerance) return false;
    std::vector<PlacementCase>& cases = plan().problem.cases;
    const auto heaviest =
        std::max_element(cases.begin(), cases.end(),
                         [](const PlacementCase& a, const PlacementCase& b) { return a.tension_n < b.tension_n; });
    const std::size_t asked =
        std::count_if(cases.begin(), cases.end(), [](const PlacementCase& c) { return c.clearance_m; });
    if (!heaviest->clearance_m || asked < 2) return false;
    heaviest->clearance_m.reset();
    plan().loads[heaviest - cases.begin()].clearance_m.reset();
    plan().notes.push_back(
        absl::StrFormat("Under '%s' no layout of so many guides keeps the line off the blank: it may touch "
                        "there, and does not under the lighter loads.",
                        heaviest->id));
    return true;
  }

  // Found as the proposal is. The guide that `problem` has more is like the last one.
  std::optional<JudgedLayout> BestOf(const PlacementProblem& problem, int most_solves) {
    TrainPlan other = plan();
    other.problem = problem;
    other.guides.resize(problem.offsets_m.size(), plan().guides.back());
    const Placement found = Rounded(other.problem, Search(other, most_solves), most_solves);
    if (!found.best.solved) return std::nullopt;
    Count(1);
    JudgedLayout best = JudgeLayout(rod_, other, found.best.s_m);
    if (!best.layout.solved) return std::nullopt;
    return best;
  }

  void Compare() {
    const PlacementProblem& problem = plan().problem;
    for (const std::vector<double>& s_m : {ArithmeticLayout(problem), GeometricLayout(problem), EqualLayout(problem)}) {
      proposal_.classics.push_back(JudgeLayout(rod_, plan(), s_m));
      Count(1);
    }
    if (!options_.compare) return;
    // As it would be proposed, had it been asked for: from the same start.
    PlacementProblem other = problem;
    other.gaps_never_grow = !other.gaps_never_grow;
    other.offsets_m = first_offsets_m_;
    proposal_.other_rule = BestOf(other, Budget(kWholeSearch));
    if (const auto fewer = OneFewer(problem)) proposal_.one_fewer = BestOf(*fewer, Budget(kComparison));
    if (const auto more = OneMore(problem)) proposal_.one_more = BestOf(*more, Budget(kComparison));
    const Layout& layout = proposal_.proposed->layout;
    proposal_.moved = MovedBy(WithOffsetsAt(rod_, plan(), layout.s_m), layout, kOffByM);
    Count(2 * problem.count());
  }

  const Rod& rod_;
  const ProposeOptions options_;
  const std::vector<double> first_offsets_m_;
  TrainProposal proposal_;
};

}  // namespace

TrainProposal ProposeTrain(const Rod& rod, const TrainPlan& plan, const ProposeOptions& options) {
  return Proposer(rod, plan, options).Run();
}

}  // namespace withy
