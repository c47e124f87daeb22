// One figure of a report by its path: value, uncertainty, unit, and how a person reads it.
#ifndef WITHY_REVIEW_FIGURE_VALUE_H_
#define WITHY_REVIEW_FIGURE_VALUE_H_

#include <optional>
#include <string>
#include <string_view>

#include "withy/findings/field_path.h"
#include "withy/v1/report.pb.h"

namespace withy {

struct FigureValue {
  bool told = false;
  std::optional<double> value;       // of a number
  std::optional<double> plus_minus;  // that the report gives
  std::string unit;                  // as people write it
  std::string text;                  // of a text, or of a list of numbers
};
FigureValue FigureAt(const v1::Report& report, const FieldPath& path);

// The unit that a figure's name ends with, as in the schema: "n_m" of "moment_about_hold_n_m"; empty = none.
std::string_view UnitSuffix(std::string_view name);
// "mass_plus_minus_g" of "mass_g", and back; a name that is none is given back as it is.
std::string PlusMinusName(std::string_view name);
std::string WithoutPlusMinus(std::string_view name);

// "2209.8 ± 1.6 mm".
std::string ReadableFigure(const FigureValue& figure);
// "± 1.6 mm" by itself.
std::string ReadablePlusMinus(double plus_minus, std::string_view unit);

}  // namespace withy

#endif  // WITHY_REVIEW_FIGURE_VALUE_H_
