#include "quantities.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "bench_value.h"
#include "consistency_codes.h"
#include "reading_codes.h"
#include "withy/units/unit.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

constexpr double kAbsoluteZeroCelsius = -273.15;
// So many times outside the range, a value is not a matter of taste.
constexpr double kAbsurdFactor = 1000;
// The point moved, cm or m for mm, kg for g.
constexpr double kSlips[] = {10, 0.1, 1000, 0.001};

// A quantity as the checks look at it.
struct Value {
  std::string_view kind;       // "Length"; empty for a plain number
  const Unit* unit = nullptr;  // as written
  double written = 0;
  double first = 0;  // in the kind's first unit
  const v1::Plausible* range = nullptr;
  const FieldDescriptor* field = nullptr;

  bool IsTemperature() const { return kind == "Temperature"; }
  bool Fits(double value) const { return value >= range->low() && value <= range->high(); }
};

std::string Figure(double value) {
  return absl::StrFormat("%.6g", value);
}

std::string WithUnit(double value, const Unit* unit) {
  return unit == nullptr ? Figure(value) : absl::StrCat(Figure(value), " ", std::string(unit->symbol));
}

const Unit* FirstUnit(const Value& value) {
  return value.kind.empty() ? nullptr : &UnitsOf(value.kind)[0];
}

Number Named(const Value& value, const char* name, double number) {
  const Unit* first = FirstUnit(value);
  return {first == nullptr ? name : absl::StrCat(name, "_", std::string(first->name)), number};
}

struct Slip {
  double meant = 0;  // in the first unit
  std::string text;
};

// What a plain number would have to be read as: a percentage for a share or for a factor, or the point left out.
std::vector<Slip> SlipsOfNumber(const Value& value) {
  std::vector<Slip> slips;
  const double low = value.range->low(), high = value.range->high();
  const double share = value.written / 100;
  const bool is_factor = low == 1 && high <= 5;
  if (high <= 1 && value.Fits(share)) slips.push_back({share, absl::StrCat(Figure(share), " (a share, not percent)")});
  if (is_factor && value.Fits(1 + share)) {
    slips.push_back({1 + share, absl::StrCat(Figure(1 + share), " (a factor, not percent)")});
  }
  const bool is_count = value.field->cpp_type() != FieldDescriptor::CPPTYPE_DOUBLE;
  if (is_count || is_factor) return slips;
  for (const double meant : {value.written * 10, value.written / 10}) {
    if (value.Fits(meant)) slips.push_back({meant, Figure(meant)});
  }
  return slips;
}

// The same value under another field that could stand in this one's place: an inner diameter written as the wall.
void AddSlipsOfField(const Value& value, std::vector<Slip>& slips) {
  const google::protobuf::OneofDescriptor* oneof = value.field->real_containing_oneof();
  for (int i = 0; oneof != nullptr && i < oneof->field_count(); ++i) {
    const FieldDescriptor* other = oneof->field(i);
    if (other == value.field || other->message_type() != value.field->message_type()) continue;
    const v1::Plausible& range = other->options().GetExtension(v1::plausible);
    if (value.first < range.low() || value.first > range.high()) continue;
    slips.push_back({value.first, absl::StrCat("`", other->name(), "` ", WithUnit(value.written, value.unit))});
  }
}

// What the number would have to be read as to make sense. The same digits in another place or under another unit come
// first: these are the commoner slips.
std::vector<Slip> SlipsThatExplain(const Value& value) {
  if (value.unit == nullptr) return SlipsOfNumber(value);
  std::vector<Slip> slips;
  AddSlipsOfField(value, slips);
  const Unit* first = FirstUnit(value);
  for (const Unit& unit : UnitsOf(value.kind)) {
    const double meant = unit.to_first(value.written);
    if (&unit == value.unit || !value.Fits(meant)) continue;
    const std::string in_first = &unit == first ? "" : absl::StrCat(" (", WithUnit(meant, first), ")");
    slips.push_back({meant, absl::StrCat(WithUnit(value.written, &unit), in_first)});
  }
  if (value.IsTemperature()) return slips;
  for (double factor : kSlips) {
    const double meant = value.unit->to_first(value.written * factor);
    if (value.Fits(meant)) slips.push_back({meant, WithUnit(value.written * factor, value.unit)});
  }
  return slips;
}

bool IsAbsurd(const Value& value) {
  const double low = value.range->low(), high = value.range->high();
  if (std::abs(value.first) > kAbsurdFactor * std::max(std::abs(low), std::abs(high))) return true;
  if (value.IsTemperature()) return value.first < kAbsoluteZeroCelsius;
  return low > 0 && value.first < low / kAbsurdFactor;
}

void CheckRange(const Value& value, const Spot& spot, std::vector<Finding>& findings) {
  if (value.range == nullptr || value.Fits(value.first)) return;
  const Unit* first = FirstUnit(value);
  std::string message = WithUnit(value.written, value.unit);
  if (value.unit != first) absl::StrAppend(&message, " (", WithUnit(value.first, first), ")");
  const std::vector<Number> numbers = {Named(value, "value", value.first), Named(value, "low", value.range->low()),
                                       Named(value, "high", value.range->high())};
  if (value.first < 0 && value.range->low() >= 0 && !value.IsTemperature()) {
    findings.push_back(MakeFinding(kNegative, spot.Path(), absl::StrCat(message, " is below zero"), numbers));
    return;
  }
  absl::StrAppend(&message, " is outside ", Figure(value.range->low()), " to ", WithUnit(value.range->high(), first));
  const std::vector<Slip> slips = value.first == 0 ? std::vector<Slip>() : SlipsThatExplain(value);
  if (slips.empty()) {
    findings.push_back(MakeFinding(IsAbsurd(value) ? kAbsurd : kImplausible, spot.Path(), message, numbers));
    return;
  }
  for (const Slip& slip : slips) absl::StrAppend(&message, &slip == &slips[0] ? "; did you mean " : " or ", slip.text);
  findings.push_back(MakeFinding(kUnitSlip, spot.Path(), absl::StrCat(message, "?"), numbers));
  findings.back().numbers.push_back(Named(value, "suspected", slips[0].meant));
}

// Whether the number is finite; reports it where it is not.
bool IsFinite(double number, const Spot& spot, const char* field, std::vector<Finding>& findings) {
  if (std::isfinite(number)) return true;
  FieldPath path = spot.Path();
  if (*field != '\0') path = std::move(path).Field(field);
  findings.push_back(MakeFinding(kBadNumber, std::move(path), std::isnan(number) ? "not a number" : "infinite"));
  return false;
}

void CheckPlusMinus(const Message& quantity, const Value& value, const Spot& spot, std::vector<Finding>& findings) {
  const FieldDescriptor* field = quantity.GetDescriptor()->FindFieldByName("plus_minus");
  if (field == nullptr || !quantity.GetReflection()->HasField(quantity, field)) return;
  const double plus_minus = quantity.GetReflection()->GetDouble(quantity, field);
  if (!IsFinite(plus_minus, spot, "plus_minus", findings)) return;
  // Where zero is a sound value (a place, an angle), the uncertainty may well be larger.
  const bool is_size = value.range != nullptr && value.range->low() > 0 && !value.IsTemperature();
  const bool too_large = is_size && value.written > 0 && plus_minus > value.written;
  if (plus_minus >= 0 && !too_large) return;
  const std::string unit(value.unit->name);
  findings.push_back(
      MakeFinding(kPlusMinus, spot.Path().Field("plus_minus"),
                  absl::StrCat(WithUnit(plus_minus, value.unit),
                               too_large ? " is more than the value, " : " is below zero, beside ",
                               WithUnit(value.written, value.unit)),
                  {{absl::StrCat("plus_minus_", unit), plus_minus}, {absl::StrCat("value_", unit), value.written}}));
}

// The field of the unit that is set, or nullptr.
const FieldDescriptor* UnitField(const Message& quantity) {
  return quantity.GetReflection()->GetOneofFieldDescriptor(quantity, quantity.GetDescriptor()->FindOneofByName("unit"));
}

}  // namespace

std::optional<double> InFirstUnit(const Message& quantity) {
  const FieldDescriptor* field = UnitField(quantity);
  if (field == nullptr) return std::nullopt;
  return FindUnit(quantity.GetDescriptor()->name(), field->name())
      ->to_first(quantity.GetReflection()->GetDouble(quantity, field));
}

void CheckQuantity(const Message& quantity, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings) {
  const FieldDescriptor* unit = UnitField(quantity);
  if (unit == nullptr) {
    findings.push_back(
        MakeFinding(kNoUnit, spot.Path(), "a quantity without a unit", {},
                    absl::StrCat("Write the number under ", UnitsInWords(quantity.GetDescriptor()->name()),
                                 ", or leave the whole field out.")));
    return;
  }
  Value value;
  value.kind = quantity.GetDescriptor()->name();
  value.unit = FindUnit(value.kind, unit->name());
  value.written = quantity.GetReflection()->GetDouble(quantity, unit);
  value.first = value.unit->to_first(value.written);
  value.range = field.plausible;
  value.field = field.field;
  // In the first unit, since a number near the end of the doubles may leave them there.
  if (!IsFinite(value.first, spot, unit->name().c_str(), findings)) return;
  CheckRange(value, spot, findings);
  CheckPlusMinus(quantity, value, spot, findings);
}

void CheckNumber(double number, const FieldRules& field, const Spot& spot, std::vector<Finding>& findings) {
  if (!IsFinite(number, spot, "", findings)) return;
  Value value;
  value.written = value.first = number;
  value.range = field.plausible;
  value.field = field.field;
  CheckRange(value, spot, findings);
}

}  // namespace withy
