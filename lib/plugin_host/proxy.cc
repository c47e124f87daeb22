#include "proxy.h"

#include <new>
#include <string>
#include <utility>

#include "proxy_methods.h"
#include "proxy_value.h"

namespace withy::plugin {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;

// What Lua calls a value of this kind in its own messages ("attempt to compare a Length with a number").
std::string TypeName(const Proxy& proxy) {
  if (proxy.kind == Proxy::Kind::kMessage) return proxy.message->GetDescriptor()->name();
  return proxy.kind == Proxy::Kind::kList || proxy.kind == Proxy::Kind::kValues ? "list" : "extension";
}

}  // namespace

void PushProxy(lua_State* lua, const Proxy& proxy) {
  luaL_checkstack(lua, 8, nullptr);
  new (lua_newuserdatauv(lua, sizeof(Proxy), 1)) Proxy(proxy);
  lua_newtable(lua);
  lua_setiuservalue(lua, -2, 1);
  if (luaL_newmetatable(lua, TypeName(proxy).c_str()) != 0) {  // sets __name as well
    luaL_setfuncs(lua, kProxyMethods, 0);
  }
  lua_setmetatable(lua, -2);
}

void PushRoot(lua_State* lua, Root root, const Message& message) {
  PushProxy(lua, {Proxy::Kind::kMessage, root, &message, nullptr, nullptr, -1});
}

const Proxy* ProxyAt(lua_State* lua, int index) {
  return lua_type(lua, index) == LUA_TUSERDATA ? static_cast<const Proxy*>(lua_touserdata(lua, index)) : nullptr;
}

FieldPath PathOf(const Proxy& proxy) {
  if (proxy.owner == nullptr) return FieldPath();
  FieldPath path = PathOf(*proxy.owner);
  switch (proxy.owner->kind) {
    case Proxy::Kind::kMessage:
      return std::move(path).Field(proxy.field->name());
    case Proxy::Kind::kList:
      return std::move(path).Item(IdOf(*proxy.message), proxy.index);
    case Proxy::Kind::kMap: {
      const Message& map = *proxy.owner->message;
      const Message& entry = map.GetReflection()->GetRepeatedMessage(map, proxy.owner->field, proxy.index);
      return std::move(path).Item(entry.GetReflection()->GetString(entry, entry.GetDescriptor()->map_key()), -1);
    }
    case Proxy::Kind::kStruct:
    case Proxy::Kind::kValues:
      break;
  }
  return path;
}

std::string IdOf(const Message& message) {
  const FieldDescriptor* id = message.GetDescriptor()->FindFieldByName("id");
  if (id == nullptr || id->is_repeated() || id->type() != FieldDescriptor::TYPE_STRING) return "";
  return message.GetReflection()->GetString(message, id);
}

}  // namespace withy::plugin
