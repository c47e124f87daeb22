// Help, made from the command table.
#ifndef WITHY_CLI_HELP_H_
#define WITHY_CLI_HELP_H_

#include <string>

#include "command.h"
#include "withy/review/terminal_text.h"

namespace withy {

// What `withy --help` prints: what withy is, examples, the commands.
std::string ProgramHelp(const TextStyle& style);

// What `withy COMMAND --help` prints: summary, examples, usage, details, options.
std::string CommandHelp(const Command& command, const TextStyle& style);

// What is known of a word that begins several commands ("plugin"): their names and summaries. Empty where none does.
std::string GroupHelp(const std::string& word, const TextStyle& style);

// All commands in Markdown: cli/README.md.
std::string Manual();

}  // namespace withy

#endif  // WITHY_CLI_HELP_H_
