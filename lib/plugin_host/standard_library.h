// What a plugin has of Lua's own library: an allow-list, and the few functions that had to be made safe or repeatable.
//
// Left out: whatever reaches files, the clock, the environment, random numbers, bytecode, the garbage collector or the
// debugger; coroutines (each has its own hook, which a time limit would have to follow). Changed:
//
//   pairs, next         numbers ascending, then strings in byte order; other keys cannot be gone through
//   pcall, xpcall       do not hold the end of a run
//   tostring, format    no addresses; `%p` is refused
//   string.rep          an empty result is made without counting
//   table.sort          stable, and without the library's random pivot
//   setmetatable        plain tables, without `__gc` and `__mode`: when the collector runs must not show
//   getmetatable        plain tables
//   a global that does not exist is an error, not nil
#ifndef WITHY_PLUGIN_HOST_STANDARD_LIBRARY_H_
#define WITHY_PLUGIN_HOST_STANDARD_LIBRARY_H_

#include <string_view>
#include <vector>

#include "lua.hpp"

namespace withy::plugin {

struct StandardTable {
  std::string_view name;                // "" = globals
  std::vector<std::string_view> taken;  // as Lua has them
  std::vector<luaL_Reg> made;           // ours
};

// The allow-list, in the order of the manual. `require` is added by the loader.
const std::vector<StandardTable>& StandardTables();

// Replaces the globals of a new state by the allow-list.
void OpenStandardLibrary(lua_State* lua);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_STANDARD_LIBRARY_H_
