// The only file that sees CLI11, which is slow to compile.
#include "arguments.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <map>

#include "absl/strings/numbers.h"
#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_split.h"
#include "withy/findings/nearest_name.h"

namespace withy {
namespace {

absl::Status Wrong(std::string message) {
  return absl::InvalidArgumentError(message);
}

absl::Status CheckValue(const OptionSpec& option, const std::string& value) {
  std::string name(option.long_name());
  if (!option.choices.empty()) {
    std::vector<std::string> choices = absl::StrSplit(std::string(option.choices), '|');
    if (std::find(choices.begin(), choices.end(), value) == choices.end()) {
      return Wrong(absl::StrCat(name, ": '", value, "' is none of ", absl::StrJoin(choices, ", ")));
    }
  }
  long number = 0;
  if (option.most > 0 && (!absl::SimpleAtoi(value, &number) || number < option.least || number > option.most)) {
    return Wrong(absl::StrCat(name, ": '", value, "' is not a whole number from ", option.least, " to ", option.most));
  }
  return absl::OkStatus();
}

// Moves one option's values over, each checked.
absl::Status Take(const OptionSpec& option, const CLI::Option& parsed, Options& options) {
  if (parsed.count() == 0) return absl::OkStatus();
  if (option.value.empty()) {
    options.Add(option.long_name(), "");
    return absl::OkStatus();
  }
  if (parsed.count() > 1 && !option.repeatable) {
    return Wrong(absl::StrCat(std::string(option.long_name()), " is given twice"));
  }
  for (const std::string& value : parsed.results()) {
    if (absl::Status status = CheckValue(option, value); !status.ok()) return status;
    options.Add(option.long_name(), value);
  }
  return absl::OkStatus();
}

absl::Status UnknownOption(const Command& command, const std::string& typed) {
  std::vector<std::string_view> known;
  for (const OptionSpec* option : OptionsOf(command)) known.push_back(option->long_name());
  std::string name = typed.substr(0, typed.find('='));
  return Wrong(absl::StrCat("'", std::string(command.name), "' has no option '", name, "'", DidYouMean(name, known)));
}

// CLI11 says "--to: 1 required TEXT missing".
absl::Status ValueMissing(const std::vector<OptionSpec>& specs, const std::string& what) {
  std::string name = what.substr(0, what.find(':'));
  for (const OptionSpec& option : specs) {
    if (option.long_name() == name)
      return Wrong(absl::StrCat(name, " needs a value: ", name, " ", std::string(option.value)));
  }
  return Wrong(what);
}

absl::Status CheckOperands(const Command& command, const std::vector<std::string>& operands) {
  auto count = static_cast<int>(operands.size());
  std::string usage = absl::StrCat("withy ", std::string(command.name), " ", std::string(command.operands));
  if (count < command.least_operands) return Wrong(absl::StrCat("an operand is missing: ", usage));
  if (command.most_operands != kAnyNumber && count > command.most_operands) {
    return Wrong(
        absl::StrCat("'", operands[static_cast<std::size_t>(command.most_operands)], "' is one too many: ", usage));
  }
  if (std::count(operands.begin(), operands.end(), "-") > 1) return Wrong("standard input, '-', can be read only once");
  return absl::OkStatus();
}

}  // namespace

std::string DidYouMean(std::string_view wrong, const std::vector<std::string_view>& known) {
  std::string_view nearest = NearestName(wrong, known);
  return nearest.empty() ? "" : absl::StrCat(", did you mean '", std::string(nearest), "'?");
}

const Command* TakeCommand(std::vector<std::string>& arguments) {
  for (std::size_t words : {std::size_t{2}, std::size_t{1}}) {
    if (arguments.size() < words) continue;
    std::string name = words == 1 ? arguments[0] : absl::StrCat(arguments[0], " ", arguments[1]);
    for (const Command* command : Commands()) {
      if (command->name != name) continue;
      arguments.erase(arguments.begin(), arguments.begin() + static_cast<std::ptrdiff_t>(words));
      return command;
    }
  }
  return nullptr;
}

absl::Status ParseArguments(const Command& command, std::vector<std::string> arguments, Options& options) {
  CLI::App app;
  app.set_help_flag();
  app.allow_extras();
  std::vector<std::string> operands;
  app.add_option("operands", operands)->expected(0, CLI::detail::expected_max_vector_size);
  std::vector<OptionSpec> specs;
  std::vector<CLI::Option*> parsed;
  std::vector<std::vector<std::string>> values(OptionsOf(command).size());
  for (const OptionSpec* option : OptionsOf(command)) {
    std::string name(option->name);
    parsed.push_back(option->value.empty() ? app.add_flag(name)
                                           : app.add_option(name, values[specs.size()])->allow_extra_args(false));
    if (!option->value.empty()) parsed.back()->expected(1)->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    specs.push_back(*option);
  }
  try {
    std::reverse(arguments.begin(), arguments.end());  // CLI11 reads from the back
    app.parse(arguments);
  } catch (const CLI::ArgumentMismatch& error) {
    return ValueMissing(specs, error.what());
  } catch (const CLI::ParseError& error) {
    return Wrong(error.what());
  }
  for (const std::string& extra : app.remaining()) {
    if (extra.size() > 1 && extra[0] == '-' && extra != "--") return UnknownOption(command, extra);
  }
  for (std::size_t i = 0; i < specs.size(); ++i) {
    if (absl::Status status = Take(specs[i], *parsed[i], options); !status.ok()) return status;
  }
  options.set_operands(operands);
  return options.Has("--help") ? absl::OkStatus() : CheckOperands(command, operands);
}

}  // namespace withy
