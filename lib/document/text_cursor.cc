#include "text_cursor.h"

#include <algorithm>
#include <span>

#include "absl/strings/str_cat.h"
#include "utf8.h"

namespace withy {

namespace {

constexpr std::string_view kDoubleQuotes[] = {"\u201c", "\u201d", "\u201e", "\u00ab", "\u00bb", "\""};
constexpr std::string_view kSingleQuotes[] = {"\u2018", "\u2019", "'"};

bool IsAmong(std::string_view text, std::span<const std::string_view> quotes) {
  return std::find(quotes.begin(), quotes.end(), text) != quotes.end();
}

// Where in `line` the first of the quotes ends, or its own end.
std::size_t EndOfNext(std::span<const std::string_view> quotes, std::string_view line) {
  std::size_t first = line.size(), end = line.size();
  for (const std::string_view quote : quotes) {
    const std::size_t at = line.find(quote);
    if (at < first) first = at, end = at + quote.size();
  }
  return end;
}

}  // namespace

bool TextCursor::AtTypographicQuote() const {
  return token_.kind == TokenKind::kInvalid && token_.symbol == 0 &&
         (IsAmong(text(), kDoubleQuotes) || IsAmong(text(), kSingleQuotes));
}

void TextCursor::PassTypographicText() {
  constexpr std::size_t kLongest = 1000;  // of a text; a line without end must not be read for each of its quotes
  const std::string_view rest = bytes_.substr(token_.end(), kLongest), line = rest.substr(0, rest.find('\n'));
  const bool is_single = IsAmong(text(), kSingleQuotes);
  MoveTo(token_.end() + (is_single ? EndOfNext(kSingleQuotes, line) : EndOfNext(kDoubleQuotes, line)));
}

bool TextCursor::AtNumber() const {
  if (token_.kind == TokenKind::kNumber) return true;
  const char after = At('-') ? After() : '\0';
  return after == '.' || (after >= '0' && after <= '9');
}

bool TextCursor::TakeAtom() {
  TakeIf('-');
  if (token_.kind == TokenKind::kString) {
    while (token_.kind == TokenKind::kString) Advance();
    return true;
  }
  if (token_.kind != TokenKind::kIdentifier && token_.kind != TokenKind::kNumber) return false;
  Advance();
  return true;
}

char TextCursor::After() const {
  const std::size_t next = bytes_.find_first_not_of(" \t", token_.end());
  return next == std::string_view::npos || bytes_[next] == '\n' ? '\0' : bytes_[next];
}

bool TextCursor::AtNameOfField() const {
  return token_.kind == TokenKind::kIdentifier && std::string_view(":{<[=").find(After()) != std::string_view::npos;
}

bool TextCursor::NumberGoesOn() const {
  if (AtCloser() || AtEnd() || FirstOnLine()) return false;
  switch (token_.kind) {
    case TokenKind::kIdentifier:
      return !AtNameOfField();
    case TokenKind::kNumber:  // before a colon it is a field known by its number
      return After() == '/';
    case TokenKind::kSymbol:
      return At('/') || At('-');
    default:
      return true;
  }
}

std::string TextCursor::Found() const {
  if (AtEnd()) return "the end of the file";
  if (AtUnclosedText()) return "text without its closing quote";
  constexpr std::size_t kShown = 40;
  std::string shown(text().substr(0, kShown));
  shown.resize(ValidUtf8Prefix(shown));
  return absl::StrCat("`", shown, text().size() > shown.size() ? "...`" : "`");
}

}  // namespace withy
