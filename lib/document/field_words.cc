#include "field_words.h"

#include "absl/strings/str_cat.h"

namespace withy {

using google::protobuf::FieldDescriptor;

std::string Expected(const FieldInfo& field, Form form) {
  switch (field.type) {
    case FieldDescriptor::CPPTYPE_STRING:
      return "text in quotes";
    case FieldDescriptor::CPPTYPE_DOUBLE:
    case FieldDescriptor::CPPTYPE_FLOAT:
      return "a number";
    case FieldDescriptor::CPPTYPE_BOOL:
      return "`true` or `false`";
    case FieldDescriptor::CPPTYPE_ENUM:
      return absl::StrCat("one of ", ListOf(EnumNames(*field.field->enum_type())));
    case FieldDescriptor::CPPTYPE_MESSAGE:
      if (form != Form::kJson) return "fields in braces";
      return field.repeated && !field.map ? "a list of objects" : "an object in braces";
    default:
      return "a whole number";
  }
}

std::string HowToWrite(const FieldInfo& field, Form form) {
  if (field.message == nullptr || field.map || field.message->fields.empty()) return "";
  const FieldInfo& first = field.message->fields.front();
  if (first.type != FieldDescriptor::CPPTYPE_DOUBLE) return "";
  const std::string outer(field.name), inner(first.name);
  if (form == Form::kJson) return absl::StrCat("Write it with its unit: \"", outer, "\": {\"", inner, "\": 12.5}.");
  return absl::StrCat("Write it with its unit: `", outer, " { ", inner, ": 12.5 }`.");
}

std::string DidYouMean(std::string_view name) {
  return name.empty() ? "" : absl::StrCat("; did you mean `", std::string(name), "`?");
}

std::string ListOf(const std::vector<std::string_view>& names) {
  std::string list;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const bool last = i + 1 == names.size();
    absl::StrAppend(&list, i == 0 ? "" : last ? " and " : ", ", "`", std::string(names[i]), "`");
  }
  return list;
}

std::vector<std::string_view> EnumNames(const google::protobuf::EnumDescriptor& type) {
  std::vector<std::string_view> names;
  for (int i = 0; i < type.value_count(); ++i) names.push_back(type.value(i)->name());
  return names;
}

}  // namespace withy
