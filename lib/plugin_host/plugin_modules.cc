#include "plugin_modules.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_replace.h"
#include "api_table.h"
#include "embedded.h"
#include "safe_base.h"
#include "sandbox.h"
#include "schema_names.h"

namespace withy::plugin {
namespace {

constexpr char kLoaded[] = "withy.loaded";
constexpr char kHostPrefix[] = "withy.";

int NoSuchFunction(lua_State* lua) {
  std::vector<std::string_view> known;
  const auto& module = *static_cast<const ApiModule*>(lua_touserdata(lua, lua_upvalueindex(1)));
  for (const ApiFunction& function : module.functions) known.push_back(function.name);
  std::string name = TextOf(lua, 2);
  return luaL_error(lua, "%s has no '%s'%s", std::string(module.name).c_str(), name.c_str(),
                    DidYouMean(name, known).c_str());
}

// Leaves the table of what the module's Lua text defines on the stack; an empty one where it has none.
void RunHostText(lua_State* lua, const ApiModule& module) {
  std::string file = absl::StrCat(std::string(module.name.substr(sizeof kHostPrefix - 1)), ".lua");
  for (const EmbeddedFile& text : EmbeddedModules()) {
    if (text.file != file) continue;
    Sandbox::Load(lua, text.text, absl::StrCat("=", std::string(module.name)));
    lua_call(lua, 0, 1);
    return;
  }
  lua_newtable(lua);
}

// A module has the functions that are declared, no more and no less.
void PushHostModule(lua_State* lua, const ApiModule& module) {
  lua_createtable(lua, 0, static_cast<int>(module.functions.size()));
  RunHostText(lua, module);
  for (const ApiFunction& function : module.functions) {
    if (function.function != nullptr) {
      lua_pushcfunction(lua, function.function);
    } else if (lua_getfield(lua, -1, function.name.data()) != LUA_TFUNCTION) {
      luaL_error(lua, "%s.%s is declared but not defined", module.name.data(), function.name.data());
    }
    lua_setfield(lua, -3, function.name.data());
  }
  lua_pop(lua, 1);
  lua_createtable(lua, 0, 2);
  lua_pushlightuserdata(lua, const_cast<ApiModule*>(&module));
  lua_pushcclosure(lua, Bound<NoSuchFunction>, 1);
  lua_setfield(lua, -2, "__index");
  lua_pushboolean(lua, 0);
  lua_setfield(lua, -2, "__metatable");
  lua_setmetatable(lua, -2);
}

void LoadHostModule(lua_State* lua, const std::string& name) {
  std::vector<std::string_view> known;
  for (const ApiModule& module : ApiModules()) {
    if (module.name == name) return PushHostModule(lua, module);
    known.push_back(module.name);
  }
  luaL_error(lua, "there is no module '%s'%s", name.c_str(), DidYouMean(name, known).c_str());
}

void LoadOwnFile(lua_State* lua, const std::string& name) {
  std::string path = absl::StrReplaceAll(name, {{".", "/"}});
  for (const std::string& file : {path + ".lua", path + "/init.lua"}) {
    if (Sandbox::Of(lua).source().files.count(file) != 0) return RunOwnFile(lua, file);
  }
  luaL_error(lua,
             "there is no module '%s': the plugin has no %s.lua, and a module of the host is named withy.something",
             name.c_str(), path.c_str());
}

int Require(lua_State* lua) {
  std::string name = luaL_checkstring(lua, 1);
  lua_settop(lua, 1);
  luaL_getsubtable(lua, LUA_REGISTRYINDEX, kLoaded);
  if (lua_getfield(lua, 2, name.c_str()) != LUA_TNIL) {
    if (lua_islightuserdata(lua, -1)) return luaL_error(lua, "module '%s' requires itself", name.c_str());
    return 1;
  }
  lua_pushlightuserdata(lua, nullptr);  // stands for a module that is being loaded
  lua_setfield(lua, 2, name.c_str());
  lua_settop(lua, 2);
  name.rfind(kHostPrefix, 0) == 0 ? LoadHostModule(lua, name) : LoadOwnFile(lua, name);
  if (lua_isnil(lua, -1)) lua_pushboolean(lua, 1);
  lua_pushvalue(lua, -1);
  lua_setfield(lua, 2, name.c_str());
  return 1;
}

}  // namespace

void OpenRequire(lua_State* lua) {
  lua_pushcfunction(lua, Bound<Require>);
  lua_setglobal(lua, "require");
}

void RunOwnFile(lua_State* lua, const std::string& file) {
  const PluginSource& source = Sandbox::Of(lua).source();
  Sandbox::Load(lua, source.files.at(file), absl::StrCat("@", Sandbox::ShownName(source, file)));
  lua_call(lua, 0, 1);
}

}  // namespace withy::plugin
