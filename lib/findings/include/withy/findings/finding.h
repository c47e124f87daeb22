// A finding: what is wrong or not known, where, with its numbers, and what to do at the bench.
//
// A code is declared once, beside the check that gives it:
//
//   inline constexpr Code kTubeTooSmall = {
//       .name = "guides/tip-tube-small", .severity = Severity::kError,
//       .summary = "The tip-top's tube does not go over the tip of the blank",
//       .why = "A tube that is forced splits the tip.", .action = "Take the next size up, or cut the tip back.",
//       .since = 1};
//   findings.push_back(MakeFinding(kTubeTooSmall, path, "tube 5.0/64 in (1.98 mm) is under the tip's 2.06 mm",
//                                  {{"tube_bore_mm", 1.98}, {"tip_mm", 2.06}}));
//
// The name is `concern/slug`; names are never reused. Tests compare code, place and numbers, never wording.
#ifndef WITHY_FINDINGS_FINDING_H_
#define WITHY_FINDINGS_FINDING_H_

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "withy/findings/field_path.h"

namespace withy {

enum class Severity {
  kAdvice,      // worth knowing
  kCannotTell,  // the rule could not be judged; `help` says what to measure
  kWarning,     // likely a slip or a disappointment
  kError,       // cannot be built or read
};

// "advice", "cannot tell", "warning", "error".
std::string_view SeverityName(Severity severity);

// The declaration of a code. All text is static.
struct Code {
  std::string_view name;      // "concern/slug"; concern [a-z_], slug [a-z0-9-]
  Severity severity;
  std::string_view summary;   // one line, no full stop
  std::string_view why;       // why it matters on a rod, whole sentences
  std::string_view action;    // what to do at the bench, whole sentences; the default help
  int since = 1;              // version of the catalogue that brought it
};

// A number that the finding speaks of; the unit is the end of the name ("length_mm").
struct Number {
  std::string name;
  double value = 0;
  bool operator==(const Number&) const = default;
};

// A place in a file. Line and column count from 1, the column in characters (UTF-8 code points), tabs as one.
struct Position {
  std::size_t offset = 0;  // bytes from the start of the file
  int line = 0;            // 0 in binary files: only the offset means something
  int column = 0;
  bool operator==(const Position&) const = default;
};

struct Finding {
  std::string code;                        // "guides/spacing"
  Severity severity = Severity::kError;
  FieldPath at;                            // in the design; empty = the whole
  std::vector<FieldPath> related;          // other places the message speaks of
  std::vector<Number> numbers;
  std::string message;                     // one line, no full stop, starts lower case unless a name does
  std::string help;                        // what to do at the bench
  std::optional<double> from_tip_mm;       // where it is on the rod, from the tip end of the finished rod
  std::optional<Position> position;        // set by readers; otherwise looked up from `at` when printed
  bool operator==(const Finding&) const = default;
};

// A finding of `code` at `at`, with the code's severity and, where `help` is empty, its action.
Finding MakeFinding(const Code& code, FieldPath at, std::string message, std::vector<Number> numbers = {},
                    std::string help = "");

// The same as 'cannot tell': the rule `code` could not be judged. `measure` says what would settle it; it becomes a
// whole sentence here.
Finding CannotTell(const Code& code, FieldPath at, std::string message, std::string measure);

}  // namespace withy

#endif  // WITHY_FINDINGS_FINDING_H_
