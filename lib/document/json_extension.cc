#include "json_extension.h"

#include <algorithm>
#include <optional>
#include <utility>

#include "absl/strings/str_cat.h"
#include "number_text.h"
#include "reading_codes.h"

namespace withy {

using google::protobuf::ListValue;
using google::protobuf::Struct;
using google::protobuf::Value;

namespace {

// Whether `value` is exactly the whole number that `digits` writes (no fraction, no exponent).
bool HoldsWhole(std::string_view digits, double value) {
  constexpr double kTwoTo64 = 18446744073709551616.0;
  const std::optional<std::uint64_t> whole = ParseWhole(digits, /*decimal_only=*/true);
  return whole && value < kTwoTo64 && static_cast<std::uint64_t>(value) == *whole;
}

}  // namespace

void JsonExtension::Begin(Struct* target, FieldPath path, std::uint32_t node, std::size_t depth) {
  levels_.push_back({.object = target, .path = std::move(path), .node = node, .depth = depth});
}

JsonExtension::Slot JsonExtension::Next(const char* member, int number, std::uint32_t offset) {
  reading_.CountItem(offset);
  Level& level = levels_.back();
  // An entry of an object is a message of its own, an item of a list is not.
  Slot slot = {nullptr, level.path, 0, level.depth + (level.list != nullptr ? 1 : 2)};
  if (level.list != nullptr) {
    const int index = level.list->values_size();
    slot.value = level.list->add_values();
    slot.path = std::move(slot.path).Field("values").Item("", index);
    slot.node =
        reading_.positions.Add(level.node, ListValue::kValuesFieldNumber, static_cast<std::uint32_t>(index), offset);
  } else {
    slot.path = std::move(slot.path).Field("fields").Item(level.key, -1);
    const auto [first, is_new] = level.keys.emplace(level.key, level.key_offset);
    if (is_new) {
      slot.value = &(*level.object->mutable_fields())[level.key];
    } else {
      slot.value = &spares_.emplace_back();
      reading_.Report(kDuplicateKey, slot.path, level.key_offset,
                      absl::StrCat("the key \"", level.key, "\" is used a second time; the first is at ",
                                   reading_.PlaceOf(first->second)));
    }
    slot.node = reading_.positions.Add(level.node, Struct::kFieldsFieldNumber, SourceMap::ItemOfKey(level.key),
                                       level.key_offset);
  }
  if (reading_.IsTooDeep(slot.depth) && !reading_.stopped()) reading_.ReportTooDeep(slot.path, offset);
  slot.path = std::move(slot.path).Field(member);
  slot.node = reading_.positions.Add(slot.node, number, 0, offset);
  return slot;
}

void JsonExtension::Key(std::string_view key, std::uint32_t offset) {
  levels_.back().key = std::string(key);
  levels_.back().key_offset = offset;
}

void JsonExtension::Null(std::uint32_t offset) {
  Next("null_value", Value::kNullValueFieldNumber, offset).value->set_null_value(google::protobuf::NULL_VALUE);
}

void JsonExtension::Bool(bool value, std::uint32_t offset) {
  Next("bool_value", Value::kBoolValueFieldNumber, offset).value->set_bool_value(value);
}

void JsonExtension::String(std::string value, std::uint32_t offset) {
  Next("string_value", Value::kStringValueFieldNumber, offset).value->set_string_value(std::move(value));
}

void JsonExtension::Number(std::string_view text, std::uint32_t offset) {
  Slot slot = Next("number_value", Value::kNumberValueFieldNumber, offset);
  const bool negative = text.starts_with('-');
  const std::string_view digits = text.substr(negative ? 1 : 0);
  double value = 0;
  const bool parsed = ParseDecimal(digits, &value) == NumberProblem::kNone;
  const bool whole = digits.find_first_of(".eE") == std::string_view::npos;
  if (!parsed || (whole && !HoldsWhole(digits, value))) {
    reading_.Report(kBadNumber, std::move(slot.path), offset,
                    absl::StrCat(std::string(text.substr(0, 40)), " cannot be kept exactly"),
                    "Numbers here are doubles: whole numbers are exact up to 9007199254740992. Write it as text.");
  }
  slot.value->set_number_value(negative ? -value : value);
}

void JsonExtension::StartObject(std::uint32_t offset) {
  Slot slot = Next("struct_value", Value::kStructValueFieldNumber, offset);
  levels_.push_back({.object = slot.value->mutable_struct_value(),
                     .path = std::move(slot.path),
                     .node = slot.node,
                     .depth = slot.depth + 1});
  if (reading_.IsTooDeep(slot.depth + 1) && !reading_.stopped()) reading_.ReportTooDeep(levels_.back().path, offset);
}

void JsonExtension::StartArray(std::uint32_t offset) {
  Slot slot = Next("list_value", Value::kListValueFieldNumber, offset);
  levels_.push_back({.list = slot.value->mutable_list_value(),
                     .path = std::move(slot.path),
                     .node = slot.node,
                     .depth = slot.depth + 1});
  if (reading_.IsTooDeep(slot.depth + 1) && !reading_.stopped()) reading_.ReportTooDeep(levels_.back().path, offset);
}

}  // namespace withy
