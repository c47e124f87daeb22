// Messages as read-only Lua values: `ctx.design.blank.sections[1].length.inch`.
//
// A proxy is a full userdata that points into a message; nothing is copied. It keeps its children, so that the same
// thing is the same object each time. Proxies are the only full userdata that a plugin's state ever holds: whoever
// finds one may take it for a Proxy.
//
//   d.blank.sections     list, also where empty; #, [i] from 1 (nil beyond the end), ipairs, pairs
//   d.blank.lenght       error: no such field, with the nearest one
//   d.intent             nil where unset; likewise numbers with presence, "" and UNSPECIFIED
//   length.mm            a quantity, in any unit of its kind; length.unit is the author's
//   station.inside       the name of the case of a oneof that is set, or nil
//   d.extensions.club    a plugin's own data; missing keys are nil
#ifndef WITHY_PLUGIN_HOST_PROXY_H_
#define WITHY_PLUGIN_HOST_PROXY_H_

#include <string>
#include <type_traits>

#include "google/protobuf/message.h"
#include "lua.hpp"
#include "withy/findings/field_path.h"

namespace withy::plugin {

// What a path starts at.
enum class Root { kDesign, kRod, kReport };

struct Proxy {
  enum class Kind {
    kMessage,  // `message`, a quantity included
    kList,     // the repeated `field` of `message`
    kMap,      // the map `field` of `message`: string to Struct
    kStruct,   // `message`, a google.protobuf.Struct
    kValues,   // `message`, a google.protobuf.ListValue
  };
  Kind kind;
  Root root;
  const google::protobuf::Message* message;
  const google::protobuf::FieldDescriptor*
      field;           // of a list or map; of a message: the field of its owner that holds it
  const Proxy* owner;  // null at the root
  int index;           // of a list item, from 0; else -1
};
static_assert(std::is_trivially_destructible_v<Proxy>, "Lua frees it without asking");

// Leaves the proxy of a whole message on the stack. The message must outlive the state.
void PushRoot(lua_State* lua, Root root, const google::protobuf::Message& message);

// The proxy at `index`, or null where something else is there.
const Proxy* ProxyAt(lua_State* lua, int index);

// Where the thing stands, from its root. Inside an extension: the extension.
FieldPath PathOf(const Proxy& proxy);

// The id of a message ("" = it has none, or is no message).
std::string IdOf(const google::protobuf::Message& message);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PROXY_H_
