// A file that one process at a time may change: whoever records at the bench reads, compares and replaces under it.
#ifndef WITHY_CLI_FILE_LOCK_H_
#define WITHY_CLI_FILE_LOCK_H_

#include <string>

#include "absl/status/statusor.h"

namespace withy {

// Holds the file at a path until it goes out of scope. It is the file that is held, not its name: whoever replaces the
// file meanwhile leaves this one behind without a name, so that what the name leads to is compared after locking.
class FileLock {
 public:
  // Waits for nobody. Unavailable: another process holds it, or the name leads to another file by now. A device or a
  // pipe needs no lock and counts as held. Other errors as the system gives them (no such file, no permission).
  static absl::StatusOr<FileLock> Take(const std::string& path);

  FileLock(FileLock&& other) noexcept;
  FileLock& operator=(FileLock&&) = delete;
  ~FileLock();

  // How many names (hard links) the file has.
  unsigned long names() const { return names_; }

 private:
  FileLock(int fd, unsigned long names) : fd_(fd), names_(names) {}

  int fd_;
  unsigned long names_;
};

}  // namespace withy

#endif  // WITHY_CLI_FILE_LOCK_H_
