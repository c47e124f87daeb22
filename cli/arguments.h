// Turns what was typed into Options, by the command's declaration.
#ifndef WITHY_CLI_ARGUMENTS_H_
#define WITHY_CLI_ARGUMENTS_H_

#include <string>
#include <vector>

#include "absl/status/status.h"
#include "command.h"

namespace withy {

// Reads the arguments behind a command's name into `options`. InvalidArgument, as one would say it, for an unknown
// option (with the nearest one), a missing or wrong value, an option given twice, too few or too many operands. With
// --help among them, operands are not counted.
absl::Status ParseArguments(const Command& command, std::vector<std::string> arguments, Options& options);

// The command that the first words of `arguments` name, those words removed; null where there is none.
const Command* TakeCommand(std::vector<std::string>& arguments);

// ", did you mean 'check'?" or nothing.
std::string DidYouMean(std::string_view wrong, const std::vector<std::string_view>& known);

}  // namespace withy

#endif  // WITHY_CLI_ARGUMENTS_H_
