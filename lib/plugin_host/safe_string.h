// String functions of Lua, made safe for plugins. What differs from Lua's own is said in standard_library.h.
#ifndef WITHY_PLUGIN_HOST_SAFE_STRING_H_
#define WITHY_PLUGIN_HOST_SAFE_STRING_H_

#include "lua.hpp"

namespace withy::plugin {

int SafeFormat(lua_State* lua);
int SafeRep(lua_State* lua);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_SAFE_STRING_H_
