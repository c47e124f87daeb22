#include "context.h"

#include <cmath>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "safe_base.h"
#include "sandbox.h"
#include "schema_names.h"

namespace withy::plugin {
namespace {

constexpr char kCurrent[] = "withy.context";

const char* UseName(unsigned use) {
  return use == kInCheck ? "a check" : use == kInExporter ? "an exporter" : "an importer";
}

void PushText(lua_State* lua, std::string_view text) {
  lua_pushlstring(lua, text.data(), text.size());
}

int NoSuchOption(lua_State* lua) {
  std::vector<std::string_view> known;
  Context& context = Context::Of(lua);
  for (const OptionValue& option : context.options) {
    known.push_back(option.name);
    // A declared option without a value.
    if (lua_type(lua, 2) == LUA_TSTRING && option.name == lua_tostring(lua, 2)) return 0;
  }
  std::string name = TextOf(lua, 2);
  return luaL_error(lua, "there is no option '%s'%s", name.c_str(), DidYouMean(name, known).c_str());
}

int ReadOnly(lua_State* lua) {
  return luaL_error(lua, "ctx is read-only");
}

// Closes the table on top of the stack: `index` answers for missing names, nothing is written.
void Close(lua_State* lua, lua_CFunction index) {
  lua_createtable(lua, 0, 3);
  lua_pushcfunction(lua, index);
  lua_setfield(lua, -2, "__index");
  lua_pushcfunction(lua, ReadOnly);
  lua_setfield(lua, -2, "__newindex");
  lua_pushboolean(lua, 0);
  lua_setfield(lua, -2, "__metatable");
  lua_setmetatable(lua, -2);
}

void PushOptions(lua_State* lua, const Context& context) {
  lua_newtable(lua);
  for (const OptionValue& option : context.options) {
    if (!option.is_set) continue;
    double number = 0;
    if (option.type == "number" && absl::SimpleAtod(option.value, &number)) {
      lua_pushnumber(lua, number);
    } else if (option.type == "boolean") {
      lua_pushboolean(lua, option.value == "true");
    } else {
      PushText(lua, option.value);
    }
    lua_setfield(lua, -2, option.name.c_str());
  }
  Close(lua, Bound<NoSuchOption>);
}

// A property that was declared for this run.
void PushProperty(lua_State* lua, const Context& context, std::string_view name) {
  if (name == "design") return PushRootOnce(lua, *context.subject, Root::kDesign);
  if (name == "rod") return PushRootOnce(lua, *context.subject, Root::kRod);
  if (name == "report") return PushRootOnce(lua, *context.subject, Root::kReport);
  if (name == "options") return PushOptions(lua, context);
  if (name == "stem") return PushText(lua, context.stem);
  if (name == "input") return PushText(lua, context.input);
  if (name == "input_name") return PushText(lua, context.input_name);
  lua_pushnil(lua);
}

int NoSuchName(lua_State* lua) {
  const Context& context = Context::Of(lua);
  std::string name = TextOf(lua, 2);
  std::vector<std::string_view> known;
  bool elsewhere = false;
  auto look_at = [&](std::string_view declared, unsigned uses) {
    if ((uses & context.use) != 0) known.push_back(declared);
    if ((uses & context.use) == 0 && declared == name) elsewhere = true;
  };
  for (const ApiField& property : ContextProperties()) look_at(property.name, property.uses);
  for (const ApiFunction& method : ContextMethods()) look_at(method.name, method.uses);
  if (elsewhere) return luaL_error(lua, "ctx.%s is not there in %s", name.c_str(), UseName(context.use));
  return luaL_error(lua, "ctx has no '%s'%s", name.c_str(), DidYouMean(name, known).c_str());
}

}  // namespace

Context& Context::Of(lua_State* lua) {
  lua_getfield(lua, LUA_REGISTRYINDEX, kCurrent);
  Context* context = static_cast<Context*>(lua_touserdata(lua, -1));
  lua_pop(lua, 1);
  return *context;
}

void PushContext(lua_State* lua, Context& context) {
  lua_pushlightuserdata(lua, &context);
  lua_setfield(lua, LUA_REGISTRYINDEX, kCurrent);
  lua_newtable(lua);
  for (const ApiField& property : ContextProperties()) {
    if ((property.uses & context.use) == 0) continue;
    PushProperty(lua, context, property.name);
    lua_setfield(lua, -2, property.name.data());
  }
  for (const ApiFunction& method : ContextMethods()) {
    if ((method.uses & context.use) == 0) continue;
    lua_pushcfunction(lua, method.function);
    lua_setfield(lua, -2, method.name.data());
  }
  Close(lua, Bound<NoSuchName>);
}

void PushRootOnce(lua_State* lua, const PluginSubject& subject, Root root) {
  static constexpr const char* kKeys[] = {"withy.design", "withy.rod", "withy.report"};
  const char* key = kKeys[static_cast<int>(root)];
  if (lua_getfield(lua, LUA_REGISTRYINDEX, key) != LUA_TNIL) return;
  lua_pop(lua, 1);
  switch (root) {
    case Root::kDesign:
      PushRoot(lua, root, subject.design);
      break;
    case Root::kRod:
      PushRoot(lua, root, subject.rod);
      break;
    case Root::kReport:
      PushRoot(lua, root, subject.report);
      break;
  }
  lua_pushvalue(lua, -1);
  lua_setfield(lua, LUA_REGISTRYINDEX, key);
}

}  // namespace withy::plugin
