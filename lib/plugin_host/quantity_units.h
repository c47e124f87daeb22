// The units a plugin may ask a quantity in, by the names of the schema.
#ifndef WITHY_PLUGIN_HOST_QUANTITY_UNITS_H_
#define WITHY_PLUGIN_HOST_QUANTITY_UNITS_H_

#include <optional>
#include <string_view>
#include <vector>

#include "google/protobuf/message.h"

namespace withy::plugin {

// Whether a message is a quantity: its one value is a oneof named `unit`.
bool IsQuantity(const google::protobuf::Descriptor& type);

// The unit the author used; null where none is set.
const google::protobuf::FieldDescriptor* UnitUsed(const google::protobuf::Message& quantity);

// `number` in `from` as a number in `to`; the same number where the two are one unit. Unset where either is not a unit,
// or they are of different kinds ("inch" and "oz").
std::optional<double> ConvertUnit(double number, std::string_view from, std::string_view to);

// Every unit, in the order of the schema; those of one kind stand together.
std::vector<std::string_view> UnitNames();

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_QUANTITY_UNITS_H_
