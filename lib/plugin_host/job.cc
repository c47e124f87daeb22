#include "job.h"

#include <optional>
#include <string>

#include "absl/strings/str_cat.h"
#include "context.h"
#include "message_from_table.h"
#include "option_values.h"
#include "plugin_modules.h"
#include "plugin_table.h"
#include "schema_names.h"

namespace withy::plugin {
namespace {

using Send = std::function<void(Reply)>;

// An outcome of which nothing is kept but why it failed.
host::v1::Outcome Failed(const absl::Status& status, bool exhausted = false) {
  host::v1::Outcome outcome;
  outcome.set_status(static_cast<std::uint32_t>(status.code()));
  outcome.set_message(std::string(status.message()));
  outcome.set_exhausted(exhausted);
  return outcome;
}

class Runner {
 public:
  Runner(const Job& job, const Send& send) : job_(job), send_(send), sandbox_(job.source, job.limits) {}

  void Run() {
    if (job_.on_start) job_.on_start(sandbox_);
    absl::Status loaded = sandbox_.Run([this](lua_State* lua) {
      OpenRequire(lua);
      RunOwnFile(lua, "init.lua");
      plugin_ = ReadPluginTable(lua, -1);
    });
    if (!loaded.ok()) return send_(Failed(loaded, sandbox_.exhausted()));
    send_(plugin_.info);
    switch (job_.task.kind()) {
      case host::v1::Task::CHECKS:
        return RunChecks();
      case host::v1::Task::EXPORT:
        return RunOne(host::v1::Entry::EXPORTER, kInExporter);
      case host::v1::Task::IMPORT:
        return RunOne(host::v1::Entry::IMPORTER, kInImporter);
      default:
        return;
    }
  }

 private:
  void RunChecks() {
    std::uint32_t number = 0;
    for (int i = 0; i < plugin_.info.entries_size(); ++i) {
      const host::v1::Entry& entry = plugin_.info.entries(i);
      if (entry.kind() != host::v1::Entry::CHECK || number++ < job_.task.first_check()) continue;
      Context context;
      context.use = kInCheck;
      context.subject = job_.subject;
      context.severity = static_cast<Severity>(entry.severity());
      RunEntry(i, context);
      if (sandbox_.exhausted()) return;
    }
  }

  void RunOne(host::v1::Entry::Kind kind, unsigned use) {
    std::vector<std::string_view> known;
    for (int i = 0; i < plugin_.info.entries_size(); ++i) {
      const host::v1::Entry& entry = plugin_.info.entries(i);
      if (entry.kind() != kind) continue;
      known.push_back(entry.name());
      if (entry.name() != job_.task.entry()) continue;
      Context context;
      context.use = use;
      context.subject = job_.subject;
      context.stem = job_.task.stem();
      context.input_name = job_.task.input_name();
      context.input = job_.task.input();
      context.files_allowed = job_.limits.files;
      absl::Status options = ReadOptionValues(entry, job_.task, context.options);
      return options.ok() ? RunEntry(i, context) : send_(Failed(options));
    }
    const char* what = kind == host::v1::Entry::EXPORTER ? "exporter" : "importer";
    send_(Failed(absl::NotFoundError(
        absl::StrCat("has no ", what, " '", job_.task.entry(), "'", DidYouMean(job_.task.entry(), known)))));
  }

  void RunEntry(int index, Context& context) {
    v1::Design imported;
    absl::Status status = sandbox_.Run([&](lua_State* lua) {
      lua_rawgeti(lua, LUA_REGISTRYINDEX, plugin_.runs[static_cast<std::size_t>(index)]);
      PushContext(lua, context);
      lua_call(lua, 1, 1);
      if (context.use != kInImporter) return;
      FillFromTable(lua, -1, imported);
      if (imported.format().empty()) imported.set_format("withy/1");
      sandbox_.ChargeOutput(imported.ByteSizeLong());
    });
    if (!status.ok() && context.use == kInCheck && sandbox_.stop() == Sandbox::Stop::kCannotTell) {
      context.cannot_tell.set_severity(static_cast<std::uint32_t>(Severity::kCannotTell));
      context.remarks.push_back(std::move(context.cannot_tell));
      status = absl::OkStatus();
    }
    if (!status.ok()) return send_(Failed(status, sandbox_.exhausted()));
    for (host::v1::Remark& remark : context.remarks) send_(std::move(remark));
    for (host::v1::File& file : context.files) send_(std::move(file));
    host::v1::Outcome outcome;
    if (context.use == kInImporter) imported.SerializeToString(outcome.mutable_design());
    send_(std::move(outcome));
  }

  const Job& job_;
  const Send& send_;
  Sandbox sandbox_;
  LoadedPlugin plugin_;
};

}  // namespace

void RunJob(const Job& job, const Send& reply) {
  Runner runner(job, reply);
  runner.Run();
  if (job.on_end) job.on_end();
}

}  // namespace withy::plugin
