// The cuts to come, as they are marked on the blank: whole sixteenths of an inch or whole millimetres.
//
// Rounded down, never past: what is taken off in all stays at or below what the plan takes off, at every stage. What is
// then expected of each dry fit follows from the rounded cut by the law of the plan (CutPlan::lengths), so that the
// figures of one line agree.
#ifndef WITHY_REVIEW_BENCH_CUTS_H_
#define WITHY_REVIEW_BENCH_CUTS_H_

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "withy/review/length_units.h"
#include "withy/v1/report.pb.h"

namespace withy {

// The stages of `plan` in steps of 1/16 in or 1 mm; one that is less than a step is left out, its millimetres go to the
// next. No stage takes more than `largest_mm`, where that is given.
std::vector<v1::StagedCut> BenchCuts(const v1::CutPlan& plan, LengthUnits units, std::optional<double> largest_mm);

// Finished length at a cut by the law of the plan: of its points the last at or before the cut, and its slope. Unset
// where the plan has none there.
std::optional<double> OverallAt(const v1::CutPlan& plan, double cut_mm);

// How many of so many cuts are worth telling one by one: all of a few, else the first, for each dry fit plans the rest
// anew.
std::size_t ShownCuts(std::size_t cuts);

// "8 more, planned anew after each dry fit".
std::string MoreCuts(std::size_t more);

// Cuts are to come that neither the log nor the design has: every figure of the report but the cuts themselves is of
// the rod before them.
bool CutsAreToCome(const v1::CutPlan& plan);

}  // namespace withy

#endif  // WITHY_REVIEW_BENCH_CUTS_H_
