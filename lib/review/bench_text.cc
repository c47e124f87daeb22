#include "bench_text.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "figure_text.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr int kSixteenths = 16;
constexpr double kSixteenth_mm = 25.4 / kSixteenths;
constexpr double kHair = 1e-6;  // of a step: rounding of what is a whole number of steps

std::string Inches(double mm) {
  return FormatInches(Length::Mm(mm), kSixteenths);
}

double InUnitOf(const v1::Length& length, double number) {
  switch (length.unit_case()) {
    case v1::Length::kInch:
      return Length::Inches(number).mm();
    case v1::Length::kIn64:
      return Length::In64(number).mm();
    default:
      return number;
  }
}

}  // namespace

std::string BenchText(std::optional<double> mm, LengthUnits units) {
  if (!mm) return kNotKnown;
  const std::string in_mm = FormatMm(Length::Mm(*mm), 1);
  return units == LengthUnits::kMm ? in_mm : absl::StrCat(Inches(*mm), " (", in_mm, ")");
}

std::string BenchText(double mm, std::optional<double> plus_minus_mm, LengthUnits units) {
  const std::string in_mm = absl::StrCat(UncertainText(mm, plus_minus_mm, 1), " mm");
  if (units == LengthUnits::kMm) return in_mm;
  // A sixteenth would hide a smaller band.
  const std::string band = !plus_minus_mm ? ""
                           : *plus_minus_mm < kSixteenth_mm - kHair
                               ? absl::StrCat(" ± ", FormatFixed(Length::Mm(*plus_minus_mm).inches(), 2), "\"")
                               : " ± " + Inches(*plus_minus_mm);
  return absl::StrCat(Inches(mm), band, " (", in_mm, ")");
}

std::string BenchRange(double from_mm, double to_mm, LengthUnits units) {
  const std::string in_mm = absl::StrCat(FormatFixed(std::floor(from_mm + kHair), 0), " to ",
                                         FormatFixed(std::ceil(to_mm - kHair), 0), " mm");
  if (units == LengthUnits::kMm) return in_mm;
  const double from = std::floor(from_mm / kSixteenth_mm + kHair) * kSixteenth_mm;
  const double to = std::ceil(to_mm / kSixteenth_mm - kHair) * kSixteenth_mm;
  return absl::StrCat(Inches(from), " to ", Inches(to), " (", in_mm, ")");
}

std::string TypedLength(double mm, LengthUnits units) {
  if (units == LengthUnits::kMm) return FormatShortest(std::round(mm * 10) / 10) + " mm";
  std::string inches = Inches(mm);
  inches.pop_back();  // the mark
  return inches + " in";
}

std::string EntryOf(const std::string& path) {
  const std::size_t end = path.find(']');
  return end == std::string::npos ? path : path.substr(0, end + 1);
}

std::optional<double> MmOf(const v1::Length& length) {
  switch (length.unit_case()) {
    case v1::Length::kMm:
      return length.mm();
    case v1::Length::kInch:
      return InUnitOf(length, length.inch());
    case v1::Length::kIn64:
      return InUnitOf(length, length.in64());
    default:
      return std::nullopt;
  }
}

std::optional<double> PlusMinusMmOf(const v1::Length& length) {
  if (!length.has_plus_minus() || !MmOf(length)) return std::nullopt;
  return InUnitOf(length, length.plus_minus());
}

}  // namespace withy
