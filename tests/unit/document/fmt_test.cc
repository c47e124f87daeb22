// Formatting: the layout by hand-written pairs, and properties over random designs with random comments and white
// space. Meaning is judged by the parsers of the Protocol Buffers library.
#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/json_util.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <sstream>

#include "support/random_design.h"
#include "withy/document/document.h"

namespace withy {
namespace {

std::string Format(const std::string& bytes, Form form = Form::kText) {
  Document document;
  document.form = form;
  document.bytes = bytes;
  const absl::StatusOr<std::string> formatted = FormatBytes(document);
  EXPECT_TRUE(formatted.ok()) << formatted.status() << "\n" << bytes;
  return formatted.ok() ? *formatted : "";
}

std::string Digest(const std::string& text) {
  v1::Design design;
  EXPECT_TRUE(google::protobuf::TextFormat::ParseFromString(text, &design)) << text;
  return DesignDigest(design);
}

// A scanner of its own for what the writer gives: quoted strings, words and numbers, single characters, comments.
std::vector<std::string> Pieces(const std::string& text) {
  std::vector<std::string> pieces;
  const auto is_word = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) || c == '_' || c == '.'; };
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i + 1;
    if (text[i] == '"') {
      while (text[end] != '"') end += text[end] == '\\' ? 2 : 1;
      ++end;
    } else if (text[i] == '#') {
      end = std::min(text.find('\n', i), text.size());
    } else if (is_word(text[i])) {
      const bool number = std::isdigit(static_cast<unsigned char>(text[i]));
      while (end < text.size() && (is_word(text[end]) || (number && text[end - 1] == 'e' && text[end] != ' '))) ++end;
    }
    if (text[i] != ' ' && text[i] != '\n' && text[i] != '\t' && text[i] != '\r')
      pieces.push_back(text.substr(i, end - i));
    i = end;
  }
  return pieces;
}

std::vector<std::string> SortedComments(const std::string& text) {
  std::vector<std::string> comments;
  for (std::string piece : Pieces(text)) {
    if (piece[0] != '#') continue;
    comments.push_back(piece.substr(0, piece.find_last_not_of(" \t\r") + 1));
  }
  std::sort(comments.begin(), comments.end());
  return comments;
}

// The tokens that carry meaning: no comments, brackets in one spelling, no separators, no colon before a bracket.
std::vector<std::string> Tokens(const std::string& text) {
  std::vector<std::string> tokens;
  for (std::string piece : Pieces(text)) {
    if (piece[0] == '#' || piece == ";" || piece == ",") continue;
    if (piece == "<") piece = "{";
    if (piece == ">") piece = "}";
    if (piece == "{" && !tokens.empty() && tokens.back() == ":") tokens.pop_back();
    tokens.push_back(piece);
  }
  return tokens;
}

class Noise {
 public:
  explicit Noise(RandomDesigns* random) : random_(*random) {}

  // The same tokens with random white space and comments between them, brackets and separators in random spellings.
  std::string Spoil(const std::string& text) {
    std::string spoiled;
    std::string closers;
    bool in_list = false;
    for (std::string piece : Pieces(text)) {
      if (piece == "[" || piece == "]") in_list = piece == "[";
      if (piece == "{") {
        if (random_.Chance(0.2)) spoiled += ": ";
        const bool angle = random_.Chance(0.2);
        closers.push_back(angle ? '>' : '}');
        if (angle) piece = "<";
      } else if (piece == "}") {
        piece = std::string(1, closers.back());
        closers.pop_back();
      }
      spoiled += piece;
      spoiled += Gap(piece[0] == '#');
      if ((piece == "}" || piece == ">") && random_.Chance(0.2))
        spoiled += random_.Chance(0.5) ? "," : ";", spoiled += Gap(false);
      if (piece[0] == '"' && !in_list && random_.Chance(0.1)) spoiled += "\"\"", spoiled += Gap(false);
    }
    return spoiled;
  }

 private:
  std::string Gap(bool must_end_line) {
    std::string gap = must_end_line ? "\n" : " ";
    while (random_.Chance(0.3)) {
      constexpr const char* kBlanks[] = {" ", "\t", "\n", "\r\n", "\n\n\n", "    "};
      gap += kBlanks[random_.Below(std::size(kBlanks))];
      if (random_.Chance(0.3))
        gap += (random_.Chance(0.5) ? "# {note \"" : "#") + std::to_string(++comments_) + " \t\n";
    }
    return gap;
  }

  RandomDesigns& random_;
  int comments_ = 0;
};

TEST(FormatText, KeepsEverythingWhateverTheLayout) {
  RandomDesigns designs(11);
  Noise noise(&designs);
  for (int i = 0; i < 60; ++i) {
    const std::string text = noise.Spoil(WriteDesign(designs.Next(), Form::kText));
    const std::string once = Format(text);
    ASSERT_EQ(Format(once), once) << text;
    ASSERT_EQ(SortedComments(once), SortedComments(text)) << text << "\n=====\n" << once;
    ASSERT_EQ(Tokens(once), Tokens(text)) << text << "\n=====\n" << once;
    ASSERT_EQ(Digest(once), Digest(text)) << text;
  }
}

TEST(FormatText, LeavesCanonicalTextAlone) {
  RandomDesignOptions options;
  options.unknown_fields = true;
  options.unknown_enums = true;
  RandomDesigns designs(12, options);
  for (int i = 0; i < 60; ++i) {
    const std::string text = WriteDesign(designs.Next(), Form::kText);
    ASSERT_EQ(Format(text), text);
  }
}

TEST(FormatText, KeepsTheExamples) {
  for (const char* name : {"casting", "spinning", "fly", "surf"}) {
    std::ifstream file(std::string(WITHY_SOURCE_DIR) + "/examples/designs/" + name + ".txtpb");
    std::stringstream text;
    text << file.rdbuf();
    const std::string once = Format(text.str());
    EXPECT_EQ(Format(once), once);
    EXPECT_EQ(SortedComments(once), SortedComments(text.str()));
    EXPECT_EQ(Tokens(once), Tokens(text.str()));
    EXPECT_EQ(Digest(once), Digest(text.str()));
  }
}

struct Pair {
  const char* what;
  const char* written;
  const char* formatted;
};

class FormatTextPair : public ::testing::TestWithParam<Pair> {};

TEST_P(FormatTextPair, IsLaidOut) {
  EXPECT_EQ(Format(GetParam().written), GetParam().formatted);
  EXPECT_EQ(Format(GetParam().formatted), GetParam().formatted);
}

const Pair kPairs[] = {
    {"NumbersAndStringsStayAsWritten", "shop{margin:1.50 tax:1e0}identity{name:'a\\'b'}",
     "shop { margin: 1.50 tax: 1e0 }\nidentity { name: 'a\\'b' }\n"},
    {"SeveralLinesStaySeveral", "intent {\n technique: 'fly' }", "intent {\n  technique: 'fly'\n}\n"},
    {"AlignedSpacesGo", "tip_top { tube_bore { mm:  2.5  }  id:   'tt' }",
     "tip_top { tube_bore { mm: 2.5 } id: 'tt' }\n"},
    {"LinedUpRowsStayLinedUp",
     "guides { id: 'a'    from_tip { inch: 5 } }\nguides { id: 'bcd' from_tip { inch: 12.5 } locked: true } # by hand",
     "guides { id: 'a'   from_tip { inch:  5 } }\n"
     "guides { id: 'bcd' from_tip { inch: 12.5 } locked: true }  # by hand\n"},
    {"RowsThatWereNotLinedUpAreLeftAlone",
     "guides { id: 'a' from_tip { inch: 5 } }\nguides { id: 'bcd' from_tip { inch: 12.5 } }",
     "guides { id: 'a' from_tip { inch: 5 } }\nguides { id: 'bcd' from_tip { inch: 12.5 } }\n"},
    {"RowsAreLinedUpAsFarAsTheirNamesAgree",
     "guides { id: 'a'  from_tip { inch: 5 plus_minus: 0.25 } angle { deg: 0 } }\n"
     "guides { id: 'b' from_tip { inch: 12.75 plus_minus: 1 } angle { deg: 180 } }\n"
     "guides { id: 'c' from_tip { mm: 5 } angle { deg: 1 } }",
     "guides { id: 'a' from_tip { inch:  5    plus_minus: 0.25 } angle { deg:   0 } }\n"
     "guides { id: 'b' from_tip { inch: 12.75 plus_minus: 1    } angle { deg: 180 } }\n"
     "guides { id: 'c' from_tip { mm: 5 } angle { deg: 1 } }\n"},
    {"FieldsOnOneLineStayThere", "intent {\n technique: 'fly'  hand: 'left'\n line_number: '5' }",
     "intent {\n  technique: 'fly' hand: 'left'\n  line_number: '5'\n}\n"},
    {"SeparatorsAndAngles", "intent: < technique: 'fly', hand: 'left'; >;",
     "intent { technique: 'fly' hand: 'left' }\n"},
    {"EmptyLines", "\n\nformat: 'withy/1'\n\n\n\nintent {\n\n  hand: 'left'\n\n\n  line_number: '5'\n\n}\n\n\n",
     "format: 'withy/1'\n\nintent {\n  hand: 'left'\n\n  line_number: '5'\n}\n"},
    {"EmptyMessage", "intent {\n\n}", "intent {}\n"},
    {"CarriageReturnsAndByteOrderMark", "\xEF\xBB\xBF# a\r\nintent { }\r\n", "# a\nintent {}\n"},
    {"CommentsEverywhere",
     "# head\n\n# about\nintent { # opens\n  # above\n  hand: 'left'   # behind\n  # between\n\n  # last\n} # "
     "closes\n# end",
     "# head\n\n# about\nintent {  # opens\n  # above\n  hand: 'left'  # behind\n  # between\n\n  # last\n}  # "
     "closes\n# end\n"},
    {"OnlyAComment", "   # nothing yet", "# nothing yet\n"},
    {"CommentInABody", "intent { # why\n}", "intent {  # why\n}\n"},
    {"CommentWithinAFieldGoesAbove", "shop {\n  margin # a\n : # b\n - # c\n 1.2 # d\n}",
     "shop {\n  # a\n  # b\n  # c\n  margin: -1.2  # d\n}\n"},
    {"CommentBehindASeparator", "intent {\n hand: 'left', # a\n line_number: '5' # b\n ; }",
     "intent {\n  hand: 'left'      # a\n  line_number: '5'  # b\n}\n"},
    {"CommentsOfNeighboursAreAligned",
     "intent {\n hand: 'left' # a\n line_number: 'é5' # b\n\n technique: 'fly' # c\n}",
     "intent {\n  hand: 'left'       # a\n  line_number: 'é5'  # b\n\n  technique: 'fly'  # c\n}\n"},
    {"Lists", "identity { tags:['a','b' , 'c'] tags : [ ] }", "identity { tags: ['a', 'b', 'c'] tags: [] }\n"},
    {"ListOnLines", "identity {\n tags: [ # of it\n 'a', 'b', # two\n 'c' # three\n # no more\n ] }",
     "identity {\n  tags: [      # of it\n    'a', 'b',  # two\n    'c'        # three\n    # no more\n  ]\n}\n"},
    {"ListOfMessages", "guides: [{ id: 'a' }, {\n id: 'b' }]", "guides: [\n  { id: 'a' },\n  {\n    id: 'b'\n  }\n]\n"},
    {"StringPieces", "identity {\n description: 'one ' \"two\"\n name: 'a' # first\n 'b' }",
     "identity {\n  description: 'one ' \"two\"\n  name:\n    'a'  # first\n    'b'\n}\n"},
    {"StringPiecesInAList", "identity {\n tags: ['x', 'a'\n 'b', 'y'] }",
     "identity {\n  tags: [\n    'x',\n    'a'\n    'b',\n    'y'\n  ]\n}\n"},
    {"UnknownNumbers", "900:0x00000001 901{1:2}", "900: 0x00000001\n901 { 1: 2 }\n"},
};
INSTANTIATE_TEST_SUITE_P(All, FormatTextPair, ::testing::ValuesIn(kPairs),
                         [](const auto& info) { return info.param.what; });

// 120 columns: `guides { id: '...' }` with an id of n characters is n + 17 long.
TEST(FormatText, OneLineMessageThatDoesNotFitIsOpened) {
  const std::string fits = "guides { id: '" + std::string(103, 'x') + "' }\n";
  const std::string too_long = "guides { id: '" + std::string(104, 'x') + "' }\n";
  EXPECT_EQ(Format(fits), fits);
  EXPECT_EQ(Format(too_long), "guides {\n  id: '" + std::string(104, 'x') + "'\n}\n");
}

TEST(FormatText, FieldsShareALineAsFarAsTheyFit) {
  const std::string name = "name: '" + std::string(60, 'x') + "'";
  EXPECT_EQ(Format("identity {\n" + name + " " + name + " serial: '1'\n}"),
            "identity {\n  " + name + "\n  " + name + " serial: '1'\n}\n");
}

// A line of more than 80 columns does not push its neighbour's comment away.
TEST(FormatText, CommentsOfWideLinesAreNotAligned) {
  const std::string wide = "name: '" + std::string(80, 'x') + "'  # a\n";
  EXPECT_EQ(Format("identity {\n" + wide + "serial: '1' # b\n}"), "identity {\n  " + wide + "  serial: '1'  # b\n}\n");
}

TEST(FormatText, RefusesWhatIsNotText) {
  for (const char* bytes : {"intent {", "intent }", "= 1", "a: 'open", "a: [1 2]", "{}", "a: ]", "a: [1,"}) {
    Document document;
    document.bytes = bytes;
    EXPECT_EQ(FormatBytes(document).status().code(), absl::StatusCode::kInvalidArgument) << bytes;
  }
}

TEST(FormatJson, KeepsNumbersAndMeaning) {
  EXPECT_EQ(Format("\xEF\xBB\xBF{\"shop\":{\"margin\":8.30,\"tax\":1E0},\"guides\":[],\"extensions\":{\"b\":{},\"a\":{"
                   "\"x\":[1,-0]}}}\r\n",
                   Form::kJson),
            R"({
  "shop": {
    "margin": 8.30,
    "tax": 1E0
  },
  "guides": [],
  "extensions": {
    "b": {},
    "a": {
      "x": [
        1,
        -0
      ]
    }
  }
}
)");
}

TEST(FormatJson, LeavesCanonicalJsonAloneAndRestoresIt) {
  RandomDesigns designs(13);
  for (int i = 0; i < 60; ++i) {
    const std::string json = WriteDesign(designs.Next(), Form::kJson);
    ASSERT_EQ(Format(json, Form::kJson), json);
    std::string tight;  // without white space outside strings
    for (const std::string& piece : Pieces(json)) tight += piece;
    ASSERT_EQ(Format(tight, Form::kJson), json);
  }
}

TEST(FormatBinary, IsDeterministic) {
  RandomDesigns designs(14);
  Document document;
  document.form = Form::kBinary;
  document.design = designs.Next();
  document.bytes = document.design.SerializeAsString();
  EXPECT_EQ(*FormatBytes(document), WriteDesign(document.design, Form::kBinary));
}

}  // namespace
}  // namespace withy
