// Values of fields as Lua values: scalars by value, everything else as a proxy.
#ifndef WITHY_PLUGIN_HOST_PROXY_VALUE_H_
#define WITHY_PLUGIN_HOST_PROXY_VALUE_H_

#include "google/protobuf/struct.pb.h"
#include "lua.hpp"
#include "proxy.h"

namespace withy::plugin {

void PushProxy(lua_State* lua, const Proxy& proxy);

// The value of `field` of the message `owner`; nil where it is not known. Lists and maps are never nil.
void PushFieldValue(lua_State* lua, const Proxy& owner, const google::protobuf::FieldDescriptor& field);

// Item `index`, from 0, of the list `owner`.
void PushItemValue(lua_State* lua, const Proxy& owner, int index);

// A value inside an extension. JSON's null is nil.
void PushStructValue(lua_State* lua, const Proxy& owner, const google::protobuf::Value& value);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PROXY_VALUE_H_
