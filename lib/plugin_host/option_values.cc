#include "option_values.h"

#include <cmath>
#include <string_view>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "schema_names.h"

namespace withy::plugin {
namespace {

bool HasType(const std::string& value, const std::string& type) {
  double number = 0;
  if (type == "number") return absl::SimpleAtod(value, &number) && std::isfinite(number);
  return type != "boolean" || value == "true" || value == "false";
}

}  // namespace

absl::Status ReadOptionValues(const host::v1::Entry& entry, const host::v1::Task& task,
                              std::vector<OptionValue>& values) {
  std::vector<std::string_view> known;
  for (const host::v1::DeclaredOption& declared : entry.options()) {
    known.push_back(declared.name());
    values.push_back({declared.name(), declared.type(), declared.default_value(), declared.has_default_value()});
  }
  for (const host::v1::Option& typed : task.options()) {
    OptionValue* option = nullptr;
    for (OptionValue& value : values) {
      if (value.name == typed.name()) option = &value;
    }
    if (option == nullptr) {
      return absl::NotFoundError(
          absl::StrCat(entry.name(), " has no option '", typed.name(), "'", DidYouMean(typed.name(), known)));
    }
    if (!HasType(typed.value(), option->type)) {
      return absl::OutOfRangeError(absl::StrCat("option '", option->name, "' is a ", option->type, ", not '",
                                                typed.value(), "'",
                                                option->type == "boolean" ? ": write true or false" : ""));
    }
    option->value = typed.value();
    option->is_set = true;
  }
  return absl::OkStatus();
}

}  // namespace withy::plugin
