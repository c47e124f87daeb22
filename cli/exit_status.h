// The exit statuses of withy. Scripts rely on them.
#ifndef WITHY_CLI_EXIT_STATUS_H_
#define WITHY_CLI_EXIT_STATUS_H_

namespace withy {

inline constexpr int kDone = 0;        // done and clean
inline constexpr int kFindings = 1;    // findings at or above --fail-on; `fmt --check`: not in canonical layout
inline constexpr int kUsage = 2;       // wrong usage
inline constexpr int kUnreadable = 3;  // an input that cannot be read or is not a design
inline constexpr int kIncomplete = 4;  // a plugin failed, or a rule could not be judged
inline constexpr int kNoOutput = 5;    // output refused or not written
inline constexpr int kOwnFault = 70;   // a fault of withy itself (EX_SOFTWARE of sysexits.h)

}  // namespace withy

#endif  // WITHY_CLI_EXIT_STATUS_H_
