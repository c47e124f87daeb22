// Lengths as the bench reads them: the unit of the design first, mm beside inches.
//
//   BenchText(76.2, LengthUnits::kInch)          // 3" (76.2 mm)
//   BenchRange(2308.2, 2311, LengthUnits::kInch) // 90 7/8" to 91" (2308.2 to 2311.0 mm)
#ifndef WITHY_REVIEW_BENCH_TEXT_H_
#define WITHY_REVIEW_BENCH_TEXT_H_

#include <optional>
#include <string>

#include "withy/review/length_units.h"
#include "withy/v1/quantity.pb.h"

namespace withy {

// To the nearest 1/16 in and 0.1 mm, or to 0.1 mm alone. "-" where it is not known.
std::string BenchText(std::optional<double> mm, LengthUnits units);

// The same of a length that an order or rule names: `87" ± 1/4" (2209.8 ± 6.4 mm)`.
std::string BenchText(double mm, std::optional<double> plus_minus_mm, LengthUnits units);

// A band, rounded outward, so that what is within it is within what is printed. In inches to 1/16, in mm to whole mm.
std::string BenchRange(double from_mm, double to_mm, LengthUnits units);

// The figure as it is written on a command line: `76.2 mm`, `3 in`, `2 15/16 in`.
std::string TypedLength(double mm, LengthUnits units);

// "log[e9]" of "log[e9].cut": the entry that a path leads into.
std::string EntryOf(const std::string& path);

// What a quantity of a design says in mm; unset without a unit. Its plus_minus likewise.
std::optional<double> MmOf(const v1::Length& length);
std::optional<double> PlusMinusMmOf(const v1::Length& length);

}  // namespace withy

#endif  // WITHY_REVIEW_BENCH_TEXT_H_
