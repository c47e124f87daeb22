// Paths of a plugin: `fit.overall_length_mm`, `design.guides[g5].from_tip`, `guides[0]`.
#ifndef WITHY_PLUGIN_HOST_CONTEXT_PATHS_H_
#define WITHY_PLUGIN_HOST_CONTEXT_PATHS_H_

#include <string_view>

#include "lua.hpp"
#include "proxy.h"
#include "withy/findings/field_path.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

struct RootedPath {
  Root root;
  FieldPath path;
};

// Reads a path that begins with `design.`, `rod.` or `report.`, or else is one of `first`, or else of the other of
// report and design; names alone decide, never values. Raises an error on a name that the schema does not have.
RootedPath ReadPath(lua_State* lua, std::string_view text, Root first);

// Leaves the value at `path` on the stack; nil where anything on the way is not known.
void PushAtPath(lua_State* lua, const PluginSubject& subject, const RootedPath& path);

// The path of the design's thing with that id; empty where there is none.
FieldPath PathOfId(const google::protobuf::Message& design, std::string_view id);

// A path of the design with the index of every item that it names by id, so that it matches either way.
FieldPath WithIndices(lua_State* lua, const PluginSubject& subject, const FieldPath& path);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_CONTEXT_PATHS_H_
