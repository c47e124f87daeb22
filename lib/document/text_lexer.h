// Splits the text form into tokens and what stands between them.
//
//   TextLexer lexer(bytes);
//   for (Token token = lexer.Next(); token.kind != TokenKind::kEnd; token = lexer.Next()) {
//     std::string_view between = lexer.Trivia(token);  // white space and comments before it
//     std::string_view text = lexer.Text(token);       // the token as written
//   }
//
// The tokens are those of the Protocol Buffers text format (protobuf.dev, "Text Format Language Specification"), with
// one difference: a number is taken as one token up to the next character that cannot belong to a number, and judged
// when its value is read, so that `12mm` and `1.2.3` are one faulty value and not two half-read ones. Nothing is
// copied, nothing is allocated; the lexer never fails: what it cannot read is a token of kind kInvalid.
//
// Every byte belongs to exactly one token or to the trivia before one (that of kEnd included), so that
// Trivia + Text over all tokens gives back the bytes. REQUIRES: bytes shorter than 4 GiB; not necessarily valid UTF-8.
#ifndef WITHY_DOCUMENT_TEXT_LEXER_H_
#define WITHY_DOCUMENT_TEXT_LEXER_H_

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace withy {

enum class TokenKind : std::uint8_t {
  kEnd,         // empty; its trivia is what follows the last token
  kIdentifier,  // [A-Za-z_][A-Za-z0-9_]*
  kNumber,      // begins with a digit, or a point and a digit; a sign is a symbol of its own
  kString,      // one quoted piece, quotes included; adjacent pieces are separate tokens
  kSymbol,      // one character of {}<>[]:;,-/. ; Token::symbol names it
  kInvalid,     // a string without its closing quote (to the end of its line), or one character that fits nowhere
};

struct Token {
  TokenKind kind = TokenKind::kEnd;
  char symbol = 0;           // of kSymbol the character, of kString and an unclosed string the quote; else 0
  bool escaped = false;      // a string with a backslash in it
  std::uint32_t trivia = 0;  // where the white space and comments before it begin
  std::uint32_t offset = 0;  // where the token begins
  std::uint32_t length = 0;

  std::uint32_t end() const { return offset + length; }
  bool Is(char wanted) const { return kind == TokenKind::kSymbol && symbol == wanted; }
};

class TextLexer {
 public:
  // Begins at `start`, a byte order mark there counts as white space. The bytes must outlive the lexer.
  explicit TextLexer(std::string_view bytes, std::size_t start = 0);

  // The next token; kEnd again and again at the end.
  Token Next();
  // Goes on at a byte that lies on the line of the last token.
  void MoveTo(std::size_t at) { at_ = static_cast<std::uint32_t>(at); }

  std::string_view Text(const Token& token) const { return bytes_.substr(token.offset, token.length); }
  std::string_view Trivia(const Token& token) const { return bytes_.substr(token.trivia, token.offset - token.trivia); }
  // Comments passed so far. A comment runs from `#` to the end of its line (the line feed, not the carriage return
  // before it, ends it).
  std::size_t comments() const { return comments_; }

 private:
  void SkipTrivia();

  std::string_view bytes_;
  std::uint32_t at_ = 0;
  std::size_t comments_ = 0;
};

// The value of one kString token, quotes and escapes resolved, is appended to `value`. False where an escape is not one
// of the language's (\a \b \f \n \r \t \v \? \\ \' \" \ooo \xhh \uhhhh \Uhhhhhhhh); then `bad` is the offset within
// `text` of the backslash. The value is not checked for UTF-8.
bool AppendUnquoted(std::string_view text, std::string* value, std::size_t* bad);

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_LEXER_H_
