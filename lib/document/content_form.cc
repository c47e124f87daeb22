#include "content_form.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace withy {
namespace {

using std::string_view_literals::operator""sv;

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";
constexpr std::string_view kWhiteSpace = " \t\r\n\v\f";

struct Signature {
  std::string_view begins;
  std::string_view what;
};
// The first bytes of what gets mistaken for a design, from the formats' own specifications.
constexpr std::array kSignatures = {
    Signature{"\x89PNG"sv, "a PNG image"},
    Signature{"\xFF\xD8\xFF"sv, "a JPEG image"},
    Signature{"GIF8"sv, "a GIF image"},
    Signature{"%PDF"sv, "a PDF document"},
    Signature{"\x1F\x8B"sv, "gzip-compressed data"},
    Signature{"BZh"sv, "bzip2-compressed data"},
    Signature{"\xFD"
              "7zXZ"sv,
              "xz-compressed data"},
    Signature{"\x28\xB5\x2F\xFD"sv, "zstd-compressed data"},
    Signature{"PK\x03\x04"sv, "a ZIP archive, or a spreadsheet or word processor document"},
    Signature{"\x7F"
              "ELF"sv,
              "a program"},
    Signature{"MZ\x90"sv, "a program"},
    Signature{"\xD0\xCF\x11\xE0"sv, "an old spreadsheet or word processor document"},
    Signature{"SQLite format 3"sv, "a database"},
    Signature{"{\\rtf"sv, "a word processor document (RTF)"},
    Signature{"\xFF\xFE"sv, "text in UTF-16"},
    Signature{"\xFE\xFF"sv, "text in UTF-16"},
};

// "\x0a" is field 1, length-delimited; then the length of "withy/" and the version.
bool IsBinary(std::string_view bytes) {
  constexpr std::string_view kMark = "withy/";
  if (bytes.size() < 2 || bytes[0] != '\x0A') return false;
  const std::string_view rest = bytes.substr(2, kMark.size());
  const auto length = static_cast<unsigned char>(bytes[1]);
  const bool plausible_length = length > kMark.size() && length < 0x20;
  // A file cut off within the mark is still known for what it was; but a line feed and a tab alone are white space.
  return plausible_length && kMark.starts_with(rest) && (!rest.empty() || bytes[1] == '\x07');
}

// A NUL, or more than one control character in sixteen bytes. Fewer are slips in a text, which its reader points at.
bool LooksBinary(std::string_view bytes) {
  const auto is_control = [](char c) {
    return static_cast<unsigned char>(c) < 0x20 && kWhiteSpace.find(c) == std::string_view::npos;
  };
  const auto controls = static_cast<std::size_t>(std::count_if(bytes.begin(), bytes.end(), is_control));
  return bytes.find('\0') != std::string_view::npos || controls * 16 > bytes.size();
}

std::string Guess(std::string_view bytes, std::string_view content) {
  for (const Signature& signature : kSignatures) {
    if (bytes.starts_with(signature.begins)) return std::string(signature.what);
  }
  if (content.starts_with('<')) return "HTML or XML";
  if (content.starts_with("[")) return "a list in JSON, or a file of sections in square brackets";
  if (bytes.size() >= 2 && (bytes[0] == 0) != (bytes[1] == 0)) return "text in UTF-16";
  return "";
}

}  // namespace

ContentForm FormOfContent(std::string_view bytes) {
  if (IsBinary(bytes)) return {.form = Form::kBinary};
  std::string_view content = bytes.starts_with(kByteOrderMark) ? bytes.substr(kByteOrderMark.size()) : bytes;
  content.remove_prefix(std::min(content.find_first_not_of(kWhiteSpace), content.size()));
  if (content.empty()) return {.empty = true};
  std::string guess = Guess(bytes, content);
  if (!guess.empty()) return {.seems_to_be = std::move(guess)};
  if (content.front() == '{') return {.form = Form::kJson};
  constexpr std::size_t kLookedAt = 512;
  if (LooksBinary(content.substr(0, kLookedAt))) return {.seems_to_be = "binary data of another kind"};
  return {.form = Form::kText};
}

}  // namespace withy
