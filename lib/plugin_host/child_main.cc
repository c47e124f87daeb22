// The other side of child_process.h: reads one request, runs it, answers in frames.
#include <sys/time.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <csignal>
#include <cstring>
#include <exception>
#include <string>

#include "child_process.h"
#include "frames.h"
#include "jail.h"
#include "job.h"

namespace withy {

using namespace plugin;

namespace {

constexpr int kBadRequest = 2;
constexpr int kOutOfMemory = 3;
constexpr suseconds_t kTick = 100'000;  // microseconds of CPU time
constexpr int kTicksToStop = 5;         // how long a plugin has to reach its next instruction

// What the handler needs. There is one run in this process.
Sandbox* running = nullptr;
volatile std::sig_atomic_t ticks = 0;
volatile std::sig_atomic_t is_writing = 0;

bool WriteAll(const char* bytes, std::size_t size) {
  while (size > 0) {
    ssize_t count = write(STDOUT_FILENO, bytes, size);
    if (count < 0 && errno == EINTR) continue;
    if (count <= 0) return false;
    bytes += count;
    size -= static_cast<std::size_t>(count);
  }
  return true;
}

// Time is up. The plugin stops at its next instruction; where there is none (one endless call of the library), the
// process says where it is and ends.
void OnTimeUp(int) {
  if (is_writing != 0) return;
  running->InterruptSoon();
  ticks = ticks + 1;
  if (ticks < kTicksToStop) return;
  char location[128] = "";
  running->Location(location, sizeof location);
  char header[kFrameHeader];
  WriteFrameHeader(kStoppedAtType, std::strlen(location), header);
  bool told = WriteAll(header, sizeof header) && WriteAll(location, std::strlen(location));
  _exit(told ? 0 : 1);
}

void StartClock(Sandbox& sandbox, std::chrono::milliseconds cpu) {
  running = &sandbox;
  struct sigaction action {};
  action.sa_handler = OnTimeUp;
  action.sa_flags = SA_RESTART;
  sigaction(SIGPROF, &action, nullptr);
  auto microseconds = std::chrono::duration_cast<std::chrono::microseconds>(cpu).count();
  itimerval timer{};
  timer.it_value = {static_cast<time_t>(microseconds / 1'000'000), static_cast<suseconds_t>(microseconds % 1'000'000)};
  timer.it_interval = {0, kTick};
  setitimer(ITIMER_PROF, &timer, nullptr);
}

void StopClock() {
  itimerval none{};
  setitimer(ITIMER_PROF, &none, nullptr);
}

std::string ReadAll() {
  std::string bytes;
  char block[65536];
  for (ssize_t count = 0; (count = read(STDIN_FILENO, block, sizeof block)) != 0;) {
    if (count > 0) bytes.append(block, static_cast<std::size_t>(count));
    if (count < 0 && errno != EINTR) break;
  }
  return bytes;
}

int Serve() {
  host::v1::Request request;
  if (!request.ParseFromString(ReadAll()) || !CloseBehind()) return kBadRequest;
  PluginSource source;
  source.path = request.shown_name();
  for (const host::v1::File& file : request.sources()) source.files[file.name()] = file.bytes();
  PluginLimits limits;
  limits.memory_bytes = request.limits().memory_bytes();
  limits.cpu = std::chrono::milliseconds(request.limits().cpu_ms());
  limits.output_bytes = request.limits().output_bytes();
  limits.files = static_cast<int>(request.limits().files());
  v1::Design design;
  v1::Rod rod;
  v1::Report report;
  if (source.files.count("init.lua") == 0 || !design.ParseFromString(request.design()) ||
      !rod.ParseFromString(request.rod()) || !report.ParseFromString(request.report())) {
    return kBadRequest;
  }
  const PluginSubject subject = {design, rod, report};
  bool sent = true;
  Job job{source,   limits, request.task(), &subject, [&](Sandbox& sandbox) { StartClock(sandbox, limits.cpu); },
          StopClock};
  RunJob(job, [&](const Reply& reply) {
    std::string frame = FrameOf(reply);
    is_writing = 1;
    sent = sent && WriteAll(frame.data(), frame.size());
    is_writing = 0;
  });
  return sent ? 0 : 1;
}

}  // namespace

bool RunPluginChildIfAsked(int argc, char** argv, int* exit_status) {
  if (argc != 2 || std::strcmp(argv[1], kChildArgument) != 0) return false;
  try {
    *exit_status = Serve();
  } catch (const std::exception&) {
    *exit_status = kOutOfMemory;
  }
  if (kSanitized) _exit(*exit_status);
  return true;
}

}  // namespace withy
