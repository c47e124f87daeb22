// One task of one plugin, in this process where the plugin is built in, else in a child.
#ifndef WITHY_PLUGIN_HOST_PLUGIN_RUN_H_
#define WITHY_PLUGIN_HOST_PLUGIN_RUN_H_

#include <chrono>

#include "absl/status/status.h"
#include "exchange.pb.h"
#include "replies.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

// Hands every reply to `reader`. The status says how the run as a whole ended: OK; ResourceExhausted (time, too much
// output; with the place where it is known); Aborted (the child died, lied or could not be started); InvalidArgument
// (there is no child program).
absl::Status RunPlugin(const PluginHostOptions& options, const PluginSource& plugin, const host::v1::Task& task,
                       const PluginSubject* subject, std::chrono::steady_clock::time_point deadline,
                       ReplyReader& reader);

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_PLUGIN_RUN_H_
