#include "text_lexer.h"

#include <array>

namespace withy {
namespace {

enum CharClass : std::uint8_t { kStray, kSpace, kLetter, kDigit, kQuote, kHash, kPunctuation };

constexpr std::array<CharClass, 256> MakeClasses() {
  std::array<CharClass, 256> classes{};
  for (char c : {' ', '\t', '\n', '\r', '\v', '\f'}) classes[static_cast<unsigned char>(c)] = kSpace;
  for (int c = 'a'; c <= 'z'; ++c) classes[c] = classes[c - 'a' + 'A'] = kLetter;
  classes['_'] = kLetter;
  for (int c = '0'; c <= '9'; ++c) classes[c] = kDigit;
  classes['"'] = classes['\''] = kQuote;
  classes['#'] = kHash;
  for (char c : {'{', '}', '<', '>', '[', ']', ':', ';', ',', '-', '/', '.'}) {
    classes[static_cast<unsigned char>(c)] = kPunctuation;
  }
  return classes;
}
constexpr std::array<CharClass, 256> kClasses = MakeClasses();

CharClass ClassOf(char c) {
  return kClasses[static_cast<unsigned char>(c)];
}
bool IsWordCharacter(char c) {
  return ClassOf(c) == kLetter || ClassOf(c) == kDigit;
}

constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

// The end of the number that begins at `at`: letters and points included, and a sign after the exponent's letter.
std::uint32_t EndOfNumber(std::string_view bytes, std::uint32_t at) {
  const bool hexadecimal = bytes[at] == '0' && at + 1 < bytes.size() && (bytes[at + 1] | 0x20) == 'x';
  while (at < bytes.size()) {
    const char c = bytes[at];
    const bool sign_of_exponent = (c == '-' || c == '+') && !hexadecimal && (bytes[at - 1] | 0x20) == 'e';
    if (!IsWordCharacter(c) && c != '.' && !sign_of_exponent) break;
    ++at;
  }
  return at;
}

}  // namespace

TextLexer::TextLexer(std::string_view bytes, std::size_t start)
    : bytes_(bytes), at_(static_cast<std::uint32_t>(start)) {}

void TextLexer::SkipTrivia() {
  if (at_ == 0 && bytes_.starts_with(kByteOrderMark)) at_ += kByteOrderMark.size();
  while (at_ < bytes_.size()) {
    const CharClass kind = ClassOf(bytes_[at_]);
    if (kind == kSpace) {
      ++at_;
    } else if (kind == kHash) {
      ++comments_;
      const std::size_t end = bytes_.find('\n', at_);
      at_ = static_cast<std::uint32_t>(end == std::string_view::npos ? bytes_.size() : end);
    } else {
      break;
    }
  }
}

Token TextLexer::Next() {
  Token token;
  token.trivia = at_;
  SkipTrivia();
  token.offset = at_;
  if (at_ == bytes_.size()) return token;

  const char first = bytes_[at_];
  const auto size = static_cast<std::uint32_t>(bytes_.size());
  std::uint32_t end = at_ + 1;
  switch (ClassOf(first)) {
    case kLetter:
      token.kind = TokenKind::kIdentifier;
      while (end < size && IsWordCharacter(bytes_[end])) ++end;
      break;
    case kDigit:
      token.kind = TokenKind::kNumber;
      end = EndOfNumber(bytes_, at_);
      break;
    case kQuote:
      token.kind = TokenKind::kInvalid;
      token.symbol = first;
      for (; end < size && bytes_[end] != '\n'; ++end) {
        if (bytes_[end] == first) {
          token.kind = TokenKind::kString;
          ++end;
          break;
        }
        if (bytes_[end] == '\\') {
          token.escaped = true;
          if (end + 1 < size && bytes_[end + 1] != '\n') ++end;
        }
      }
      break;
    case kPunctuation:
      if (first == '.' && end < size && ClassOf(bytes_[end]) == kDigit) {
        token.kind = TokenKind::kNumber;
        end = EndOfNumber(bytes_, at_);
      } else {
        token.kind = TokenKind::kSymbol;
        token.symbol = first;
      }
      break;
    default:  // one character: the bytes of a UTF-8 sequence stay together
      token.kind = TokenKind::kInvalid;
      while (end < size && (static_cast<unsigned char>(bytes_[end]) & 0xC0) == 0x80) ++end;
  }
  token.length = end - at_;
  at_ = end;
  return token;
}

}  // namespace withy
