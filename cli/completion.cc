#include "completion.h"

#include <set>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "absl/strings/str_replace.h"
#include "absl/strings/str_split.h"
#include "command.h"
#include "completion_scripts.h"
#include "plugins.h"
#include "starts.h"
#include "withy/review/review.h"
#include "withy/review/why.h"

namespace withy {
namespace {

std::vector<std::string> EntryNames(PluginEntry::Kind kind) {
  std::vector<std::string> names;
  PluginHost host{PluginHostOptions()};
  for (const PluginSource& plugin : BuiltInPlugins()) {
    absl::StatusOr<PluginInfo> info = host.Describe(plugin);
    if (!info.ok()) continue;
    for (const PluginEntry& entry : info->entries) {
      if (entry.kind == kind) names.push_back(entry.name);
    }
  }
  return names;
}

// The words that complete a value; none where files do.
std::vector<std::string> Words(Completes completes, std::string_view choices) {
  std::vector<std::string> words;
  switch (completes) {
    case Completes::kChoice:
      return absl::StrSplit(std::string(choices), '|');
    case Completes::kCode:
      for (const Code& code : Catalogue()) words.emplace_back(code.name);
      return words;
    case Completes::kTechnique:
      for (const Start& start : Starts()) words.emplace_back(start.technique);
      return words;
    case Completes::kSchema:
      return {"design", "report", "check", "plan", "why", "calibration"};
    case Completes::kExporter:
      return EntryNames(PluginEntry::Kind::kExporter);
    case Completes::kImporter:
      return EntryNames(PluginEntry::Kind::kImporter);
    case Completes::kFigure:
      for (const Figure& figure : Figures()) {
        if (figure.name.find('[') == std::string_view::npos) words.emplace_back(figure.name);
      }
      return words;
    case Completes::kNothing:
    case Completes::kFile:
    case Completes::kDesign:
    case Completes::kFolder:
      return {};
  }
  return {};
}

std::string OptionNames(const Command& command) {
  std::vector<std::string> names;
  for (const OptionSpec* option : OptionsOf(command)) {
    for (const std::string& name : std::vector<std::string>(absl::StrSplit(std::string(option->name), ','))) {
      names.push_back(name);
    }
  }
  return absl::StrJoin(names, " ");
}

// "check|show": a shell pattern for the names of an option.
std::string Pattern(const OptionSpec& option) {
  return absl::StrReplaceAll(std::string(option.name), {{",", "|"}});
}

// Which files complete a value: "design", "any" or none.
std::string Files(Completes completes) {
  switch (completes) {
    case Completes::kDesign:
    case Completes::kExporter:
    case Completes::kFigure:
      return "design";
    case Completes::kFile:
    case Completes::kFolder:
    case Completes::kImporter:
      return "any";
    default:
      return "";
  }
}

// Whether files come only behind one of the words.
bool FilesComeSecond(Completes completes) {
  return completes == Completes::kExporter || completes == Completes::kImporter;
}

// The first words of commands: "check", "plugin".
std::vector<std::string> FirstWords() {
  std::vector<std::string> words;
  for (const Command* command : Commands()) {
    std::string word(command->name.substr(0, command->name.find(' ')));
    if (words.empty() || words.back() != word) words.push_back(word);
  }
  return words;
}

std::vector<std::string> SecondWords(const std::string& first) {
  std::vector<std::string> words;
  for (const Command* command : Commands()) {
    std::vector<std::string> parts = absl::StrSplit(std::string(command->name), ' ');
    if (parts.size() == 2 && parts[0] == first) words.push_back(parts[1]);
  }
  return words;
}

// One shell `case` branch per command: its options, the words of its operands, and the words of options with a value.
// bash and zsh read the same.
std::string CaseBranches() {
  std::string text;
  for (const Command* command : Commands()) {
    std::string values;
    for (const OptionSpec* option : OptionsOf(*command)) {
      if (option->value.empty()) continue;
      std::string words = absl::StrJoin(Words(option->completes, option->choices), " ");
      absl::StrAppend(&values, "        ", Pattern(*option), ") words='", words, "'; files='", Files(option->completes),
                      "'; return ;;\n");
    }
    absl::StrAppend(&text, "    '", std::string(command->name), "')\n      case \"$previous\" in\n", values,
                    "      esac\n      options='", OptionNames(*command), "'\n      words='",
                    absl::StrJoin(Words(command->completes, ""), " "), "'; files='", Files(command->completes),
                    "'; second='", FilesComeSecond(command->completes) ? "yes" : "", "' ;;\n");
  }
  return text;
}

// "    plugin) words='list test new' ;;"
std::string GroupBranches() {
  std::string text;
  for (const std::string& word : FirstWords()) {
    std::vector<std::string> seconds = SecondWords(word);
    if (!seconds.empty()) absl::StrAppend(&text, "    ", word, ") words='", absl::StrJoin(seconds, " "), "' ;;\n");
  }
  return text;
}

std::string FromTemplate(const char* script) {
  return absl::StrReplaceAll(
      script,
      {{"@COMMANDS@", absl::StrJoin(FirstWords(), " ")}, {"@GROUPS@", GroupBranches()}, {"@CASES@", CaseBranches()}});
}

std::string FishQuoted(std::string_view text) {
  return absl::StrCat("'", absl::StrReplaceAll(std::string(text), {{"\\", "\\\\"}, {"'", "\\'"}}), "'");
}

// A fish condition that holds once the words of `command` were typed.
std::string FishCondition(const Command& command) {
  std::vector<std::string> words = absl::StrSplit(std::string(command.name), ' ');
  std::vector<std::string> seen;
  for (const std::string& word : words) seen.push_back(absl::StrCat("__fish_seen_subcommand_from ", word));
  return absl::StrCat("complete -c withy -n '", absl::StrJoin(seen, "; and "), "'");
}

// The same for its files, which may come only behind one of `words`.
std::string FishFilePrefix(const Command& command, const std::string& words) {
  std::string prefix = FishCondition(command);
  if (!FilesComeSecond(command.completes)) return prefix;
  prefix.pop_back();
  return absl::StrCat(prefix, "; and __fish_seen_subcommand_from ", words, "'");
}

std::string FishFiles(Completes completes) {
  std::string files = Files(completes);
  return files.empty() ? "" : files == "any" ? " -F" : " -a '(__withy_designs)'";
}

std::string FishOption(const std::string& prefix, const OptionSpec& option) {
  std::string line = prefix;
  std::vector<std::string> names = absl::StrSplit(std::string(option.name), ',');
  for (const std::string& name : names) {
    absl::StrAppend(
        &line, name.rfind("--", 0) == 0 ? absl::StrCat(" -l ", name.substr(2)) : absl::StrCat(" -s ", name.substr(1)));
  }
  if (!option.value.empty()) line += !Files(option.completes).empty() ? " -r -F" : " -x";
  std::string words = absl::StrJoin(Words(option.completes, option.choices), " ");
  if (!words.empty()) absl::StrAppend(&line, " -a ", FishQuoted(words));
  return absl::StrCat(line, " -d ", FishQuoted(option.summary), "\n");
}

std::string FishScript() {
  std::string text = "# withy completion for fish. Made by `withy --completion fish`.\ncomplete -c withy -f\n" +
                     std::string(kFishDesigns);
  std::set<std::string> groups;
  for (const Command* command : Commands()) {
    std::vector<std::string> parts = absl::StrSplit(std::string(command->name), ' ');
    bool group = parts.size() == 2;
    std::string condition = group ? absl::StrCat("__fish_seen_subcommand_from ", parts[0]) : "__fish_use_subcommand";
    absl::StrAppend(&text, "complete -c withy -n '", condition, "' -a ", parts.back(), " -d ",
                    FishQuoted(command->summary), "\n");
    if (group && groups.insert(parts[0]).second) {
      absl::StrAppend(&text, "complete -c withy -n __fish_use_subcommand -a ", parts[0], "\n");
    }
    std::string prefix = FishCondition(*command);
    std::string words = absl::StrJoin(Words(command->completes, ""), " ");
    if (!words.empty()) absl::StrAppend(&text, prefix, " -a ", FishQuoted(words), "\n");
    std::string files = FishFiles(command->completes);
    if (!files.empty()) absl::StrAppend(&text, FishFilePrefix(*command, words), files, "\n");
    for (const OptionSpec* option : OptionsOf(*command)) text += FishOption(prefix, *option);
  }
  return text;
}

}  // namespace

absl::StatusOr<std::string> CompletionScript(const std::string& shell) {
  if (shell == "bash") return FromTemplate(kBashScript);
  if (shell == "zsh") return FromTemplate(kZshScript);
  if (shell == "fish") return FishScript();
  return absl::InvalidArgumentError(
      absl::StrCat("no completion for '", shell, "'; there is one for bash, zsh and fish"));
}

}  // namespace withy
