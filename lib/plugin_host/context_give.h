// The methods of `ctx` with which a plugin gives something, and what all methods share.
#ifndef WITHY_PLUGIN_HOST_CONTEXT_GIVE_H_
#define WITHY_PLUGIN_HOST_CONTEXT_GIVE_H_

#include <string_view>

#include "context.h"
#include "lua.hpp"

namespace withy::plugin {

int Emit(lua_State* lua);
int Refuse(lua_State* lua);
int Write(lua_State* lua);

// The context a method was called on; raises an error where it was called with '.' instead of ':'.
Context& ContextArgument(lua_State* lua, const char* method);

// Argument `index` as text; raises an error where it is not UTF-8 text.
std::string_view TextArgument(lua_State* lua, int index);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_CONTEXT_GIVE_H_
