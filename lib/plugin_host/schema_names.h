// Names of the schema, looked up strictly: what is not there is an error that names the nearest.
#ifndef WITHY_PLUGIN_HOST_SCHEMA_NAMES_H_
#define WITHY_PLUGIN_HOST_SCHEMA_NAMES_H_

#include <string>
#include <string_view>

#include "absl/status/status.h"
#include "google/protobuf/descriptor.h"
#include "withy/findings/field_path.h"

namespace withy::plugin {

// "; did you mean 'length'?", or "".
std::string DidYouMean(std::string_view wrong, const std::vector<std::string_view>& known);

// "Section has no field 'lenght'; did you mean 'length'?"; of a quantity: "Length has no unit 'g'; it has mm, inch,
// in64".
std::string NoSuchName(const google::protobuf::Descriptor& type, std::string_view name);

// Whether a message of `type` answers to `name`: a field, a oneof, or of a quantity a unit of its kind.
bool HasName(const google::protobuf::Descriptor& type, std::string_view name);

// Whether `path` can exist in a message of `type`, whatever its values. Below a Struct everything can. InvalidArgument
// with the nearest name.
absl::Status CheckPath(const google::protobuf::Descriptor& type, const FieldPath& path);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_SCHEMA_NAMES_H_
