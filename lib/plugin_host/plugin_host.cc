#include "withy/plugin_host/plugin_host.h"

#include <algorithm>
#include <chrono>
#include <utility>

#include "absl/strings/str_cat.h"
#include "embedded.h"
#include "plain_text.h"
#include "plugin_run.h"
#include "replies.h"
#include "sandbox.h"
#include "withy/document/document.h"

namespace withy {

using namespace plugin;

namespace {

using Clock = std::chrono::steady_clock;

// First halves of codes that are withy's own.
constexpr std::string_view kTakenNames[] = {"document", "rod",     "sections", "bending", "line-load",
                                            "fit",      "bonding", "guides",   "wraps",   "balance",
                                            "assembly", "cost",    "review",   "plugin",  "withy"};

bool IsTaken(const std::string& name) {
  return std::find(std::begin(kTakenNames), std::end(kTakenNames), name) != std::end(kTakenNames);
}

// A built-in plugin is named as its folder is.
bool IsBuiltIn(const std::string& name) {
  const std::string folder = absl::StrCat(name, "/");
  const auto& files = EmbeddedPlugins();
  return std::any_of(files.begin(), files.end(),
                     [&](const EmbeddedFile& embedded) { return embedded.file.substr(0, folder.size()) == folder; });
}

absl::Status Prefixed(const std::string& prefix, const absl::Status& status) {
  return absl::Status(status.code(), absl::StrCat(prefix, ": ", std::string(status.message())));
}

// What the plugin is called before it could say so.
std::string ShownName(const PluginSource& plugin) {
  std::string name = plugin.path.substr(plugin.path.rfind('/') + 1);
  return absl::StrCat("plugin ", name.empty() ? plugin.path : name);
}

// The description of the plugin that a run began with, or why there is none.
absl::StatusOr<PluginInfo> InfoOf(const PluginSource& plugin, ReplyReader& reader, const absl::Status& ended) {
  if (!reader.info()) {
    if (!reader.results().empty()) return Prefixed(ShownName(plugin), reader.results().front().status);
    return Prefixed(ShownName(plugin), ended.ok() ? absl::AbortedError("its process gave no result") : ended);
  }
  const std::string& name = reader.info()->name;
  if (IsTaken(name)) {
    return absl::InvalidArgumentError(absl::StrCat(ShownName(plugin), ": the name '", name, "' is withy's own"));
  }
  if (!plugin.built_in && !plugin.under_test && IsBuiltIn(name)) {
    return absl::InvalidArgumentError(
        absl::StrCat(ShownName(plugin), ": '", name, "' is the name of a built-in plugin; give this one another name"));
  }
  return *reader.info();
}

// The one result of a run of one entry.
absl::StatusOr<EntryResult> ResultOf(const std::string& label, ReplyReader& reader, const absl::Status& ended) {
  if (!ended.ok()) return Prefixed(label, ended);
  if (reader.results().size() != 1) return Prefixed(label, absl::AbortedError("its process gave no result"));
  EntryResult result = std::move(reader.results().front());
  if (!result.status.ok()) return Prefixed(label, result.status);
  return result;
}

host::v1::Task TaskFor(host::v1::Task::Kind kind, std::string_view entry, const OptionValues& options) {
  host::v1::Task task;
  task.set_kind(kind);
  task.set_entry(std::string(entry));
  for (const auto& [name, value] : options) {
    host::v1::Option& option = *task.add_options();
    option.set_name(name);
    option.set_value(value);
  }
  return task;
}

absl::Status CheckOptions(const OptionValues& options) {
  for (const auto& [name, value] : options) {
    if (!IsPlainLine(name) || !IsPlainLine(value)) {
      return absl::OutOfRangeError(
          absl::StrCat("option '", AsPlainFileName(name), "': one line of UTF-8 without control characters"));
    }
  }
  return absl::OkStatus();
}

std::vector<PluginEntry> ChecksOf(const PluginInfo& info) {
  std::vector<PluginEntry> checks;
  for (const PluginEntry& entry : info.entries) {
    if (entry.kind == PluginEntry::Kind::kCheck) checks.push_back(entry);
  }
  return checks;
}

void NameFindings(std::vector<Finding>& findings, const std::string& code) {
  for (Finding& finding : findings) finding.code = code;
}

}  // namespace

absl::StatusOr<PluginInfo> PluginHost::Describe(const PluginSource& plugin) const {
  ReplyReader reader(options_.limits);
  absl::Status ended = RunPlugin(options_, plugin, TaskFor(host::v1::Task::DESCRIBE, "", {}), nullptr,
                                 Clock::now() + options_.limits.wall, reader);
  absl::StatusOr<PluginInfo> info = InfoOf(plugin, reader, ended);
  if (info.ok() && !ended.ok()) return Prefixed(ShownName(plugin), ended);
  return info;
}

// Each turn of the loop runs the checks that are left, in one go. A turn ends early where a check used up a limit or
// killed its process; the next one goes on behind it.
PluginHost::CheckResult PluginHost::RunChecks(const PluginSource& plugin, const PluginSubject& subject) const {
  CheckResult all;
  std::optional<PluginInfo> known;
  std::vector<PluginEntry> checks;
  const Clock::time_point deadline = Clock::now() + options_.limits.wall;
  std::size_t next = 0;
  do {
    host::v1::Task task = TaskFor(host::v1::Task::CHECKS, "", {});
    task.set_first_check(static_cast<std::uint32_t>(next));
    ReplyReader reader(options_.limits);
    absl::Status ended = RunPlugin(options_, plugin, task, &subject, deadline, reader);
    absl::StatusOr<PluginInfo> info = InfoOf(plugin, reader, ended);
    if (!info.ok()) {
      all.failures.push_back(info.status());
      return all;
    }
    if (!known) {
      known = *info;
      checks = ChecksOf(*info);
    }
    auto code = [&] { return absl::StrCat(known->name, "/", checks[next].name); };
    bool exhausted = false;
    for (EntryResult& result : reader.results()) {
      if (next == checks.size()) break;
      NameFindings(result.findings, code());
      std::move(result.findings.begin(), result.findings.end(), std::back_inserter(all.findings));
      if (!result.status.ok()) all.failures.push_back(Prefixed(code(), result.status));
      exhausted = result.exhausted;
      ++next;
    }
    if (next < checks.size() && !exhausted) {
      all.failures.push_back(Prefixed(code(), ended.ok() ? absl::AbortedError("its process gave no result") : ended));
      ++next;
    } else if (next == checks.size() && !ended.ok()) {
      all.failures.push_back(Prefixed(known->name, ended));
    }
  } while (next < checks.size() && Clock::now() < deadline);
  for (; next < checks.size(); ++next) {
    all.failures.push_back(absl::ResourceExhaustedError(absl::StrCat(
        known->name, "/", checks[next].name, ": not run: the checks before it used up the plugin's time")));
  }
  return all;
}

absl::StatusOr<std::vector<OutputFile>> PluginHost::Export(const PluginSource& plugin, std::string_view exporter,
                                                           std::string_view stem, const OptionValues& options,
                                                           const PluginSubject& subject) const {
  if (absl::Status plain = CheckOptions(options); !plain.ok()) return plain;
  host::v1::Task task = TaskFor(host::v1::Task::EXPORT, exporter, options);
  task.set_stem(AsPlainFileName(stem));
  ReplyReader reader(options_.limits);
  absl::Status ended = RunPlugin(options_, plugin, task, &subject, Clock::now() + options_.limits.wall, reader);
  absl::StatusOr<PluginInfo> info = InfoOf(plugin, reader, ended);
  if (!info.ok()) return info.status();
  absl::StatusOr<EntryResult> result = ResultOf(absl::StrCat(info->name, "/", std::string(exporter)), reader, ended);
  if (!result.ok()) return result.status();
  return std::move(result->files);
}

absl::StatusOr<PluginHost::ImportResult> PluginHost::Import(const PluginSource& plugin, std::string_view importer,
                                                            std::string_view input_name, std::string_view input,
                                                            const OptionValues& options) const {
  if (absl::Status plain = CheckOptions(options); !plain.ok()) return plain;
  host::v1::Task task = TaskFor(host::v1::Task::IMPORT, importer, options);
  task.set_input_name(AsPlainLine(input_name));
  task.set_input(std::string(input));
  ReplyReader reader(options_.limits);
  absl::Status ended = RunPlugin(options_, plugin, task, nullptr, Clock::now() + options_.limits.wall, reader);
  absl::StatusOr<PluginInfo> info = InfoOf(plugin, reader, ended);
  if (!info.ok()) return info.status();
  const std::string label = absl::StrCat(info->name, "/", std::string(importer));
  absl::StatusOr<EntryResult> result = ResultOf(label, reader, ended);
  if (!result.ok()) return result.status();
  ReadResult read = ReadDesign(input_name, std::move(result->design));
  if (!read.document) return Prefixed(label, absl::AbortedError("its process sent what is not a design"));
  NameFindings(result->findings, label);
  return ImportResult{std::move(read.document->design), std::move(result->findings)};
}

}  // namespace withy
