#include "stray_control.h"

#include <algorithm>

namespace withy {

std::size_t FindStrayControl(std::string_view bytes) {
  for (std::size_t at = 0; at < bytes.size(); ++at) {
    const char c = bytes[at];
    if (static_cast<unsigned char>(c) >= 0x20 || c == '\t' || c == '\n' || c == '\v' || c == '\f') continue;
    if (c != '\r') return at;
    const std::size_t next = std::min(bytes.find_first_not_of('\r', at), bytes.size());
    if (next < bytes.size() && bytes[next] != '\n') return at;
    at = next - 1;
  }
  return bytes.size();
}

}  // namespace withy
