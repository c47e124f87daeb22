#include "withy/fit/fit.h"

#include <algorithm>

#include "clearance.h"
#include "on_blank.h"
#include "pieces.h"

namespace withy {
namespace {

// The profile's own readings are as uncertain as the one at the tip.
void FillTipTube(const Rod& rod, const SectionsAnswers& sections, FitAnswers& answers) {
  if (!rod.tip_top || !sections.tip_diameter_m || !rod.blank.length_m || rod.blank.outer.empty()) return;
  const double tip = rod.blank.length_m->value();
  const Maybe<Length>& tube = rod.tip_top->tube_length;
  const double reach = tube ? std::clamp(tube->value.meters(), 0.0, tip) : 0;
  const double thicker = std::max(0.0, rod.blank.outer.Max(tip - reach, tip) - sections.tip_diameter_m->value());
  answers.under_tip_tube_m = *sections.tip_diameter_m + Uncertain(thicker);
  if (!rod.tip_top->tube_bore) return;
  answers.tip_tube_clearance_m = Uncertain(rod.tip_top->tube_bore->value.meters()) - *answers.under_tip_tube_m;
}

// An arbor that binds is what the blank touches the handle with.
void AddArborContacts(const Rod& rod, FitAnswers& answers) {
  if (!answers.cut || answers.cut->host < 0) return;
  const Part& host = rod.handle.parts[answers.cut->host];
  for (const ArborFit& arbor : answers.parts[answers.cut->host].arbors) {
    if (!arbor.binds_at_m || !host.start.from_butt_m) continue;
    BlankContact contact;
    contact.kind = BlankContact::Kind::kArbor;
    contact.bore_m = arbor.outer_m;
    contact.from_m = host.start.from_butt_m->value() + *arbor.binds_at_m;
    answers.cut->planned.contacts.push_back(contact);
    if (answers.cut->planned_m <= answers.cut->done_m) answers.cut->now.contacts.push_back(contact);
  }
}

// Of the part that the blank rests in, those of the design, else those that are proposed.
std::vector<ArborInBore> ArborsOfHost(const Rod& rod, const FitAnswers& answers) {
  std::vector<ArborInBore> arbors;
  if (!answers.cut || answers.cut->host < 0) return arbors;
  const auto& start_m = rod.handle.parts[answers.cut->host].start.from_butt_m;
  const PartFit& fit = answers.parts[answers.cut->host];
  for (const ArborFit& arbor : fit.arbors.empty() ? fit.proposed : fit.arbors) {
    if (!start_m || !arbor.start_m || !arbor.length_m || !arbor.outer_m) continue;
    const double from_m = *arbor.start_m - start_m->value();
    arbors.push_back({from_m, from_m + *arbor.length_m, *arbor.outer_m});
  }
  return arbors;
}

}  // namespace

FitAnswers ComputeFit(const Rod& rod, const SectionsAnswers& sections) {
  FitAnswers answers;
  answers.overall_m = rod.overall_m;
  answers.cut = PlanCut(rod);
  answers.verdict = VerdictOf(rod);
  answers.measure = MeasureForLength(rod, answers.cut);
  if (!rod.overall_m) answers.unknowns.push_back({"fit.overall_length_mm", answers.measure});
  if (rod.overall_m && rod.order.overall_length) {
    answers.short_of_target_m = Uncertain(rod.order.overall_length->value.meters()) - *rod.overall_m;
  }
  for (const Part& part : rod.handle.parts) answers.parts.push_back(FitOf(rod, part));
  AddArborContacts(rod, answers);
  answers.play = MouthPlayOf(rod, ArborsOfHost(rod, answers));
  answers.reaming = ReamTablesOf(rod);
  answers.winding_checks = WindingChecksOf(rod);
  FillTipTube(rod, sections, answers);
  FillPieces(rod, answers);
  return answers;
}

}  // namespace withy
