#include <string>

#include "absl/strings/escaping.h"
#include "absl/strings/str_cat.h"
#include "arguments.h"
#include "commands.h"
#include "exit_status.h"
#include "io.h"
#include "output.h"
#include "starts.h"
#include "withy/document/document.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy new casting -o rod.txtpb", "a casting rod to fill in"},
    {"withy new fly --name \"Alder Brook five\" -o alder.txtpb", "with a name"},
    {"withy new --list", "the techniques there is a starting point for"},
};

constexpr OptionSpec kOptions[] = {
    {"-o,--output", "FILE", "where to (standard output)", Completes::kFile},
    {"--name", "NAME", "what to call the design"},
    {"--list", "", "list the starting points"},
    {"--force", "", "replace FILE where it exists"},
};

constexpr std::span<const OptionSpec> kGroups[] = {kOptions};

// Puts `name` where the starting point has its own: the text in quotes behind the field's name.
std::string Named(std::string text, const std::string& name) {
  ReadResult read = ReadDesign("start", text);
  if (!read.document) return text;
  FieldPath path = FieldPath().Field("identity").Field("name");
  std::optional<Position> place = read.document->positions.Find(path, read.document->design, text, false);
  if (!place) return text;
  std::size_t open = text.find('"', place->offset);
  std::size_t close = open == std::string::npos ? open : text.find('"', open + 1);
  if (close == std::string::npos) return text;
  return text.replace(open + 1, close - open - 1, absl::Utf8SafeCEscape(name));
}

int ListStarts(Io& io) {
  for (const Start& start : Starts()) io.Out(absl::StrCat(std::string(start.technique), "\n"));
  return kDone;
}

int NoSuchStart(const std::string& technique, Io& io) {
  std::vector<std::string_view> known;
  for (const Start& start : Starts()) known.push_back(start.technique);
  io.Complain(absl::StrCat("no starting point for '", technique, "'", DidYouMean(technique, known)),
              "'withy new --list' names those there are");
  return kUsage;
}

int Run(const Options& options, Io& io) {
  if (options.Has("--list")) return ListStarts(io);
  if (options.operands().empty()) {
    io.Complain("new needs a technique: withy new TECHNIQUE", "'withy new --list' names those there are");
    return kUsage;
  }
  const std::string& technique = options.operands().front();
  for (const Start& start : Starts()) {
    if (start.technique != technique) continue;
    std::string text(start.text);
    if (options.Has("--name")) text = Named(text, options.Value("--name"));
    return Deliver(options.Value("--output"), text, false, options.Has("--force"), io);
  }
  return NoSuchStart(technique, io);
}

}  // namespace

const Command kNew = {
    .name = "new",
    .operands = "TECHNIQUE",
    .least_operands = 0,
    .most_operands = 1,
    .completes = Completes::kTechnique,
    .summary = "Start a design from a commented starting point",
    .details = "The numbers in it are placeholders; its comments say what to measure and how.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
