#include "field_words.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "withy/findings/nearest_name.h"
#include "withy/units/unit.h"

namespace withy {

using google::protobuf::FieldDescriptor;

namespace {

// The value that `found` was meant to be ("`\"ABOVE\"`"), or else the first one that says something.
std::string_view ExampleOf(const google::protobuf::EnumDescriptor& type, std::string_view found) {
  const std::vector<std::string_view> names = EnumNames(type);
  const std::size_t begin = std::min(found.find_first_not_of("`\"'"), found.size());
  const std::size_t end = found.find_last_not_of("`\"'") + 1;
  const std::string_view nearest = NearestName(begin < end ? found.substr(begin, end - begin) : "", names);
  return nearest.empty() ? names[names.size() > 1 ? 1 : 0] : nearest;
}

}  // namespace

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

bool IsQuantity(const FieldInfo& field) {
  return field.message != nullptr && !UnitsOf(field.message->descriptor->name()).empty();
}

std::string HowToWrite(const FieldInfo& field, Form form, std::string_view found) {
  if (field.map) return "";
  const std::string name(field.name);
  const auto written = [&](std::string_view value) {
    return form == Form::kJson ? absl::StrCat("\"", name, "\": ", std::string(value))
                               : absl::StrCat("`", name, ": ", std::string(value), "`");
  };
  switch (field.type) {
    case FieldDescriptor::CPPTYPE_STRING:
      return absl::StrCat("Put the text in quotes: ", written("\"...\""), ".");
    case FieldDescriptor::CPPTYPE_BOOL:
      return absl::StrCat("Write ", written("true"), " or ", written("false"), ".");
    case FieldDescriptor::CPPTYPE_ENUM: {
      const std::string value(ExampleOf(*field.field->enum_type(), found));
      return absl::StrCat("Write the name ", form == Form::kJson ? "in quotes: " : "without quotes: ",
                          written(form == Form::kJson ? absl::StrCat("\"", value, "\"") : value), ".");
    }
    case FieldDescriptor::CPPTYPE_MESSAGE: {
      if (!IsQuantity(field)) return "";
      const std::string unit(UnitsOf(field.message->descriptor->name()).front().name);
      if (form == Form::kJson) return absl::StrCat("Write it with its unit: \"", name, "\": {\"", unit, "\": 12.5}.");
      return absl::StrCat("Write it with its unit: `", name, " { ", unit, ": 12.5 }`.");
    }
    default:
      return "";
  }
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
