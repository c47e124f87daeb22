#include "figure_text.h"

#include <cmath>

#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr int kMostDecimals = 3;
constexpr int kSixteenths = 16;

}  // namespace

std::string FigureText(std::optional<double> figure, int decimals) {
  return figure ? FormatFixed(*figure, decimals) : kNotKnown;
}

std::string UncertainText(std::optional<double> figure, std::optional<double> plus_minus, int decimals) {
  if (!figure || !plus_minus) return FigureText(figure, decimals);
  while (decimals<kMostDecimals&& * plus_minus> 0 && *plus_minus < 0.5 * std::pow(10, -decimals)) ++decimals;
  return FormatFixed(*figure, decimals) + " ± " + FormatFixed(*plus_minus, decimals);
}

std::string AlongText(std::optional<double> mm, LengthUnits units) {
  if (!mm) return kNotKnown;
  return units == LengthUnits::kMm ? FormatFixed(*mm, 1) : FormatInches(Length::Mm(*mm), kSixteenths);
}

std::string AlongText(std::optional<double> mm, std::optional<double> plus_minus_mm, LengthUnits units) {
  if (!mm) return kNotKnown;
  if (units == LengthUnits::kMm) return UncertainText(mm, plus_minus_mm, 1) + " mm";
  std::string text = AlongText(mm, units);
  if (plus_minus_mm) text += " ± " + FormatFixed(Length::Mm(*plus_minus_mm).inches(), 2) + "\"";
  return text;
}

std::string UnitName(LengthUnits units) {
  return units == LengthUnits::kMm ? "mm" : "in";
}

}  // namespace withy
