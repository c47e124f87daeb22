#include <cctype>

#include "text_lexer.h"

namespace withy {
namespace {

int HexDigit(char c) {
  if (c >= '0' && c <= '9') return c - '0';
  const char lower = static_cast<char>(c | 0x20);
  return lower >= 'a' && lower <= 'f' ? lower - 'a' + 10 : -1;
}

void AppendUtf8(std::uint32_t point, std::string* value) {
  auto put = [value](std::uint32_t byte) { value->push_back(static_cast<char>(byte)); };
  if (point < 0x80) {
    put(point);
  } else if (point < 0x800) {
    put(0xC0 | point >> 6), put(0x80 | (point & 0x3F));
  } else if (point < 0x10000) {
    put(0xE0 | point >> 12), put(0x80 | (point >> 6 & 0x3F)), put(0x80 | (point & 0x3F));
  } else {
    put(0xF0 | point >> 18), put(0x80 | (point >> 12 & 0x3F)), put(0x80 | (point >> 6 & 0x3F)),
        put(0x80 | (point & 0x3F));
  }
}

// Exactly `digits` hexadecimal digits at the front of `text`, or -1.
std::int64_t HexNumber(std::string_view text, std::size_t digits) {
  if (text.size() < digits) return -1;
  std::int64_t number = 0;
  for (std::size_t i = 0; i < digits; ++i) {
    if (HexDigit(text[i]) < 0) return -1;
    number = number * 16 + HexDigit(text[i]);
  }
  return number;
}

// \uhhhh and \Uhhhhhhhh at the front of `rest`; a high surrogate takes the low one that must follow. Returns the bytes
// taken, 0 where it is no code point.
std::size_t AppendCodePoint(std::string_view rest, std::string* value) {
  const std::size_t digits = rest[1] == 'u' ? 4 : 8;
  std::int64_t point = HexNumber(rest.substr(2), digits);
  std::size_t taken = 2 + digits;
  if (point >= 0xD800 && point < 0xDC00 && rest.substr(taken).starts_with("\\u")) {
    const std::int64_t low = HexNumber(rest.substr(taken + 2), 4);
    if (low < 0xDC00 || low > 0xDFFF) return 0;
    point = 0x10000 + ((point - 0xD800) << 10) + (low - 0xDC00);
    taken += 6;
  }
  if (point < 0 || point > 0x10FFFF || (point >= 0xD800 && point < 0xE000)) return 0;
  AppendUtf8(static_cast<std::uint32_t>(point), value);
  return taken;
}

// One escape at the front of `rest` (which begins with the backslash). Returns the bytes taken, 0 where it is none.
std::size_t AppendEscape(std::string_view rest, std::string* value) {
  if (rest.size() < 2) return 0;
  constexpr std::string_view kLetters = "abfnrtv?\\'\"";
  constexpr std::string_view kValues = "\a\b\f\n\r\t\v?\\'\"";
  const char letter = rest[1];
  if (const std::size_t known = kLetters.find(letter); known != std::string_view::npos) {
    value->push_back(kValues[known]);
    return 2;
  }
  if (letter == 'u' || letter == 'U') return AppendCodePoint(rest, value);
  int byte = 0;
  std::size_t taken = 1;
  if (letter == 'x' || letter == 'X') {
    for (++taken; taken < rest.size() && taken < 4 && HexDigit(rest[taken]) >= 0; ++taken) {
      byte = byte * 16 + HexDigit(rest[taken]);
    }
    if (taken == 2) return 0;
  } else {
    for (; taken < rest.size() && taken < 4 && rest[taken] >= '0' && rest[taken] <= '7'; ++taken) {
      byte = byte * 8 + (rest[taken] - '0');
    }
    if (taken == 1 || byte > 0xFF) return 0;
  }
  value->push_back(static_cast<char>(byte));
  return taken;
}

}  // namespace

bool AppendUnquoted(std::string_view text, std::string* value, std::size_t* bad) {
  const std::string_view inside = text.substr(1, text.size() - 2);
  for (std::size_t at = 0; at < inside.size();) {
    const std::size_t backslash = inside.find('\\', at);
    value->append(inside.substr(at, backslash - at));
    if (backslash == std::string_view::npos) break;
    const std::size_t taken = AppendEscape(inside.substr(backslash), value);
    if (taken == 0) {
      *bad = backslash + 1;
      return false;
    }
    at = backslash + taken;
  }
  return true;
}

}  // namespace withy
