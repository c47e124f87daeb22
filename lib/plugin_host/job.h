// One task in one interpreter: loads the plugin, runs what was asked, says what came of it. The same code serves
// built-in plugins in this process and others in a child.
#ifndef WITHY_PLUGIN_HOST_JOB_H_
#define WITHY_PLUGIN_HOST_JOB_H_

#include <functional>

#include "exchange.pb.h"
#include "frames.h"
#include "sandbox.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

struct Job {
  const PluginSource& source;
  const PluginLimits& limits;
  const host::v1::Task& task;
  const PluginSubject* subject = nullptr;       // null where the task looks at no design
  std::function<void(Sandbox&)> on_start = {};  // before anything of the plugin runs
  std::function<void()> on_end = {};            // before the sandbox goes
};

// Calls `reply` with the plugin's Info once it is loaded, then for each entry that was run with its Remarks and Files
// and the Outcome that ends them (or with one failed Outcome instead of the Info).
void RunJob(const Job& job, const std::function<void(Reply)>& reply);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_JOB_H_
