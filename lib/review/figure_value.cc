#include "figure_value.h"

#include <algorithm>
#include <cmath>
#include <iterator>

#include "absl/strings/str_cat.h"
#include "google/protobuf/descriptor.h"
#include "withy/document/path_cursor.h"
#include "withy/units/format.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

struct UnitWords {
  std::string_view suffix, shown;
  int decimals;  // that are worth showing at the bench
};
// A longer suffix before one that it ends with.
constexpr UnitWords kUnits[] = {
    {"kg_m2", "kg m2", 4}, {"n_m2", "N m2", 3},    {"n_m", "N m", 3}, {"in64", "/64 in", 1}, {"minutes", "min", 0},
    {"celsius", "C", 1},   {"per_mm", "mm/mm", 2}, {"cm2", "cm2", 1}, {"deg", "deg", 1},     {"mm", "mm", 2},
    {"ml", "ml", 2},       {"g", "g", 2},          {"n", "N", 2},           {"hz", "Hz", 2},
    {"j", "J", 2},         {"millistrain", "thousandths", 2},
};
constexpr std::string_view kPlusMinus = "_plus_minus";
constexpr int kMostDecimals = 9;
constexpr double kWhole = 1e-9;
constexpr double kLarge = 100;  // from here on a second decimal says nothing at the bench

const UnitWords* UnitOf(std::string_view name) {
  const auto found = std::find_if(std::begin(kUnits), std::end(kUnits), [name](const UnitWords& unit) {
    return name.size() > unit.suffix.size() && name.ends_with(unit.suffix) &&
           name[name.size() - unit.suffix.size() - 1] == '_';
  });
  return found == std::end(kUnits) ? nullptr : &*found;
}

int DecimalsOf(std::string_view shown) {
  for (const UnitWords& unit : kUnits) {
    if (unit.shown == shown) return unit.decimals;
  }
  return 2;
}

// So many that two digits of `number` show, or all of it.
int DecimalsFor(double number, int least) {
  if (!(std::abs(number) > 0) || !std::isfinite(number)) return least;
  return std::clamp(1 - static_cast<int>(std::floor(std::log10(std::abs(number)))), least, kMostDecimals);
}

// "13.46 to 2.06 mm, 14 values".
std::string TextOfList(const Message& owner, const FieldDescriptor& field, std::string_view unit) {
  const auto& reflection = *owner.GetReflection();
  const int size = reflection.FieldSize(owner, &field);
  if (size == 0 || field.cpp_type() != FieldDescriptor::CPPTYPE_DOUBLE) return "";
  const auto at = [&](int i) { return FormatFixed(reflection.GetRepeatedDouble(owner, &field, i), DecimalsOf(unit)); };
  const std::string end = unit.empty() ? "" : absl::StrCat(" ", std::string(unit));
  return size == 1 ? at(0) + end : absl::StrCat(at(0), " to ", at(size - 1), end, ", ", size, " values");
}

void Fill(const Message& owner, const FieldDescriptor& field, FigureValue& figure) {
  const auto& reflection = *owner.GetReflection();
  figure.told = !field.has_presence() || reflection.HasField(owner, &field);
  if (!figure.told) return;
  switch (field.cpp_type()) {
    case FieldDescriptor::CPPTYPE_DOUBLE:
      figure.value = reflection.GetDouble(owner, &field);
      return;
    case FieldDescriptor::CPPTYPE_UINT32:
      figure.value = reflection.GetUInt32(owner, &field);
      return;
    case FieldDescriptor::CPPTYPE_BOOL:
      figure.text = reflection.GetBool(owner, &field) ? "yes" : "no";
      return;
    case FieldDescriptor::CPPTYPE_STRING:
      figure.text = reflection.GetString(owner, &field);
      figure.told = !figure.text.empty();
      return;
    default:
      figure.told = false;
  }
}

}  // namespace

std::string_view UnitSuffix(std::string_view name) {
  const UnitWords* unit = UnitOf(name);
  return unit == nullptr ? std::string_view() : unit->suffix;
}

std::string PlusMinusName(std::string_view name) {
  const std::string_view unit = UnitSuffix(name);
  if (unit.empty()) return std::string(name);
  const std::string_view stem = name.substr(0, name.size() - unit.size() - 1);
  return absl::StrCat(std::string(stem), std::string(kPlusMinus), "_", std::string(unit));
}

std::string WithoutPlusMinus(std::string_view name) {
  const std::size_t at = name.rfind(kPlusMinus);
  if (at == std::string_view::npos) return std::string(name);
  return absl::StrCat(std::string(name.substr(0, at)), std::string(name.substr(at + kPlusMinus.size())));
}

FigureValue FigureAt(const v1::Report& report, const FieldPath& path) {
  FigureValue figure;
  PathCursor cursor(report);
  const Message* owner = &report;
  for (const FieldPath::Step& step : path.steps()) {
    if (!step.field.empty() && cursor.field() != nullptr) owner = cursor.message();
    if (owner == nullptr || !cursor.Advance(step)) return figure;
  }
  const FieldDescriptor* field = cursor.field();
  if (field == nullptr || field->message_type() != nullptr) return figure;
  const UnitWords* unit = UnitOf(field->name());
  if (unit != nullptr) figure.unit = std::string(unit->shown);
  if (field->is_repeated() && cursor.index() < 0) {
    figure.text = TextOfList(*owner, *field, figure.unit);
    figure.told = !figure.text.empty();
    return figure;
  }
  if (field->is_repeated()) {
    figure.told = field->cpp_type() == FieldDescriptor::CPPTYPE_DOUBLE;
    if (figure.told) figure.value = owner->GetReflection()->GetRepeatedDouble(*owner, field, cursor.index());
    return figure;
  }
  Fill(*owner, *field, figure);
  const FieldDescriptor* plus_minus = owner->GetDescriptor()->FindFieldByName(PlusMinusName(field->name()));
  if (plus_minus != nullptr && plus_minus != field && owner->GetReflection()->HasField(*owner, plus_minus)) {
    figure.plus_minus = owner->GetReflection()->GetDouble(*owner, plus_minus);
  }
  return figure;
}

std::string ReadableFigure(const FigureValue& figure) {
  const std::string unit = figure.unit.empty() ? "" : absl::StrCat(" ", figure.unit);
  if (!figure.value) return figure.text;
  const bool count = figure.unit.empty() && *figure.value == std::floor(*figure.value);
  int decimals = count ? 0 : DecimalsOf(figure.unit);
  if (std::abs(*figure.value) >= kLarge) decimals = std::min(decimals, 1);
  if (!figure.plus_minus) {
    const bool whole = std::abs(*figure.value - std::round(*figure.value)) < kWhole;
    return absl::StrCat(FormatFixed(*figure.value, whole ? decimals : DecimalsFor(*figure.value, decimals)), unit);
  }
  decimals = DecimalsFor(*figure.plus_minus, std::min(decimals, 1));
  return absl::StrCat(FormatFixed(*figure.value, decimals), " ± ", FormatFixed(*figure.plus_minus, decimals), unit);
}

std::string ReadablePlusMinus(double plus_minus, std::string_view unit) {
  const int decimals = DecimalsFor(plus_minus, std::min(DecimalsOf(unit), 1));
  return absl::StrCat("± ", FormatFixed(plus_minus, decimals), unit.empty() ? "" : " ", std::string(unit));
}

}  // namespace withy
