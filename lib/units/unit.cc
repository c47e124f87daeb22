#include "withy/units/unit.h"

#include "withy/units/quantity.h"

namespace withy {
namespace {

double Same(double x) {
  return x;
}

constexpr Unit kLengths[] = {
    {"mm", "mm", Same, Same},
    {"inch", "in", [](double x) { return Length::Inches(x).mm(); }, [](double x) { return Length::Mm(x).inches(); }},
    {"in64", "/64 in", [](double x) { return Length::In64(x).mm(); }, [](double x) { return Length::Mm(x).in64(); }},
};
constexpr Unit kMasses[] = {
    {"g", "g", Same, Same},
    {"oz", "oz", [](double x) { return Mass::Ounces(x).grams(); }, [](double x) { return Mass::Grams(x).ounces(); }},
    {"grain", "gr", [](double x) { return Mass::Grains(x).grams(); }, [](double x) { return Mass::Grams(x).grains(); }},
};
constexpr Unit kVolumes[] = {
    {"ml", "ml", Same, Same},
    {"fl_oz", "fl oz", [](double x) { return Volume::FluidOunces(x).milliliters(); },
     [](double x) { return Volume::Milliliters(x).fluid_ounces(); }},
};
constexpr Unit kAngles[] = {{"deg", "deg", Same, Same}};
constexpr Unit kForces[] = {
    {"n", "N", Same, Same},
    {"lbf", "lbf", [](double x) { return Force::PoundsForce(x).newtons(); },
     [](double x) { return Force::Newtons(x).pounds_force(); }},
    {"kgf", "kgf", [](double x) { return Force::KilogramsForce(x).newtons(); },
     [](double x) { return Force::Newtons(x).kilograms_force(); }},
};
constexpr Unit kModuli[] = {
    {"gpa", "GPa", Same, Same},
    {"msi", "msi", [](double x) { return Modulus::Msi(x).gigapascals(); },
     [](double x) { return Modulus::Gigapascals(x).msi(); }},
};
constexpr Unit kDensities[] = {{"g_per_cm3", "g/cm3", Same, Same}};
constexpr Unit kTemperatures[] = {
    {"celsius", "degrees Celsius", Same, Same},
    {"fahrenheit", "degrees Fahrenheit", [](double x) { return Temperature::Fahrenheit(x).celsius(); },
     [](double x) { return Temperature::Celsius(x).fahrenheit(); }},
};
constexpr Unit kTimes[] = {
    {"seconds", "s", Same, Same},
    {"minutes", "min", [](double x) { return Duration::Minutes(x).seconds(); },
     [](double x) { return Duration::Seconds(x).minutes(); }},
    {"hours", "h", [](double x) { return Duration::Hours(x).seconds(); },
     [](double x) { return Duration::Seconds(x).hours(); }},
    {"days", "days", [](double x) { return Duration::Days(x).seconds(); },
     [](double x) { return Duration::Seconds(x).days(); }},
};

struct KindUnits {
  std::string_view kind;
  std::span<const Unit> units;
};

constexpr KindUnits kKinds[] = {
    {"Length", kLengths}, {"Mass", kMasses},    {"Volume", kVolumes},    {"Angle", kAngles},
    {"Force", kForces},   {"Modulus", kModuli}, {"Density", kDensities}, {"Temperature", kTemperatures},
    {"Time", kTimes},
};

}  // namespace

std::span<const Unit> UnitsOf(std::string_view kind) {
  for (const KindUnits& entry : kKinds) {
    if (entry.kind == kind) return entry.units;
  }
  return {};
}

const Unit* FindUnit(std::string_view kind, std::string_view name) {
  for (const Unit& unit : UnitsOf(kind)) {
    if (unit.name == name) return &unit;
  }
  return nullptr;
}

}  // namespace withy
