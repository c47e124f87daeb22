// Shell completion, made from the command table.
#ifndef WITHY_CLI_COMPLETION_H_
#define WITHY_CLI_COMPLETION_H_

#include <string>

#include "absl/status/statusor.h"

namespace withy {

// A script that `shell` (bash, zsh, fish) reads to complete commands, options and their words, codes, exporters,
// importers and techniques. InvalidArgument for another shell.
absl::StatusOr<std::string> CompletionScript(const std::string& shell);

}  // namespace withy

#endif  // WITHY_CLI_COMPLETION_H_
