#include "withy/review/explain.h"

#include "absl/strings/str_cat.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "plugins.h"
#include "withy/review/review.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy explain guides/order", "one code: why it matters and what to do"},
    {"withy explain --list", "all codes"},
    {"withy explain --json", "all codes with their texts, for programs"},
};

constexpr OptionSpec kOptions[] = {
    {"--list", "", "list all codes"},
    {"--json", "", "print JSON; of all codes without CODE"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, PluginOptions()};

// A code of a plugin has no more than its summary.
std::string PluginCodeText(const std::string& name, const Options& options, Io& io) {
  if (name.find('/') == std::string::npos) return "";
  for (const FoundEntry& found : FindEntries(PluginEntry::Kind::kCheck, options, io)) {
    if (absl::StrCat(found.info.name, "/", found.entry.name) != name) continue;
    return absl::StrCat(Visible(name), ": ", Visible(found.entry.severity), ", of the plugin ",
                        Visible(found.info.name), " ", Visible(found.info.version), "\n", Visible(found.entry.summary),
                        "\n");
  }
  return "";
}

int NoSuchCode(const std::string& name, const std::string& nearest, Io& io) {
  io.Complain(
      absl::StrCat("no code '", name, "'", nearest.empty() ? "" : absl::StrCat(", did you mean '", nearest, "'?")),
      "'withy explain --list' names them all");
  return kUsage;
}

int Run(const Options& options, Io& io) {
  if (options.operands().empty() && !options.Has("--list") && !options.Has("--json")) {
    io.Complain("explain needs a code: withy explain CODE", "'withy explain --list' names them all");
    return kUsage;
  }
  if (options.operands().empty()) {
    io.Out(options.Has("--json") ? CodeListJson(Catalogue()) : CodeListText(Catalogue(), io.out_style()));
    return kDone;
  }
  const std::string& name = options.operands().front();
  std::string nearest;
  if (const Code* code = FindCode(name, &nearest)) {
    io.Out(options.Has("--json") ? CodeListJson({*code}) : ExplainText(*code, io.out_style()));
    return kDone;
  }
  std::string of_plugin = PluginCodeText(name, options, io);
  if (of_plugin.empty()) return NoSuchCode(name, nearest, io);
  io.Out(of_plugin);
  return kDone;
}

}  // namespace

const Command kExplain = {
    .name = "explain",
    .operands = "CODE",
    .least_operands = 0,
    .most_operands = 1,
    .completes = Completes::kCode,
    .summary = "Say what a finding's code means, why it matters and what to do",
    .details = "",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
