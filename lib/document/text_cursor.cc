#include "text_cursor.h"

#include "absl/strings/str_cat.h"
#include "utf8.h"

namespace withy {

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

std::string TextCursor::Found() const {
  if (AtEnd()) return "the end of the file";
  if (AtUnclosedText()) return "text without its closing quote";
  constexpr std::size_t kShown = 40;
  std::string shown(text().substr(0, kShown));
  shown.resize(ValidUtf8Prefix(shown));
  return absl::StrCat("`", shown, text().size() > shown.size() ? "...`" : "`");
}

}  // namespace withy
