#include "schema_names.h"

#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "google/protobuf/struct.pb.h"
#include "quantity_units.h"
#include "withy/findings/nearest_name.h"

namespace withy::plugin {
namespace {

using google::protobuf::Descriptor;
using google::protobuf::FieldDescriptor;

std::vector<std::string_view> FieldNames(const Descriptor& type) {
  std::vector<std::string_view> names;
  for (int i = 0; i < type.field_count(); ++i) names.push_back(type.field(i)->name());
  return names;
}

std::vector<std::string_view> UnitNamesOf(const Descriptor& quantity) {
  const google::protobuf::OneofDescriptor& oneof = *quantity.FindOneofByName("unit");
  std::vector<std::string_view> names;
  for (int i = 0; i < oneof.field_count(); ++i) names.push_back(oneof.field(i)->name());
  return names;
}

}  // namespace

std::string DidYouMean(std::string_view wrong, const std::vector<std::string_view>& known) {
  std::string_view nearest = NearestName(wrong, known);
  return nearest.empty() ? "" : absl::StrCat("; did you mean '", std::string(nearest), "'?");
}

std::string NoSuchName(const Descriptor& type, std::string_view name) {
  std::string start = absl::StrCat(type.name(), " has no ");
  if (IsQuantity(type)) {
    return absl::StrCat(
        start, "unit '", std::string(name), "'; it has ",
        absl::StrJoin(UnitNamesOf(type), ", ", [](std::string* out, std::string_view unit) { out->append(unit); }));
  }
  return absl::StrCat(start, "field '", std::string(name), "'", DidYouMean(name, FieldNames(type)));
}

bool HasName(const Descriptor& type, std::string_view name) {
  std::string key(name);
  return type.FindFieldByName(key) != nullptr || type.FindOneofByName(key) != nullptr;
}

absl::Status CheckPath(const Descriptor& type, const FieldPath& path) {
  const Descriptor* message = &type;      // null below a scalar
  const FieldDescriptor* list = nullptr;  // the list or map whose item comes next
  for (const FieldPath::Step& step : path.steps()) {
    if (step.field.empty()) {
      if (list == nullptr)
        return absl::InvalidArgumentError(absl::StrCat("'", path.ToString(), "': [] comes after a list"));
      message = list->is_map() ? list->message_type()->map_value()->message_type() : list->message_type();
      list = nullptr;
      continue;
    }
    if (list != nullptr) {
      return absl::InvalidArgumentError(
          absl::StrCat("'", path.ToString(), "': ", list->name(), " is a list: name an item, ", list->name(), "[0]"));
    }
    if (message == google::protobuf::Struct::descriptor()) return absl::OkStatus();
    if (message == nullptr) {
      return absl::InvalidArgumentError(
          absl::StrCat("'", path.ToString(), "': nothing has a field '", step.field, "' there"));
    }
    if (!HasName(*message, step.field)) return absl::InvalidArgumentError(NoSuchName(*message, step.field));
    const FieldDescriptor* field = message->FindFieldByName(step.field);
    list = field != nullptr && field->is_repeated() ? field : nullptr;
    message = field != nullptr && list == nullptr ? field->message_type() : nullptr;
  }
  return absl::OkStatus();
}

}  // namespace withy::plugin
