// The units by the names that design files give them, for code that meets a quantity by reflection or in text.
//
//   const Unit* inch = FindUnit("Length", "inch");
//   inch->to_first(87)                 // 2209.8: in the kind's first unit, mm
//   FindUnit("Length", "g")            // nullptr: grams are no length
//
// The first unit of a kind is the one a `plausible` range is in: mm, g, ml, deg, N, GPa, g/cm3, degrees Celsius,
// seconds.
#ifndef WITHY_UNITS_UNIT_H_
#define WITHY_UNITS_UNIT_H_

#include <span>
#include <string_view>

namespace withy {

struct Unit {
  std::string_view name;         // of the field in the schema's message: "inch"
  std::string_view symbol;       // printed after a number: "in"
  double (*to_first)(double);    // a number in this unit, in the kind's first unit
  double (*from_first)(double);  // and back
};

// The units of a kind in the schema's order, the first one first. `kind` is the schema's name of the message ("Length",
// "Time"); empty where there is no such kind.
std::span<const Unit> UnitsOf(std::string_view kind);

// The unit of a kind with that name, or nullptr.
const Unit* FindUnit(std::string_view kind, std::string_view name);

}  // namespace withy

#endif  // WITHY_UNITS_UNIT_H_
