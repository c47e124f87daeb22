#include "safe_base.h"

#include <cmath>

#include "plain_text.h"
#include "sandbox.h"

namespace withy::plugin {
namespace {

constexpr std::size_t kLongestShown = 200;
constexpr char kMetatables[] = "withy.metatables";  // the plugin's, as weak keys: a garbage one is forgotten

void CheckMetatable(lua_State* lua, int index) {
  for (const char* refused : {"__gc", "__mode"}) {
    lua_pushstring(lua, refused);
    if (lua_rawget(lua, index) != LUA_TNIL) luaL_error(lua, "'%s' is not part of a plugin's library", refused);
    lua_pop(lua, 1);
  }
}

void Remember(lua_State* lua, int index) {
  if (luaL_getsubtable(lua, LUA_REGISTRYINDEX, kMetatables) == 0) {
    lua_createtable(lua, 0, 1);
    lua_pushliteral(lua, "k");
    lua_setfield(lua, -2, "__mode");
    lua_setmetatable(lua, -2);
  }
  lua_pushvalue(lua, index);
  lua_pushboolean(lua, 1);
  lua_rawset(lua, -3);
}

}  // namespace

int SafeGetMetatable(lua_State* lua) {
  luaL_checkany(lua, 1);
  if (lua_type(lua, 1) != LUA_TTABLE || lua_getmetatable(lua, 1) == 0) {
    lua_pushnil(lua);
    return 1;
  }
  luaL_getmetafield(lua, 1, "__metatable");  // pushes nothing where there is none
  return 1;
}

int SafeSetMetatable(lua_State* lua) {
  luaL_checktype(lua, 1, LUA_TTABLE);
  luaL_argexpected(lua, lua_isnil(lua, 2) || lua_istable(lua, 2), 2, "nil or table");
  if (luaL_getmetafield(lua, 1, "__metatable") != LUA_TNIL)
    return luaL_error(lua, "cannot change a protected metatable");
  if (lua_istable(lua, 2)) {
    CheckMetatable(lua, 2);
    Remember(lua, 2);
  }
  lua_settop(lua, 2);
  lua_setmetatable(lua, 1);
  return 1;
}

void CheckMetatables(lua_State* lua) {
  if (lua_getfield(lua, LUA_REGISTRYINDEX, kMetatables) == LUA_TNIL) return;
  for (lua_pushnil(lua); lua_next(lua, -2) != 0; lua_pop(lua, 1)) CheckMetatable(lua, lua_absindex(lua, -2));
}

void PushText(lua_State* lua, int index) {
  index = lua_absindex(lua, index);
  switch (lua_type(lua, index)) {
    case LUA_TTABLE:
    case LUA_TFUNCTION:
    case LUA_TUSERDATA:
    case LUA_TLIGHTUSERDATA:
      if (luaL_getmetafield(lua, index, "__tostring") != LUA_TNIL) {
        lua_pop(lua, 1);
        luaL_tolstring(lua, index, nullptr);
      } else if (luaL_getmetafield(lua, index, "__name") != LUA_TSTRING) {
        lua_pushstring(lua, luaL_typename(lua, index));
      }
      return;
    case LUA_TNUMBER:
      // The sign of NaN differs between processors.
      if (std::isnan(lua_tonumber(lua, index))) {
        lua_pushliteral(lua, "nan");
        return;
      }
      [[fallthrough]];
    default:
      luaL_tolstring(lua, index, nullptr);
  }
}

std::string TextOf(lua_State* lua, int index) {
  PushText(lua, index);
  std::size_t size = 0;
  const char* bytes = lua_tolstring(lua, -1, &size);
  std::string text = AsPlainLine(std::string_view(bytes, size), kLongestShown);
  lua_pop(lua, 1);
  return text;
}

int SafeToString(lua_State* lua) {
  luaL_checkany(lua, 1);
  PushText(lua, 1);
  return 1;
}

int SafePcall(lua_State* lua) {
  luaL_checkany(lua, 1);
  int status = lua_pcall(lua, lua_gettop(lua) - 1, LUA_MULTRET, 0);
  if (status != LUA_OK) Sandbox::RaiseAgainIfEnded(lua, status);
  lua_pushboolean(lua, status == LUA_OK);
  lua_insert(lua, 1);
  return lua_gettop(lua);
}

int SafeXpcall(lua_State* lua) {
  int arguments = lua_gettop(lua) - 2;
  luaL_checktype(lua, 2, LUA_TFUNCTION);
  lua_pushvalue(lua, 1);
  lua_insert(lua, 3);
  int status = lua_pcall(lua, arguments, LUA_MULTRET, 2);
  if (status != LUA_OK) Sandbox::RaiseAgainIfEnded(lua, status);
  lua_pushboolean(lua, status == LUA_OK);
  lua_replace(lua, 2);
  return lua_gettop(lua) - 1;
}

}  // namespace withy::plugin
