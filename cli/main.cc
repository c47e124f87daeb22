// withy: the command line. Finds the command in the table, reads its options, runs it.
#include <fcntl.h>
#include <unistd.h>

#include <exception>
#include <new>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "arguments.h"
#include "command.h"
#include "completion.h"
#include "exit_status.h"
#include "help.h"
#include "io.h"
#include "signals.h"
#include "version.h"
#include "withy/plugin_host/plugin_host.h"

namespace withy {
namespace {

// A program started with a standard stream closed would open its first file in that stream's place and write into it.
void HoldStandardStreams() {
  for (int fd : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (fcntl(fd, F_GETFD) == -1) open("/dev/null", fd == STDIN_FILENO ? O_WRONLY : O_RDONLY);
  }
}

int NoSuchCommand(const std::vector<std::string>& arguments, Io& io) {
  const std::string& word = arguments.front();
  std::string group = word.empty() ? "" : GroupHelp(word, io.err_style());
  if (!group.empty() && arguments.size() > 1 && (arguments[1] == "--help" || arguments[1] == "-h")) {
    io.Out(group);
    return kDone;
  }
  if (!group.empty()) {
    io.Complain(absl::StrCat("'", word, "' goes with one of these:"));
    io.Err(group);
    return kUsage;
  }
  std::vector<std::string_view> known;
  for (const Command* command : Commands()) known.push_back(command->name);
  if (!word.empty() && word.front() == '-') {
    io.Complain(absl::StrCat("a command comes first, before '", word, "'"), "'withy --help' lists the commands");
  } else {
    io.Complain(absl::StrCat("no command '", word, "'", DidYouMean(word, known)), "'withy --help' lists the commands");
  }
  return kUsage;
}

int PrintCompletion(const std::vector<std::string>& arguments, Io& io) {
  absl::StatusOr<std::string> script = CompletionScript(arguments.size() > 1 ? arguments[1] : "");
  if (!script.ok()) {
    io.Complain(std::string(script.status().message()));
    return kUsage;
  }
  io.Out(*script);
  return kDone;
}

ColorChoice ColorFrom(const Options& options) {
  std::string when = options.Value("--color", "auto");
  if (when == "always") return ColorChoice::kAlways;
  return when == "never" ? ColorChoice::kNever : ColorChoice::kAuto;
}

int PrintHelp(const Command& command, const Options& options, Io& io) {
  io.Out(CommandHelp(command, io.out_style()));
  return command.more_help && !options.operands().empty() ? command.more_help(options, io) : kDone;
}

int RunCommand(const Command& command, const std::vector<std::string>& arguments, Io& io) {
  Options options;
  if (absl::Status status = ParseArguments(command, arguments, options); !status.ok()) {
    io.Complain(std::string(status.message()),
                absl::StrCat("'withy ", std::string(command.name), " --help' shows what there is"));
    return kUsage;
  }
  io.Configure(ColorFrom(options), options.Has("--quiet"), options.Has("--verbose"));
  return options.Has("--help") ? PrintHelp(command, options, io) : command.run(options, io);
}

int RunWithy(std::vector<std::string> arguments, Io& io) {
  io.Configure(ColorChoice::kAuto, false, false);
  if (arguments.empty()) {
    io.Err(ProgramHelp(io.err_style()));
    return kUsage;
  }
  if (arguments.front() == "help") {
    arguments.erase(arguments.begin());
    arguments.push_back("--help");
  }
  const std::string first = arguments.front();
  if (first == "--help" || first == "-h") {
    io.Out(ProgramHelp(io.out_style()));
    return kDone;
  }
  if (first == "--version") {
    io.Out(absl::StrCat("withy ", std::string(kVersion), "\n"));
    return kDone;
  }
  if (first == "--manual") {
    io.Out(Manual());
    return kDone;
  }
  if (first == "--completion") return PrintCompletion(arguments, io);
  const Command* command = TakeCommand(arguments);
  return command ? RunCommand(*command, arguments, io) : NoSuchCommand(arguments, io);
}

int Guarded(std::vector<std::string> arguments) {
  Io io;
  try {
    return io.Finish(RunWithy(std::move(arguments), io));
  } catch (const std::bad_alloc&) {
    io.Complain("out of memory");
  } catch (const std::exception& fault) {
    io.Complain(absl::StrCat("a fault of withy itself: ", fault.what()),
                "please report it with the file that shows it");
  }
  return kOwnFault;
}

}  // namespace
}  // namespace withy

int main(int argc, char** argv) {
  int status = 0;
  if (withy::RunPluginChildIfAsked(argc, argv, &status)) return status;
  withy::HoldStandardStreams();
  withy::HandleSignals();
  return withy::Guarded(std::vector<std::string>(argv + (argc > 0 ? 1 : 0), argv + argc));
}
