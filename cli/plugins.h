// The plugins of this run: those named with --plugin, those in the user's folder, and the built-in ones.
#ifndef WITHY_CLI_PLUGINS_H_
#define WITHY_CLI_PLUGINS_H_

#include <span>
#include <string>
#include <vector>

#include "absl/status/statusor.h"
#include "command.h"
#include "withy/plugin_host/plugin_host.h"
#include "withy/review/review.h"

namespace withy {

class Io;

// --plugin, --no-plugins and the limits of plugins.
std::span<const OptionSpec> PluginOptions();

PluginHost PluginHostFrom(const Options& options);

// $XDG_DATA_HOME/withy/plugins, by default ~/.local/share/withy/plugins (XDG Base Directory Specification 0.8). Empty
// where neither variable is set.
std::string UserPluginFolder();

struct FoundPlugins {
  std::vector<PluginSource> plugins;  // named ones, the user's, built-in ones
  std::vector<std::string> failures;  // what could not be loaded
};
FoundPlugins FindPlugins(const Options& options);

// What the plugins say is usual. Those that cannot be described say nothing here: `failures` (may be null) tells why.
ReviewOptions ReviewOptionsFrom(const FoundPlugins& found, const PluginHost& host, std::vector<std::string>* failures);

// The same of the plugins of this run. Complains about those that cannot be loaded, and sets `*failed`.
ReviewOptions ReviewOptionsFrom(const Options& options, Io& io, bool* failed);

// One entry of one plugin.
struct FoundEntry {
  PluginSource plugin;
  PluginInfo info;
  PluginEntry entry;
};

// Every entry of `kind`. A plugin that cannot be loaded is complained about and left out.
std::vector<FoundEntry> FindEntries(PluginEntry::Kind kind, const Options& options, Io& io);

// The entry called `name`, or "plugin/name" where several plugins have one. NotFound with the nearest name.
absl::StatusOr<FoundEntry> FindEntry(PluginEntry::Kind kind, const std::string& name, const Options& options, Io& io);

// One line per entry: name, summary, plugin.
std::string EntryList(const std::vector<FoundEntry>& entries);

// Prints the settings of the entry that the first operand names, behind a command's help. Returns the exit status.
int HelpForEntry(PluginEntry::Kind kind, const Options& options, Io& io);

// The values of --set for an entry, name to value. InvalidArgument where one has no '=', is set twice, is no setting of
// the entry (with the nearest one) or not of its type.
absl::StatusOr<OptionValues> SetValues(const FoundEntry& found, const Options& options);

// Says what a plugin did wrong; kNoOutput where it refused in order, else kIncomplete.
int PluginFailed(const absl::Status& status, Io& io);

}  // namespace withy

#endif  // WITHY_CLI_PLUGINS_H_
