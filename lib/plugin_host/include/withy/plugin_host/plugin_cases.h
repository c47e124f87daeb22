// A plugin's own cases, and the files a new plugin begins with.
//
//   my-plugin/init.lua
//   my-plugin/cases/short-rod/design.txtpb            a design in any form: all checks and exporters are run on it
//   my-plugin/cases/short-rod/options.json            optional: { "cut-list": { "paper": "Letter" } }, by exporter or
//   importer my-plugin/cases/short-rod/expected/findings.txt   what the checks gave
//   my-plugin/cases/short-rod/expected/cut-list/short-rod.csv         what the exporter 'cut-list' wrote
//   my-plugin/cases/table/input.csv                   for the importers of that ending
//   my-plugin/cases/table/expected/taper-csv/design.txtpb             and findings.txt, where it remarked on something
//
// An exporter or importer that fails gives error.txt instead: a refusal can be what is expected. The stem of an
// exported design is the case's name.
#ifndef WITHY_PLUGIN_HOST_PLUGIN_CASES_H_
#define WITHY_PLUGIN_HOST_PLUGIN_CASES_H_

#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {

struct PluginCaseResult {
  std::string name;     // of the case's folder
  absl::Status status;  // not OK: the case itself cannot be run (no design, unreadable options)
  std::vector<std::string>
      differences;  // "expected/cut-list/a.csv: line 3: expected 'x', got 'y'"; empty = as expected
};

// Runs the cases of the plugin in `folder`, sorted by name. `accept` writes what came out as what is expected from now
// on, and takes away files that no longer come out; `differences` then say what was changed. InvalidArgument where a
// link, a pipe or a device stands below cases/: nothing is then run, read or written. NotFound where there are
// no cases; otherwise the errors of LoadPlugin and PluginHost::Describe.
absl::StatusOr<std::vector<PluginCaseResult>> RunPluginCases(const PluginHost& host, const std::string& folder,
                                                             bool accept);

// The files of a new plugin of one kind, by path within its folder, a first case included. InvalidArgument where `name`
// is not lower-case letters, digits and '-'.
absl::StatusOr<std::map<std::string, std::string>> PluginTemplate(PluginEntry::Kind kind, std::string_view name);

}  // namespace withy

#endif  // WITHY_PLUGIN_HOST_PLUGIN_CASES_H_
