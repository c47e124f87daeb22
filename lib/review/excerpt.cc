#include "excerpt.h"

#include <algorithm>
#include <cstddef>
#include <vector>

#include "absl/strings/ascii.h"
#include "absl/strings/str_cat.h"

namespace withy {
namespace {

constexpr std::string_view kCut = "...";
constexpr int kNumberWidth = 5;              // of line numbers; files seldom have more than 99,999 lines
constexpr std::size_t kLineBytes = 1 << 16;  // of a line that are looked at around the place: files may be one line

std::string_view LineAround(std::string_view bytes, std::size_t offset, std::size_t* start) {
  std::size_t from = bytes.rfind('\n', offset == 0 ? std::string_view::npos : offset - 1);
  from = offset == 0 || from == std::string_view::npos ? 0 : from + 1;
  if (offset - from > kLineBytes) from = offset - kLineBytes;
  while (from > 0 && from < offset && (static_cast<unsigned char>(bytes[from]) & 0xC0) == 0x80) ++from;
  std::string_view line = bytes.substr(from, offset - from + kLineBytes);
  line = line.substr(0, std::min(line.find('\n', offset - from), line.size()));
  if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
  *start = from;
  return line;
}

bool IsNamePart(char c) {
  return absl::ascii_isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '.' || c == '-';
}

// The bytes at the front of `text` that one would point at: a quoted string, a name or number, or one character.
std::size_t MarkedBytes(std::string_view text) {
  if (text.empty()) return 0;
  if (text.front() == '"' || text.front() == '\'') {
    std::size_t end = text.find(text.front(), 1);
    return end == std::string_view::npos ? 1 : end + 1;
  }
  std::size_t size = 0;
  while (size < text.size() && IsNamePart(text[size])) ++size;
  return size;
}

int WidthOf(const std::vector<Glyph>& glyphs, std::size_t from, std::size_t to) {
  int width = 0;
  for (std::size_t i = from; i < to; ++i) width += glyphs[i].width;
  return width;
}

// A stretch of the line that fits `width` columns with the glyph `place` in it, a third of the way in where it is cut.
struct Window {
  std::size_t from, to;
  bool cut_before, cut_after;
};

Window WindowAround(const std::vector<Glyph>& glyphs, std::size_t place, int width) {
  Window window{0, glyphs.size(), false, false};
  if (WidthOf(glyphs, 0, glyphs.size()) <= width) return window;
  int room = width - 2 * static_cast<int>(kCut.size());
  if (WidthOf(glyphs, 0, place) > room * 2 / 3) {
    window.from = place;
    for (int before = 0; window.from > 0 && before + glyphs[window.from - 1].width <= room / 3;) {
      before += glyphs[--window.from].width;
    }
  }
  window.to = window.from;
  int used = 0;
  while (window.to < glyphs.size() && used + glyphs[window.to].width <= room) used += glyphs[window.to++].width;
  while (window.from > 0 && used + glyphs[window.from - 1].width <= room) used += glyphs[--window.from].width;
  window.cut_before = window.from > 0;
  window.cut_after = window.to < glyphs.size();
  return window;
}

}  // namespace

std::string Excerpt(std::string_view bytes, const Position& position, std::string_view label, Ink ink,
                    const TextStyle& style) {
  if (position.line <= 0 || position.offset > bytes.size()) return "";
  std::size_t start = 0;
  std::string_view line = LineAround(bytes, position.offset, &start);
  std::size_t ahead = std::min(position.offset - start, line.size());
  std::vector<Glyph> glyphs = Glyphs(line.substr(0, ahead));
  std::size_t place = glyphs.size();
  std::size_t marked_bytes = MarkedBytes(line.substr(ahead));
  std::size_t marked = Glyphs(line.substr(ahead, marked_bytes)).size();
  for (Glyph& glyph : Glyphs(line.substr(ahead))) glyphs.push_back(std::move(glyph));

  std::string number = PaddedLeft(absl::StrCat(position.line), kNumberWidth);
  Window window = WindowAround(glyphs, place, style.width - static_cast<int>(number.size()) - 3);
  std::string shown = window.cut_before ? std::string(kCut) : "";
  int before = static_cast<int>(shown.size()) + WidthOf(glyphs, window.from, place);
  for (std::size_t i = window.from; i < window.to; ++i) shown += glyphs[i].text;
  if (window.cut_after) shown += kCut;
  int mark_width = std::max(1, WidthOf(glyphs, place, std::min(place + marked, window.to)));
  std::string mark = "^" + std::string(static_cast<std::size_t>(mark_width - 1), '~');
  if (!label.empty()) absl::StrAppend(&mark, " ", absl::string_view(label.data(), label.size()));

  std::string text = Painted(number + " |", Ink::kFaint, style) + (shown.empty() ? "" : " ") + shown + "\n";
  text += Painted(std::string(number.size(), ' ') + " |", Ink::kFaint, style) + " " +
          std::string(static_cast<std::size_t>(before), ' ') + Painted(mark, ink, style) + "\n";
  return text;
}

}  // namespace withy
