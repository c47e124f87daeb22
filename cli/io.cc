#include "io.h"

#include <unistd.h>

#include <cerrno>
#include <cstdlib>
#include <cstring>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_split.h"
#include "exit_status.h"

namespace withy {
namespace {

constexpr std::size_t kEnough = 1 << 16;

// Writes all of `text`; 0 or the errno.
int WriteAll(int fd, std::string_view text) {
  while (!text.empty()) {
    ssize_t written = write(fd, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) return errno;
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return 0;
}

bool WantsColor(ColorChoice choice, int fd) {
  if (choice != ColorChoice::kAuto) return choice == ColorChoice::kAlways;
  const char* no_color = std::getenv("NO_COLOR");
  const char* term = std::getenv("TERM");
  bool declined = (no_color && *no_color) || (term && std::strcmp(term, "dumb") == 0);
  return !declined && isatty(fd);
}

}  // namespace

void Io::Configure(ColorChoice color, bool quiet, bool verbose) {
  out_style_.color = WantsColor(color, STDOUT_FILENO);
  err_style_.color = WantsColor(color, STDERR_FILENO);
  quiet_ = quiet;
  verbose_ = verbose;
}

void Io::Out(std::string_view text) {
  pending_.append(text);
  if (pending_.size() >= kEnough) Flush();
}

absl::Status Io::OutBytes(std::string_view bytes, bool binary) {
  if (!isatty(STDOUT_FILENO)) {
    Out(bytes);
    return absl::OkStatus();
  }
  if (binary) return absl::FailedPreconditionError("a terminal cannot show the binary form; name a file with -o");
  std::string_view rest = bytes;
  while (!rest.empty()) {
    std::size_t end = rest.find('\n');
    Out(Visible(rest.substr(0, end)));
    if (end == std::string_view::npos) break;
    Out("\n");
    rest.remove_prefix(end + 1);
  }
  return absl::OkStatus();
}

void Io::Err(std::string_view text) {
  Flush();  // so that a terminal shows both in the order they came
  WriteAll(STDERR_FILENO, text);
}

void Io::Complain(std::string_view message) {
  Err(absl::StrCat(Painted("withy:", Ink::kError, err_style_), " ", Visible(message), "\n"));
}

void Io::Complain(std::string_view message, std::string_view hint) {
  Complain(message);
  if (!hint.empty()) Err(absl::StrCat("  ", Painted("help:", Ink::kFaint, err_style_), " ", Visible(hint), "\n"));
}

void Io::Note(std::string_view message) {
  if (!quiet_) Err(absl::StrCat("withy: ", Visible(message), "\n"));
}

void Io::Flush() {
  if (out_error_ == 0 && !pending_.empty()) out_error_ = WriteAll(STDOUT_FILENO, pending_);
  pending_.clear();
}

int Io::Finish(int status) {
  Flush();
  if (out_error_ == 0) return status;
  if (out_error_ != EPIPE) Complain(absl::StrCat("standard output: ", std::strerror(out_error_)));
  return kNoOutput;
}

}  // namespace withy
