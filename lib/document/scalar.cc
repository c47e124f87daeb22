#include "scalar.h"

#include <algorithm>
#include <string>

namespace withy {

using google::protobuf::EnumValueDescriptor;
using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

namespace {

Scalar GetSingular(const Message& message, const FieldDescriptor* field) {
  const Reflection* reflection = message.GetReflection();
  switch (field->cpp_type()) {
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return reflection->GetDouble(message, field);
    case FieldDescriptor::CPPTYPE_FLOAT:
      return static_cast<double>(reflection->GetFloat(message, field));
    case FieldDescriptor::CPPTYPE_INT32:
      return std::int64_t{reflection->GetInt32(message, field)};
    case FieldDescriptor::CPPTYPE_INT64:
      return std::int64_t{reflection->GetInt64(message, field)};
    case FieldDescriptor::CPPTYPE_UINT32:
      return std::uint64_t{reflection->GetUInt32(message, field)};
    case FieldDescriptor::CPPTYPE_UINT64:
      return std::uint64_t{reflection->GetUInt64(message, field)};
    case FieldDescriptor::CPPTYPE_BOOL:
      return reflection->GetBool(message, field);
    case FieldDescriptor::CPPTYPE_ENUM:
      return EnumNumber{reflection->GetEnumValue(message, field)};
    default:
      break;
  }
  std::string unused;  // for string types that the schema does not use
  const std::string_view text = reflection->GetStringReference(message, field, &unused);
  return field->type() == FieldDescriptor::TYPE_STRING ? Scalar(text) : Scalar(RawBytes{text});
}

Scalar GetItem(const Message& message, const FieldDescriptor* field, int i) {
  const Reflection* reflection = message.GetReflection();
  switch (field->cpp_type()) {
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return reflection->GetRepeatedDouble(message, field, i);
    case FieldDescriptor::CPPTYPE_FLOAT:
      return static_cast<double>(reflection->GetRepeatedFloat(message, field, i));
    case FieldDescriptor::CPPTYPE_INT32:
      return std::int64_t{reflection->GetRepeatedInt32(message, field, i)};
    case FieldDescriptor::CPPTYPE_INT64:
      return std::int64_t{reflection->GetRepeatedInt64(message, field, i)};
    case FieldDescriptor::CPPTYPE_UINT32:
      return std::uint64_t{reflection->GetRepeatedUInt32(message, field, i)};
    case FieldDescriptor::CPPTYPE_UINT64:
      return std::uint64_t{reflection->GetRepeatedUInt64(message, field, i)};
    case FieldDescriptor::CPPTYPE_BOOL:
      return reflection->GetRepeatedBool(message, field, i);
    case FieldDescriptor::CPPTYPE_ENUM:
      return EnumNumber{reflection->GetRepeatedEnumValue(message, field, i)};
    default:
      break;
  }
  std::string unused;
  const std::string_view text = reflection->GetRepeatedStringReference(message, field, i, &unused);
  return field->type() == FieldDescriptor::TYPE_STRING ? Scalar(text) : Scalar(RawBytes{text});
}

}  // namespace

Scalar GetScalar(const Message& message, const FieldDescriptor* field, int index) {
  return index == kSingular ? GetSingular(message, field) : GetItem(message, field, index);
}

bool IsPresent(const Message& message, const FieldDescriptor* field) {
  const Reflection* reflection = message.GetReflection();
  return field->is_repeated() ? reflection->FieldSize(message, field) > 0 : reflection->HasField(message, field);
}

std::vector<const Message*> SortedEntries(const Message& message, const FieldDescriptor* field) {
  const Reflection* reflection = message.GetReflection();
  std::vector<const Message*> entries;
  const int size = reflection->FieldSize(message, field);
  entries.reserve(static_cast<std::size_t>(size));
  for (int i = 0; i < size; ++i) entries.push_back(&reflection->GetRepeatedMessage(message, field, i));
  std::sort(entries.begin(), entries.end(),
            [](const Message* a, const Message* b) { return EntryKey(*a) < EntryKey(*b); });
  return entries;
}

std::string_view EntryKey(const Message& entry) {
  std::string unused;
  return entry.GetReflection()->GetStringReference(entry, entry.GetDescriptor()->map_key(), &unused);
}

std::string EnumText(const FieldDescriptor* field, EnumNumber number) {
  const EnumValueDescriptor* value = field->enum_type()->FindValueByNumber(number.value);
  return value != nullptr ? value->name() : std::to_string(number.value);
}

}  // namespace withy
