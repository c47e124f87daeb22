#include "safe_string.h"

#include <cmath>
#include <cstring>
#include <limits>

#include "safe_base.h"

namespace withy::plugin {
namespace {

constexpr int kOriginal = lua_upvalueindex(1);

int CallOriginal(lua_State* lua) {
  lua_pushvalue(lua, kOriginal);
  lua_insert(lua, 1);
  lua_call(lua, lua_gettop(lua) - 1, 1);
  return 1;
}

// Makes the argument of one conversion safe to print on any machine.
void MakeSafe(lua_State* lua, int argument, char conversion) {
  if (argument > lua_gettop(lua)) return;  // Lua's own function will say so
  if (conversion == 's' && lua_type(lua, argument) != LUA_TSTRING) {
    PushText(lua, argument);
    lua_replace(lua, argument);
  } else if (lua_type(lua, argument) == LUA_TNUMBER && std::isnan(lua_tonumber(lua, argument))) {
    lua_pushnumber(lua, std::numeric_limits<double>::quiet_NaN());  // the sign of NaN differs between processors
    lua_replace(lua, argument);
  }
}

}  // namespace

int SafeFormat(lua_State* lua) {
  const char* format = luaL_checkstring(lua, 1);
  int argument = 1;
  for (const char* at = std::strchr(format, '%'); at != nullptr; at = std::strchr(at, '%')) {
    at += 1 + std::strspn(at + 1, "-+ #0123456789.");
    if (*at == '\0') break;
    if (*at == 'p') return luaL_error(lua, "'%%p' is not part of a plugin's library");
    if (*at != '%') MakeSafe(lua, ++argument, *at);
    ++at;
  }
  return CallOriginal(lua);
}

int SafeRep(lua_State* lua) {
  std::size_t text = 0;
  std::size_t separator = 0;
  luaL_checklstring(lua, 1, &text);
  luaL_checkinteger(lua, 2);
  luaL_optlstring(lua, 3, "", &separator);
  if (text + separator > 0) return CallOriginal(lua);
  lua_pushliteral(lua, "");
  return 1;
}

}  // namespace withy::plugin
