// Control characters that a file in the text form must not hold.
#ifndef WITHY_DOCUMENT_STRAY_CONTROL_H_
#define WITHY_DOCUMENT_STRAY_CONTROL_H_

#include <cstddef>
#include <string_view>

namespace withy {

// The offset of the first character below U+0020 that is not white space (tab, LF, VT, FF, and CR before an LF or the
// end); the size of `bytes` where there is none. A lone CR is one of them: a comment ends at an LF only ("Text Format
// Language Specification", protobuf.dev), so that the fields an editor shows on the next line would be part of it.
std::size_t FindStrayControl(std::string_view bytes);

}  // namespace withy

#endif  // WITHY_DOCUMENT_STRAY_CONTROL_H_
