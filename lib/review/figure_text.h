// Figures of the report as cells of text.
#ifndef WITHY_REVIEW_FIGURE_TEXT_H_
#define WITHY_REVIEW_FIGURE_TEXT_H_

#include <optional>
#include <string>

#include "withy/review/show_text.h"

namespace withy {

// A figure of the report, an `optional double` of the schema, as std::optional<double>.
#define WITHY_FIGURE(message, name) \
  ((message).has_##name() ? std::optional<double>((message).name()) : std::optional<double>())

inline constexpr char kNotKnown[] = "-";

// "12.30", or "-" where it is not known.
std::string FigureText(std::optional<double> figure, int decimals);

// "69.4 ± 0.1", without the second part where the uncertainty is not known. Decimals grow until the uncertainty shows.
std::string UncertainText(std::optional<double> figure, std::optional<double> plus_minus, int decimals);

// A length along the rod without its unit's name in mm ("2209.8"), with the mark in inches (`87"`).
std::string AlongText(std::optional<double> mm, LengthUnits units);

// A length along the rod with unit and uncertainty: "2209.8 ± 1.2 mm", `87" ± 0.05"`.
std::string AlongText(std::optional<double> mm, std::optional<double> plus_minus_mm, LengthUnits units);

// "mm" or "in", for headings.
std::string UnitName(LengthUnits units);

}  // namespace withy

#endif  // WITHY_REVIEW_FIGURE_TEXT_H_
