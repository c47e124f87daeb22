#include "field_sink.h"

#include <limits>

#include "absl/strings/str_cat.h"
#include "field_words.h"
#include "google/protobuf/unknown_field_set.h"
#include "path_cursor.h"
#include "reading_codes.h"
#include "withy/findings/nearest_name.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

constexpr int kKeyOfEntry = 1;
constexpr int kValueOfEntry = 2;

}  // namespace

FieldSink::FieldSink(Message* root, Reading* reading) : reading_(*reading) {
  const MessageInfo& info = InfoOf(*root->GetDescriptor());
  frames_.reserve(16);
  frames_.push_back({.message = root, .info = &info});
  seen_.resize(info.fields.size() + info.oneofs);
}

// --- occurrence ---

bool FieldSink::Once(const FieldInfo& field, std::uint32_t offset) {
  std::uint32_t& seen = seen_[top().seen + field.index];
  if (seen == 0) {
    seen = offset + 1;
    return true;
  }
  reading_.Report(kDuplicateField, PathOfMessage().Field(field.name), offset,
                  absl::StrCat("`", std::string(field.name), "` is given a second time; the first is at ",
                               reading_.PlaceOf(seen - 1)));
  return false;
}

bool FieldSink::OnlyOneOf(const FieldInfo& field, std::uint32_t offset) {
  const MessageInfo& info = *top().info;
  std::uint32_t& member = seen_[top().seen + info.fields.size() + static_cast<std::size_t>(field.oneof)];
  if (member == 0) {
    member = field.index + 1;
    return true;
  }
  const FieldInfo& first = info.fields[member - 1];
  reading_.Report(kTwoOfOne, PathOfMessage().Field(field.name), offset,
                  absl::StrCat("`", std::string(field.name), "` and `", std::string(first.name),
                               "` are both given, and only one can hold; the first is at ",
                               reading_.PlaceOf(seen_[top().seen + first.index] - 1)));
  return false;
}

bool FieldSink::Begin(const FieldInfo& field, std::uint32_t offset) {
  reading_.CountItem(offset);
  Frame& frame = top();
  if (!field.repeated) {
    if (!Once(field, offset) || (field.oneof >= 0 && !OnlyOneOf(field, offset))) return false;
  }
  frame.field = &field;
  frame.item = field.repeated
                   ? static_cast<std::uint32_t>(frame.message->GetReflection()->FieldSize(*frame.message, field.field))
                   : 0;
  // The value of a map entry stands where the entry does: paths do not tell them apart.
  const bool value_of_entry = frame.info->map_entry && field.number == kValueOfEntry;
  frame.field_node = value_of_entry ? frame.node : reading_.positions.Add(frame.node, field.number, frame.item, offset);
  return true;
}

// --- values ---

void FieldSink::SetDouble(double value) {
  Message* message = top().message;
  const FieldDescriptor* field = top().field->field;
  const Reflection* reflection = message->GetReflection();
  if (top().field->type == FieldDescriptor::CPPTYPE_FLOAT) {
    const auto narrow = static_cast<float>(value);
    field->is_repeated() ? reflection->AddFloat(message, field, narrow) : reflection->SetFloat(message, field, narrow);
  } else {
    field->is_repeated() ? reflection->AddDouble(message, field, value) : reflection->SetDouble(message, field, value);
  }
}

void FieldSink::SetInteger(bool negative, std::uint64_t magnitude, std::uint32_t offset) {
  Message* message = top().message;
  const FieldDescriptor* field = top().field->field;
  const Reflection* reflection = message->GetReflection();
  const bool repeated = field->is_repeated();
  const auto fits = [&](std::uint64_t largest, std::uint64_t smallest) {
    if (magnitude <= (negative ? smallest : largest)) return true;
    BadNumber(offset, absl::StrCat(negative ? "-" : "", magnitude, " is outside the range of `", field->name(), "`"));
    return false;
  };
  const std::int64_t value = static_cast<std::int64_t>(negative ? 0 - magnitude : magnitude);
  constexpr std::uint64_t kMax32 = std::numeric_limits<std::int32_t>::max();
  constexpr std::uint64_t kMax64 = std::numeric_limits<std::int64_t>::max();
  switch (top().field->type) {
    case FieldDescriptor::CPPTYPE_INT32: {
      const auto v = static_cast<std::int32_t>(fits(kMax32, kMax32 + 1) ? value : 0);
      return repeated ? reflection->AddInt32(message, field, v) : reflection->SetInt32(message, field, v);
    }
    case FieldDescriptor::CPPTYPE_UINT32: {
      const auto v = static_cast<std::uint32_t>(fits(std::numeric_limits<std::uint32_t>::max(), 0) ? value : 0);
      return repeated ? reflection->AddUInt32(message, field, v) : reflection->SetUInt32(message, field, v);
    }
    case FieldDescriptor::CPPTYPE_INT64: {
      const std::int64_t v = fits(kMax64, kMax64 + 1) ? value : 0;
      return repeated ? reflection->AddInt64(message, field, v) : reflection->SetInt64(message, field, v);
    }
    case FieldDescriptor::CPPTYPE_UINT64: {
      const std::uint64_t v = fits(std::numeric_limits<std::uint64_t>::max(), 0) ? magnitude : 0;
      return repeated ? reflection->AddUInt64(message, field, v) : reflection->SetUInt64(message, field, v);
    }
    case FieldDescriptor::CPPTYPE_ENUM: {
      const int v = static_cast<int>(fits(kMax32, kMax32 + 1) ? value : 0);
      if (field->enum_type()->FindValueByNumber(v) == nullptr) {
        reading_.Report(kUnknownEnumNumber, PathOfField(), offset,
                        absl::StrCat(v, " is no known value of `", field->name(), "`; it is kept"));
      }
      return repeated ? reflection->AddEnumValue(message, field, v) : reflection->SetEnumValue(message, field, v);
    }
    default:
      return;
  }
}

void FieldSink::SetBool(bool value) {
  Message* message = top().message;
  const FieldDescriptor* field = top().field->field;
  const Reflection* reflection = message->GetReflection();
  field->is_repeated() ? reflection->AddBool(message, field, value) : reflection->SetBool(message, field, value);
}

void FieldSink::SetString(std::string value) {
  Message* message = top().message;
  const FieldDescriptor* field = top().field->field;
  const Reflection* reflection = message->GetReflection();
  field->is_repeated() ? reflection->AddString(message, field, std::move(value))
                       : reflection->SetString(message, field, std::move(value));
}

void FieldSink::SetEnumName(std::string_view name, std::uint32_t offset) {
  Message* message = top().message;
  const FieldDescriptor* field = top().field->field;
  const Reflection* reflection = message->GetReflection();
  int number = 0;
  if (const auto* value = field->enum_type()->FindValueByName(std::string(name))) {
    number = value->number();
  } else {
    const std::string_view nearest = NearestName(name, EnumNames(*field->enum_type()));
    reading_.Report(kUnknownEnumName, PathOfField(), offset,
                    absl::StrCat("`", std::string(name), "` is no value of `", field->name(), "`", DidYouMean(nearest)),
                    absl::StrCat("Write one of ", ListOf(EnumNames(*field->enum_type())), "."));
  }
  field->is_repeated() ? reflection->AddEnumValue(message, field, number)
                       : reflection->SetEnumValue(message, field, number);
}

void FieldSink::BadValue(std::uint32_t offset, std::string_view found) {
  const FieldInfo& field = *top().field;
  reading_.Report(field.type == FieldDescriptor::CPPTYPE_DOUBLE ? kBadNumber : kBadValue, PathOfField(), offset,
                  absl::StrCat("`", std::string(field.name), "` takes ", Expected(field, reading_.form()), ", not ",
                               std::string(found)),
                  HowToWrite(field, reading_.form()));
}

void FieldSink::BadNumber(std::uint32_t offset, std::string message, std::string help) {
  reading_.Report(kBadNumber, PathOfField(), offset, std::move(message), std::move(help));
}

// --- messages ---

bool FieldSink::Open(std::uint32_t offset) {
  if (reading_.IsTooDeep(frames_.size())) {
    reading_.ReportTooDeep(PathOfField(), offset);
    return false;
  }
  Frame& parent = top();
  const FieldInfo& field = *parent.field;
  const Reflection* reflection = parent.message->GetReflection();
  Message* inner = field.repeated ? reflection->AddMessage(parent.message, field.field)
                                  : reflection->MutableMessage(parent.message, field.field);
  const auto seen = static_cast<std::uint32_t>(seen_.size());
  seen_.resize(seen + field.message->fields.size() + field.message->oneofs);
  frames_.push_back(
      {.message = inner, .info = field.message, .node = parent.field_node, .offset = offset, .seen = seen});
  return true;
}

void FieldSink::Close(std::uint32_t offset) {
  const Frame closed = top();
  if (closed.info->map_entry) CloseMapEntry(closed, offset);
  if (IsValueWithoutKind(*closed.message)) {
    reading_.Report(kBadValue, PathOfMessage(), closed.offset, "a value in `extensions` that says nothing",
                    "Write a number, a text, true or false, a list, an object or null.");
  }
  frames_.pop_back();
  seen_.resize(closed.seen);
}

void FieldSink::CloseMapEntry(const Frame& entry, std::uint32_t offset) {
  const FieldInfo* key_field = entry.info->FindNumber(kKeyOfEntry);
  const FieldInfo* value_field = entry.info->FindNumber(kValueOfEntry);
  for (const FieldInfo* field : {key_field, value_field}) {
    if (seen_[entry.seen + field->index] != 0) continue;
    reading_.Report(kBadValue, PathOfFrames(frames_.size() - 1).Field(frames_[frames_.size() - 2].field->name), offset,
                    absl::StrCat("this entry has no `", std::string(field->name), "`"),
                    "An entry needs a `key` and a `value`.");
    return;
  }
  if (key_field->type != FieldDescriptor::CPPTYPE_STRING) return;
  const std::string key = entry.message->GetReflection()->GetString(*entry.message, key_field->field);
  reading_.positions.SetItem(entry.node, SourceMap::ItemOfKey(key));
  const std::uint32_t owner = frames_[frames_.size() - 2].node;
  const auto [first, is_new] = keys_.emplace(std::pair(owner, key), entry.offset);
  if (is_new) return;
  reading_.Report(
      kDuplicateKey, PathOfMessage(), entry.offset,
      absl::StrCat("the key \"", key, "\" is used a second time; the first is at ", reading_.PlaceOf(first->second)));
}

// --- names and paths ---

void FieldSink::UnknownName(std::string_view name, std::uint32_t offset) {
  const std::string_view nearest = NearestName(name, info().Names());
  std::string message =
      absl::StrCat("`", info().descriptor->name(), "` has no field `", std::string(name), "`", DidYouMean(nearest));
  std::string help;
  for (std::size_t i = frames_.size() - 1; i-- > 0 && nearest.empty() && help.empty();) {
    if (frames_[i].info->Find(name) == nullptr) continue;
    help =
        absl::StrCat("`", frames_[i].info->descriptor->name(), "` has one of that name: is a closing brace missing?");
  }
  reading_.ReportUnknown(kUnknownField, PathOfMessage().Field(name), offset, /*carried=*/false, std::move(message),
                         std::move(help));
}

google::protobuf::UnknownFieldSet* FieldSink::UnknownFields() {
  return top().message->GetReflection()->MutableUnknownFields(top().message);
}

FieldPath FieldSink::PathOfFrames(std::size_t count) const {
  FieldPath path;
  for (std::size_t i = 0; i + 1 < count; ++i) {
    const Frame& frame = frames_[i];
    if (frame.info->map_entry) continue;  // the entry's key is in the path already
    path = std::move(path).Field(frame.field->name);
    if (frame.field->map) {
      const Message& entry = *frames_[i + 1].message;
      const FieldInfo* key = frames_[i + 1].info->FindNumber(kKeyOfEntry);
      path = std::move(path).Item(entry.GetReflection()->GetString(entry, key->field), -1);
    } else if (frame.field->repeated) {
      path = std::move(path).Item("", static_cast<int>(frame.item));
    }
  }
  return path;
}

FieldPath FieldSink::PathOfMessage() const {
  return PathOfFrames(frames_.size());
}

FieldPath FieldSink::PathOfField() const {
  FieldPath path = PathOfMessage();
  const Frame& frame = top();
  if (frame.field == nullptr || frame.info->map_entry) return path;
  path = std::move(path).Field(frame.field->name);
  if (frame.field->repeated && !frame.field->map) path = std::move(path).Item("", static_cast<int>(frame.item));
  return path;
}

}  // namespace withy
