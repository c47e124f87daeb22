// Starts the program that runs a plugin, gives it one request and takes what it answers, whatever it does.
#ifndef WITHY_PLUGIN_HOST_CHILD_PROCESS_H_
#define WITHY_PLUGIN_HOST_CHILD_PROCESS_H_

#include <chrono>
#include <cstddef>
#include <string>

#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

inline constexpr char kChildArgument[] = "--plugin-child";

struct ChildRun {
  enum class End {
    kDone,        // ended by itself, with exit status 0
    kNotStarted,  // `detail` is an errno
    kExited,      // `detail` is its exit status
    kKilled,      // by a signal that is not ours; `detail` is the signal
    kTooLong,     // wall time; killed
    kTooMuch,     // answered more than `most_bytes`; killed
  };
  End end = End::kNotStarted;
  int detail = 0;
  std::string answer;  // what came before it ended
};

// Runs `program` with no environment and no files but its standard input and output, behind the walls of jail.h.
// Returns when the child is gone; it never outlives the call. The signal dispositions of this process are not touched.
ChildRun RunChild(const std::string& program, const std::string& request, const PluginLimits& limits,
                  std::chrono::steady_clock::time_point deadline, std::size_t most_bytes);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_CHILD_PROCESS_H_
