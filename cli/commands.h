// The declarations of all commands; each is defined in the file of its name.
#ifndef WITHY_CLI_COMMANDS_H_
#define WITHY_CLI_COMMANDS_H_

#include "command.h"

namespace withy {

extern const Command kNew, kCheck, kShow, kWhy, kTrim, kBalance, kGuides, kCalibrate, kPlan, kConvert, kFmt, kExport, kImport,
    kExplain, kPluginList, kPluginTest, kPluginNew, kSchema;

}  // namespace withy

#endif  // WITHY_CLI_COMMANDS_H_
