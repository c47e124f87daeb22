// The plugin host: finds, describes and runs plugins written in Lua, behind two walls.
//
// A plugin that is not built in never runs in this process. Its sources are read here, sent with the design over a pipe
// to a child process that has no files, no environment and hard limits from the operating system, and run there in an
// interpreter that has only the allow-listed library. What comes back is read as hostile. Built-in plugins use the same
// API without the child.
//
// The program that embeds this library names an executable that calls `RunPluginChildIfAsked` first thing in main
// (the withy program does): that is the child.
#ifndef WITHY_PLUGIN_HOST_PLUGIN_HOST_H_
#define WITHY_PLUGIN_HOST_PLUGIN_HOST_H_

#include <chrono>
#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

#include "absl/status/status.h"
#include "absl/status/statusor.h"
#include "withy/findings/finding.h"
#include "withy/guides/practice.h"
#include "withy/v1/design.pb.h"
#include "withy/v1/report.pb.h"
#include "withy/v1/rod.pb.h"

namespace withy {

inline constexpr int kPluginApi = 1;

// What a plugin may use up. Going over one ends the plugin, never the process, and keeps nothing it wrote.
struct PluginLimits {
  std::size_t memory_bytes = std::size_t{256} << 20;
  std::chrono::milliseconds cpu{10'000};
  std::chrono::milliseconds wall{20'000};
  std::size_t output_bytes = std::size_t{64} << 20;  // all files and findings together
  int files = 64;
};

struct PluginHostOptions {
  std::string child_program;  // absolute path; empty = only built-in plugins can run
  PluginLimits limits;
};

// The sources of one plugin: file name within its folder ("init.lua", "parts/rows.lua") to text.
struct PluginSource {
  std::string path;  // where it was found; "built-in" for those
  bool built_in = false;
  std::map<std::string, std::string> files;  // always has "init.lua"
  bool under_test = false;  // set by RunPluginCases: may have the name of a built-in plugin, as its next version has
};

struct PluginOption {
  std::string name, type, default_value, summary;  // type: "string", "number", "boolean"; default as text
  bool has_default = false;
};
struct PluginEntry {
  enum class Kind { kCheck, kExporter, kImporter };
  Kind kind = Kind::kCheck;
  std::string name;  // a check's code without the plugin's name
  std::string summary;
  std::string severity;                 // of a check
  std::string extension;                // of an exporter
  std::vector<std::string> wants;       // of an exporter: what the report must have besides ("placement")
  std::vector<std::string> extensions;  // of an importer
  std::vector<PluginOption> options;
};
struct PluginInfo {
  int api = 0;
  std::string name, version, license, summary;
  std::vector<PluginEntry> entries;
  std::vector<Practice> practices;  // what it says is usual for guides, with its name; one for each technique
};

// What a plugin looks at. The references must outlive the call.
struct PluginSubject {
  const v1::Design& design;
  const v1::Rod& rod;
  const v1::Report& report;
};

struct OutputFile {
  std::string name;  // plain: no slash, no leading dot, [A-Za-z0-9._ -]
  std::string bytes;
};

using OptionValues = std::map<std::string, std::string>;  // as typed on the command line

// The plugins compiled into the library, by name.
const std::vector<PluginSource>& BuiltInPlugins();

// Reads one plugin: a .lua file, or a folder with init.lua (its .lua files, links not followed). NotFound,
// InvalidArgument or ResourceExhausted with the path.
absl::StatusOr<PluginSource> LoadPlugin(const std::string& path);

// Every plugin in a folder (each a .lua file or a folder with init.lua), sorted by name. Hidden names are passed over.
// A plugin that cannot be read is a failure, and the others are there all the same. A missing folder is empty.
struct PluginFolder {
  std::vector<PluginSource> plugins;
  std::vector<absl::Status> failures;  // as of LoadPlugin
};
absl::StatusOr<PluginFolder> LoadPluginFolder(const std::string& folder);

class PluginHost {
 public:
  explicit PluginHost(PluginHostOptions options) : options_(std::move(options)) {}

  // Loads the plugin and reads its table; `api` before anything else. A Status for everything a plugin can do wrong:
  // InvalidArgument (its table, its code; with plugin, file, line; a name that is withy's or a built-in plugin's),
  // ResourceExhausted (a limit), FailedPrecondition (an orderly `ctx:refuse`), Aborted (its child died).
  absl::StatusOr<PluginInfo> Describe(const PluginSource& plugin) const;

  // Runs all checks. A check that fails does not hide the others: `failures` holds a Status each.
  struct CheckResult {
    std::vector<Finding> findings;       // codes "plugin/slug"; 'cannot tell' where ctx:need had no value
    std::vector<absl::Status> failures;  // not empty = the run is incomplete
  };
  CheckResult RunChecks(const PluginSource& plugin, const PluginSubject& subject) const;

  // Runs one exporter: its files, or a Status and none; NotFound where there is no such exporter or option (with the
  // nearest), OutOfRange where an option's value is not of its type, else as Describe. `stem` is the design's file name
  // without folder and ending.
  absl::StatusOr<std::vector<OutputFile>> Export(const PluginSource& plugin, std::string_view exporter,
                                                 std::string_view stem, const OptionValues& options,
                                                 const PluginSubject& subject) const;

  // Runs one importer on bytes: a design. Errors carry line and column of the input where the plugin gave them.
  struct ImportResult {
    v1::Design design;
    std::vector<Finding> findings;  // what the importer remarked on
  };
  absl::StatusOr<ImportResult> Import(const PluginSource& plugin, std::string_view importer,
                                      std::string_view input_name, std::string_view input,
                                      const OptionValues& options) const;

 private:
  PluginHostOptions options_;
};

// First thing in main of the program named as `child_program`: where it was started as a plugin's child, serves the one
// request, sets `*exit_status` and returns true.
bool RunPluginChildIfAsked(int argc, char** argv, int* exit_status);

// The API as a manual (Markdown) and as editor stubs (Lua annotations), both from the table that the binding is made
// of.
std::string PluginManual();
std::string PluginStubs();

}  // namespace withy

#endif  // WITHY_PLUGIN_HOST_PLUGIN_HOST_H_
