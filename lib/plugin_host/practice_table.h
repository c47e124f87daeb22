// What a plugin says is usual for guides (`practices`), on its way to withy/guides/practice.h: from its table to a
// message in the process that runs it, from the message to the library in the host, which believes nothing of it.
#ifndef WITHY_PLUGIN_HOST_PRACTICE_TABLE_H_
#define WITHY_PLUGIN_HOST_PRACTICE_TABLE_H_

#include <optional>
#include <string>

#include "exchange.pb.h"
#include "lua.hpp"
#include "withy/guides/practice.h"

namespace withy::plugin {

inline constexpr int kMostPractices = 64;  // of one plugin

// Reads the table on top of the stack. Raises an error that begins with `what` where a name is unknown (with the
// nearest one), or a number not finite or out of its bounds.
host::v1::Practice ReadPractice(lua_State* lua, const std::string& what);

// As the library has it, with the plugin's name on each rule; unset where the message is not one that ReadPractice
// makes.
std::optional<Practice> PracticeFrom(const host::v1::Practice& message, const std::string& plugin);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PRACTICE_TABLE_H_
