#include "child_process.h"

#include <fcntl.h>
#include <poll.h>
#include <sys/socket.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <csignal>
#include <utility>

#include "jail.h"

namespace withy::plugin {
namespace {

using Clock = std::chrono::steady_clock;

// A file descriptor that is closed, is closed on exec, and is above the standard ones.
class Descriptor {
 public:
  Descriptor() = default;
  explicit Descriptor(int fd) : fd_(fd) {
    if (fd < 0 || fd > STDERR_FILENO) return;
    fd_ = fcntl(fd, F_DUPFD_CLOEXEC, STDERR_FILENO + 1);
    close(fd);
  }
  Descriptor(Descriptor&& other) noexcept : fd_(std::exchange(other.fd_, -1)) {}
  Descriptor& operator=(Descriptor&& other) noexcept {
    std::swap(fd_, other.fd_);
    return *this;
  }
  ~Descriptor() { Close(); }
  void Close() {
    if (fd_ >= 0) close(fd_);
    fd_ = -1;
  }
  int get() const { return fd_; }

 private:
  int fd_ = -1;
};

struct Channel {
  Descriptor ours, theirs;
};

// The request goes through a socket, so that a child that has gone is an error here and not a SIGPIPE.
bool Open(Channel& request, Channel& answer, Descriptor& null) {
  int ends[2];
  if (socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends) != 0) return false;
  request = {Descriptor(ends[0]), Descriptor(ends[1])};
  if (pipe2(ends, O_CLOEXEC) != 0) return false;
  answer = {Descriptor(ends[0]), Descriptor(ends[1])};
  null = Descriptor(open("/dev/null", O_WRONLY | O_CLOEXEC));
  return request.ours.get() >= 0 && request.theirs.get() >= 0 && answer.ours.get() >= 0 && answer.theirs.get() >= 0 &&
         null.get() >= 0 && fcntl(request.ours.get(), F_SETFL, O_NONBLOCK) == 0 &&
         fcntl(answer.ours.get(), F_SETFL, O_NONBLOCK) == 0;
}

// After fork: system calls only, other threads may have held any lock.
[[noreturn]] void BecomeChild(const char* program, int in, int out, int err, const JailLimits& limits, pid_t parent) {
  constexpr int kCannotStart = 126;
  sigset_t none;
  sigemptyset(&none);
  sigprocmask(SIG_SETMASK, &none, nullptr);
  signal(SIGPIPE, SIG_DFL);
  setpgid(0, 0);
  if (dup2(in, STDIN_FILENO) < 0 || dup2(out, STDOUT_FILENO) < 0 || dup2(err, STDERR_FILENO) < 0) _exit(kCannotStart);
  if (syscall(SYS_close_range, STDERR_FILENO + 1, ~0u, 0) != 0) {
    for (int fd = STDERR_FILENO + 1; fd < 4096; ++fd) close(fd);
  }
  if (!LimitBeforeExec(limits, parent)) _exit(kCannotStart);
  char* arguments[] = {const_cast<char*>(program), const_cast<char*>(kChildArgument), nullptr};
  char* environment[] = {nullptr};
  execve(program, arguments, environment);
  _exit(kCannotStart);
}

int MillisecondsTo(Clock::time_point deadline) {
  auto left = std::chrono::duration_cast<std::chrono::milliseconds>(deadline - Clock::now()).count();
  return left > 0 ? static_cast<int>(std::min<long long>(left + 1, 60'000)) : 0;
}

// Sends what is left of the request. False where nothing more can be sent.
bool SendSome(int socket, const std::string& request, std::size_t& sent) {
  ssize_t count = send(socket, request.data() + sent, request.size() - sent, MSG_NOSIGNAL);
  if (count < 0) return errno == EAGAIN || errno == EINTR;
  sent += static_cast<std::size_t>(count);
  return sent < request.size();
}

// Takes what has come. False at its end.
bool ReceiveSome(int pipe, std::string& answer) {
  char block[65536];
  ssize_t count = read(pipe, block, sizeof block);
  if (count < 0) return errno == EAGAIN || errno == EINTR;
  answer.append(block, static_cast<std::size_t>(count));
  return count > 0;
}

// Sends and receives until the child closes its output (true), or a limit is reached (false; `run.end` says which).
bool Talk(Channel& request_channel, int answer, const std::string& request, Clock::time_point deadline,
          std::size_t most_bytes, ChildRun& run) {
  std::size_t sent = 0;
  while (true) {
    int wait = MillisecondsTo(deadline);
    if (wait == 0) {
      run.end = ChildRun::End::kTooLong;
      return false;
    }
    pollfd polled[] = {{answer, POLLIN, 0}, {request_channel.ours.get(), POLLOUT, 0}};
    if (poll(polled, 2, wait) <= 0) continue;
    if (polled[1].revents != 0 && !SendSome(request_channel.ours.get(), request, sent)) request_channel.ours.Close();
    if (polled[0].revents != 0 && !ReceiveSome(answer, run.answer)) return true;
    if (run.answer.size() > most_bytes) {
      run.end = ChildRun::End::kTooMuch;
      return false;
    }
  }
}

// Waits for a child that has closed its output. False where it goes on living.
bool WaitUntil(pid_t child, Clock::time_point deadline, int& status) {
  for (int pause = 0;; pause = std::min(pause + 1, 20)) {
    pid_t gone = waitpid(child, &status, WNOHANG);
    if (gone == child) return true;
    if (gone < 0 && errno != EINTR) {  // somebody else has waited for it
      status = 0;
      return true;
    }
    if (MillisecondsTo(deadline) == 0) return false;
    poll(nullptr, 0, pause);
  }
}

void Kill(pid_t child) {
  kill(-child, SIGKILL);
  kill(child, SIGKILL);
  int status = 0;
  while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
  }
}

}  // namespace

ChildRun RunChild(const std::string& program, const std::string& request, const PluginLimits& limits,
                  Clock::time_point deadline, std::size_t most_bytes) {
  ChildRun run;
  Channel request_channel, answer_channel;
  Descriptor null;
  const JailLimits jail = JailLimitsFor(limits);
  const pid_t parent = getpid();
  const bool opened = access(program.c_str(), X_OK) == 0 && Open(request_channel, answer_channel, null);
  const pid_t child = opened ? fork() : -1;
  if (child == 0) {
    BecomeChild(program.c_str(), request_channel.theirs.get(), answer_channel.theirs.get(), null.get(), jail, parent);
  }
  if (child < 0) {
    run.detail = errno;
    return run;
  }
  setpgid(child, child);
  request_channel.theirs.Close();
  answer_channel.theirs.Close();
  int status = 0;
  if (!Talk(request_channel, answer_channel.ours.get(), request, deadline, most_bytes, run)) {
    Kill(child);
  } else if (!WaitUntil(child, deadline, status)) {
    run.end = ChildRun::End::kTooLong;
    Kill(child);
  } else if (WIFSIGNALED(status)) {
    run.end = ChildRun::End::kKilled;
    run.detail = WTERMSIG(status);
  } else {
    run.end = WEXITSTATUS(status) == 0 ? ChildRun::End::kDone : ChildRun::End::kExited;
    run.detail = WEXITSTATUS(status);
  }
  return run;
}

}  // namespace withy::plugin
