#include "withy/review/terminal_text.h"

#include <utf8proc.h>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace withy {
namespace {

std::string_view SgrCode(Ink ink) {
  switch (ink) {
    case Ink::kPlain:
      return "";
    case Ink::kStrong:
      return "1";
    case Ink::kFaint:
      return "2";
    case Ink::kError:
      return "1;31";
    case Ink::kWarning:
      return "1;33";
    case Ink::kCannotTell:
      return "1;35";
    case Ink::kAdvice:
      return "1;36";
    case Ink::kGood:
      return "1;32";
  }
  return "";
}

bool IsInvisible(utf8proc_int32_t code_point) {
  switch (utf8proc_category(code_point)) {
    case UTF8PROC_CATEGORY_CC:
    case UTF8PROC_CATEGORY_CF:
    case UTF8PROC_CATEGORY_CS:
    case UTF8PROC_CATEGORY_ZL:
    case UTF8PROC_CATEGORY_ZP:
      return true;
    default:
      return false;
  }
}

Glyph WrittenOut(std::string text) {
  int width = static_cast<int>(text.size());
  return {std::move(text), width};
}

Glyph GlyphOf(utf8proc_int32_t code_point, std::string_view bytes) {
  if (code_point == '\t') return {"  ", 2};
  if (IsInvisible(code_point)) {
    return WrittenOut(code_point < 0x100 ? absl::StrFormat("\\x%02x", code_point)
                                         : absl::StrFormat("\\u%04x", code_point));
  }
  return {std::string(bytes), utf8proc_charwidth(code_point)};
}

}  // namespace

std::string Painted(std::string_view text, Ink ink, const TextStyle& style) {
  std::string_view code = SgrCode(ink);
  if (!style.color || code.empty() || text.empty()) return std::string(text);
  std::string painted = "\x1b[";
  painted.append(code).append("m").append(text).append("\x1b[0m");
  return painted;
}

std::vector<Glyph> Glyphs(std::string_view text) {
  std::vector<Glyph> glyphs;
  while (!text.empty()) {
    utf8proc_int32_t code_point = 0;
    utf8proc_ssize_t size = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                             static_cast<utf8proc_ssize_t>(text.size()), &code_point);
    if (size <= 0) {
      glyphs.push_back(WrittenOut(absl::StrFormat("\\x%02x", static_cast<unsigned char>(text.front()))));
      text.remove_prefix(1);
    } else {
      glyphs.push_back(GlyphOf(code_point, text.substr(0, static_cast<std::size_t>(size))));
      text.remove_prefix(static_cast<std::size_t>(size));
    }
  }
  return glyphs;
}

std::string Visible(std::string_view text) {
  std::string visible;
  for (const Glyph& glyph : Glyphs(text)) visible += glyph.text;
  return visible;
}

int DisplayWidth(std::string_view text) {
  int width = 0;
  for (const Glyph& glyph : Glyphs(text)) width += glyph.width;
  return width;
}

std::vector<std::string> Wrapped(std::string_view text, int width) {
  std::vector<std::string> lines(1);
  int used = 0;
  while (!text.empty()) {
    std::size_t end = text.find(' ');
    std::string_view word = text.substr(0, end);
    text.remove_prefix(end == std::string_view::npos ? text.size() : end + 1);
    if (word.empty()) continue;
    int columns = DisplayWidth(word);
    if (used > 0 && used + 1 + columns > width) {
      lines.emplace_back();
      used = 0;
    }
    if (used > 0) lines.back() += ' ';
    lines.back() += Visible(word);
    used += (used > 0 ? 1 : 0) + columns;
  }
  return lines;
}

std::string PaddedRight(std::string_view text, int width) {
  std::string padded(text);
  padded.append(static_cast<std::size_t>(std::max(0, width - DisplayWidth(text))), ' ');
  return padded;
}

std::string PaddedLeft(std::string_view text, int width) {
  std::string padded(static_cast<std::size_t>(std::max(0, width - DisplayWidth(text))), ' ');
  return padded.append(text);
}

std::string Counted(int count, std::string_view one, std::string_view many) {
  std::string text = absl::StrCat(count, " ");
  if (count == 1) return text.append(one);
  return many.empty() ? text.append(one).append("s") : text.append(many);
}

}  // namespace withy
