// What the layout of a text says of its braces: people indent what stands within, so the indent tells where a forgotten
// brace belongs. Only lines as long as people write are judged (1000 bytes to either side), so that the cost of an
// error does not grow with the line it stands on.
#ifndef WITHY_DOCUMENT_TEXT_LAYOUT_H_
#define WITHY_DOCUMENT_TEXT_LAYOUT_H_

#include <cstddef>
#include <string_view>

namespace withy {

// White space at the beginning of the line at `offset`, in bytes.
std::size_t IndentOf(std::string_view bytes, std::size_t offset);

// Whether both offsets stand on one line, which opens more braces than it closes.
bool IsOnLineThatStaysOpen(std::string_view bytes, std::size_t opened, std::size_t name);

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_LAYOUT_H_
