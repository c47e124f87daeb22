// Widths: Unicode Standard Annex 11 (East Asian Width): U+7AF9 is W, two columns; U+0301 combines and takes none.
// Colours: ECMA-48 8.3.117 SGR.
#include <gtest/gtest.h>

#include "withy/review/terminal_text.h"

namespace withy {
namespace {

TEST(Visible, WritesOutWhatATerminalWouldActOn) {
  EXPECT_EQ(Visible("a\x1b[2Jb"), "a\\x1b[2Jb");
  EXPECT_EQ(Visible("a\x07\x7f"), "a\\x07\\x7f");
  EXPECT_EQ(Visible("\xc2\x9b"
                    "31m"),
            "\\x9b31m");  // U+009B, the one-character form of ESC [
  EXPECT_EQ(Visible("\xe2\x80\xae"
                    "gnp.exe"),
            "\\u202egnp.exe");  // U+202E turns the reading direction around
}

TEST(Visible, WritesOutBytesThatAreNotUtf8) {
  EXPECT_EQ(Visible("a\xff"
                    "b"),
            "a\\xffb");
  EXPECT_EQ(Visible("\xc3"), "\\xc3");                    // cut short
  EXPECT_EQ(Visible("\xc0\xaf"), "\\xc0\\xaf");           // overlong '/'
  EXPECT_EQ(Visible("\xed\xa0\x80"), "\\xed\\xa0\\x80");  // a surrogate
}

TEST(Visible, KeepsWhatPeopleWrite) {
  EXPECT_EQ(Visible("7' 3 1/2\" ± 0.1, caña, 竹"), "7' 3 1/2\" ± 0.1, caña, 竹");
  EXPECT_EQ(Visible(""), "");
}

TEST(DisplayWidth, CountsColumns) {
  EXPECT_EQ(DisplayWidth("rod"), 3);
  EXPECT_EQ(DisplayWidth("竹竿"), 4);
  EXPECT_EQ(DisplayWidth("can\xcc\x83"
                         "a"),
            4);                        // n and a combining tilde share a column
  EXPECT_EQ(DisplayWidth("\x1b"), 4);  // shown as \x1b
}

TEST(Wrapped, BreaksAtBlanksOnly) {
  EXPECT_EQ(Wrapped("wind it off again", 9), (std::vector<std::string>{"wind it", "off again"}));
  EXPECT_EQ(Wrapped("extraordinarily so", 5), (std::vector<std::string>{"extraordinarily", "so"}));
  EXPECT_EQ(Wrapped("", 5), (std::vector<std::string>{""}));
}

TEST(Padded, FillsToTheWidth) {
  EXPECT_EQ(PaddedRight("竹", 4), "竹  ");
  EXPECT_EQ(PaddedLeft("87", 4), "  87");
  EXPECT_EQ(PaddedLeft("2209.8", 4), "2209.8");
}

TEST(Painted, AddsNothingWithoutColour) {
  EXPECT_EQ(Painted("error", Ink::kError, {.color = false}), "error");
  EXPECT_EQ(Painted("error", Ink::kError, {.color = true}), "\x1b[1;31merror\x1b[0m");
  EXPECT_EQ(Painted("", Ink::kError, {.color = true}), "");
}

TEST(Counted, KnowsPlurals) {
  EXPECT_EQ(Counted(1, "error"), "1 error");
  EXPECT_EQ(Counted(0, "error"), "0 errors");
  EXPECT_EQ(Counted(2, "rule not judged", "rules not judged"), "2 rules not judged");
}

}  // namespace
}  // namespace withy
