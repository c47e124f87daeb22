// Whether bytes are UTF-8.
#ifndef WITHY_DOCUMENT_UTF8_H_
#define WITHY_DOCUMENT_UTF8_H_

#include <cstddef>
#include <string_view>

namespace withy {

// How many bytes from the start of `text` are whole, valid UTF-8 sequences (RFC 3629: shortest form, no surrogates, at
// most U+10FFFF). Equals text.size() where all of it is valid.
std::size_t ValidUtf8Prefix(std::string_view text);

inline bool IsUtf8(std::string_view text) {
  return ValidUtf8Prefix(text) == text.size();
}

// How many code points: bytes that do not continue one.
std::size_t CodePoints(std::string_view utf8);

}  // namespace withy

#endif  // WITHY_DOCUMENT_UTF8_H_
