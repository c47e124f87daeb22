#include "withy/fit/fit.h"

#include <string>

#include "clearance.h"
#include "pieces.h"

namespace withy {
namespace {

// What stands between the design and its finished length, the first thing first.
std::string WhatTellsTheLength(const Rod& rod) {
  if (!rod.not_understood.empty()) return "make the log entry understood that may be a cut";
  if (!rod.blank.length_m && rod.rest_basis != RestBasis::kDryFit) {
    return "measure the sections, and how far they seat in one another";
  }
  if (!rod.blank_tip_m) return rod.rest_measure;
  if (!rod.tip_top) return "describe the tip-top: it lengthens the rod";
  return "measure the tip-top from the tip end of its tube to its outermost point (tip_top.end_beyond_tube)";
}

}  // namespace

FitAnswers ComputeFit(const Rod& rod, const SectionsAnswers& sections) {
  FitAnswers answers;
  answers.overall_m = rod.overall_m;
  if (!rod.overall_m) answers.unknowns.push_back({"fit.overall_length_mm", WhatTellsTheLength(rod)});
  if (rod.overall_m && rod.order.overall_length) {
    answers.short_of_target_m = Uncertain(rod.order.overall_length->value.meters()) - *rod.overall_m;
  }
  for (const Part& part : rod.handle.parts) answers.parts.push_back(FitOf(rod, part));
  if (rod.tip_top && rod.tip_top->tube_bore && sections.tip_diameter_m) {
    answers.tip_tube_clearance_m = Uncertain(rod.tip_top->tube_bore->value.meters()) - *sections.tip_diameter_m;
  }
  FillPieces(rod, answers);
  return answers;
}

}  // namespace withy
