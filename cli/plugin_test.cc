#include "absl/strings/str_cat.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"
#include "withy/plugin_host/plugin_cases.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy plugin new first && withy plugin test first", "begin a plugin, and run the cases it begins with"},
    {"withy plugin new second && withy plugin test --accept second", "take what comes out as expected from now on"},
};

constexpr OptionSpec kOptions[] = {
    {"--accept", "", "write what came out as what is expected; read the difference before you keep it"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, PluginOptions()};

// One case: "ok" or what differs. True where it is as expected.
bool Tell(const PluginCaseResult& result, bool accept, Io& io) {
  const TextStyle& style = io.out_style();
  std::string name = Visible(result.name);
  if (!result.status.ok()) {
    io.Out(absl::StrCat(name, ": ", Painted("cannot be run", Ink::kError, style), ": ",
                        Visible(std::string(result.status.message())), "\n"));
    return false;
  }
  if (result.differences.empty()) {
    io.Out(absl::StrCat(name, ": ", Painted("as expected", Ink::kGood, style), "\n"));
    return true;
  }
  io.Out(absl::StrCat(
      name, ": ", accept ? Painted("accepted", Ink::kWarning, style) : Painted("differs", Ink::kError, style), "\n"));
  for (const std::string& difference : result.differences) io.Out(absl::StrCat("  ", Visible(difference), "\n"));
  return accept;
}

int Run(const Options& options, Io& io) {
  const std::string& folder = options.operands().front();
  bool accept = options.Has("--accept");
  absl::StatusOr<std::vector<PluginCaseResult>> results = RunPluginCases(PluginHostFrom(options), folder, accept);
  if (!results.ok()) {
    io.Complain(std::string(results.status().message()));
    return absl::IsNotFound(results.status()) ? kUnreadable : kIncomplete;
  }
  int wrong = 0;
  for (const PluginCaseResult& result : *results) wrong += Tell(result, accept, io) ? 0 : 1;
  io.Out(absl::StrCat(Counted(static_cast<int>(results->size()), "case"), ", ", wrong, " not as expected\n"));
  return wrong == 0 ? kDone : kFindings;
}

}  // namespace

const Command kPluginTest = {
    .name = "plugin test",
    .operands = "FOLDER",
    .least_operands = 1,
    .most_operands = 1,
    .completes = Completes::kFolder,
    .summary = "Run a plugin's own cases against what is expected of them",
    .details =
        "A case is a folder in FOLDER/cases with an input and the expected outputs; the plugin guide describes it.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
