#include "signals.h"

#include <unistd.h>

#include <atomic>

namespace withy {
namespace {

constexpr int kEnding[] = {SIGINT, SIGTERM, SIGHUP};

// A handler may read lock-free atomics and call unlink and raise, and hardly anything else (signal-safety(7)).
std::atomic<const char*> temporaries[256];
static_assert(std::atomic<const char*>::is_always_lock_free);

// The system has set the default back and holds the signal until this returns (SA_RESETHAND).
void RemoveAndEnd(int signal) {
  for (const std::atomic<const char*>& temporary : temporaries) {
    if (const char* path = temporary.load(); path != nullptr) unlink(path);
  }
  raise(signal);
}

}  // namespace

void HandleSignals() {
  std::signal(SIGPIPE, SIG_IGN);
  std::signal(SIGXFSZ, SIG_IGN);
  for (const int signal : kEnding) {
    struct sigaction action {};
    if (sigaction(signal, nullptr, &action) == 0 && action.sa_handler == SIG_IGN) continue;
    action.sa_handler = RemoveAndEnd;
    action.sa_flags = SA_RESETHAND;
    sigfillset(&action.sa_mask);
    sigaction(signal, &action, nullptr);
  }
}

SignalsHeld::SignalsHeld() {
  sigset_t held;
  sigemptyset(&held);
  for (const int signal : kEnding) sigaddset(&held, signal);
  sigprocmask(SIG_BLOCK, &held, &before_);
}

SignalsHeld::~SignalsHeld() {
  sigprocmask(SIG_SETMASK, &before_, nullptr);
}

void NoteTemporary(const std::string& path) {
  for (std::atomic<const char*>& temporary : temporaries) {
    const char* free = nullptr;
    if (temporary.compare_exchange_strong(free, path.c_str())) return;
  }
}

void ForgetTemporary(const std::string& path) {
  for (std::atomic<const char*>& temporary : temporaries) {
    if (temporary.load() == path.c_str()) temporary.store(nullptr);
  }
}

}  // namespace withy
