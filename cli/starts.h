// Commented starting points for a design, one per technique, compiled in from examples/starts/.
#ifndef WITHY_CLI_STARTS_H_
#define WITHY_CLI_STARTS_H_

#include <span>
#include <string_view>

namespace withy {

struct Start {
  std::string_view technique;  // "casting"
  std::string_view text;       // a design in the text form
};

// In alphabetical order.
std::span<const Start> Starts();

}  // namespace withy

#endif  // WITHY_CLI_STARTS_H_
