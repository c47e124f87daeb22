// The plan before the saw, for people: what is ordered and what it comes out at, where the blank rests, what the log
// has closed, the dry fits against what was expected of them, the cuts to come, arbors, bores, winding checks.
//
//   std::cout << TrimText("rod.txtpb", design, review.report, {.units = LengthUnits::kInch});
//
// Made from the report alone (FitReport, closed), with names and limits taken from the design; computes nothing but the
// rounding of cuts to what a tape measure shows, down and never past. Reads in 80 columns.
#ifndef WITHY_REVIEW_TRIM_TEXT_H_
#define WITHY_REVIEW_TRIM_TEXT_H_

#include <string>
#include <string_view>

#include "withy/review/show_text.h"

namespace withy {

std::string TrimText(std::string_view file, const v1::Design& design, const v1::Report& report,
                     const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_TRIM_TEXT_H_
