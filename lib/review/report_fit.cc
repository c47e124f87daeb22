// Fit in the report: lengths, parts in place, bores.
#include <algorithm>

#include "figures.h"
#include "report_parts.h"

namespace withy {
namespace {

const char* RestWord(const Rod& rod) {
  switch (rod.rest_basis) {
    case RestBasis::kGiven:
      return "given";
    case RestBasis::kDryFit:
      return "dry fit";
    case RestBasis::kLaw:
      return rod.rest_law && rod.rest_law->from() == RestLaw::From::kContact ? "contact" : "dry fits";
    case RestBasis::kAgainstCap:
      return "cap";
    case RestBasis::kUnknown:
      break;
  }
  return "";
}

const char* PlaceWord(ArborFit::Place place) {
  switch (place) {
    case ArborFit::Place::kScrewThread:
      return "screw thread";
    case ArborFit::Place::kStraight:
      return "straight";
    case ArborFit::Place::kNeck:
      return "neck";
    case ArborFit::Place::kRear:
      return "rear";
    case ArborFit::Place::kGiven:
      break;
  }
  return "given";
}

void ReportArbor(const ArborFit& fit, v1::FittedArbor& to) {
  Put(fit.start_m, kMm, [&](double mm) { to.set_start_mm(mm); });
  Put(fit.length_m, kMm, [&](double mm) { to.set_length_mm(mm); });
  Put(fit.blank_m, kMm, [&](double mm) { to.set_blank_mm(mm); });
  Put(fit.bore_m, kMm, [&](double mm) { to.set_bore_mm(mm); });
  Put(fit.outer_m, kMm, [&](double mm) { to.set_outer_mm(mm); });
  if (fit.turns) to.set_turns(static_cast<std::uint32_t>(*fit.turns));
  Put(fit.tape_length_m, kMm, [&](double mm) { to.set_tape_length_mm(mm); });
  Put(fit.gap_m, kMm, [&](double mm) { to.set_gap_mm(mm); });
  to.set_place(PlaceWord(fit.place));
}

void ReportPart(const Part& part, const PartFit& fit, v1::FittedPart& to) {
  to.set_id(part.id);
  Put(part.start.from_butt_m, kMm, [&](double mm) { to.set_start_mm(mm); });
  Put(part.length, kMm, [&](double mm) { to.set_length_mm(mm); });
  Put(fit.blank_at_start_m, kMm, [&](double mm) { to.set_blank_at_start_mm(mm); });
  Put(fit.blank_at_tip_side_m, kMm, [&](double mm) { to.set_blank_at_tip_side_mm(mm); });
  Put(fit.clearance_m, kMm, [&](double mm) { to.set_clearance_mm(mm); });
  for (std::size_t i = 0; i < part.arbors.size(); ++i) {
    v1::FittedArbor& arbor = *to.add_arbors();
    ReportArbor(fit.arbors[i], arbor);
    arbor.set_id(part.arbors[i].id);
    Put(part.arbors[i].start.from_butt_m, kMm, [&](double mm) { arbor.set_start_mm(mm); });
    Put(part.arbors[i].length, kMm, [&](double mm) { arbor.set_length_mm(mm); });
  }
  for (const ArborFit& proposed : fit.proposed) {
    v1::FittedArbor& arbor = *to.add_arbors();
    ReportArbor(proposed, arbor);
    arbor.set_proposed(true);
  }
}

void ReportReaming(const Rod& rod, const ReamTable& table, v1::ReamTable& to) {
  to.set_part(rod.handle.parts[table.part].id);
  for (const ReamTable::Row& row : table.rows) {
    v1::ReamRow& line = *to.add_rows();
    line.set_at_mm(row.at_m * kMm);
    line.set_blank_mm(row.blank_m * kMm);
    line.set_ream_mm(row.ream_m * kMm);
    Put(row.bore_m, kMm, [&](double mm) { line.set_bore_mm(mm); });
  }
}

void ReportWindingCheck(const Rod& rod, const WindingCheckFit& fit, v1::WindingCheckFit& to) {
  to.set_part(rod.handle.parts[fit.part].id);
  to.set_blank_mm(fit.blank_m * kMm);
  Put(fit.bore_m, kMm, [&](double mm) { to.set_bore_mm(mm); });
  if (fit.bore_m) to.set_gap_mm((*fit.bore_m - fit.blank_m) * kMm);
  Put(fit.next_bore_m, kMm, [&](double mm) { to.set_next_bore_mm(mm); });
  Put(fit.next_stops_ahead_m, kMm, [&](double mm) { to.set_next_stops_ahead_mm(mm); });
  Put(fit.ream_m, kMm, [&](double mm) { to.set_ream_mm(mm); });
}

}  // namespace

void ReportFit(const Rod& rod, const FitAnswers& answers, v1::FitReport& report) {
  PutWithPlusMinus(
      answers.overall_m, kMm, [&](double mm) { report.set_overall_length_mm(mm); },
      [&](double mm) { report.set_overall_length_plus_minus_mm(mm); });
  Put(answers.short_of_target_m, kMm, [&](double mm) { report.set_short_of_target_mm(mm); });
  Put(rod.blank_butt_m, kMm, [&](double mm) { report.set_blank_butt_mm(mm); });
  Put(rod.blank_tip_m, kMm, [&](double mm) { report.set_blank_tip_mm(mm); });
  for (std::size_t i = 0; i < rod.handle.parts.size(); ++i) {
    ReportPart(rod.handle.parts[i], answers.parts[i], *report.add_parts());
  }
  Put(rod.tip_ring_m, kMm, [&](double mm) { report.set_tip_ring_mm(mm); });
  Put(answers.tip_tube_clearance_m, kMm, [&](double mm) { report.set_tip_tube_clearance_mm(mm); });
  report.set_rest_from(RestWord(rod));
  ReportCutPlan(rod, answers, report);
  if (answers.play) {
    Put(std::optional<double>(answers.play->play_m), kMm, [&](double mm) { report.set_mouth_play_mm(mm); });
    Put(answers.play->off_axis_m, kMm, [&](double mm) { report.set_tip_off_axis_mm(mm); });
    Put(answers.play->off_axis_with_arbors_m, kMm, [&](double mm) { report.set_tip_off_axis_with_arbors_mm(mm); });
  }
  for (const ReamTable& table : answers.reaming) ReportReaming(rod, table, *report.add_reaming());
  for (const WindingCheckFit& fit : answers.winding_checks) ReportWindingCheck(rod, fit, *report.add_winding_checks());
}

}  // namespace withy
