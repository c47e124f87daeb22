// What the command table is made of. A command declares itself once, in its own file: name, operands, summary,
// examples, options and what it runs. Parsing, help, the manual and shell completion all come from that declaration.
#ifndef WITHY_CLI_COMMAND_H_
#define WITHY_CLI_COMMAND_H_

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace withy {

class Io;

// What completes a value. kDesign: files of a design's endings; kExporter, kImporter, kFigure: its name, then a file.
enum class Completes { kNothing, kFile, kDesign, kFolder, kCode, kExporter, kImporter, kFigure, kTechnique, kSchema, kChoice };

struct OptionSpec {
  std::string_view name;          // "--to", with a short form "-o,--output"
  std::string_view value = "";    // what to call its value, "FORM"; empty = a flag without value
  std::string_view summary = "";  // lower case, no full stop
  Completes completes = Completes::kNothing;
  std::string_view choices = "";  // "text|json|binary": the values allowed, where there is a list
  bool repeatable = false;
  long most = 0;  // not 0: the value is a whole number from `least` to this
  long least = 1;

  // The long form, "--to".
  std::string_view long_name() const { return name.substr(name.find("--")); }
};

struct Example {
  std::string_view line;  // "withy check rod.txtpb": run by the tests beside the example designs, must exit 0
  std::string_view says;  // what it does
};

// What was typed, checked against the declaration.
class Options {
 public:
  bool Has(std::string_view option) const { return values_.count(std::string(option)) > 0; }
  // The value, or `otherwise` where it was not given.
  std::string Value(std::string_view option, std::string_view otherwise = "") const;
  // All values of a repeatable option.
  std::vector<std::string> Values(std::string_view option) const;
  // The value of an option that declares `most`.
  long Number(std::string_view option, long otherwise) const;
  const std::vector<std::string>& operands() const { return operands_; }

  void Add(std::string_view option, std::string value) { values_[std::string(option)].push_back(std::move(value)); }
  void set_operands(std::vector<std::string> operands) { operands_ = std::move(operands); }

 private:
  std::map<std::string, std::vector<std::string>> values_;  // by long name; a flag has one empty value
  std::vector<std::string> operands_;
};

struct Command {
  std::string_view name;      // "check", "plugin list"
  std::string_view operands;  // "FILE...", for the usage line
  int least_operands = 0;
  int most_operands = 0;                      // kAnyNumber = no bound
  Completes completes = Completes::kNothing;  // its operands
  std::string_view summary;                   // one line, no full stop
  std::string_view details;                   // paragraphs for its own help; may be empty
  std::span<const Example> examples;
  std::span<const std::span<const OptionSpec>> options;  // groups: its own, and those it shares with others
  int (*run)(const Options& options, Io& io);
  // Printed behind its help where operands were given with --help; may be null.
  int (*more_help)(const Options& options, Io& io) = nullptr;
};
inline constexpr int kAnyNumber = -1;

// Every command, in the order of help.
std::span<const Command* const> Commands();

// Options that every command takes.
std::span<const OptionSpec> CommonOptions();

// All options of a command, the common ones last.
std::vector<const OptionSpec*> OptionsOf(const Command& command);

}  // namespace withy

#endif  // WITHY_CLI_COMMAND_H_
