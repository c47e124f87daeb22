#include "plugin_run.h"

#include <csignal>
#include <cstring>
#include <string>
#include <string_view>

#include "absl/strings/str_cat.h"
#include "child_process.h"
#include "job.h"
#include "sandbox.h"

namespace withy::plugin {
namespace {

// Frames, descriptions and failures beside what the plugin gives out.
constexpr std::size_t kOverhead = std::size_t{4} << 20;

absl::Status RunHere(const PluginHostOptions& options, const PluginSource& plugin, const host::v1::Task& task,
                     const PluginSubject* subject, ReplyReader& reader) {
  absl::Status accepted;
  RunJob({plugin, options.limits, task, subject}, [&](const Reply& reply) {
    if (accepted.ok()) accepted = reader.Accept(reply);
  });
  return accepted;
}

std::string RequestFor(const PluginHostOptions& options, const PluginSource& plugin, const host::v1::Task& task,
                       const PluginSubject* subject) {
  host::v1::Request request;
  for (const auto& [name, text] : plugin.files) {
    host::v1::File& file = *request.add_sources();
    file.set_name(name);
    file.set_bytes(text);
  }
  request.set_shown_name(Sandbox::ShownName(plugin, "init.lua"));
  *request.mutable_task() = task;
  request.mutable_limits()->set_memory_bytes(options.limits.memory_bytes);
  request.mutable_limits()->set_cpu_ms(static_cast<std::uint64_t>(options.limits.cpu.count()));
  request.mutable_limits()->set_output_bytes(options.limits.output_bytes);
  request.mutable_limits()->set_files(static_cast<std::uint32_t>(options.limits.files));
  if (subject != nullptr) {
    subject->design.SerializeToString(request.mutable_design());
    subject->rod.SerializeToString(request.mutable_rod());
    subject->report.SerializeToString(request.mutable_report());
  }
  return request.SerializeAsString();
}

absl::Status HowItEnded(const ChildRun& run, const PluginHostOptions& options) {
  switch (run.end) {
    case ChildRun::End::kDone:
      return absl::OkStatus();
    case ChildRun::End::kNotStarted:
      return absl::AbortedError(absl::StrCat("cannot start ", options.child_program, ": ", std::strerror(run.detail)));
    case ChildRun::End::kExited:
      return absl::AbortedError(absl::StrCat("its process ended with exit status ", run.detail));
    case ChildRun::End::kKilled:
      if (run.detail == SIGXCPU || run.detail == SIGKILL) {
        return absl::ResourceExhaustedError(absl::StrCat("its process was stopped by the system: more than ",
                                                         options.limits.cpu.count(), " ms or too much memory"));
      }
      return absl::AbortedError(absl::StrCat("its process was killed by signal ", run.detail));
    case ChildRun::End::kTooLong:
      return absl::ResourceExhaustedError(absl::StrCat("took longer than ", options.limits.wall.count(), " ms"));
    case ChildRun::End::kTooMuch:
      return absl::ResourceExhaustedError(
          absl::StrCat("gives out more than ", options.limits.output_bytes >> 10, " KiB"));
  }
  return absl::OkStatus();
}

absl::Status ReadAnswer(std::string_view answer, ReplyReader& reader) {
  bool lied = false;
  while (std::optional<Reply> reply = TakeFrame(answer, lied)) {
    if (absl::Status accepted = reader.Accept(*reply); !accepted.ok()) return accepted;
  }
  return lied ? absl::AbortedError("its process sent what is not a result") : absl::OkStatus();
}

}  // namespace

absl::Status RunPlugin(const PluginHostOptions& options, const PluginSource& plugin, const host::v1::Task& task,
                       const PluginSubject* subject, std::chrono::steady_clock::time_point deadline,
                       ReplyReader& reader) {
  if (plugin.built_in) return RunHere(options, plugin, task, subject, reader);
  if (options.child_program.empty()) {
    return absl::InvalidArgumentError("this program runs built-in plugins only: it names no child program");
  }
  ChildRun run = RunChild(options.child_program, RequestFor(options, plugin, task, subject), options.limits, deadline,
                          options.limits.output_bytes + kOverhead);
  absl::Status read = ReadAnswer(run.answer, reader);
  if (!read.ok() && run.end == ChildRun::End::kDone) return read;
  if (!reader.stopped_at().empty()) {
    return absl::ResourceExhaustedError(
        absl::StrCat(reader.stopped_at(), ": ran for more than ", options.limits.cpu.count(), " ms"));
  }
  return HowItEnded(run, options);
}

}  // namespace withy::plugin
