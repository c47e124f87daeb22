// The layouts that FormatBytes gives; see there.
#ifndef WITHY_DOCUMENT_FORMAT_H_
#define WITHY_DOCUMENT_FORMAT_H_

#include <string>
#include <string_view>

#include "absl/status/statusor.h"

namespace withy {

// Text. Every token and comment is kept, and the line breaks between fields: what the author kept on a line stays there
// where it fits, a message that stood on several lines stays on several. Spaces, indentation, `<>`, the `:` before a
// bracket, separators between fields, runs of empty lines and the byte order mark are normalised; comments at the ends
// of neighbouring lines begin in one column.
absl::StatusOr<std::string> FormatText(std::string_view bytes);

// JSON. An item a line, two spaces a level; number tokens are kept, strings are written with the fewest escapes.
absl::StatusOr<std::string> FormatJson(std::string_view bytes);

}  // namespace withy

#endif  // WITHY_DOCUMENT_FORMAT_H_
