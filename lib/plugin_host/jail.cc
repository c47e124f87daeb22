#include "jail.h"

#include <signal.h>
#include <sys/prctl.h>
#include <sys/resource.h>
#include <unistd.h>

namespace withy::plugin {
namespace {

// What the program itself, its libraries, the design and the stack need beside the plugin's memory.
constexpr unsigned long kOwnAddressSpace = 512ul << 20;
constexpr rlim_t kFilesWhileStarting = 16;  // the dynamic loader opens libraries one by one
constexpr rlim_t kStandardFiles = 3;

bool Limit(decltype(RLIMIT_CPU) resource, rlim_t soft, rlim_t hard) {
  rlimit limit{};
  if (getrlimit(resource, &limit) != 0) return false;
  limit.rlim_max = hard < limit.rlim_max ? hard : limit.rlim_max;
  limit.rlim_cur = soft < limit.rlim_max ? soft : limit.rlim_max;
  return setrlimit(resource, &limit) == 0;
}

}  // namespace

JailLimits JailLimitsFor(const PluginLimits& limits) {
  // A second more than the plugin has: its own clock stops it first, and can say where it was.
  const auto cpu = static_cast<unsigned long>(limits.cpu.count() > 0 ? limits.cpu.count() : 0);
  return {(cpu + 999) / 1000 + 1, limits.memory_bytes + kOwnAddressSpace};
}

bool LimitBeforeExec(const JailLimits& limits, pid_t parent) {
  if (prctl(PR_SET_PDEATHSIG, SIGKILL) != 0 || getppid() != parent) return false;
  if (prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0) return false;
  if (!kSanitized && !Limit(RLIMIT_AS, limits.address_space, limits.address_space)) return false;
  return Limit(RLIMIT_CPU, limits.cpu_seconds, limits.cpu_seconds + 1) && Limit(RLIMIT_FSIZE, 0, 0) &&
         Limit(RLIMIT_NOFILE, kFilesWhileStarting, kFilesWhileStarting) && Limit(RLIMIT_CORE, 0, 0) &&
         Limit(RLIMIT_NPROC, 0, 0);
}

bool CloseBehind() {
  return kSanitized || Limit(RLIMIT_NOFILE, kStandardFiles, kStandardFiles);
}

}  // namespace withy::plugin
