#include "quantity_units.h"

#include "withy/units/unit.h"

namespace withy::plugin {
namespace {

// The kinds of quantity of the schema, in its order.
constexpr std::string_view kKinds[] = {"Length",  "Mass",    "Volume",      "Angle", "Force",
                                       "Modulus", "Density", "Temperature", "Time"};

}  // namespace

bool IsQuantity(const google::protobuf::Descriptor& type) {
  return type.FindOneofByName("unit") != nullptr;
}

const google::protobuf::FieldDescriptor* UnitUsed(const google::protobuf::Message& quantity) {
  return quantity.GetReflection()->GetOneofFieldDescriptor(quantity, quantity.GetDescriptor()->FindOneofByName("unit"));
}

std::optional<double> ConvertUnit(double number, std::string_view from, std::string_view to) {
  for (std::string_view kind : kKinds) {
    const Unit* source = FindUnit(kind, from);
    const Unit* target = FindUnit(kind, to);
    if (source == nullptr || target == nullptr) continue;
    return source == target ? number : target->from_first(source->to_first(number));
  }
  return std::nullopt;
}

std::vector<std::string_view> UnitNames() {
  std::vector<std::string_view> names;
  for (std::string_view kind : kKinds) {
    for (const Unit& unit : UnitsOf(kind)) names.push_back(unit.name);
  }
  return names;
}

}  // namespace withy::plugin
