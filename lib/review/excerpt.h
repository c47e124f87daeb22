// The line of a file that a finding points at, with a mark under the place.
#ifndef WITHY_REVIEW_EXCERPT_H_
#define WITHY_REVIEW_EXCERPT_H_

#include <string>
#include <string_view>

#include "withy/findings/finding.h"
#include "withy/review/terminal_text.h"

namespace withy {

// Two lines, each with a line end: the source line with its number, and a mark under the name that starts at
// `position`, followed by `label` (may be empty). A line longer than the style's width is cut to a window around the
// place, cuts shown as "...". Empty where `position` has no line or lies outside `bytes`.
std::string Excerpt(std::string_view bytes, const Position& position, std::string_view label, Ink ink,
                    const TextStyle& style);

}  // namespace withy

#endif  // WITHY_REVIEW_EXCERPT_H_
