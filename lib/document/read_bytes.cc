#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <string>

#include "absl/status/statusor.h"
#include "absl/strings/str_cat.h"
#include "withy/document/document.h"

namespace withy {
namespace {

// Closes what it opened; standard input is left open.
class File {
 public:
  explicit File(const std::string& path)
      : descriptor_(path == "-" ? STDIN_FILENO : open(path.c_str(), O_RDONLY | O_CLOEXEC)) {}
  ~File() {
    if (descriptor_ > STDIN_FILENO) close(descriptor_);
  }
  File(const File&) = delete;
  File& operator=(const File&) = delete;

  int descriptor() const { return descriptor_; }

 private:
  int descriptor_;
};

std::string Shown(const std::string& path) {
  return path == "-" ? "standard input" : path;
}

absl::Status CannotOpen(const std::string& path, int error) {
  switch (error) {
    case ENOENT:
    case ENOTDIR:
      return absl::NotFoundError(absl::StrCat(path, ": there is no such file; check the name and the folder"));
    case EACCES:
    case EPERM:
      return absl::PermissionDeniedError(
          absl::StrCat(path, ": reading is not permitted; change the file's permissions or copy it"));
    default:
      return absl::DataLossError(absl::StrCat(path, ": cannot be opened: ", std::strerror(error)));
  }
}

absl::Status TooLarge(const std::string& path, std::size_t limit) {
  return absl::ResourceExhaustedError(absl::StrCat(Shown(path), ": longer than ", limit,
                                                   " bytes; check that it is the file you meant, or raise the limit"));
}

}  // namespace

absl::StatusOr<std::string> ReadBytes(const std::string& path, const ReadLimits& limits) {
  const File file(path);
  if (file.descriptor() < 0) return CannotOpen(path, errno);
  struct stat about {};
  if (fstat(file.descriptor(), &about) != 0) return CannotOpen(path, errno);
  if (S_ISDIR(about.st_mode)) {
    return absl::InvalidArgumentError(absl::StrCat(Shown(path), ": this is a folder; name a file in it"));
  }
  const auto size = static_cast<std::size_t>(std::max<off_t>(about.st_size, 0));
  if (S_ISREG(about.st_mode) && size > limits.max_bytes) return TooLarge(path, limits.max_bytes);

  // A pipe has no size, and a file may grow while it is read: the end is where a read gives nothing.
  constexpr std::size_t kPiece = std::size_t{64} << 10;
  std::string bytes;
  bytes.resize(std::min(size, limits.max_bytes) + 1);
  std::size_t filled = 0;
  while (true) {
    if (filled == bytes.size()) bytes.resize(bytes.size() + kPiece);
    const ssize_t got = read(file.descriptor(), bytes.data() + filled, bytes.size() - filled);
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) {
      return absl::DataLossError(absl::StrCat(Shown(path), ": reading stopped at byte ", filled, ": ",
                                              std::strerror(errno), "; nothing of it is used"));
    }
    if (got == 0) break;
    filled += static_cast<std::size_t>(got);
    if (filled > limits.max_bytes) return TooLarge(path, limits.max_bytes);
  }
  bytes.resize(filled);
  return bytes;
}

}  // namespace withy
