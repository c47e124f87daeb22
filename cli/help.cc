#include "help.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_replace.h"
#include "absl/strings/str_split.h"

namespace withy {
namespace {

std::string Heading(std::string_view text, const TextStyle& style) {
  return absl::StrCat("\n", Painted(text, Ink::kStrong, style), "\n");
}

std::string Examples(std::span<const Example> examples, const TextStyle& style) {
  std::string text = Heading("Examples", style);
  for (const Example& example : examples) {
    absl::StrAppend(&text, "  ", Painted(absl::StrCat("# ", std::string(example.says)), Ink::kFaint, style), "\n  ",
                    std::string(example.line), "\n");
  }
  return text;
}

// "  left column   text that wraps under itself".
std::string TwoColumns(const std::string& left, int left_width, std::string_view right, const TextStyle& style) {
  std::string text;
  for (const std::string& line : Wrapped(right, style.width - left_width - 4)) {
    absl::StrAppend(&text, "  ", PaddedRight(text.empty() ? left : "", left_width), "  ", line, "\n");
  }
  return text;
}

std::string OptionName(const OptionSpec& option) {
  std::string name = option.name.front() == '-' && option.name[1] != '-' ? "" : "    ";
  absl::StrAppend(&name, absl::StrReplaceAll(std::string(option.name), {{",", ", "}}));
  if (!option.value.empty()) absl::StrAppend(&name, " ", std::string(option.value));
  return name;
}

std::string OptionList(const Command& command, const TextStyle& style) {
  int width = 0;
  for (const OptionSpec* option : OptionsOf(command)) width = std::max(width, DisplayWidth(OptionName(*option)));
  std::string text = Heading("Options", style);
  for (const OptionSpec* option : OptionsOf(command)) {
    text += TwoColumns(OptionName(*option), width, option->summary, style);
  }
  return text;
}

std::string CommandList(std::string_view first_word, const TextStyle& style) {
  std::string text;
  for (const Command* command : Commands()) {
    if (!first_word.empty() && command->name.substr(0, command->name.find(' ')) != first_word) continue;
    text += TwoColumns(std::string(command->name), 11, command->summary, style);
  }
  return text;
}

std::string Paragraphs(std::string_view text, const TextStyle& style) {
  std::string lines;
  std::vector<std::string> paragraphs = absl::StrSplit(std::string(text), "\n\n");
  for (const std::string& paragraph : paragraphs) {
    lines += "\n";
    for (const std::string& line : Wrapped(paragraph, style.width)) lines += line + "\n";
  }
  return lines;
}

std::string Usage(const Command& command) {
  return absl::StrCat("withy ", std::string(command.name), " [options]", command.operands.empty() ? "" : " ",
                      std::string(command.operands));
}

constexpr std::string_view kWhat =
    "withy reads the design of a hand-built fishing rod, says what is wrong with it or not known yet, and works out "
    "what "
    "follows from it: lengths, places, masses, balance.";

constexpr Example kExamples[] = {
    {"withy new casting -o rod.txtpb", "start a design from a commented starting point"},
    {"withy check casting.txtpb", "look for what cannot be built, with the line to look at"},
    {"withy show casting.txtpb", "see what follows from it"},
    {"withy export cut-sheet casting.txtpb -o sheets", "print a cut sheet for the bench"},
};

constexpr std::string_view kStatuses =
    "Exit status: 0 done and clean; 1 findings at or above --fail-on; 2 wrong usage; 3 input unreadable; 4 incomplete "
    "(a "
    "plugin failed or a rule could not be judged); 5 output refused or not written; 70 a fault of withy itself.";

// Rows of a Markdown table.
std::string OptionRows(std::span<const OptionSpec> options) {
  std::string rows = "| option | |\n|---|---|\n";
  for (const OptionSpec& option : options) {
    std::string name(option.name);
    if (!option.value.empty()) absl::StrAppend(&name, " ", std::string(option.value));
    absl::StrAppend(&rows, "| `", name, "` | ", std::string(option.summary), " |\n");
  }
  return rows;
}

std::string ManualOf(const Command& command) {
  std::string text =
      absl::StrCat("\n## withy ", std::string(command.name), "\n\n", std::string(command.summary), ".\n\n```sh\n");
  for (const Example& example : command.examples) {
    absl::StrAppend(&text, "# ", std::string(example.says), "\n", std::string(example.line), "\n");
  }
  text += "```\n";
  if (!command.details.empty()) absl::StrAppend(&text, "\n", std::string(command.details), "\n");
  for (std::span<const OptionSpec> group : command.options) {
    if (!group.empty()) absl::StrAppend(&text, "\n", OptionRows(group));
  }
  return text;
}

}  // namespace

std::string ProgramHelp(const TextStyle& style) {
  std::string text;
  for (const std::string& line : Wrapped(kWhat, style.width)) text += line + "\n";
  text += Examples(kExamples, style);
  text += Heading("Usage", style) + "  withy COMMAND [options] FILE...      - is standard input or output\n";
  text += Heading("Commands", style) + CommandList("", style);
  text += Heading("More", style);
  text += TwoColumns("withy COMMAND --help", 26, "examples and options of a command", style);
  text += TwoColumns("withy --completion SHELL", 26, "completion for bash, zsh or fish", style);
  text += TwoColumns("withy --manual", 26, "all commands, in Markdown", style);
  text += TwoColumns("withy --version", 26, "the version", style);
  return text + Paragraphs(kStatuses, style);
}

std::string CommandHelp(const Command& command, const TextStyle& style) {
  std::string text = absl::StrCat(std::string(command.summary), "\n");
  text += Examples(command.examples, style);
  text += Heading("Usage", style) + "  " + Usage(command) + "\n";
  if (!command.details.empty()) text += Paragraphs(command.details, style);
  return text + OptionList(command, style);
}

std::string GroupHelp(const std::string& word, const TextStyle& style) {
  return CommandList(word, style);
}

std::string Manual() {
  std::string text = absl::StrCat(
      "# The command line\n\nPrinted by `withy --manual` from the command table; a test compares the two.\n\n",
      std::string(kWhat),
      " `withy COMMAND [options] FILE...`; `-` is standard input or output. Results go to standard "
      "output, all else to standard error.\n\n",
      std::string(kStatuses), "\n\nEvery command takes:\n\n", OptionRows(CommonOptions()));
  for (const Command* command : Commands()) text += ManualOf(*command);
  return text;
}

}  // namespace withy
