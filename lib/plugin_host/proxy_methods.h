// What Lua calls when a plugin reads, counts or goes through a proxy. What each gives is said in proxy.h.
#ifndef WITHY_PLUGIN_HOST_PROXY_METHODS_H_
#define WITHY_PLUGIN_HOST_PROXY_METHODS_H_

#include "lua.hpp"

namespace withy::plugin {

// The metamethods of every proxy, for luaL_setfuncs.
extern const luaL_Reg kProxyMethods[6];

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PROXY_METHODS_H_
