#include "utf8.h"

#include <algorithm>

#include <cstdint>
#include <cstring>

namespace withy {
namespace {

std::uint8_t Byte(std::string_view text, std::size_t at) {
  return at < text.size() ? static_cast<std::uint8_t>(text[at]) : 0;
}

bool Continues(std::uint8_t byte) {
  return (byte & 0xC0) == 0x80;
}

// Length of the sequence that begins at `at`; 0 where it is not valid. The bounds on the second byte are those of
// RFC 3629 section 4.
std::size_t SequenceLength(std::string_view text, std::size_t at) {
  const std::uint8_t first = Byte(text, at), second = Byte(text, at + 1);
  if (first < 0x80) return 1;
  if (first < 0xC2 || first > 0xF4) return 0;
  if (first < 0xE0) return Continues(second) ? 2 : 0;
  const std::uint8_t low = first == 0xE0 ? 0xA0 : first == 0xF0 ? 0x90 : 0x80;
  const std::uint8_t high = first == 0xED ? 0x9F : first == 0xF4 ? 0x8F : 0xBF;
  if (second < low || second > high || !Continues(Byte(text, at + 2))) return 0;
  if (first < 0xF0) return 3;
  return Continues(Byte(text, at + 3)) ? 4 : 0;
}

}  // namespace

std::size_t ValidUtf8Prefix(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    std::uint64_t eight = 0;
    if (text.size() - at >= sizeof(eight)) {  // eight ASCII bytes at a time
      std::memcpy(&eight, text.data() + at, sizeof(eight));
      if ((eight & 0x8080808080808080U) == 0) {
        at += sizeof(eight);
        continue;
      }
    }
    const std::size_t length = SequenceLength(text, at);
    if (length == 0) break;
    at += length;
  }
  return at;
}

std::size_t CodePoints(std::string_view utf8) {
  return static_cast<std::size_t>(std::count_if(utf8.begin(), utf8.end(), [](char c) { return (c & 0xC0) != 0x80; }));
}

}  // namespace withy
