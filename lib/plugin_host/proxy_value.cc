#include "proxy_value.h"

#include <cstdint>
#include <string>

namespace withy::plugin {
namespace {

using google::protobuf::FieldDescriptor;
using google::protobuf::Message;
using google::protobuf::Reflection;

void PushString(lua_State* lua, const std::string& text) {
  lua_pushlstring(lua, text.data(), text.size());
}

void PushKnownText(lua_State* lua, const std::string& text) {
  text.empty() ? lua_pushnil(lua) : PushString(lua, text);
}

void PushEnum(lua_State* lua, const FieldDescriptor& field, int number) {
  const google::protobuf::EnumValueDescriptor* value = field.enum_type()->FindValueByNumber(number);
  if (number == 0) {
    lua_pushnil(lua);
  } else if (value == nullptr) {
    PushString(lua, std::to_string(number));  // a newer schema's
  } else {
    PushString(lua, value->name());
  }
}

}  // namespace

void PushFieldValue(lua_State* lua, const Proxy& owner, const FieldDescriptor& field) {
  const Message& message = *owner.message;
  const Reflection& reflection = *message.GetReflection();
  if (field.is_repeated()) {
    PushProxy(lua, {field.is_map() ? Proxy::Kind::kMap : Proxy::Kind::kList, owner.root, &message, &field, &owner, -1});
    return;
  }
  if (field.has_presence() && !reflection.HasField(message, &field)) {
    lua_pushnil(lua);
    return;
  }
  switch (field.cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE:
      PushProxy(lua, {Proxy::Kind::kMessage, owner.root, &reflection.GetMessage(message, &field), &field, &owner, -1});
      return;
    case FieldDescriptor::CPPTYPE_STRING:
      return PushKnownText(lua, reflection.GetString(message, &field));
    case FieldDescriptor::CPPTYPE_ENUM:
      return PushEnum(lua, field, reflection.GetEnumValue(message, &field));
    case FieldDescriptor::CPPTYPE_BOOL:
      return lua_pushboolean(lua, reflection.GetBool(message, &field));
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return lua_pushnumber(lua, reflection.GetDouble(message, &field));
    case FieldDescriptor::CPPTYPE_FLOAT:
      return lua_pushnumber(lua, reflection.GetFloat(message, &field));
    case FieldDescriptor::CPPTYPE_INT32:
      return lua_pushinteger(lua, reflection.GetInt32(message, &field));
    case FieldDescriptor::CPPTYPE_UINT32:
      return lua_pushinteger(lua, reflection.GetUInt32(message, &field));
    case FieldDescriptor::CPPTYPE_INT64:
      return lua_pushinteger(lua, reflection.GetInt64(message, &field));
    case FieldDescriptor::CPPTYPE_UINT64:
      return lua_pushinteger(lua, static_cast<lua_Integer>(reflection.GetUInt64(message, &field)));
  }
}

void PushItemValue(lua_State* lua, const Proxy& owner, int index) {
  const Message& message = *owner.message;
  const Reflection& reflection = *message.GetReflection();
  const FieldDescriptor* list = owner.field;
  switch (list->cpp_type()) {
    case FieldDescriptor::CPPTYPE_MESSAGE:
      PushProxy(lua, {Proxy::Kind::kMessage, owner.root, &reflection.GetRepeatedMessage(message, list, index), list,
                      &owner, index});
      return;
    case FieldDescriptor::CPPTYPE_STRING:
      return PushString(lua, reflection.GetRepeatedString(message, list, index));
    case FieldDescriptor::CPPTYPE_DOUBLE:
      return lua_pushnumber(lua, reflection.GetRepeatedDouble(message, list, index));
    case FieldDescriptor::CPPTYPE_ENUM:
      return PushEnum(lua, *list, reflection.GetRepeatedEnumValue(message, list, index));
    case FieldDescriptor::CPPTYPE_BOOL:
      return lua_pushboolean(lua, reflection.GetRepeatedBool(message, list, index));
    case FieldDescriptor::CPPTYPE_FLOAT:
      return lua_pushnumber(lua, reflection.GetRepeatedFloat(message, list, index));
    case FieldDescriptor::CPPTYPE_INT32:
      return lua_pushinteger(lua, reflection.GetRepeatedInt32(message, list, index));
    case FieldDescriptor::CPPTYPE_UINT32:
      return lua_pushinteger(lua, reflection.GetRepeatedUInt32(message, list, index));
    case FieldDescriptor::CPPTYPE_INT64:
      return lua_pushinteger(lua, reflection.GetRepeatedInt64(message, list, index));
    case FieldDescriptor::CPPTYPE_UINT64:
      return lua_pushinteger(lua, static_cast<lua_Integer>(reflection.GetRepeatedUInt64(message, list, index)));
  }
}

void PushStructValue(lua_State* lua, const Proxy& owner, const google::protobuf::Value& value) {
  switch (value.kind_case()) {
    case google::protobuf::Value::kNumberValue:
      return lua_pushnumber(lua, value.number_value());
    case google::protobuf::Value::kStringValue:
      return PushString(lua, value.string_value());
    case google::protobuf::Value::kBoolValue:
      return lua_pushboolean(lua, value.bool_value());
    case google::protobuf::Value::kStructValue:
      return PushProxy(lua, {Proxy::Kind::kStruct, owner.root, &value.struct_value(), nullptr, &owner, -1});
    case google::protobuf::Value::kListValue:
      return PushProxy(lua, {Proxy::Kind::kValues, owner.root, &value.list_value(), nullptr, &owner, -1});
    default:
      lua_pushnil(lua);
  }
}

}  // namespace withy::plugin
