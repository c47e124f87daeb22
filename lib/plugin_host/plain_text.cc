#include "plain_text.h"

#include <utf8proc.h>

#include <algorithm>

#include "absl/strings/ascii.h"
#include "withy/review/terminal_text.h"

namespace withy::plugin {
namespace {

constexpr std::size_t kLongestSlug = 64;
constexpr std::size_t kLongestFileName = 120;

bool IsFileNameCharacter(char c) {
  return absl::ascii_isalnum(static_cast<unsigned char>(c)) || c == '.' || c == '_' || c == ' ' || c == '-';
}

}  // namespace

bool IsUtf8(std::string_view text) {
  while (!text.empty()) {
    utf8proc_int32_t code_point = 0;
    utf8proc_ssize_t size = utf8proc_iterate(reinterpret_cast<const utf8proc_uint8_t*>(text.data()),
                                             static_cast<utf8proc_ssize_t>(text.size()), &code_point);
    if (size <= 0) return false;
    text.remove_prefix(static_cast<std::size_t>(size));
  }
  return true;
}

bool IsPlainLine(std::string_view text, std::size_t longest) {
  if (text.size() > longest) return false;
  const bool ascii = std::all_of(text.begin(), text.end(), [](unsigned char c) { return absl::ascii_isprint(c); });
  return ascii || Visible(text) == text;
}

std::string AsPlainLine(std::string_view text, std::size_t longest) {
  // Nothing is written shorter than it is, so what is beyond `longest` is not looked at.
  std::size_t end = std::min(text.size(), longest);
  while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;
  std::string line;
  for (const Glyph& glyph : Glyphs(text.substr(0, end))) {
    if (line.size() + glyph.text.size() > longest) break;
    line += glyph.text;
  }
  return line;
}

bool IsSlug(std::string_view text) {
  return !text.empty() && text.size() <= kLongestSlug &&
         absl::ascii_islower(static_cast<unsigned char>(text.front())) &&
         std::all_of(text.begin(), text.end(),
                     [](unsigned char c) { return absl::ascii_islower(c) || absl::ascii_isdigit(c) || c == '-'; });
}

bool IsIdentifier(std::string_view text) {
  return !text.empty() && text.size() <= kLongestSlug &&
         absl::ascii_isalpha(static_cast<unsigned char>(text.front())) &&
         std::all_of(text.begin(), text.end(), [](unsigned char c) { return absl::ascii_isalnum(c) || c == '_'; });
}

bool IsPlainFileName(std::string_view text) {
  return !text.empty() && AsPlainFileName(text) == text;
}

std::string AsPlainFileName(std::string_view text) {
  std::string name(text.substr(0, kLongestFileName));
  for (char& c : name) {
    if (!IsFileNameCharacter(c)) c = '_';
  }
  if (name.empty()) return "_";
  for (char* edge : {&name.front(), &name.back()}) {
    if (*edge == '.' || *edge == ' ') *edge = '_';
  }
  return name;
}

}  // namespace withy::plugin
