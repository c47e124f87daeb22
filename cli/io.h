// Standard output and standard error of a command: results on the one, all else on the other.
//
// Results are collected and written when there are enough of them and at the end; what could not be written (a full
// disk, a reader that went away) turns the exit status into kNoOutput, silently where the reader went away.
#ifndef WITHY_CLI_IO_H_
#define WITHY_CLI_IO_H_

#include <string>
#include <string_view>

#include "absl/status/status.h"
#include "withy/review/terminal_text.h"

namespace withy {

enum class ColorChoice { kAuto, kAlways, kNever };

class Io {
 public:
  // --color, --quiet, --verbose. Until called: colour by what the streams are, neither quiet nor verbose. `kAuto`
  // paints a stream that is a terminal, unless NO_COLOR is set and not empty (no-color.org) or TERM is "dumb".
  void Configure(ColorChoice color, bool quiet, bool verbose);

  // Adds text made by withy to the results.
  void Out(std::string_view text);
  // Adds bytes of a file. On a terminal they are made printable first; a terminal gets no binary (FailedPrecondition).
  absl::Status OutBytes(std::string_view bytes, bool binary);

  // Writes "withy: ..." to standard error, made printable, with a line end.
  void Complain(std::string_view message);
  // The same with a second line that says what to do.
  void Complain(std::string_view message, std::string_view hint);
  // A remark, left out with --quiet.
  void Note(std::string_view message);
  // Text as it is to standard error.
  void Err(std::string_view text);

  // Writes what is left. Returns `status`, or kNoOutput where results were lost.
  int Finish(int status);

  const TextStyle& out_style() const { return out_style_; }
  const TextStyle& err_style() const { return err_style_; }
  bool quiet() const { return quiet_; }
  bool verbose() const { return verbose_; }

 private:
  void Flush();

  std::string pending_;
  int out_error_ = 0;  // errno of the first write that failed
  TextStyle out_style_, err_style_;
  bool quiet_ = false;
  bool verbose_ = false;
};

}  // namespace withy

#endif  // WITHY_CLI_IO_H_
