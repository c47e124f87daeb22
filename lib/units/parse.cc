#include "withy/units/parse.h"

#include <cmath>
#include <span>
#include <string>

#include "absl/strings/str_cat.h"
#include "quantity_cursor.h"
#include "withy/units/unit.h"

namespace withy {
namespace {

// A word for a unit. `times` of the schema's `unit` make one of it.
struct UnitWord {
  std::string_view word;
  std::string_view unit;
  double times = 1;
};

// Longer words before those they begin with.
constexpr UnitWord kLengthWords[] = {
    {"millimeters", "mm"}, {"millimetres", "mm"},  {"millimeter", "mm"},   {"millimetre", "mm"},  {"mm", "mm"},
    {"cm", "mm", 10},      {"meters", "mm", 1000}, {"metres", "mm", 1000}, {"meter", "mm", 1000}, {"metre", "mm", 1000},
    {"m", "mm", 1000},     {"inches", "inch"},     {"inch", "inch"},       {"in64", "in64"},      {"in.", "inch"},
    {"in", "inch"},        {"\"", "inch"},         {"\u2033", "inch"},     {"\u201d", "inch"},    {"''", "inch"}};
constexpr std::string_view kFootWords[] = {"feet", "foot", "ft.", "ft", "\u2032", "\u2019", "'"};
constexpr UnitWord kMassWords[] = {
    {"grams", "g"},  {"grammes", "g"}, {"gram", "g"},        {"grains", "grain"}, {"grain", "grain"}, {"gr.", "grain"},
    {"gr", "grain"}, {"gn", "grain"},  {"g", "g"},           {"kg", "g", 1000},   {"ounces", "oz"},   {"ounce", "oz"},
    {"oz.", "oz"},   {"oz", "oz"},     {"pounds", "oz", 16}, {"pound", "oz", 16}, {"lbs", "oz", 16},  {"lb", "oz", 16}};
constexpr UnitWord kVolumeWords[] = {{"ml", "ml"},        {"cm3", "ml"},      {"cc", "ml"},
                                     {"cl", "ml", 10},    {"l", "ml", 1000},  {"fl. oz.", "fl_oz"},
                                     {"fl. oz", "fl_oz"}, {"fl oz", "fl_oz"}, {"fl_oz", "fl_oz"}};
constexpr UnitWord kAngleWords[] = {{"degrees", "deg"}, {"degree", "deg"}, {"deg", "deg"}, {"\u00b0", "deg"}};
constexpr UnitWord kForceWords[] = {
    {"newtons", "n"},  {"newton", "n"},  {"n", "n"},     {"lbf", "lbf"}, {"lbs", "lbf"},          {"lb", "lbf"},
    {"pounds", "lbf"}, {"pound", "lbf"}, {"kgf", "kgf"}, {"kg", "kgf"},  {"ozf", "lbf", 1.0 / 16}};
constexpr UnitWord kTemperatureWords[] = {{"\u00b0C", "celsius"},    {"celsius", "celsius"},       {"C", "celsius"},
                                          {"\u00b0F", "fahrenheit"}, {"fahrenheit", "fahrenheit"}, {"F", "fahrenheit"}};
constexpr UnitWord kTimeWords[] = {
    {"seconds", "seconds"}, {"second", "seconds"}, {"sec", "seconds"}, {"s", "seconds"},  {"minutes", "minutes"},
    {"minute", "minutes"},  {"min", "minutes"},    {"hours", "hours"}, {"hour", "hours"}, {"hrs", "hours"},
    {"hr", "hours"},        {"h", "hours"},        {"days", "days"},   {"day", "days"},   {"d", "days"}};

// How one kind of quantity is written.
struct KindWords {
  std::string_view kind;   // the schema's name
  std::string_view noun;   // for messages
  std::string_view units;  // for messages: what may be written
  std::string_view example[2];
  std::span<const UnitWord> words;
};

constexpr KindWords kLength = {
    "Length", "a length", "mm, cm, m, in, ft or 64ths of an inch (5/64 in)", {"mm", "in"}, kLengthWords};
constexpr KindWords kMass = {"Mass", "a mass", "g, kg, oz, lb or gr (grains)", {"g", "oz"}, kMassWords};
constexpr KindWords kVolume = {"Volume", "a volume", "ml, l or fl oz", {"ml", "fl oz"}, kVolumeWords};
constexpr KindWords kAngle = {"Angle", "an angle", "deg or \u00b0", {"deg", "\u00b0"}, kAngleWords};
constexpr KindWords kForce = {"Force", "a force", "N, lbf, kgf or ozf", {"lbf", "kgf"}, kForceWords};
constexpr KindWords kTemperature = {"Temperature", "a temperature", "C or F", {"C", "F"}, kTemperatureWords};
constexpr KindWords kTime = {"Time", "a time", "s, min, h or days", {"min", "h"}, kTimeWords};

constexpr KindWords kKinds[] = {kLength, kMass, kVolume, kAngle, kForce, kTemperature, kTime};

bool IsLetter(std::string_view text) {
  return !text.empty() && ((text[0] >= 'a' && text[0] <= 'z') || (text[0] >= 'A' && text[0] <= 'Z'));
}

// Takes a word only where it ends: "m" is not the beginning of "mil".
bool TakeWord(QuantityCursor& cursor, std::string_view word) {
  QuantityCursor after = cursor;
  if (!after.Take(word) || (IsLetter(word) && IsLetter(after.Rest()))) return false;
  cursor = after;
  return true;
}

absl::Status ReadUnit(QuantityCursor& cursor, const KindWords& kind, std::string_view number, const UnitWord*& found) {
  for (const UnitWord& word : kind.words) {
    if (!TakeWord(cursor, word.word)) continue;
    found = &word;
    return absl::OkStatus();
  }
  if (cursor.AtEnd()) {
    return cursor.Fail(absl::StrCat("a number without a unit: add one, ", std::string(number), " ",
                                    std::string(kind.example[0]), " or ", std::string(number), " ",
                                    std::string(kind.example[1])));
  }
  return cursor.Fail(absl::StrCat("\"", std::string(cursor.Rest()), "\" is not a unit of ", std::string(kind.noun),
                                  ": write ", std::string(kind.units)));
}

bool TakeFoot(QuantityCursor& cursor) {
  for (std::string_view word : kFootWords) {
    // Two straight marks are inches.
    if (word == "'" && cursor.Rest().starts_with("''")) continue;
    if (TakeWord(cursor, word)) return true;
  }
  return false;
}

// What may follow feet: nothing, or inches under 12.
absl::Status ReadInchesAfterFeet(QuantityCursor& cursor, const NumberText& feet, WrittenNumber& result) {
  result = {feet.value * 12, "inch"};
  cursor.SkipSpace();
  cursor.Take("-");
  cursor.SkipSpace();
  if (cursor.AtEnd()) return absl::OkStatus();
  if (!feet.is_whole) return cursor.Fail("feet that are followed by inches must be whole");
  const QuantityCursor inches_at = cursor;
  NumberText inches;
  if (absl::Status status = cursor.ReadNumber(inches); !status.ok()) return status;
  cursor.SkipSpace();
  const QuantityCursor unit_at = cursor;
  const UnitWord* unit = nullptr;
  if (!ReadUnit(cursor, kLength, "", unit).ok() || unit->unit != "inch") {
    return unit_at.Fail("feet are followed by inches: write 7' 3\" or 7 ft 3 in");
  }
  if (inches.value >= 12) return inches_at.Fail("inches after feet must be under 12");
  result.number += inches.value;
  return absl::OkStatus();
}

absl::Status ReadQuantity(QuantityCursor& cursor, const KindWords& kind, WrittenNumber& result) {
  const QuantityCursor number_at = cursor;
  NumberText number;
  if (absl::Status status = cursor.ReadNumber(number); !status.ok()) return status;
  const std::string written(number_at.Rest().substr(0, number_at.Rest().size() - cursor.Rest().size()));
  cursor.SkipSpace();
  if (kind.kind == "Length" && TakeFoot(cursor)) return ReadInchesAfterFeet(cursor, number, result);
  const UnitWord* unit = nullptr;
  if (absl::Status status = ReadUnit(cursor, kind, written, unit); !status.ok()) return status;
  result = {number.value * unit->times, unit->unit};
  if (unit->unit == "inch" && number.is_over_64) result = {number.over_64, "in64"};
  return absl::OkStatus();
}

// The number in the schema's unit, and the same in the kind's first unit.
absl::StatusOr<WrittenNumber> Parse(std::string_view text, const KindWords& kind, double& in_first) {
  QuantityCursor cursor(text);
  cursor.SkipSpace();
  if (cursor.AtEnd())
    return cursor.Fail(absl::StrCat("nothing is written where ", std::string(kind.noun), " was expected"));
  const double sign = cursor.TakeSign();
  cursor.SkipSpace();
  WrittenNumber result;
  if (absl::Status status = ReadQuantity(cursor, kind, result); !status.ok()) return status;
  cursor.SkipSpace();
  if (!cursor.AtEnd()) return cursor.Fail(absl::StrCat("\"", std::string(cursor.Rest()), "\" is left over"));
  result.number *= sign;
  in_first = FindUnit(kind.kind, result.unit)->to_first(result.number);
  if (!std::isfinite(in_first)) return QuantityCursor(text).Fail("the number is too large to hold");
  return result;
}

template <typename Kind>
absl::StatusOr<Written<Kind>> ParseAs(std::string_view text, const KindWords& kind, Kind (*from_first)(double)) {
  double in_first = 0;
  absl::StatusOr<WrittenNumber> parsed = Parse(text, kind, in_first);
  if (!parsed.ok()) return parsed.status();
  return Written<Kind>{parsed->number, parsed->unit, from_first(in_first)};
}

}  // namespace

absl::StatusOr<LengthText> ParseLength(std::string_view text) {
  return ParseAs(text, kLength, Length::Mm);
}
absl::StatusOr<MassText> ParseMass(std::string_view text) {
  return ParseAs(text, kMass, Mass::Grams);
}
absl::StatusOr<VolumeText> ParseVolume(std::string_view text) {
  return ParseAs(text, kVolume, Volume::Milliliters);
}
absl::StatusOr<AngleText> ParseAngle(std::string_view text) {
  return ParseAs(text, kAngle, Angle::Degrees);
}
absl::StatusOr<ForceText> ParseForce(std::string_view text) {
  return ParseAs(text, kForce, Force::Newtons);
}
absl::StatusOr<TemperatureText> ParseTemperature(std::string_view text) {
  return ParseAs(text, kTemperature, Temperature::Celsius);
}
absl::StatusOr<DurationText> ParseDuration(std::string_view text) {
  return ParseAs(text, kTime, Duration::Seconds);
}

absl::StatusOr<WrittenNumber> ParseQuantity(std::string_view kind, std::string_view text) {
  for (const KindWords& words : kKinds) {
    double in_first = 0;
    if (words.kind == kind) return Parse(text, words, in_first);
  }
  return absl::NotFoundError(absl::StrCat("no units are known of ", std::string(kind)));
}

std::span<const std::string_view> KindsInWords() {
  static constexpr std::string_view kNames[] = {kLength.kind, kMass.kind,        kVolume.kind, kAngle.kind,
                                                kForce.kind,  kTemperature.kind, kTime.kind};
  return kNames;
}

}  // namespace withy
