// Tokens of the text form ("Text Format Language Specification", protobuf.dev), and that no byte is lost between them.
#include "text_lexer.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "reading.h"

namespace withy {
namespace {

// Kind and text of every token but the last.
std::vector<std::pair<TokenKind, std::string>> TokensOf(std::string_view bytes) {
  std::vector<std::pair<TokenKind, std::string>> tokens;
  TextLexer lexer(bytes);
  for (Token token = lexer.Next(); token.kind != TokenKind::kEnd; token = lexer.Next()) {
    tokens.emplace_back(token.kind, std::string(lexer.Text(token)));
  }
  return tokens;
}

using enum TokenKind;
using Tokens = std::vector<std::pair<TokenKind, std::string>>;

TEST(TextLexer, TellsTheKindsApart) {
  EXPECT_EQ(TokensOf("a_1: -1.5e-3 # c\n\"x\\\"\"'y'<>"), (Tokens{{kIdentifier, "a_1"},
                                                                  {kSymbol, ":"},
                                                                  {kSymbol, "-"},
                                                                  {kNumber, "1.5e-3"},
                                                                  {kString, "\"x\\\"\""},
                                                                  {kString, "'y'"},
                                                                  {kSymbol, "<"},
                                                                  {kSymbol, ">"}}));
}

TEST(TextLexer, TakesWhatLooksLikeANumberWhole) {
  EXPECT_EQ(TokensOf("12mm 1.2.3 0x1e-2 .5 1e+5f"), (Tokens{{kNumber, "12mm"},
                                                            {kNumber, "1.2.3"},
                                                            {kNumber, "0x1e"},
                                                            {kSymbol, "-"},
                                                            {kNumber, "2"},
                                                            {kNumber, ".5"},
                                                            {kNumber, "1e+5f"}}));
}

TEST(TextLexer, WhatFitsNowhereIsOneToken) {
  EXPECT_EQ(TokensOf("\"x\ny"), (Tokens{{kInvalid, "\"x"}, {kIdentifier, "y"}}));
  EXPECT_EQ(TokensOf("\xC3\xA9$"), (Tokens{{kInvalid, "\xC3\xA9"}, {kInvalid, "$"}}));
  EXPECT_EQ(TokensOf("'\\"), (Tokens{{kInvalid, "'\\"}}));
}

TEST(TextLexer, LosesNoByte) {
  for (const std::string& bytes :
       {DataFile("casting.txtpb"), std::string("\xEF\xBB\xBF a # b\r\n"), std::string("'a\n\"")}) {
    TextLexer lexer(bytes);
    std::string again;
    Token token;
    do {
      token = lexer.Next();
      again.append(lexer.Trivia(token)).append(lexer.Text(token));
    } while (token.kind != TokenKind::kEnd);
    EXPECT_EQ(again, bytes);
  }
}

TEST(AppendUnquoted, ResolvesEscapes) {
  std::string value;
  std::size_t bad = 0;
  ASSERT_TRUE(AppendUnquoted(R"("\a\b\f\n\r\t\v\?\\\'\"\101\x41\u00e9\U0001F41F\ud83d\udc1f")", &value, &bad));
  EXPECT_EQ(value, "\a\b\f\n\r\t\v?\\'\"AA\xC3\xA9\xF0\x9F\x90\x9F\xF0\x9F\x90\x9F");
}

TEST(AppendUnquoted, SaysWhichEscapeIsNone) {
  for (const char* text :
       {R"("ab\q")", R"("ab\x")", R"("ab\u12")", R"("ab\ud800")", R"("ab\U00110000")", R"("ab\777")"}) {
    std::string value;
    std::size_t bad = 0;
    EXPECT_FALSE(AppendUnquoted(text, &value, &bad)) << text;
    EXPECT_EQ(bad, 3u) << text;
  }
}

}  // namespace
}  // namespace withy
