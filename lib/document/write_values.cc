// Numbers and strings, as the text form writes them.
#include <charconv>
#include <cmath>

#include "utf8.h"
#include "write.h"

namespace withy {
namespace {

constexpr int kSignificantDigits = 12;   // of a computed figure: far more than any bench reads, fewer than an ulp needs
constexpr std::size_t kMostChars = 400;  // the longest double in fixed notation has 309 digits before the point

// Plain digits for the numbers of the bench; std::to_chars alone would write 100000 as 1e+05.
bool IsPlain(double value) {
  return value == 0 || (std::abs(value) >= 1e-5 && std::abs(value) < 1e15);
}

double Rounded(double value) {
  char digits[kMostChars];
  const auto end =
      std::to_chars(digits, digits + kMostChars, value, std::chars_format::scientific, kSignificantDigits - 1);
  double rounded = value;
  std::from_chars(digits, end.ptr, rounded);
  return rounded == 0 ? 0 : rounded;
}

void AppendEscaped(char c, std::string* out) {
  const auto byte = static_cast<unsigned char>(c);
  switch (c) {
    case '\n':
      out->append("\\n");
      break;
    case '\r':
      out->append("\\r");
      break;
    case '\t':
      out->append("\\t");
      break;
    case '"':
      out->append("\\\"");
      break;
    case '\\':
      out->append("\\\\");
      break;
    default:
      for (const int part : {int{'\\'}, '0' + (byte >> 6), '0' + (byte >> 3 & 7), '0' + (byte & 7)}) {
        out->push_back(static_cast<char>(part));
      }
  }
}

}  // namespace

void AppendDouble(double value, Doubles doubles, std::string* out) {
  if (doubles == Doubles::kRounded) value = Rounded(value);
  if (value == 0 && std::signbit(value)) {
    out->append("-0.0");
    return;
  }
  char digits[kMostChars];
  const auto end = IsPlain(value) ? std::to_chars(digits, digits + kMostChars, value, std::chars_format::fixed)
                                  : std::to_chars(digits, digits + kMostChars, value);
  out->append(digits, end.ptr);
}

void AppendTextString(std::string_view text, bool readable, std::string* out) {
  readable = readable && IsUtf8(text);
  out->push_back('"');
  std::size_t done = 0;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    const bool plain = byte >= 0x80 ? readable : byte >= 0x20 && byte != '"' && byte != '\\' && byte != 0x7F;
    if (plain) continue;
    out->append(text.substr(done, i - done));
    AppendEscaped(text[i], out);
    done = i + 1;
  }
  out->append(text.substr(done));
  out->push_back('"');
}

}  // namespace withy
