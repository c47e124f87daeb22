#include "field_sink.h"

#include <limits>

#include "absl/strings/str_cat.h"
#include "bench_value.h"
#include "field_words.h"
#include "google/protobuf/unknown_field_set.h"
#include "reading_codes.h"
#include "withy/findings/nearest_name.h"

namespace withy {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

}  // namespace

FieldSink::FieldSink(Message* root, Reading* reading)
    : reading_(*reading), trail_(InfoOf(*root->GetDescriptor()), reading), messages_{root} {}

// --- values ---

void FieldSink::SetDouble(double value) {
  Message* message = this->message();
  const FieldDescriptor* field = trail_.field()->field;
  const Reflection* reflection = message->GetReflection();
  if (trail_.field()->type == FieldDescriptor::CPPTYPE_FLOAT) {
    const auto narrow = static_cast<float>(value);
    field->is_repeated() ? reflection->AddFloat(message, field, narrow) : reflection->SetFloat(message, field, narrow);
  } else {
    field->is_repeated() ? reflection->AddDouble(message, field, value) : reflection->SetDouble(message, field, value);
  }
}

void FieldSink::SetInteger(bool negative, std::uint64_t magnitude, std::uint32_t offset) {
  Message* message = this->message();
  const FieldDescriptor* field = trail_.field()->field;
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
  switch (trail_.field()->type) {
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
        trail_.ReportEnumNumber(v, offset);
      }
      return repeated ? reflection->AddEnumValue(message, field, v) : reflection->SetEnumValue(message, field, v);
    }
    default:
      return;
  }
}

void FieldSink::SetBool(bool value) {
  Message* message = this->message();
  const FieldDescriptor* field = trail_.field()->field;
  const Reflection* reflection = message->GetReflection();
  field->is_repeated() ? reflection->AddBool(message, field, value) : reflection->SetBool(message, field, value);
}

void FieldSink::SetString(std::string value) {
  trail_.NoteText(value);
  Message* message = this->message();
  const FieldDescriptor* field = trail_.field()->field;
  const Reflection* reflection = message->GetReflection();
  field->is_repeated() ? reflection->AddString(message, field, std::move(value))
                       : reflection->SetString(message, field, std::move(value));
}

void FieldSink::SetEnumName(std::string_view name, std::uint32_t offset) {
  Message* message = this->message();
  const FieldDescriptor* field = trail_.field()->field;
  const Reflection* reflection = message->GetReflection();
  int number = 0;
  if (const auto* value = field->enum_type()->FindValueByName(std::string(name))) {
    number = value->number();
  } else {
    const std::string_view nearest = NearestName(name, EnumNames(*field->enum_type()));
    reading_.Report(kUnknownEnumName, trail_.PathOfField(), offset,
                    absl::StrCat("`", std::string(name), "` is no value of `", field->name(), "`", DidYouMean(nearest)),
                    absl::StrCat("Write one of ", ListOf(EnumNames(*field->enum_type())), "."));
  }
  field->is_repeated() ? reflection->AddEnumValue(message, field, number)
                       : reflection->SetEnumValue(message, field, number);
}

void FieldSink::BadValue(std::uint32_t offset, std::string_view found, std::string help) {
  const FieldInfo& field = *trail_.field();
  const Code& code = field.type == FieldDescriptor::CPPTYPE_DOUBLE ? kBadNumber : kBadValue;
  std::string wrong = absl::StrCat("`", std::string(field.name), "` takes ", Expected(field, reading_.form()), ", not ",
                                   std::string(found));
  if (help.empty()) help = HowToWrite(field, reading_.form(), found);
  if (IsQuantity(field)) {
    reading_.ReportHabit("bare quantity", code, trail_.PathOfField(), offset, std::move(wrong), std::move(help));
  } else {
    reading_.Report(code, trail_.PathOfField(), offset, std::move(wrong), std::move(help));
  }
  // The items after it keep their count, so that their paths are right.
  if (field.repeated && field.message != nullptr) message()->GetReflection()->AddMessage(message(), field.field);
}

void FieldSink::BadNumber(std::uint32_t offset, std::string message, std::string help) {
  reading_.Report(kBadNumber, trail_.PathOfField(), offset, std::move(message), std::move(help));
}

// --- messages ---

bool FieldSink::Open(std::uint32_t offset) {
  const FieldInfo& field = *trail_.field();
  if (!trail_.Open(offset)) return false;
  const Reflection* reflection = message()->GetReflection();
  messages_.push_back(field.repeated ? reflection->AddMessage(message(), field.field)
                                     : reflection->MutableMessage(message(), field.field));
  return true;
}

void FieldSink::Close(std::uint32_t offset) {
  trail_.Close(offset);
  messages_.pop_back();
}

// --- names ---

void FieldSink::UnknownName(std::string_view name, std::uint32_t offset, std::string_view value) {
  const MessageInfo& info = trail_.info();
  const std::string message = absl::StrCat("`", info.descriptor->name(), "` has no field `", std::string(name), "`");
  const FieldPath at = trail_.PathOfMessage().Field(name);
  if (std::string unit = HowToWriteUnit(info.descriptor->name(), name, value); !unit.empty()) {
    return reading_.ReportUnknown(kUnknownField, at, offset, /*carried=*/false, message, std::move(unit),
                                  /*kind=*/"unit");
  }
  const std::string_view nearest = NearestName(name, info.Names());
  std::string help;
  const MessageInfo* enclosing = trail_.EnclosingWith(name);
  if (nearest.empty() && enclosing != nullptr) {
    help = absl::StrCat("`", enclosing->descriptor->name(), "` has one of that name: is a closing brace missing?");
  }
  reading_.ReportUnknown(kUnknownField, at, offset, /*carried=*/false, absl::StrCat(message, DidYouMean(nearest)),
                         std::move(help));
}

google::protobuf::UnknownFieldSet* FieldSink::UnknownFields() {
  return message()->GetReflection()->MutableUnknownFields(message());
}

}  // namespace withy
