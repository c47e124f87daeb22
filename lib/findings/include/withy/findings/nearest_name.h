// "Did you mean": the known name closest to a misspelt one.
//
//   NearestName("lenght", {"length", "mass", "bore"})  // "length"
//   NearestName("zzz", {"length", "mass", "bore"})     // "": nothing is close
#ifndef WITHY_FINDINGS_NEAREST_NAME_H_
#define WITHY_FINDINGS_NEAREST_NAME_H_

#include <cstddef>
#include <string_view>
#include <vector>

namespace withy {

// Edits (one character inserted, deleted or replaced, or two neighbours swapped) that turn `a` into `b`, counted in
// bytes (optimal string alignment; Damerau 1964). Compares at most the first 64 bytes of each.
std::size_t EditDistance(std::string_view a, std::string_view b);

// The name in `known` with the fewest edits from `wrong`, letter case and the difference of '-' and '_' not counted;
// the first of several. Empty where none is within a third of the longer name's length (at least 1 edit), unless
// exactly one known name begins with `wrong` or the other way round (three characters or more).
std::string_view NearestName(std::string_view wrong, const std::vector<std::string_view>& known);

}  // namespace withy

#endif  // WITHY_FINDINGS_NEAREST_NAME_H_
