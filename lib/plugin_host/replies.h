// Replies of a run, read as hostile and put together: what a plugin says it is, and what each of its entries gave.
#ifndef WITHY_PLUGIN_HOST_REPLIES_H_
#define WITHY_PLUGIN_HOST_REPLIES_H_

#include <optional>
#include <string>
#include <vector>

#include "absl/status/status.h"
#include "frames.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy::plugin {

// How one check, exporter or importer ended, with what it gave where it ended well.
struct EntryResult {
  absl::Status status;
  bool exhausted = false;
  std::vector<Finding> findings;  // code and entry are filled in by the host: a reply does not name them
  std::vector<OutputFile> files;
  std::string design;  // withy.v1.Design, not parsed yet
};

class ReplyReader {
 public:
  explicit ReplyReader(const PluginLimits& limits) : limits_(limits) {}

  // Takes the next reply. Aborted where no honest child would have sent it; nothing more is to be accepted then.
  absl::Status Accept(const Reply& reply);

  const std::optional<PluginInfo>& info() const { return info_; }
  std::vector<EntryResult>& results() { return results_; }
  // Where the child was when its time was up inside one call; "" = it was not.
  const std::string& stopped_at() const { return stopped_at_; }

 private:
  absl::Status Take(const host::v1::Info& info);
  absl::Status Take(const host::v1::Remark& remark);
  absl::Status Take(const host::v1::File& file);
  absl::Status Take(const host::v1::Outcome& outcome);
  absl::Status Take(const StoppedAt& stopped);

  const PluginLimits& limits_;
  std::optional<PluginInfo> info_;
  EntryResult current_;
  std::vector<EntryResult> results_;
  std::string stopped_at_;
};

}  // namespace withy::plugin

#endif  // WITHY_PLUGIN_HOST_REPLIES_H_
