// The command table.
#include "commands.h"

namespace withy {
namespace {

constexpr const Command* kCommands[] = {&kNew,       &kCheck, &kShow,    &kWhy, &kTrim,   &kBalance, &kGuides,
                                        &kCalibrate, &kPlan,  &kConvert, &kFmt, &kExport, &kImport,  &kExplain,
                                        &kPluginList, &kPluginTest, &kPluginNew, &kSchema};

constexpr OptionSpec kCommon[] = {
    {"--color", "WHEN", "paint the output: auto (on a terminal), always, never", Completes::kChoice,
     "auto|always|never"},
    {"-q,--quiet", "", "leave out remarks"},
    {"-v,--verbose", "", "say more"},
    {"-h,--help", "", "show this help"},
};

}  // namespace

std::span<const Command* const> Commands() {
  return kCommands;
}

std::span<const OptionSpec> CommonOptions() {
  return kCommon;
}

std::vector<const OptionSpec*> OptionsOf(const Command& command) {
  std::vector<const OptionSpec*> options;
  for (std::span<const OptionSpec> group : command.options) {
    for (const OptionSpec& option : group) options.push_back(&option);
  }
  for (const OptionSpec& option : kCommon) options.push_back(&option);
  return options;
}

}  // namespace withy
