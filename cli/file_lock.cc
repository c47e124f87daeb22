#include "file_lock.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <utility>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

absl::Status Failed(const std::string& path, int error) {
  return absl::ErrnoToStatus(error, absl::StrCat(path, ": not written"));
}

bool SameFile(const struct stat& a, const struct stat& b) {
  return a.st_dev == b.st_dev && a.st_ino == b.st_ino;
}

}  // namespace

absl::StatusOr<FileLock> FileLock::Take(const std::string& path) {
  // For writing: file systems that keep locks on a server give an exclusive one to nobody else.
  const int fd = open(path.c_str(), O_RDWR | O_CLOEXEC | O_NONBLOCK);
  if (fd < 0) return Failed(path, errno);
  FileLock lock(fd, 1);
  struct stat held, named;
  if (fstat(fd, &held) != 0) return Failed(path, errno);
  lock.names_ = held.st_nlink;
  if (!S_ISREG(held.st_mode)) return lock;
  if (flock(fd, LOCK_EX | LOCK_NB) != 0) {
    return errno == EWOULDBLOCK ? absl::UnavailableError(absl::StrCat(path, ": not written: it is being changed"))
                                : Failed(path, errno);
  }
  if (stat(path.c_str(), &named) != 0 || !SameFile(held, named)) {
    return absl::UnavailableError(absl::StrCat(path, ": not written: the file was changed meanwhile"));
  }
  return lock;
}

FileLock::FileLock(FileLock&& other) noexcept : fd_(std::exchange(other.fd_, -1)), names_(other.names_) {}

FileLock::~FileLock() {
  if (fd_ >= 0) close(fd_);
}

}  // namespace withy
