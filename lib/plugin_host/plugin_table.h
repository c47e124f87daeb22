// The table that a plugin returns, read and checked when it is loaded.
#ifndef WITHY_PLUGIN_HOST_PLUGIN_TABLE_H_
#define WITHY_PLUGIN_HOST_PLUGIN_TABLE_H_

#include <vector>

#include "exchange.pb.h"
#include "lua.hpp"

namespace withy::plugin {

struct LoadedPlugin {
  host::v1::Info info;
  std::vector<int> runs;  // registry references of the run functions, one per entry
};

// Reads the table at `index`: `api` before anything else. Raises an error on whatever is missing, unknown or not plain.
LoadedPlugin ReadPluginTable(lua_State* lua, int index);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PLUGIN_TABLE_H_
