#include "quantity_units.h"

#include <iterator>

#include "withy/units/quantity.h"

namespace withy::plugin {
namespace {

enum class Kind { kLength, kMass, kVolume, kAngle, kForce, kModulus, kDensity, kTemperature, kTime };

// To and from the kind's first unit.
struct Unit {
  Kind kind;
  std::string_view name;
  double (*to_first)(double);
  double (*from_first)(double);
};

double Same(double number) { return number; }

constexpr Unit kUnits[] = {
    {Kind::kLength, "mm", Same, Same},
    {Kind::kLength, "inch", [](double x) { return Length::Inches(x).mm(); }, [](double x) { return Length::Mm(x).inches(); }},
    {Kind::kLength, "in64", [](double x) { return Length::In64(x).mm(); }, [](double x) { return Length::Mm(x).in64(); }},
    {Kind::kMass, "g", Same, Same},
    {Kind::kMass, "oz", [](double x) { return Mass::Ounces(x).grams(); }, [](double x) { return Mass::Grams(x).ounces(); }},
    {Kind::kMass, "grain", [](double x) { return Mass::Grains(x).grams(); }, [](double x) { return Mass::Grams(x).grains(); }},
    {Kind::kVolume, "ml", Same, Same},
    {Kind::kVolume, "fl_oz", [](double x) { return Volume::FluidOunces(x).milliliters(); },
     [](double x) { return Volume::Milliliters(x).fluid_ounces(); }},
    {Kind::kAngle, "deg", Same, Same},
    {Kind::kForce, "n", Same, Same},
    {Kind::kForce, "lbf", [](double x) { return Force::PoundsForce(x).newtons(); },
     [](double x) { return Force::Newtons(x).pounds_force(); }},
    {Kind::kForce, "kgf", [](double x) { return Force::KilogramsForce(x).newtons(); },
     [](double x) { return Force::Newtons(x).kilograms_force(); }},
    {Kind::kModulus, "gpa", Same, Same},
    {Kind::kModulus, "msi", [](double x) { return Modulus::Msi(x).gigapascals(); },
     [](double x) { return Modulus::Gigapascals(x).msi(); }},
    {Kind::kDensity, "g_per_cm3", Same, Same},
    {Kind::kTemperature, "celsius", Same, Same},
    {Kind::kTemperature, "fahrenheit", [](double x) { return Temperature::Fahrenheit(x).celsius(); },
     [](double x) { return Temperature::Celsius(x).fahrenheit(); }},
    {Kind::kTime, "seconds", Same, Same},
    {Kind::kTime, "minutes", [](double x) { return Duration::Minutes(x).seconds(); },
     [](double x) { return Duration::Seconds(x).minutes(); }},
    {Kind::kTime, "hours", [](double x) { return Duration::Hours(x).seconds(); },
     [](double x) { return Duration::Seconds(x).hours(); }},
    {Kind::kTime, "days", [](double x) { return Duration::Days(x).seconds(); }, [](double x) { return Duration::Seconds(x).days(); }},
};

const Unit* FindUnit(std::string_view name) {
  for (const Unit& unit : kUnits) {
    if (unit.name == name) return &unit;
  }
  return nullptr;
}

}  // namespace

bool IsQuantity(const google::protobuf::Descriptor& type) { return type.FindOneofByName("unit") != nullptr; }

const google::protobuf::FieldDescriptor* UnitUsed(const google::protobuf::Message& quantity) {
  return quantity.GetReflection()->GetOneofFieldDescriptor(quantity, quantity.GetDescriptor()->FindOneofByName("unit"));
}

std::optional<double> ConvertUnit(double number, std::string_view from, std::string_view to) {
  const Unit* source = FindUnit(from);
  const Unit* target = FindUnit(to);
  if (source == nullptr || target == nullptr || source->kind != target->kind) return std::nullopt;
  if (source == target) return number;
  return target->from_first(source->to_first(number));
}

std::vector<std::string_view> UnitNames() {
  std::vector<std::string_view> names;
  for (const Unit& unit : kUnits) names.push_back(unit.name);
  return names;
}

}  // namespace withy::plugin
