// Placement in the report: what was looked for, what was found, what it is compared with.
#include "report_placement.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_join.h"
#include "figures.h"

namespace withy {
namespace {

constexpr double kDeg = 180 / std::numbers::pi;
constexpr double kPercent = 100;

const TrainPlan& PlanOf(const PlacedTrain& train) {
  return train.proposal.plan;
}

std::string TipTopId(const Rod& rod) {
  return rod.tip_top && !rod.tip_top->id.empty() ? rod.tip_top->id : "tip-top";
}

// Of a layout with `count` guides; of one guide more than the plan has there is no id.
std::string RingId(const Rod& rod, const TrainPlan& plan, int ring, std::size_t count) {
  if (ring >= static_cast<int>(count)) return TipTopId(rod);
  if (ring >= static_cast<int>(plan.guides.size())) return "one more";
  return rod.guides[plan.guides[ring]].id;
}

std::string BreaksOf(const Layout& layout) {
  if (!layout.solved) return layout.why;
  std::vector<std::string> breaks;
  if (layout.position_violation_m > kPlaceTolerance) {
    breaks.push_back(absl::StrFormat("a place or a gap is off by %.1f mm", layout.position_violation_m * kMm));
  }
  if (layout.clearance_violation_m > kClearanceTolerance) {
    breaks.push_back(absl::StrFormat("the line would cut %.1f mm into the blank", layout.clearance_violation_m * kMm));
  }
  return absl::StrJoin(breaks, "; ");
}

std::optional<double> LeastClearance(const TrainPlan& plan, const Layout& layout) {
  std::optional<double> least;
  for (std::size_t c = 0; c < layout.cases.size(); ++c) {
    if (!plan.problem.cases[c].clearance_m) continue;
    for (const double clearance : layout.cases[c].clearances_m) least = std::min(least.value_or(clearance), clearance);
  }
  return least;
}

void ReportLayout(const char* name, const Rod& rod, const TrainPlan& plan, const Layout& layout, v1::GuideLayout& to) {
  to.set_name(name);
  for (const double s : layout.s_m) to.add_from_tip_mm(FromTip(plan, s) * kMm);
  to.set_keeps_limits(layout.solved && IsFeasible(layout));
  to.set_breaks(BreaksOf(layout));
  if (!layout.solved) return;
  to.set_turn_deg(layout.j * kDeg);
  to.set_blank_turn_deg(layout.r * kDeg);
  to.set_at_guide(RingId(rod, plan, layout.worst_ring, layout.s_m.size()));
  to.set_under(plan.problem.cases[layout.worst_case].id);
  Put(LeastClearance(plan, layout), kMm, [&](double mm) { to.set_clearance_mm(mm); });
}

void ReportLoads(const TrainPlan& plan, v1::PlacementReport& report) {
  for (std::size_t c = 0; c < plan.loads.size(); ++c) {
    const PlacementCase& load = plan.problem.cases[c];
    v1::PlacementLoad& to = *report.add_loads();
    to.set_id(load.id);
    to.set_at(plan.loads[c].as_load_case.at.ToString());
    to.set_tension_n(load.tension_n);
    to.set_line_angle_deg(load.phi * kDeg);
    to.set_weight(load.weight);
    Put(load.clearance_m, kMm, [&](double mm) { to.set_clearance_mm(mm); });
  }
}

void ReportTurn(const TrainPlan& plan, const Layout& layout, std::size_t k, v1::PlacedFor& to) {
  std::optional<double> largest;
  for (std::size_t c = 0; c < layout.cases.size(); ++c) {
    const double turn = std::abs(layout.cases[c].turns[k]);
    if (largest && turn <= *largest) continue;
    largest = turn;
    to.set_under(plan.problem.cases[c].id);
  }
  Put(largest, kDeg, [&](double deg) { to.set_turn_deg(deg); });
}

void ReportGuide(const PlacedTrain& train, std::size_t k, double grid_m, v1::PlacedFor& to) {
  const TrainPlan& plan = PlanOf(train);
  const Guide& guide = train.rod.guides[plan.guides[k]];
  const Guide* was = train.as_designed.FindGuide(guide.id);
  to.set_id(guide.id);
  to.set_model(guide.model);
  if (was != nullptr && was->model != guide.model) to.set_model_was(was->model);
  if (was != nullptr) Put(was->from_tip, kMm, [&](double mm) { to.set_from_tip_was_mm(mm); });
  to.set_locked(plan.problem.locked_m[k].has_value());
  if (!train.proposal.proposed) return;
  const JudgedLayout& proposed = *train.proposal.proposed;
  const double s_m = proposed.layout.s_m[k];
  Put(std::optional(FromTip(plan, s_m)), kMm, [&](double mm) { to.set_from_tip_mm(mm); });
  Put(std::optional(plan.clamp_m + s_m), kMm, [&](double mm) { to.set_from_butt_mm(mm); });
  Put(std::optional(proposed.offsets_m[k]), kMm, [&](double mm) { to.set_offset_mm(mm); });
  ReportTurn(plan, proposed.layout, k, to);
  to.set_bound_by(BoundBy(plan, proposed.layout.s_m, static_cast<int>(k), std::max(grid_m, kPlaceTolerance)));
  if (k < train.proposal.moved.size()) to.set_off_by_3_mm_percent((train.proposal.moved[k].j_ratio - 1) * kPercent);
}

void ReportMostCritical(v1::PlacementReport& report) {
  for (const v1::PlacedFor& guide : report.guides()) {
    if (!guide.has_off_by_3_mm_percent()) continue;
    if (report.has_one_off_by_3_mm_percent() && guide.off_by_3_mm_percent() <= report.one_off_by_3_mm_percent())
      continue;
    report.set_one_off_by_3_mm_percent(guide.off_by_3_mm_percent());
    report.set_most_critical(guide.id());
  }
}

}  // namespace

void ReportPlacement(const PlacedTrain& train, double grid_m, v1::PlacementReport& report) {
  const TrainProposal& proposal = train.proposal;
  const TrainPlan& plan = proposal.plan;
  const auto layout = [&](const char* name, const JudgedLayout& judged, v1::GuideLayout* to) {
    ReportLayout(name, train.rod, plan, judged.layout, *to);
  };
  report.set_state(proposal.feasible                       ? "placed"
                   : proposal.proposed || proposal.no_room ? "not possible"
                                                           : "cannot tell");
  report.set_why(proposal.why);
  ReportLoads(plan, report);
  report.set_gaps_never_grow(plan.problem.gaps_never_grow);
  report.set_grid_mm(grid_m * kMm);
  for (std::size_t k = 0; k < plan.guides.size(); ++k) ReportGuide(train, k, grid_m, *report.add_guides());
  ReportMostCritical(report);
  if (train.now)
    ReportLayout("as it is", train.as_designed, train.plan_as_designed, train.now->layout, *report.mutable_now());
  if (proposal.proposed) layout("proposed", *proposal.proposed, report.mutable_proposed());
  constexpr const char* kClassics[] = {"arithmetic", "geometric", "even gaps"};
  for (std::size_t i = 0; i < proposal.classics.size(); ++i)
    layout(kClassics[i], proposal.classics[i], report.add_classics());
  const char* other = plan.problem.gaps_never_grow ? "free" : "gaps never grow";
  if (proposal.other_rule) layout(other, *proposal.other_rule, report.mutable_other_rule());
  if (proposal.one_fewer) layout("one fewer", *proposal.one_fewer, report.mutable_one_fewer());
  if (proposal.one_more) layout("one more", *proposal.one_more, report.mutable_one_more());
  for (const std::string& note : plan.notes) report.add_notes(note);
  report.set_solutions(static_cast<std::uint32_t>(proposal.solves));
}

}  // namespace withy
