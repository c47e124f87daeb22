#include "json_handler.h"

#include <utility>

#include "absl/strings/str_cat.h"
#include "google/protobuf/struct.pb.h"
#include "number_text.h"
#include "reading_codes.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Struct;

bool IsFraction(FieldDescriptor::CppType type) {
  return type == FieldDescriptor::CPPTYPE_DOUBLE || type == FieldDescriptor::CPPTYPE_FLOAT;
}

std::string Quoted(std::string_view text) {
  constexpr std::size_t kShown = 40;
  std::string shown(text.substr(0, kShown));
  while (text.size() > kShown && !shown.empty() && (shown.back() & 0x80) != 0) shown.pop_back();
  return absl::StrCat("\"", shown, text.size() > kShown ? "...\"" : "\"");
}

}  // namespace

// --- where a value goes ---

// Enters the entry that the map's key began, up to its value.
void JsonHandler::OpenMapEntry() {
  const FieldInfo& map = *lists_.back();
  if (!sink_.trail().Begin(map, key_offset_) || !sink_.Open(key_offset_)) return;
  sink_.trail().Begin(*sink_.trail().info().FindNumber(1), key_offset_);
  sink_.SetString(key_);
  field_ = sink_.trail().info().FindNumber(2);
}

bool JsonHandler::BeginValue(std::uint32_t offset) {
  switch (level()) {
    case Level::kMessage:
      return field_ != nullptr && sink_.trail().Begin(*field_, key_offset_);
    case Level::kList:
      field_ = lists_.back();
      return sink_.trail().Begin(*field_, offset);
    case Level::kMap:
      OpenMapEntry();
      return !reading_.stopped() && sink_.trail().Begin(*field_, key_offset_);
  }
  return false;
}

FieldPath JsonHandler::PathOfValue() const {
  const bool has_field = !levels_.empty() && level() == Level::kMessage && field_ != nullptr && !extension_.active();
  return has_field && !skipping() ? PathOfMessage().Field(field_->name) : PathOfMessage();
}

void JsonHandler::EndValue(std::uint32_t offset) {
  if (level() == Level::kMap) sink_.Close(offset);
}

void JsonHandler::Refuse(std::uint32_t offset, std::string_view found) {
  sink_.BadValue(offset, found);
}

void JsonHandler::SkipDeeper(std::uint32_t offset) {
  ++skipped_;
  if (reading_.IsTooDeep(sink_.trail().depth() + skipped_))
    reading_.ReportTooDeep(sink_.trail().PathOfMessage(), offset);
}

// --- scalars ---

void JsonHandler::Null(std::uint32_t offset) {
  if (skipping()) return;
  if (extension_.active()) return extension_.Null(offset);
  if (level() == Level::kMessage) {  // the same as leaving the field out
    if (field_ != nullptr) sink_.trail().Once(*field_, key_offset_);
    return;
  }
  if (!BeginValue(offset)) return;
  Refuse(offset, "null");
  EndValue(offset);
}

void JsonHandler::Bool(bool value, std::uint32_t offset) {
  if (skipping()) return;
  if (extension_.active()) return extension_.Bool(value, offset);
  if (!BeginValue(offset)) return;
  const bool wanted = field_->type == FieldDescriptor::CPPTYPE_BOOL && (!field_->repeated || level() == Level::kList);
  wanted ? sink_.SetBool(value) : Refuse(offset, value ? "true" : "false");
  EndValue(offset);
}

void JsonHandler::Number(std::string_view text, std::uint32_t offset) {
  if (skipping()) return;
  if (extension_.active()) return extension_.Number(text, offset);
  if (!BeginValue(offset)) return;
  const bool negative = text.starts_with('-');
  const std::string_view digits = text.substr(negative ? 1 : 0);
  const bool listed = !field_->repeated || level() == Level::kList;
  const bool whole = field_->message == nullptr && field_->type != FieldDescriptor::CPPTYPE_STRING &&
                     field_->type != FieldDescriptor::CPPTYPE_BOOL;
  if (listed && IsFraction(field_->type)) {
    double value = 0;
    if (ParseDecimal(digits, &value) != NumberProblem::kNone) {
      sink_.BadNumber(offset, absl::StrCat(std::string(text.substr(0, 40)), " cannot be kept as a number"));
    }
    sink_.SetDouble(negative ? -value : value);
  } else if (listed && whole) {
    if (const auto magnitude = ParseWhole(digits, /*decimal_only=*/true)) {
      sink_.SetInteger(negative, *magnitude, offset);
    } else {
      sink_.BadNumber(offset, absl::StrCat(std::string(text.substr(0, 40)), " is not a whole number"));
    }
  } else {
    Refuse(offset, absl::StrCat("the number ", std::string(text.substr(0, 40))));
  }
  EndValue(offset);
}

void JsonHandler::String(std::string_view text, std::uint32_t offset) {
  if (skipping()) return;
  if (extension_.active()) return extension_.String(std::string(text), offset);
  if (!BeginValue(offset)) return;
  const bool listed = !field_->repeated || level() == Level::kList;
  if (listed && field_->type == FieldDescriptor::CPPTYPE_STRING) {
    sink_.SetString(std::string(text));
  } else if (listed && field_->type == FieldDescriptor::CPPTYPE_ENUM) {
    sink_.SetEnumName(text, offset);
  } else {
    Refuse(offset, absl::StrCat("the text ", Quoted(text)));
  }
  EndValue(offset);
}

// --- objects ---

void JsonHandler::StartObject(std::uint32_t offset) {
  if (skipping()) return SkipDeeper(offset);
  if (extension_.active()) return extension_.StartObject(offset);
  if (levels_.empty()) {
    levels_.push_back(Level::kMessage);
    return;
  }
  if (level() == Level::kMessage && field_ != nullptr && field_->map) {
    skipped_ = sink_.trail().Once(*field_, key_offset_) ? 0 : 1;
    if (skipping()) return;
    lists_.push_back(field_);
    return levels_.push_back(Level::kMap);
  }
  if (!BeginValue(offset)) {
    skipped_ = 1;
    return;
  }
  const bool wanted = field_->message != nullptr && (!field_->repeated || level() == Level::kList);
  if (!wanted) {
    Refuse(offset, "an object");
    EndValue(offset);
    skipped_ = 1;
    return;
  }
  const std::uint32_t begin = level() == Level::kList ? offset : key_offset_;
  const std::uint32_t node = sink_.trail().field_node();
  if (!sink_.Open(begin)) return;
  if (sink_.trail().info().descriptor == Struct::descriptor()) {
    return extension_.Begin(static_cast<Struct*>(sink_.message()), sink_.trail().PathOfMessage(), node,
                            sink_.trail().depth());
  }
  levels_.push_back(Level::kMessage);
}

void JsonHandler::Key(std::string_view text, std::uint32_t offset) {
  if (skipping()) return;
  if (extension_.active()) return extension_.Key(text, offset);
  key_offset_ = offset;
  if (level() == Level::kMap) {
    key_ = std::string(text);
    return;
  }
  field_ = sink_.Find(text);
  if (field_ == nullptr) sink_.UnknownName(text, offset);
}

void JsonHandler::EndObject(std::uint32_t offset) {
  if (skipping()) {
    --skipped_;
    return;
  }
  if (extension_.active()) {
    extension_.End();
    if (extension_.active()) return;
  } else {
    const Level ended = level();
    levels_.pop_back();
    if (ended == Level::kMap) return lists_.pop_back();
    if (levels_.empty()) return;
  }
  sink_.Close(offset);
  EndValue(offset);
}

// --- lists ---

void JsonHandler::StartArray(std::uint32_t offset) {
  if (skipping()) return SkipDeeper(offset);
  if (extension_.active()) return extension_.StartArray(offset);
  const bool wanted = level() == Level::kMessage && field_ != nullptr && field_->repeated && !field_->map;
  if (wanted && sink_.trail().Once(*field_, key_offset_)) {
    lists_.push_back(field_);
    return levels_.push_back(Level::kList);
  }
  if (!wanted && BeginValue(offset)) {
    Refuse(offset, "a list");
    EndValue(offset);
  }
  skipped_ = 1;
}

void JsonHandler::EndArray(std::uint32_t) {
  if (skipping()) {
    --skipped_;
  } else if (extension_.active()) {
    extension_.End();
  } else {
    levels_.pop_back();
    lists_.pop_back();
  }
}

}  // namespace withy
