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
#include "withy/v1/design.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {

// The most that one cut may take, and the last one.
struct CutLimits {
  double largest_mm = 0, last_mm = 0;
};

// The design's, else 3 in and 1/4 in (common practice, no source); a cut is no less than the kerf.
CutLimits CutLimitsOf(const v1::Design& design);

struct BenchCut {
  v1::StagedCut cut;
  int stage = 0;  // in CutPlan::stages, that it belongs to
};

// The stages of `plan` in steps of 1/16 in or 1 mm; one that is less than a step is left out, its millimetres go to the
// next. No cut takes more than the largest, and a last one that is planned small no more than the last may, or one step
// where that is less: what is then left over waits for the next dry fit, and where the plan's own last stage is left out
// the one before it is parted. A last stage that is large is not the last cut of all, but the last that is sure so far.
std::vector<BenchCut> BenchCuts(const v1::CutPlan& plan, LengthUnits units, const CutLimits& limits);

// Something is to come off, and no cut of it is planned.
bool CutIsMissing(const v1::CutPlan& plan);

// Why no cut is to come that can be marked, a sentence without its point; empty where no cut can be told at all.
std::string NoCutBecause(const v1::CutPlan& plan, const v1::Design& design);

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
