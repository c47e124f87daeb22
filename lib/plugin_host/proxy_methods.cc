#include "proxy_methods.h"

#include <algorithm>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "google/protobuf/struct.pb.h"
#include "proxy.h"
#include "proxy_value.h"
#include "quantity_units.h"
#include "safe_base.h"
#include "sandbox.h"
#include "schema_names.h"
#include "withy/units/format.h"

namespace withy::plugin {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

const Proxy& Self(lua_State* lua) {
  return *static_cast<const Proxy*>(lua_touserdata(lua, 1));
}

int SizeOf(const Proxy& proxy) {
  switch (proxy.kind) {
    case Proxy::Kind::kList:
    case Proxy::Kind::kMap:
      return proxy.message->GetReflection()->FieldSize(*proxy.message, proxy.field);
    case Proxy::Kind::kStruct:
      return static_cast<const google::protobuf::Struct*>(proxy.message)->fields_size();
    case Proxy::Kind::kValues:
      return static_cast<const google::protobuf::ListValue*>(proxy.message)->values_size();
    case Proxy::Kind::kMessage:
      break;
  }
  return 0;
}

// The key at index 2 as an item's number from 0; -1 where it is beyond the list.
int ItemAsked(lua_State* lua, const Proxy& list) {
  if (lua_type(lua, 2) != LUA_TNUMBER) {
    return luaL_error(lua, "a list has no field '%s'; its items are [1], [2] ...", TextOf(lua, 2).c_str());
  }
  int exact = 0;
  lua_Integer number = lua_tointegerx(lua, 2, &exact);
  return exact != 0 && number >= 1 && number <= SizeOf(list) ? static_cast<int>(number - 1) : -1;
}

const char* NameAsked(lua_State* lua, const char* of) {
  if (lua_type(lua, 2) == LUA_TSTRING) return lua_tostring(lua, 2);
  luaL_error(lua, "%s is not a list: its fields have names", of);
  return nullptr;
}

void ReadQuantity(lua_State* lua, const Proxy& self, const std::string& name) {
  const FieldDescriptor* used = UnitUsed(*self.message);
  if (used == nullptr) {
    lua_pushnil(lua);
  } else if (name == "unit") {
    lua_pushlstring(lua, used->name().data(), used->name().size());
  } else {
    double number = self.message->GetReflection()->GetDouble(*self.message, used);
    lua_pushnumber(lua, ConvertUnit(number, used->name(), name).value_or(number));
  }
}

void ReadField(lua_State* lua, const Proxy& self) {
  const google::protobuf::Descriptor& type = *self.message->GetDescriptor();
  std::string name = NameAsked(lua, type.name().c_str());
  const FieldDescriptor* field = type.FindFieldByName(name);
  const google::protobuf::OneofDescriptor* oneof = type.FindOneofByName(name);
  if (field == nullptr && oneof == nullptr) {
    luaL_error(lua, "%s", NoSuchName(type, name).c_str());
  } else if (IsQuantity(type) && (oneof != nullptr || field->real_containing_oneof() != nullptr)) {
    ReadQuantity(lua, self, name);
  } else if (oneof != nullptr) {
    const FieldDescriptor* set = self.message->GetReflection()->GetOneofFieldDescriptor(*self.message, oneof);
    set == nullptr ? lua_pushnil(lua) : static_cast<void>(lua_pushlstring(lua, set->name().data(), set->name().size()));
  } else {
    PushFieldValue(lua, self, *field);
  }
}

void ReadMapEntry(lua_State* lua, const Proxy& self) {
  std::string name = NameAsked(lua, self.field->name().c_str());
  const Reflection& reflection = *self.message->GetReflection();
  for (int i = 0; i < reflection.FieldSize(*self.message, self.field); ++i) {
    const Message& entry = reflection.GetRepeatedMessage(*self.message, self.field, i);
    const google::protobuf::Descriptor& type = *entry.GetDescriptor();
    if (entry.GetReflection()->GetString(entry, type.map_key()) != name) continue;
    PushProxy(lua, {Proxy::Kind::kStruct, self.root, &entry.GetReflection()->GetMessage(entry, type.map_value()),
                    type.map_value(), &self, i});
    return;
  }
  lua_pushnil(lua);
}

void ReadStructField(lua_State* lua, const Proxy& self) {
  std::string name = NameAsked(lua, "a table of an extension");
  const auto& fields = static_cast<const google::protobuf::Struct*>(self.message)->fields();
  auto found = fields.find(name);
  found == fields.end() ? lua_pushnil(lua) : PushStructValue(lua, self, found->second);
}

void ReadValue(lua_State* lua, const Proxy& self) {
  switch (self.kind) {
    case Proxy::Kind::kMessage:
      return ReadField(lua, self);
    case Proxy::Kind::kMap:
      return ReadMapEntry(lua, self);
    case Proxy::Kind::kStruct:
      return ReadStructField(lua, self);
    case Proxy::Kind::kList:
    case Proxy::Kind::kValues:
      break;
  }
  int item = ItemAsked(lua, self);
  if (item < 0) {
    lua_pushnil(lua);
  } else if (self.kind == Proxy::Kind::kList) {
    PushItemValue(lua, self, item);
  } else {
    PushStructValue(lua, self, static_cast<const google::protobuf::ListValue*>(self.message)->values(item));
  }
}

// __index: children that are proxies themselves are kept, so that they are the same object the next time.
int Index(lua_State* lua) {
  lua_settop(lua, 2);
  lua_getiuservalue(lua, 1, 1);
  lua_pushvalue(lua, 2);
  if (!lua_isnil(lua, 2) && lua_rawget(lua, 3) != LUA_TNIL) return 1;
  lua_settop(lua, 3);
  ReadValue(lua, Self(lua));
  if (lua_type(lua, -1) == LUA_TUSERDATA) {
    lua_pushvalue(lua, 2);
    lua_pushvalue(lua, -2);
    lua_rawset(lua, 3);
  }
  return 1;
}

int NewIndex(lua_State* lua) {
  return luaL_error(lua, "design, rod and report are read-only");
}

int ItemCount(lua_State* lua) {
  const Proxy& self = Self(lua);
  if (self.kind != Proxy::Kind::kList && self.kind != Proxy::Kind::kValues) {
    return luaL_error(lua, "%s is not a list: it has no length '#'", TextOf(lua, 1).c_str());
  }
  lua_pushinteger(lua, SizeOf(self));
  return 1;
}

int ToString(lua_State* lua) {
  const Proxy& self = Self(lua);
  std::string text;
  if (self.kind == Proxy::Kind::kMessage && IsQuantity(*self.message->GetDescriptor())) {
    const FieldDescriptor* used = UnitUsed(*self.message);
    text = used == nullptr ? "no unit"
                           : absl::StrCat(FormatShortest(self.message->GetReflection()->GetDouble(*self.message, used)),
                                          " ", used->name());
  } else {
    static constexpr const char* kRoots[] = {"design", "rod", "report"};
    std::string path = PathOf(self).ToString();
    text = absl::StrCat(kRoots[static_cast<int>(self.root)], path.empty() ? "" : ".", path);
  }
  lua_pushlstring(lua, text.data(), text.size());
  return 1;
}

std::vector<std::string> KeysOf(const Proxy& self) {
  std::vector<std::string> keys;
  if (self.kind == Proxy::Kind::kMessage) {
    std::vector<const FieldDescriptor*> fields;
    self.message->GetReflection()->ListFields(*self.message, &fields);
    for (const FieldDescriptor* field : fields) keys.push_back(field->name());
    return keys;
  }
  if (self.kind == Proxy::Kind::kStruct) {
    for (const auto& [key, unused] : static_cast<const google::protobuf::Struct*>(self.message)->fields())
      keys.push_back(key);
  } else {
    for (int i = 0; i < SizeOf(self); ++i) {
      const Message& entry = self.message->GetReflection()->GetRepeatedMessage(*self.message, self.field, i);
      keys.push_back(entry.GetReflection()->GetString(entry, entry.GetDescriptor()->map_key()));
    }
  }
  std::sort(keys.begin(), keys.end());
  return keys;
}

// The iterator of pairs. Upvalues: the keys in order, how many were given.
int NextPair(lua_State* lua) {
  lua_Integer given = lua_tointeger(lua, lua_upvalueindex(2));
  do {
    lua_settop(lua, 1);
    if (lua_rawgeti(lua, lua_upvalueindex(1), ++given) == LUA_TNIL) return 1;
    lua_pushvalue(lua, -1);
  } while (lua_gettable(lua, 1) == LUA_TNIL);
  lua_pushinteger(lua, given);
  lua_replace(lua, lua_upvalueindex(2));
  return 2;
}

// __pairs: items in order, set fields in the order of the schema, keys of an extension in byte order.
int Pairs(lua_State* lua) {
  const Proxy& self = Self(lua);
  lua_settop(lua, 1);
  lua_newtable(lua);
  if (self.kind == Proxy::Kind::kList || self.kind == Proxy::Kind::kValues) {
    for (int i = 1; i <= SizeOf(self); ++i) {
      lua_pushinteger(lua, i);
      lua_rawseti(lua, 2, i);
    }
  } else {
    lua_Integer position = 0;
    for (const std::string& key : KeysOf(self)) {
      lua_pushlstring(lua, key.data(), key.size());
      lua_rawseti(lua, 2, ++position);
    }
  }
  lua_pushinteger(lua, 0);
  lua_pushcclosure(lua, Bound<NextPair>, 2);
  lua_pushvalue(lua, 1);
  lua_pushnil(lua);
  return 3;
}

}  // namespace

const luaL_Reg kProxyMethods[] = {{"__index", Bound<Index>},       {"__newindex", Bound<NewIndex>},
                                  {"__len", Bound<ItemCount>},     {"__pairs", Bound<Pairs>},
                                  {"__tostring", Bound<ToString>}, {nullptr, nullptr}};

}  // namespace withy::plugin
