// `require`: the host's modules and the plugin's own files, nothing else.
//
// `require "withy.text"` is a module of the host; `require "parts.rows"` is the plugin's parts/rows.lua, or
// parts/rows/init.lua. Each is run once; a file that requires itself is an error.
#ifndef WITHY_PLUGIN_HOST_PLUGIN_MODULES_H_
#define WITHY_PLUGIN_HOST_PLUGIN_MODULES_H_

#include <string>

#include "lua.hpp"

namespace withy::plugin {

// Adds `require` to the globals.
void OpenRequire(lua_State* lua);

// Runs one of the plugin's own files and leaves what it returns on the stack. The file must be there.
void RunOwnFile(lua_State* lua, const std::string& file);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PLUGIN_MODULES_H_
