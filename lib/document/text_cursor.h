// Walks through the tokens of the text form, one at hand at a time.
#ifndef WITHY_DOCUMENT_TEXT_CURSOR_H_
#define WITHY_DOCUMENT_TEXT_CURSOR_H_

#include <cstddef>
#include <string>
#include <string_view>

#include "text_lexer.h"

namespace withy {

class TextCursor {
 public:
  // Stands at the first token. The bytes must outlive the cursor.
  explicit TextCursor(std::string_view bytes) : bytes_(bytes), lexer_(bytes), token_(lexer_.Next()) {}

  void Advance() { token_ = lexer_.Next(); }
  // Goes on at a byte on the line of the token at hand: past what the tokens of the language do not describe.
  void MoveTo(std::size_t offset) {
    lexer_.MoveTo(offset);
    Advance();
  }
  const Token& token() const { return token_; }
  std::string_view text() const { return lexer_.Text(token_); }
  std::string_view TextOf(const Token& token) const { return lexer_.Text(token); }
  std::size_t comments() const { return lexer_.comments(); }

  bool AtEnd() const { return token_.kind == TokenKind::kEnd; }
  bool At(char symbol) const { return token_.Is(symbol); }
  bool AtOpener() const { return At('{') || At('<'); }
  bool AtCloser() const { return At('}') || At('>'); }
  bool AtUnclosedText() const { return token_.kind == TokenKind::kInvalid && token_.symbol != 0; }
  // Of a word processor: “ ” „ ‘ ’ « ».
  bool AtTypographicQuote() const;
  // Passes the text that begins with one: to the next quote on its line that may end it, or to the
  // line's end.
  void PassTypographicText();
  // With or without a sign.
  bool AtNumber() const;
  // At a name or number: whether a colon or a brace follows, as after the name of a field.
  bool BeforeValue() const { return After() == ':' || After() == '{' || After() == '<'; }
  bool FirstOnLine() const { return lexer_.Trivia(token_).find('\n') != std::string_view::npos; }

  // After a number: whether what is at hand is still part of what was meant as one (`36 7/8`, `36"`, `12 mm`).
  bool NumberGoesOn() const;
  // At a name: whether a value follows it.
  bool AtNameOfField() const;

  // Passes the symbol if it is at hand.
  bool TakeIf(char symbol) {
    if (!At(symbol)) return false;
    Advance();
    return true;
  }
  void TakeSeparator() {
    if (At(',') || At(';')) Advance();
  }
  // Passes a sign, then all adjacent pieces of text or one word or number. False where none of these is at hand.
  bool TakeAtom();

  // What is at hand, for a message: "`12mm`", "the end of the file".
  std::string Found() const;

 private:
  // The character after the token, spaces passed; 0 at the end of the line.
  char After() const;

  std::string_view bytes_;
  TextLexer lexer_;
  Token token_;
};

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_CURSOR_H_
