#include "withy/findings/nearest_name.h"

#include <algorithm>
#include <array>
#include <string>

namespace withy {
namespace {

constexpr std::size_t kLongest = 64;

std::string Folded(std::string_view name) {
  std::string folded(name);
  for (char& c : folded) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    if (c == '-') c = '_';
  }
  return folded;
}

bool IsBeginningOf(std::string_view shorter, std::string_view longer) {
  return shorter.size() >= 3 && longer.starts_with(shorter);
}

}  // namespace

std::size_t EditDistance(std::string_view a, std::string_view b) {
  a = a.substr(0, kLongest);
  b = b.substr(0, kLongest);
  using Row = std::array<std::size_t, kLongest + 1>;
  Row before_last{}, last{}, row{};
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = last[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({replaced, last[j] + 1, row[j - 1] + 1});
      const bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
      if (swapped) row[j] = std::min(row[j], before_last[j - 2] + 1);
    }
    before_last = last;
    last = row;
  }
  return last[b.size()];
}

std::string_view NearestName(std::string_view wrong, const std::vector<std::string_view>& known) {
  const std::string folded = Folded(wrong);
  std::string_view nearest, begun;
  std::size_t fewest = 0, beginnings = 0;
  for (const std::string_view name : known) {
    const std::string candidate = Folded(name);
    const std::size_t edits = EditDistance(folded, candidate);
    const std::size_t allowed = std::max<std::size_t>(1, std::max(folded.size(), candidate.size()) / 3);
    if (edits <= allowed && edits < candidate.size() && (nearest.empty() || edits < fewest)) {
      nearest = name;
      fewest = edits;
    }
    if (IsBeginningOf(folded, candidate) || IsBeginningOf(candidate, folded)) {
      begun = name;
      ++beginnings;
    }
  }
  if (nearest.empty() && beginnings == 1) return begun;
  return nearest;
}

}  // namespace withy
