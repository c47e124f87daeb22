#include "standard_library.h"

#include "ordered_tables.h"
#include "safe_base.h"
#include "safe_string.h"
#include "sandbox.h"

namespace withy::plugin {
namespace {

// Leaves Lua's own table of that name ("" = its base functions) on the stack.
void PushOriginal(lua_State* lua, std::string_view name) {
  struct Opener {
    std::string_view name;
    lua_CFunction open;
  };
  static constexpr Opener kOpeners[] = {{"", luaopen_base},
                                        {"string", luaopen_string},
                                        {"table", luaopen_table},
                                        {"math", luaopen_math},
                                        {"utf8", luaopen_utf8}};
  for (const Opener& opener : kOpeners) {
    if (opener.name != name) continue;
    lua_pushcfunction(lua, opener.open);
    lua_call(lua, 0, 1);
  }
}

// Adds what is allowed of the table at -1 to the table at -2, and takes it off. A function of ours has Lua's own
// function of that name as its upvalue.
void TakeAllowed(lua_State* lua, const StandardTable& table) {
  for (std::string_view function : table.taken) {
    lua_getfield(lua, -1, function.data());
    lua_setfield(lua, -3, function.data());
  }
  for (const luaL_Reg& made : table.made) {
    lua_getfield(lua, -1, made.name);
    lua_pushcclosure(lua, made.func, 1);
    lua_setfield(lua, -3, made.name);
  }
  lua_pop(lua, 1);
}

int UnknownGlobal(lua_State* lua) {
  return luaL_error(lua, "there is no '%s' here (a misspelt name, or not part of a plugin's library)",
                    TextOf(lua, 2).c_str());
}

// Methods of strings come from the allowed `string` table.
void PointStringsTo(lua_State* lua, int string_table) {
  lua_pushliteral(lua, "");
  lua_getmetatable(lua, -1);
  lua_pushvalue(lua, string_table);
  lua_setfield(lua, -2, "__index");
  lua_pop(lua, 2);
}

}  // namespace

const std::vector<StandardTable>& StandardTables() {
  static const std::vector<StandardTable> tables = {
      {"",
       {"assert", "error", "ipairs", "rawequal", "rawget", "rawlen", "rawset", "select", "tonumber", "type",
        "_VERSION"},
       {{"getmetatable", Bound<SafeGetMetatable>},
        {"next", Bound<OrderedNext>},
        {"pairs", Bound<OrderedPairs>},
        {"pcall", SafePcall},
        {"setmetatable", Bound<SafeSetMetatable>},
        {"tostring", Bound<SafeToString>},
        {"xpcall", SafeXpcall}}},
      {"string",
       {"byte", "char", "find", "gmatch", "gsub", "len", "lower", "match", "pack", "packsize", "reverse", "sub",
        "unpack", "upper"},
       {{"format", Bound<SafeFormat>}, {"rep", Bound<SafeRep>}}},
      {"table", {"concat", "insert", "move", "pack", "remove", "unpack"}, {{"sort", Bound<StableSort>}}},
      {"math",
       {"abs",  "acos", "asin", "atan", "ceil",       "cos",  "deg",        "exp",  "floor",
        "fmod", "huge", "log",  "max",  "maxinteger", "min",  "mininteger", "modf", "pi",
        "rad",  "sin",  "sqrt", "tan",  "tointeger",  "type", "ult"},
       {}},
      {"utf8", {"char", "charpattern", "codepoint", "codes", "len", "offset"}, {}}};
  return tables;
}

void OpenStandardLibrary(lua_State* lua) {
  lua_newtable(lua);
  const int globals = lua_gettop(lua);
  for (const StandardTable& table : StandardTables()) {
    if (table.name.empty()) {
      lua_pushvalue(lua, globals);
    } else {
      lua_newtable(lua);
    }
    PushOriginal(lua, table.name);
    TakeAllowed(lua, table);
    if (table.name == "string") PointStringsTo(lua, lua_gettop(lua));
    if (table.name.empty()) {
      lua_pop(lua, 1);
    } else {
      lua_setfield(lua, globals, table.name.data());
    }
  }
  lua_pushvalue(lua, globals);
  lua_setfield(lua, globals, "_G");
  lua_createtable(lua, 0, 2);
  lua_pushcfunction(lua, Bound<UnknownGlobal>);
  lua_setfield(lua, -2, "__index");
  lua_pushboolean(lua, 0);
  lua_setfield(lua, -2, "__metatable");
  lua_setmetatable(lua, globals);
  lua_rawseti(lua, LUA_REGISTRYINDEX, LUA_RIDX_GLOBALS);
}

}  // namespace withy::plugin
