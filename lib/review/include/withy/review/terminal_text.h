// Text that is safe and straight on a terminal: nothing from a file reaches it raw.
//
//   Visible("a\x1b[2Jb")        // "a\x1b[2Jb" written out: backslash, x, 1, b ...
//   DisplayWidth("竹 rod")      // 6: a wide character takes two columns
//   Painted("error", Ink::kError, style)
//
// Widths are those of Unicode East Asian Width as utf8proc has them, so that a caret stands under its character. The
// locale is never asked: the same text is laid out the same on any machine.
#ifndef WITHY_REVIEW_TERMINAL_TEXT_H_
#define WITHY_REVIEW_TERMINAL_TEXT_H_

#include <string>
#include <string_view>
#include <vector>

namespace withy {

// How text is laid out. `width` is in terminal columns and the same whether or not a terminal is there.
struct TextStyle {
  bool color = false;
  int width = 80;
};

// What a stretch of text is, for its colour (ECMA-48 SGR). Without colour nothing is added.
enum class Ink { kPlain, kStrong, kFaint, kError, kWarning, kCannotTell, kAdvice, kGood };
std::string Painted(std::string_view text, Ink ink, const TextStyle& style);

// One character as it is shown: what to print, and how many columns it takes.
struct Glyph {
  std::string text;
  int width = 0;
};

// `text` as glyphs, one per code point; a byte that is not part of valid UTF-8 is one glyph. Control characters,
// invisible formatting characters (which can turn the reading direction around) and invalid bytes are written out:
// \x1b, \u202e, \xff. A tab takes two columns of blanks.
std::vector<Glyph> Glyphs(std::string_view text);

// The same as one string.
std::string Visible(std::string_view text);

// Columns that `Visible(text)` takes.
int DisplayWidth(std::string_view text);

// `text` in lines of at most `width` columns, broken at blanks; a longer word gets a line of its own. Never empty.
std::vector<std::string> Wrapped(std::string_view text, int width);

// `text` and blanks up to `width` columns: on its right, or on its left for numbers.
std::string PaddedRight(std::string_view text, int width);
std::string PaddedLeft(std::string_view text, int width);

// "1 error", "2 errors"; `many` where the plural is not just an s.
std::string Counted(int count, std::string_view one, std::string_view many = "");

}  // namespace withy

#endif  // WITHY_REVIEW_TERMINAL_TEXT_H_
