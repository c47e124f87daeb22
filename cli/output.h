// Writing files so that nothing is ever half written: each file is written beside its target under a temporary name,
// made durable, and only then given its name. Several files appear all or not at all.
#ifndef WITHY_CLI_OUTPUT_H_
#define WITHY_CLI_OUTPUT_H_

#include <string>
#include <vector>

#include "absl/status/status.h"

namespace withy {

class Io;

struct FileToWrite {
  std::string path;
  std::string bytes;
};

enum class Existing { kRefuse, kReplace };

// Writes all files or none. kRefuse: AlreadyExists where a file is there already, also one that appeared meanwhile.
// kReplace: the file keeps its permissions, and its owner where the system allows; a link is followed. A device or pipe
// is written to directly. Errors name the file and the reason.
absl::Status WriteFiles(const std::vector<FileToWrite>& files, Existing existing);

// Writes `bytes` to `path` ("-" or empty = standard output) and says so with a remark. Returns the exit status.
int Deliver(const std::string& path, const std::string& bytes, bool binary, bool force, Io& io);

}  // namespace withy

#endif  // WITHY_CLI_OUTPUT_H_
