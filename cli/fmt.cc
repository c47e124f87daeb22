#include <algorithm>

#include "commands.h"
#include "design_input.h"
#include "exit_status.h"
#include "io.h"
#include "output.h"

namespace withy {
namespace {

constexpr Example kExamples[] = {
    {"withy fmt casting.txtpb surf.txtpb", "lay out these files, in place"},
    {"withy fmt -o neat.txtpb casting.txtpb", "leave the file, write the result elsewhere"},
    {"withy fmt - < fly.txtpb", "from standard input to standard output"},
};

constexpr OptionSpec kOptions[] = {
    {"--check", "", "write nothing; list the files that are not laid out, exit status 1 where there are any"},
    {"-o,--output", "OUT", "write here instead of in place (one FILE)", Completes::kFile},
    {"--force", "", "replace OUT where it exists"},
};

const std::span<const OptionSpec> kGroups[] = {kOptions, ReadLimitOptions()};

struct Laid {
  std::string path, before, after;
  Form form = Form::kText;
};

// Reads and lays out one file; kDone, or the exit status of what went wrong.
int LayOut(const std::string& path, const Options& options, Io& io, Laid& laid) {
  std::optional<CheckedDesign> checked = ReadOnly(path, options, io);
  if (!checked) return kUnreadable;
  absl::StatusOr<std::string> after = FormatBytes(*checked->read.document);
  if (!after.ok()) {
    io.Complain(std::string(after.status().message()));
    return kUnreadable;
  }
  laid = {path, std::move(checked->bytes), *std::move(after), checked->read.document->form};
  return kDone;
}

int ListUnlaid(const std::vector<Laid>& files, Io& io) {
  int status = kDone;
  for (const Laid& file : files) {
    if (file.before == file.after) continue;
    io.Out(Visible(file.path) + "\n");
    status = kFindings;
  }
  return status;
}

// In place: all files or none.
int Replace(const std::vector<Laid>& files, Io& io) {
  std::vector<FileToWrite> changed;
  for (const Laid& file : files) {
    if (file.path == "-") {
      if (int status = Deliver("-", file.after, file.form == Form::kBinary, false, io); status != kDone) return status;
    } else if (file.before != file.after) {
      changed.push_back({file.path, file.after});
    }
  }
  if (absl::Status status = WriteFiles(changed, Existing::kReplace); !status.ok()) {
    io.Complain(std::string(status.message()));
    return kNoOutput;
  }
  for (const FileToWrite& file : changed) io.Note("laid out " + file.path);
  return kDone;
}

int Run(const Options& options, Io& io) {
  if (options.Has("--output") && (options.Has("--check") || options.operands().size() != 1)) {
    io.Complain("--output goes with one FILE and without --check");
    return kUsage;
  }
  std::vector<Laid> files;
  int status = kDone;
  for (const std::string& path : options.operands()) {
    Laid laid;
    int read = LayOut(path, options, io, laid);
    if (read == kDone) files.push_back(std::move(laid));
    status = std::max(status, read);
  }
  if (options.Has("--check")) return std::max(status, ListUnlaid(files, io));
  if (status != kDone) return status;
  if (!options.Has("--output")) return Replace(files, io);
  const Laid& file = files.front();
  return Deliver(options.Value("--output"), file.after, file.form == Form::kBinary, options.Has("--force"), io);
}

}  // namespace

const Command kFmt = {
    .name = "fmt",
    .operands = "FILE...",
    .least_operands = 1,
    .most_operands = kAnyNumber,
    .completes = Completes::kDesign,
    .summary = "Lay out design files; comments, order and numbers stay as they are",
    .details =
        "Where one of several files cannot be read, none is changed. A file is replaced in one step and keeps its "
        "permissions.",
    .examples = kExamples,
    .options = kGroups,
    .run = Run,
};

}  // namespace withy
