// The operating system's walls around the process that runs a plugin.
//
// They go up in two steps: what the parent can set between fork and exec, so that it holds whatever program is started,
// and what the child closes behind itself once it has read its request and before anything of the plugin runs.
#ifndef WITHY_PLUGIN_HOST_JAIL_H_
#define WITHY_PLUGIN_HOST_JAIL_H_

#include <sys/types.h>

#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

// Whether this is a build with Address or Thread Sanitizer: it reserves terabytes of address space, and looks for leaks
// with files and processes that the walls do not allow.
#if defined(__SANITIZE_ADDRESS__) || defined(__SANITIZE_THREAD__)
inline constexpr bool kSanitized = true;
#elif defined(__has_feature)
inline constexpr bool kSanitized = __has_feature(address_sanitizer) || __has_feature(thread_sanitizer);
#else
inline constexpr bool kSanitized = false;
#endif

// What setrlimit takes, worked out before the fork.
struct JailLimits {
  unsigned long cpu_seconds = 0;
  unsigned long address_space = 0;
};
JailLimits JailLimitsFor(const PluginLimits& limits);

// After fork, before exec; calls nothing but system calls. CPU time, address space, no file may be written, few may be
// open, no core dump, no new processes, no new privileges, death with the parent. False where the system refuses one of
// them.
bool LimitBeforeExec(const JailLimits& limits, pid_t parent);

// In the child, once it has read its request: no file can be opened any more. False where the system refuses.
bool CloseBehind();

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_JAIL_H_
