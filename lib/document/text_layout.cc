#include "text_layout.h"

#include <algorithm>

namespace withy {
namespace {

std::string_view LineOf(std::string_view bytes, std::size_t offset) {
  constexpr std::size_t kLongest = 1000;
  const std::size_t from = offset - std::min(offset, kLongest);
  const std::string_view before = bytes.substr(from, offset - from), after = bytes.substr(offset, kLongest);
  const std::size_t begin = from + before.rfind('\n') + 1;  // npos + 1 is 0
  return bytes.substr(begin, offset + std::min(after.find('\n'), after.size()) - begin);
}

}  // namespace

std::size_t IndentOf(std::string_view bytes, std::size_t offset) {
  return LineOf(bytes, offset).find_first_not_of(" \t");
}

bool IsOnLineThatStaysOpen(std::string_view bytes, std::size_t opened, std::size_t name) {
  const std::string_view line = LineOf(bytes, name);
  if (LineOf(bytes, opened).data() != line.data()) return false;
  return std::count(line.begin(), line.end(), '{') > std::count(line.begin(), line.end(), '}');
}

}  // namespace withy
