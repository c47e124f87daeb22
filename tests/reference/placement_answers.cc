#include "reference/placement_answers.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "reference/fields.h"
#include "support/tube_beam.h"

namespace withy::reference {
namespace {

double Radians(double degrees) {
  return degrees * std::numbers::pi / 180;
}

std::vector<double> NumbersOf(const Value& list) {
  std::vector<double> numbers;
  for (const Value& number : list.GetArray()) numbers.push_back(number.GetDouble());
  return numbers;
}

// Of the rod under the layout's line: the same figures by the strung beam's own functions.
StrungPeaks PeaksAlong(const PlacementProblem& problem, const Layout& layout, std::size_t c) {
  std::vector<BeamRing> rings;
  for (std::size_t k = 0; k < layout.s_m.size(); ++k) rings.push_back({layout.s_m[k], problem.offsets_m[k], 0});
  rings.push_back({problem.beam.length(), problem.tip_offset_m, 0});
  const StrungLoad load{.clamp_angle = problem.cases[c].clamp_angle,
                        .side = problem.side,
                        .reel_s = problem.reel_s_m,
                        .reel_offset = problem.reel_offset_m,
                        .tension = problem.cases[c].tension_n,
                        .far_angle = problem.cases[c].phi};
  return PeaksOf(problem.beam, problem.outer_m, rings, load, layout.cases[c].solved);
}

Value CaseAnswer(const PlacementProblem& problem, const Layout& layout, std::size_t c, Allocator& allocator) {
  const LayoutCase& at = layout.cases[c];
  // As the family's conventions have it: from the tip to the line beyond it.
  const RingUnderLine& tip = at.solved.rings.back();
  // The file counts the blank's turn from the clamp on.
  std::vector<double> spans = at.span_turns;
  spans.insert(spans.begin(), at.solved.rings.front().angle - problem.cases[c].clamp_angle);
  const StrungPeaks peaks = PeaksAlong(problem, layout, c);
  return Fields(allocator)
      .Put("load_case", static_cast<int>(c) + 1)
      .Put("tension_N", problem.cases[c].tension_n)
      .Put("phi_deg", problem.cases[c].phi * 180 / std::numbers::pi)
      .Put("line_deflection_angle_rad", at.turns)
      .Put("tip_top_entry_angle_rad", at.entry)
      .Put("tip_to_line_angle_rad", std::remainder(tip.line_out - tip.angle, 2 * std::numbers::pi))
      .Put("blank_turn_span_rad", spans)
      .Put("min_clearance_m", at.clearances_m)
      .Put("force_magnitude_N", at.forces_n)
      .Put("tip_x_m", tip.axis_x)
      .Put("tip_y_m", tip.axis_y)
      .Put("max_abs_moment_Nm", peaks.moment)
      .Put("max_abs_outer_fibre_strain", peaks.strain)
      .Take();
}

Value LayoutAnswer(const PlacementProblem& problem, const Layout& layout, Allocator& allocator) {
  Fields fields(allocator);
  fields.Put("s_m", layout.s_m);
  if (!layout.solved) return fields.Put("why", layout.why.c_str()).Take();
  Value cases(rapidjson::kArrayType);
  for (std::size_t c = 0; c < layout.cases.size(); ++c) {
    cases.PushBack(CaseAnswer(problem, layout, c, allocator), allocator);
  }
  return fields.Put("J_rad", layout.j)
      .Put("J_best_deg", layout.j * 180 / std::numbers::pi)
      .Put("R_rad", layout.r)
      .Put("F_rad", layout.f)
      .Put("J_at", Fields(allocator).Put("load_case", layout.worst_case + 1).Put("ring", layout.worst_ring + 1).Take())
      .Put("clearance_violation_m", layout.clearance_violation_m)
      .Put("position_violation_m", layout.position_violation_m)
      .Put("per_load_case", std::move(cases))
      .Take();
}

Value FoundAnswer(const PlacementProblem& problem, Allocator& allocator) {
  const Placement found = PlaceGuides(problem);
  Value answer = LayoutAnswer(problem, found.best, allocator);
  answer.AddMember("feasible", found.feasible, allocator);
  answer.AddMember("solves", found.solves, allocator);
  return answer;
}

Value SensitivityAnswer(const PlacementProblem& problem, const Layout& layout, Allocator& allocator) {
  Value list(rapidjson::kArrayType);
  for (std::size_t k = 0; k < layout.s_m.size(); ++k) {
    Fields fields(allocator);
    fields.Put("guide", static_cast<int>(k) + 1);
    for (const auto& [name, way] : {std::pair("J_minus_3mm_rad", -0.003), std::pair("J_plus_3mm_rad", 0.003)}) {
      std::vector<double> moved = layout.s_m;
      moved[k] += way;
      fields.Put(name, EvaluateLayout(problem, moved).j);
    }
    list.PushBack(fields.Take(), allocator);
  }
  return list;
}

// The layouts given by name, as `layouts` or each on its own.
void AddGiven(const PlacementProblem& problem, const Value& from, Value& layouts, Allocator& allocator) {
  for (const auto& member : from.GetObject()) {
    if (!member.value.IsObject()) continue;
    if (std::string(member.name.GetString()) == "layouts") {
      AddGiven(problem, member.value, layouts, allocator);
    } else if (member.value.HasMember("s_m") && member.value["s_m"].Size() == problem.offsets_m.size()) {
      const Layout layout = EvaluateLayout(problem, NumbersOf(member.value["s_m"]));
      layouts.AddMember(Value(member.name, allocator), LayoutAnswer(problem, layout, allocator), allocator);
    }
  }
}

}  // namespace

PlacementProblem PlacementOf(const Value& in) {
  const double outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m");
  PlacementProblem problem;
  problem.beam = TubeBeam({0, outer0, outer0 - 2 * Get(in, "wall_butt_m")},
                          {Get(in, "L_m"), outer1, outer1 - 2 * Get(in, "wall_tip_m")}, Get(in, "E_Pa"), 0);
  problem.outer_m = {outer0, outer1};
  problem.side = in["side"].GetInt();
  problem.reel_s_m = Get(in, "reel_s_m");
  problem.reel_offset_m = Get(in, "reel_offset_m");
  problem.offsets_m = NumbersOf(in["guide_offsets_m"]);
  problem.tip_offset_m = Get(in, "tiptop_offset_m");
  problem.first_low_m = Get(in, "first_guide_min_s_m");
  problem.first_high_m = Get(in, "first_guide_max_s_m");
  problem.last_high_m = Get(in, "last_guide_max_s_m");
  problem.least_gaps_m.assign(problem.offsets_m.size(), Get(in, "min_ring_gap_m"));
  problem.gaps_never_grow = false;
  for (const Value& load : in["load_cases"].GetArray()) {
    const Value& clearance = load["clearance_min_m"];
    problem.cases.push_back({std::to_string(problem.cases.size() + 1), Get(load, "tension_N"),
                             Radians(Get(load, "phi_deg")), Radians(Get(in, "butt_angle_deg")), Get(load, "weight"),
                             clearance.IsNull() ? std::nullopt : std::optional(clearance.GetDouble())});
  }
  return problem;
}

Value AnswerPlacement(const Value& entry, Allocator& allocator) {
  constexpr double kEighthOfAnInch = 0.0254 / 8;
  const PlacementProblem problem = PlacementOf(entry["input"]);
  Fields fields(allocator);
  const Placement found = PlaceGuides(problem);
  fields.Put("J_best_rad", found.best.j).Put("J_best_deg", found.best.j * 180 / std::numbers::pi);
  fields.Put("best_known", FoundAnswer(problem, allocator));
  PlacementProblem monotone = problem;
  monotone.gaps_never_grow = true;
  fields.Put("monotone", FoundAnswer(monotone, allocator));
  if (const auto fewer = OneFewer(problem)) fields.Put("one_guide_fewer", FoundAnswer(*fewer, allocator));
  if (const auto more = OneMore(problem)) fields.Put("one_guide_more", FoundAnswer(*more, allocator));
  const Placement on_grid = OnGrid(problem, found.best, kEighthOfAnInch);
  fields.Put("on_eighth_inch_grid", LayoutAnswer(problem, on_grid.best, allocator));
  fields.Put("sensitivity", SensitivityAnswer(problem, found.best, allocator));
  Value layouts(rapidjson::kObjectType);
  for (const Value* from : {&entry, &entry["input"]}) AddGiven(problem, *from, layouts, allocator);
  if (entry.HasMember("expected")) AddGiven(problem, entry["expected"], layouts, allocator);
  return fields.Put("layouts", std::move(layouts)).Take();
}

}  // namespace withy::reference
