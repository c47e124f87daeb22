// Quantities as people write them at the bench.
//
//   ParseLength("7' 3 1/2\"")->value.mm()     // 2222.5
//   ParseLength("12 3/16 in")->number         // 12.1875, ->unit "inch"
//   ParseLength("5.5/64 in")->unit            // "in64", ->number 5.5
//   ParseMass("150 gr")->unit                 // "grain": gr is the grain, g the gram
//   ParseLength("2,5 mm")                     // refused: column 2: a comma is not a decimal point: write 2.5
//   ParseLength("87")                         // refused: column 3: a number without a unit: add one, 87 mm or 87 in
//
// A number is decimal ("3.5", ".5", "1e-3"), a fraction ("1/4", "5.5/64") or mixed ("3 1/2", "3-1/2", "3½"). Feet may
// be followed by inches under 12. Straight and typographic marks are read (' ′ ’ and " ″ ”), letters in either case.
// Refused, each with the column (in characters, from 1) and what to write instead: a comma, a missing or foreign unit,
// "nan", "inf", hexadecimal, a number beyond a double, and anything left over. Errors are InvalidArgument.
#ifndef WITHY_UNITS_PARSE_H_
#define WITHY_UNITS_PARSE_H_

#include <span>
#include <string_view>

#include "absl/status/statusor.h"
#include "withy/units/quantity.h"

namespace withy {

// A quantity with the number and unit to store, so that a file keeps what the author wrote.
template <typename Kind>
struct Written {
  double number = 0;  // in `unit`
  std::string_view
      unit;  // the schema's name: "inch". Where it has no such unit, the nearest: cm and m are mm, ft is inch
  Kind value;
};
using LengthText = Written<Length>;
using MassText = Written<Mass>;
using VolumeText = Written<Volume>;
using AngleText = Written<Angle>;
using ForceText = Written<Force>;
using TemperatureText = Written<Temperature>;
using DurationText = Written<Duration>;

// mm, cm, m, in, ft (alone or with inches), 64ths of an inch (as a fraction over 64 without a whole part, or "in64").
absl::StatusOr<LengthText> ParseLength(std::string_view text);
// g, kg, oz (avoirdupois), lb, gr or grain.
absl::StatusOr<MassText> ParseMass(std::string_view text);
// ml, cc, l, fl oz (US).
absl::StatusOr<VolumeText> ParseVolume(std::string_view text);
// deg, °.
absl::StatusOr<AngleText> ParseAngle(std::string_view text);
// N, lbf or lb, kgf or kg, ozf: line strength is sold in pounds and kilograms.
absl::StatusOr<ForceText> ParseForce(std::string_view text);
// C, F, with or without °.
absl::StatusOr<TemperatureText> ParseTemperature(std::string_view text);
// s, min, h, days.
absl::StatusOr<DurationText> ParseDuration(std::string_view text);

// The same where the kind is known by the schema's name only ("Length", "Time"). NotFound where there are no words for
// it.
struct WrittenNumber {
  double number = 0;
  std::string_view unit;  // the schema's name; `number` is in it
};
absl::StatusOr<WrittenNumber> ParseQuantity(std::string_view kind, std::string_view text);
// The kinds that ParseQuantity knows.
std::span<const std::string_view> KindsInWords();

}  // namespace withy

#endif  // WITHY_UNITS_PARSE_H_
