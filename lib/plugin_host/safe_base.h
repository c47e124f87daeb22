// Base functions of Lua, made safe for plugins. What differs from Lua's own is said in standard_library.h.
#ifndef WITHY_PLUGIN_HOST_SAFE_BASE_H_
#define WITHY_PLUGIN_HOST_SAFE_BASE_H_

#include <string>

#include "lua.hpp"

namespace withy::plugin {

int SafeGetMetatable(lua_State* lua);
int SafeSetMetatable(lua_State* lua);
// Raises an error where a metatable that SafeSetMetatable took has since been given what it refuses.
void CheckMetatables(lua_State* lua);
int SafeToString(lua_State* lua);
int SafePcall(lua_State* lua);
int SafeXpcall(lua_State* lua);

// Leaves the value at `index` as text on the stack: `__tostring` and `__name` are honoured, other tables, functions and
// userdata are the name of their type.
void PushText(lua_State* lua, int index);

// The same as the start of an error's text may have it: at most 200 bytes.
std::string TextOf(lua_State* lua, int index);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_SAFE_BASE_H_
