// What a signal that ends the program must not leave behind.
#ifndef WITHY_CLI_SIGNALS_H_
#define WITHY_CLI_SIGNALS_H_

#include <csignal>
#include <string>

namespace withy {

// SIGPIPE and SIGXFSZ are ignored: the write that caused them fails and is reported. SIGINT, SIGTERM and SIGHUP remove
// the temporary files and then end the program as they would have; one that is ignored (nohup) stays ignored.
void HandleSignals();

// Keeps those three waiting while it lives.
class SignalsHeld {
 public:
  SignalsHeld();
  ~SignalsHeld();
  SignalsHeld(const SignalsHeld&) = delete;
  SignalsHeld& operator=(const SignalsHeld&) = delete;

 private:
  sigset_t before_;
};

// Has a signal remove the file `path`, until ForgetTemporary. `path` must neither move nor change meanwhile. Of more
// than 256 files at once the rest is not noted.
void NoteTemporary(const std::string& path);
void ForgetTemporary(const std::string& path);

}  // namespace withy

#endif  // WITHY_CLI_SIGNALS_H_
