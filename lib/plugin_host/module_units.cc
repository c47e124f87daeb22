#include "module_units.h"

#include <cmath>
#include <string>

#include "context_give.h"
#include "quantity_units.h"
#include "sandbox.h"
#include "schema_names.h"
#include "withy/units/format.h"
#include "withy/units/parse.h"

namespace withy::plugin {
namespace {

double FiniteArgument(lua_State* lua, int index) {
  double number = luaL_checknumber(lua, index);
  if (!std::isfinite(number)) luaL_argerror(lua, index, "must be a finite number");
  return number;
}

int Push(lua_State* lua, const std::string& text) {
  lua_pushlstring(lua, text.data(), text.size());
  return 1;
}

// A quantity as a design holds it, or nil and why not.
template <typename Kind>
int Read(lua_State* lua, const absl::StatusOr<Written<Kind>>& read) {
  if (!read.ok()) {
    lua_pushnil(lua);
    return 1 + Push(lua, std::string(read.status().message()));
  }
  lua_createtable(lua, 0, 1);
  lua_pushnumber(lua, read->number);
  lua_setfield(lua, -2, std::string(read->unit).c_str());
  return 1;
}

int ReadLength(lua_State* lua) {
  return Read(lua, ParseLength(TextArgument(lua, 1)));
}
int ReadMass(lua_State* lua) {
  return Read(lua, ParseMass(TextArgument(lua, 1)));
}

int Convert(lua_State* lua) {
  double number = FiniteArgument(lua, 1);
  std::string from(TextArgument(lua, 2));
  std::string to(TextArgument(lua, 3));
  for (const std::string& unit : {from, to}) {
    if (!ConvertUnit(0, unit, unit))
      return luaL_error(lua, "there is no unit '%s'%s", unit.c_str(), DidYouMean(unit, UnitNames()).c_str());
  }
  std::optional<double> converted = ConvertUnit(number, from, to);
  if (!converted) return luaL_error(lua, "%s and %s are units of different things", from.c_str(), to.c_str());
  lua_pushnumber(lua, *converted);
  return 1;
}

// Denominators that a rule has.
int Denominator(lua_State* lua) {
  lua_Integer denominator = luaL_optinteger(lua, 2, 16);
  bool power_of_two = denominator >= 2 && denominator <= 64 && (denominator & (denominator - 1)) == 0;
  if (!power_of_two) luaL_argerror(lua, 2, "must be 2, 4, 8, 16, 32 or 64");
  return static_cast<int>(denominator);
}

int FeetAndInches(lua_State* lua) {
  return Push(lua, FormatFeetInches(Length::Mm(FiniteArgument(lua, 1)), Denominator(lua)));
}

int InchesText(lua_State* lua) {
  return Push(lua, FormatInches(Length::Mm(FiniteArgument(lua, 1)), Denominator(lua)));
}

int In64Text(lua_State* lua) {
  return Push(lua, FormatIn64(Length::Mm(FiniteArgument(lua, 1))));
}

int Round(lua_State* lua) {
  double number = FiniteArgument(lua, 1);
  double step = FiniteArgument(lua, 2);
  if (step <= 0) luaL_argerror(lua, 2, "must be above zero");
  lua_pushnumber(lua, std::round(number / step) * step + 0.0);  // + 0.0: never -0
  return 1;
}

}  // namespace

ApiModule UnitsModule() {
  return {
      "withy.units",
      "Lengths and masses as people write and read them. Units are named as in the schema.",
      {
          {"length", "(s: string): table?, string?",
           "`7' 3 1/2\"`, `2222.5 mm`, `5/64 in` as a design holds it, `{ inch = 87.5 }`; or nil and why not. A number "
           "without a unit and a decimal comma are refused.",
           Bound<ReadLength>},
          {"mass", "(s: string): table?, string?", "Likewise `1/4 oz`, `12 g`, `150 gr`.", Bound<ReadMass>},
          {"convert", "(x: number, from: string, to: string): number", "`convert(87, \"inch\", \"mm\")` is 2209.8.",
           Bound<Convert>},
          {"feet_inches", "(mm: number, denominator?: integer): string",
           "`7' 3 1/2\"`, to the nearest 1/16 unless told: cuts are laid out in 1/16, guides in 1/8.",
           Bound<FeetAndInches>},
          {"inches", "(mm: number, denominator?: integer): string", "`87 1/2\"`, likewise.", Bound<InchesText>},
          {"in64", "(mm: number): string", "`5.5/64`, to the nearest half, as tip-top tubes are sold.",
           Bound<In64Text>},
          {"round", "(x: number, step: number): number", "To the nearest multiple of `step`, halves away from zero.",
           Bound<Round>},
      }};
}

}  // namespace withy::plugin
