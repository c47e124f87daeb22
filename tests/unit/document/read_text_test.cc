// The text reader, judged by protobuf's own text parser on sound input, and by a table of faults on the rest. The
// grammar is that of the "Text Format Language Specification" (protobuf.dev).
#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include <string>
#include <utility>
#include <vector>

#include "reading.h"
#include "support/random_design.h"
#include "withy/document/document.h"

namespace withy {
namespace {

using google::protobuf::TextFormat;
using google::protobuf::util::MessageDifferencer;
using ::testing::HasSubstr;

v1::Design Bare(const std::string& text) {
  v1::Design design;
  EXPECT_TRUE(TextFormat::ParseFromString(text, &design)) << text;
  return design;
}

v1::Design Read(const std::string& text) {
  const ReadResult result = ReadDesign("test", text);
  EXPECT_EQ(FaultsOf(result), std::vector<Fault>{}) << text;
  EXPECT_TRUE(result.document) << text;
  return result.document ? result.document->design : v1::Design();
}

void ExpectSameAsBare(const std::string& text) {
  EXPECT_TRUE(MessageDifferencer::Equals(Read(text), Bare(text))) << text;
}

TEST(ReadText, AgreesWithTheParserOfProtocolBuffersOnDesigns) {
  for (const char* name : {"casting.txtpb", "fly.txtpb"}) ExpectSameAsBare(DataFile(name));
}

TEST(ReadText, AgreesWithTheParserOfProtocolBuffersOnRandomDesigns) {
  RandomDesigns designs(/*seed=*/20260314, {.unknown_enums = false});
  for (int i = 0; i < 60; ++i) {
    std::string text;
    TextFormat::PrintToString(designs.Next(), &text);
    ExpectSameAsBare(text);
  }
}

TEST(ReadText, AgreesOnEveryWayOfWriting) {
  const std::string begin = "format: 'withy/1'\n";
  for (const char* rest : {
           "identity { name: \"a\" \"b\" 'c' }",                                      // adjacent pieces are joined
           "identity: { name: 'q\"\\'\\\"\\n\\t\\x41\\101\\u00e9\\U0001F41F\\\\' }",  // escapes
           "identity < name: 'x'; tags: ['a', 'b']; tags: 'c', >",                    // brackets, separators
           "identity { tags: [] }",
           "identity { revision: 0x1F } blank { sections { length { mm: 12.5f } } }",
           "identity { revision: 017 units: 2 }",  // octal; an enum by its number
           "guides { angle { deg: - 3 } }",        // a sign may stand apart
           "guides [ { id: 'g1' }, < id: 'g2' > ] guides: [{id:'g3'}]",
           "guides { locked: true } guides { locked: t } guides { locked: 1 } guides { locked: False }",
           "guides { from_tip { mm: .5 } angle { deg: -1e-3 } }",
           "guides { from_tip { mm: 1E+2 plus_minus: 0 } }",
           "extensions { key: 'club' value { fields { key: 'n' value { number_value: -0.0 } } } }",
           "extensions: [{ value: {} key: 'a' }, { key: 'b' value {} }]",
           "# a comment\nidentity { # another\n}",
           "identity{name:'a'description:'b'}",
       }) {
    ExpectSameAsBare(begin + rest);
  }
}

TEST(ReadText, TakesAByteOrderMarkAndCarriageReturns) {
  const v1::Design design = Read(
      "\xEF\xBB\xBF"
      "format: \"withy/1\"\r\nidentity {\r\n  name: \"x\"\r\n}\r\n");
  EXPECT_EQ(design.identity().name(), "x");
}

TEST(ReadText, CountsComments) {
  const ReadResult result =
      ReadDesign("test", "# one\nformat: \"withy/1\" # two\nidentity { name: \"# none\" }\n#three");
  ASSERT_TRUE(result.document);
  EXPECT_EQ(result.document->comments, 3u);
  EXPECT_EQ(result.document->form, Form::kText);
}

TEST(ReadText, KeepsFieldsKnownByNumber) {
  // Wire types as protobuf prints fields it does not know: varint, fixed32, fixed64, length-delimited, group.
  const std::string text =
      "format: \"withy/1\"\n900: 5\n901: 0x0000000a\n902: 0x000000000000000b\n903: \"a\\377\"\n904 { 1: 2 }\n";
  const ReadResult result = ReadDesign("test", text);
  ASSERT_TRUE(result.document);
  EXPECT_EQ(result.document->unknown.size(), 5u);
  EXPECT_TRUE(result.document->unknown[0].carried);
  std::string printed;
  TextFormat::PrintToString(result.document->design, &printed);
  EXPECT_EQ(
      printed,
      "format: \"withy/1\"\n900: 5\n901: 0x0000000a\n902: 0x000000000000000b\n903: \"a\\377\"\n904 {\n  1: 2\n}\n");
}

// An escape, and carriage returns that hide nothing: before a line feed, and at the end.
TEST(ReadText, TakesControlCharactersThatAreMeant) {
  const ReadResult result = ReadDesign("test", "format: \"withy/1\"\r\r\n# c\r\nidentity { name: \"a\\x01\\r\" }\r");
  EXPECT_EQ(FaultsOf(result), std::vector<Fault>{});
  ASSERT_TRUE(result.document);
  EXPECT_EQ(result.document->design.identity().name(), "a\x01\r");
}

class BadText : public ::testing::TestWithParam<BadInput> {};
TEST_P(BadText, IsReportedInPlace) {
  ExpectFaults(GetParam());
}

// Line 1 is `format: "withy/1"`; lines and columns were counted by hand.
std::string Text(const std::string& rest) {
  return "format: \"withy/1\"\n" + rest;
}

INSTANTIATE_TEST_SUITE_P(
    Fields, BadText,
    ::testing::Values(
        BadInput{"misspelt",
                 Text("blank {\n  sectons { a: [{}] b: -inf c: 'x' 'y' }\n  name: \"x\"\n}"),
                 {{"document/unknown-field", 3, 3, "blank.sectons"}},
                 true},
        BadInput{"misspelt_after_tab_and_accent",
                 Text("identity { name: \"\xC3\xA9\xC3\xA9\"\tnmae: 'x' }"),
                 {{"document/unknown-field", 2, 23, "identity.nmae"}},
                 true},
        BadInput{"number_of_a_known_field", Text("2 { }"), {{"document/unknown-field", 2, 1, "2"}}, true},
        BadInput{"number_of_no_field",
                 Text("guides { id: 'g1' 77: 1 }"),
                 {{"document/unknown-number", 2, 19, "guides[g1].77"}},
                 true},
        // A map entry has a key and a value; a number of a third field is kept nowhere.
        BadInput{"number_in_a_map_entry",
                 Text("extensions { key: 'a' value { } 9: 1 }"),
                 {{"document/unknown-number", 2, 33, "extensions[a].9"}},
                 true},
        BadInput{"duplicate",
                 Text("guides { id: 'g5' locked: true locked: false }"),
                 {{"document/duplicate-field", 2, 32, "guides[g5].locked"}}},
        BadInput{
            "duplicate_message", Text("blank { }\nblank { name: 'x' }"), {{"document/duplicate-field", 3, 1, "blank"}}},
        BadInput{"duplicate_with_later_id",
                 Text("guides { locked: true locked: true id: 'g5' }"),
                 {{"document/duplicate-field", 2, 23, "guides[g5].locked"}}},
        BadInput{"two_units",
                 Text("guides { from_tip { mm: 1 inch: 2 } }"),
                 {{"document/two-of-one", 2, 27, "guides[0].from_tip.inch"}}},
        BadInput{"one_key_twice",
                 Text("extensions { key: 'a' value {} }\nextensions { key: 'a' value {} }"),
                 {{"document/duplicate-key", 3, 1, "extensions[a]"}}},
        BadInput{"entry_without_value", Text("extensions { key: 'a' }"), {{"document/bad-value", 2, 23, "extensions"}}},
        BadInput{"extension_name", Text("[withy.other] { a: 1 }\nshop { }"), {{"document/syntax", 2, 1, ""}}}),
    NameOfCase);

INSTANTIATE_TEST_SUITE_P(
    Values, BadText,
    ::testing::Values(
        BadInput{"unit_in_the_number",
                 Text("guides { from_tip { mm: 12mm } }"),
                 {{"document/bad-number", 2, 25, "guides[0].from_tip.mm"}}},
        BadInput{"decimal_comma",
                 Text("guides { from_tip { mm: 12,5 } }"),
                 {{"document/bad-number", 2, 25, "guides[0].from_tip.mm"}}},
        BadInput{"infinite",
                 Text("guides { from_tip { mm: -inf } } guides { from_tip { mm: nan } }"),
                 {{"document/bad-number", 2, 25, "guides[0].from_tip.mm"},
                  {"document/bad-number", 2, 58, "guides[1].from_tip.mm"}}},
        BadInput{"too_large",
                 Text("guides { from_tip { mm: 1e999 } }"),
                 {{"document/bad-number", 2, 25, "guides[0].from_tip.mm"}}},
        BadInput{"too_small",
                 Text("guides { from_tip { mm: 1e-999 } }"),
                 {{"document/bad-number", 2, 25, "guides[0].from_tip.mm"}}},
        BadInput{"two_points",
                 Text("guides { from_tip { mm: 1.2.3 } }"),
                 {{"document/bad-number", 2, 25, "guides[0].from_tip.mm"}}},
        BadInput{
            "negative_count", Text("identity { revision: -1 }"), {{"document/bad-number", 2, 22, "identity.revision"}}},
        BadInput{"count_too_large",
                 Text("identity { revision: 4294967296 }"),
                 {{"document/bad-number", 2, 22, "identity.revision"}}},
        BadInput{"fraction_of_a_count",
                 Text("identity { revision: 1.5 }"),
                 {{"document/bad-number", 2, 22, "identity.revision"}}},
        BadInput{"number_for_a_quantity",
                 Text("blank { mass: 12 name: 5 }"),
                 {{"document/bad-value", 2, 15, "blank.mass"}, {"document/bad-value", 2, 24, "blank.name"}}},
        BadInput{"braces_for_text",
                 Text("identity { name { a: 1 } license: [\"x\"] }"),
                 {{"document/bad-value", 2, 17, "identity.name"}, {"document/bad-value", 2, 35, "identity.license"}}},
        BadInput{"word_for_text", Text("identity { name: x }"), {{"document/bad-value", 2, 18, "identity.name"}}},
        BadInput{"word_for_truth", Text("guides { locked: yes }"), {{"document/bad-value", 2, 18, "guides[0].locked"}}},
        BadInput{"item_of_a_list",
                 Text("identity { tags: [\"a\", 5, \"c\"] }"),
                 {{"document/bad-value", 2, 24, "identity.tags[1]"}}},
        BadInput{"unknown_enum_name",
                 Text("identity { units: INCHES }"),
                 {{"document/unknown-enum-name", 2, 19, "identity.units"}}},
        BadInput{"unknown_enum_number",
                 Text("identity { units: 99 }"),
                 {{"document/unknown-enum-number", 2, 19, "identity.units"}},
                 true},
        BadInput{"bad_escape", Text("identity { name: \"a\\q\" }"), {{"document/bad-value", 2, 20, "identity.name"}}},
        BadInput{
            "escaped_bytes", Text("identity { name: \"\\377\" }"), {{"document/not-utf8", 2, 18, "identity.name"}}},
        BadInput{"surrogate", Text("identity { name: \"\\ud800\" }"), {{"document/bad-value", 2, 19, "identity.name"}}},
        BadInput{"empty_value",
                 Text("extensions { key: 'a' value { fields { key: 'b' value { } } } }"),
                 {{"document/bad-value", 2, 49, "extensions[a].fields[b]"}}}),
    NameOfCase);

INSTANTIATE_TEST_SUITE_P(
    Grammar, BadText,
    ::testing::Values(
        BadInput{"unclosed_quote",
                 Text("identity {\n  name: \"x\n  license: 5\n}"),
                 {{"document/syntax", 3, 9, "identity"}, {"document/bad-value", 4, 12, "identity.license"}}},
        BadInput{"unclosed_brace", Text("identity {\n  name: \"x\"\n"), {{"document/truncated", 4, 1, "identity"}}},
        BadInput{"closed_twice",
                 Text("identity { } }\nshop: 1"),
                 {{"document/syntax", 2, 14, ""}, {"document/bad-value", 3, 7, "shop"}}},
        BadInput{"closed_otherwise", Text("identity { name: 'x' >"), {{"document/syntax", 2, 22, "identity"}}},
        BadInput{"no_colon", Text("identity { name 'x'\n license: 'y' }"), {{"document/syntax", 2, 17, "identity"}}},
        BadInput{"no_value",
                 Text("identity { name: }\nblank { name: 5 }"),
                 {{"document/syntax", 2, 18, "identity"}, {"document/bad-value", 3, 15, "blank.name"}}},
        BadInput{"equals_sign",
                 Text("identity = 5"),
                 {{"document/syntax", 2, 10, ""}, {"document/bad-value", 2, 12, "identity"}}},
        BadInput{"stray_character", Text("$"), {{"document/syntax", 2, 1, ""}}},
        BadInput{"list_not_closed", Text("identity { tags: ['a', 'b' }"), {{"document/syntax", 2, 28, "identity"}}},
        BadInput{"two_errors",
                 Text("identity { units: INCHES }\nblank {\n  nam: 1\n  name: 5\n}"),
                 {{"document/unknown-enum-name", 2, 19, "identity.units"},
                  {"document/unknown-field", 4, 3, "blank.nam"},
                  {"document/bad-value", 5, 9, "blank.name"}}}),
    NameOfCase);

// What a person writes at the bench, each worked by hand, and that it costs one error: `id` behind it is read.
struct BenchCase {
  std::string text;
  std::string code;
  std::string instead;
};

TEST(ReadText, SaysWhatToWriteForANumberOfTheBench) {
  const std::string number = "document/bad-number", value = "document/bad-value", name = "document/unknown-field",
                    syntax = "document/syntax";
  for (const BenchCase& c : std::vector<BenchCase>{
           {"guides { from_tip { inch: 36 7/8 } id: 'x' }", number, "`inch: 36.875`"},
           {"guides { from_tip { inch: 36-7/8 plus_minus: 0.1 } id: 'x' }", number, "`inch: 36.875`"},
           {"guides { from_tip { inch: 36 -7/8 # by eye\n } id: 'x' }", number, "`inch: 36.875`"},
           {"guides { from_tip { inch: 36 7/8\" } id: \"x\" }", number, "`inch: 36.875`"},
           {"guides { from_tip { inch: 3\u00bd } id: 'x' }", number, "`inch: 3.5`"},
           {"guides { from_tip { inch: 36\u201d } id: 'x' }", number, "`inch: 36`"},
           {"guides { from_tip { inch: 7' 3 1/2\" } id: 'x' }", number, "`inch: 87.5`"},
           {"guides { from_tip { mm: 12mm } id: 'x' }", number, "`mm: 12`"},
           {"guides { from_tip { mm: 93.7 cm } id: 'x' }", number, "`mm: 937`"},
           {"guides { from_tip { mm: 36 7/8 in } id: 'x' }", number, "`inch: 36.875`"},
           {"tip_top { tube_bore { in64: 6/64 } id: 'x' }", number, "`in64: 6`"},
           {"tip_top { tube_bore { in64: 4.5 /64 in } id: 'x' }", number, "`in64: 4.5`"},
           {"tip_top { tube_bore { inch: 5/64 } id: 'x' }", number, "`in64: 5`"},
           {"threads { turns_per_10_mm: 5 1/2 id: 'x' }", number, "`turns_per_10_mm: 5.5`"},
           {"guides { from_tip: 36 7/8\" id: 'x' }", value, "`from_tip { inch: 36.875 }`"},
           {"guides { from_tip: 36 7/8, id: 'x' }", value, "`from_tip { inch: 36.875 }`"},
           {"guides { from_tip: -36 id: 'x' }", value, "`from_tip { mm: -36 }`"},
           {"blank { mass: 68.4 gr name: 'x' }", value, "`mass { grain: 68.4 }`"},
           {"guides { from_tip { 36 7/8 in } id: 'x' }", syntax, "`inch: 36.875`"},
           {"guides { from_tip { cm: 93.7 } id: 'x' }", name, "`mm: 937`"},
           {"guides { from_tip { in: 36 7/8 } id: 'x' }", name, "`inch: 36.875`"},
           {"guides { from_tip { ft: 7 } id: 'x' }", name, "`inch: 84`"},
           {"blank { mass { lb: 2 } name: 'x' }", name, "`oz: 32`"},
           {"intent { line { strength { lb: 8 } friction: 0.1 } }", name, "`lbf: 8`"},
           {"guides { from_tip { oz: 2 } id: 'x' }", name, "`mm`, `inch` or `in64`"},
       }) {
    const ReadResult result = ReadDesign("test", Text(c.text));
    ASSERT_EQ(result.findings.size(), 1u) << c.text << ::testing::PrintToString(FaultsOf(result));
    EXPECT_EQ(result.findings[0].code, c.code) << c.text;
    EXPECT_THAT(result.findings[0].help, HasSubstr(c.instead)) << c.text;
    EXPECT_EQ(result.document.has_value(), c.code == name) << c.text;
  }
}

TEST(ReadText, ShowsHowAValueOfItsKindIsWritten) {
  const std::pair<std::string, std::string> cases[] = {
      {"identity { units: \"INCH\" }", "`units: INCH`"},
      {"identity { units: 'metrics' }", "`units: METRIC`"},
      {"identity { name: Ines }", "`name: \"...\"`"},
      {"guides { locked: yes }", "`locked: true` or `locked: false`"},
  };
  for (const auto& [text, instead] : cases) {
    const ReadResult result = ReadDesign("test", Text(text));
    ASSERT_EQ(result.findings.size(), 1u) << text;
    EXPECT_EQ(result.findings[0].code, "document/bad-value") << text;
    EXPECT_THAT(result.findings[0].help, HasSubstr(instead)) << text;
  }
}

TEST(ReadText, AForeignUnitIsNotTakenForAMissingOneAsWell) {
  const ReadResult result = ReadDesign("test", Text("guides { id: 'x' from_tip { cm: 93.7 } }"));
  ASSERT_TRUE(result.document);
  EXPECT_TRUE(CheckDocument(*result.document).empty());
}

INSTANTIATE_TEST_SUITE_P(
    Slips, BadText,
    ::testing::Values(BadInput{"brace_missing_before_a_line_further_out",
                               Text("handle {\n  parts { id: 'a' length { mm: 3 }\n  parts { id: 'b' }\n}\nshop { }"),
                               {{"document/syntax", 4, 3, "handle.parts[a]"}}},
                      BadInput{"two_braces_missing",
                               Text("handle {\n  parts {\n    id: 'a'\nshop { }"),
                               {{"document/syntax", 5, 1, "handle.parts[a]"}}},
                      BadInput{"brace_missing_on_one_line",
                               Text("guides { id: 'g' from_tip { inch: 4.5 locked: true }\nshop { }"),
                               {{"document/syntax", 2, 39, "guides[g].from_tip"}}},
                      BadInput{"brace_missing_after_a_place",
                               Text("wraps { id: 'w' place { after: 'g' turns: 6 }\nshop { }"),
                               {{"document/syntax", 2, 36, "wraps[w].place"}}},
                      BadInput{"brace_behind_an_unclosed_quote",
                               Text("guides { id: 'g from_tip { inch: 4.5 } }\nshop { }"),
                               {{"document/syntax", 2, 14, "guides[0]"}}},
                      BadInput{"field_in_the_wrong_place",  // well closed: no brace is missing
                               Text("guides { id: 'g' from_tip { inch: 4.5 locked: true } }\nshop { }"),
                               {{"document/unknown-field", 2, 39, "guides[g].from_tip.locked"}},
                               true},
                      BadInput{"typographic_quotes",
                               Text("guides { id: \u201cg 1\u201d locked: true }\nwraps { id: \u2018w\u2019 }"),
                               {{"document/syntax", 2, 14, "guides[0]"}, {"document/syntax", 3, 13, "wraps[0]"}}},
                      BadInput{"equals_signs",
                               Text("identity = { name = \"x\" }"),
                               {{"document/syntax", 2, 10, ""}, {"document/syntax", 2, 19, "identity"}}}),
    NameOfCase);

TEST(ReadText, CountsASlipThatIsMadeThroughout) {
  std::string text = Text("");
  for (int i = 0; i < 40; ++i) text += "guides { from_tip: 36 }\n";
  const ReadResult result = ReadDesign("test", text);
  ASSERT_EQ(result.findings.size(), 3u);
  EXPECT_THAT(result.findings[2].message, HasSubstr("37 more of this kind, the last at line 41, column 20"));
  EXPECT_FALSE(result.document);
}

TEST(ReadText, NamesTheNearestFieldAndBothPlaces) {
  const ReadResult misspelt = ReadDesign("test", Text("blank { sectons { } }"));
  ASSERT_EQ(misspelt.findings.size(), 1u);
  EXPECT_THAT(misspelt.findings[0].message, HasSubstr("`sections`"));
  ASSERT_EQ(misspelt.document->unknown.size(), 1u);
  EXPECT_EQ(misspelt.document->unknown[0].at.ToString(), "blank.sectons");
  EXPECT_FALSE(misspelt.document->unknown[0].carried);

  const ReadResult twice = ReadDesign("test", Text("blank { }\nblank { }"));
  ASSERT_EQ(twice.findings.size(), 1u);
  EXPECT_THAT(twice.findings[0].message, HasSubstr("line 2, column 1"));

  const ReadResult outside = ReadDesign("test", Text("blank { guides { } }"));
  ASSERT_EQ(outside.findings.size(), 1u);
  EXPECT_THAT(outside.findings[0].help, HasSubstr("brace"));
}

TEST(ReadText, StopsAfterTwentyErrors) {
  std::string text = Text("");
  for (int i = 0; i < 500; ++i) text += "guides { from_tip { mm: x } }\n";
  EXPECT_EQ(ReadDesign("test", text).findings.size(), 20u);
}

TEST(ReadText, CutAtEveryByteIsAPlacedErrorOrADesign) {
  const std::string whole = DataFile("casting.txtpb");
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const ReadResult result = ReadDesign("test", whole.substr(0, length));
    ASSERT_TRUE(result.document || !result.findings.empty()) << length;
    for (const Finding& finding : result.findings) {
      ASSERT_TRUE(finding.position) << length << finding.message;
      ASSERT_LE(finding.position->offset, length);
    }
  }
}

// One byte changed: what both parsers take, they take alike; the bare one takes more, never less.
TEST(ReadText, AgreesWithTheParserOfProtocolBuffersOnMutations) {
  const std::string whole = DataFile("fly.txtpb");
  RandomDesigns random(/*seed=*/5);
  const std::string replacements = "{}[]<>:;,\"'\\#-.0159eExfn \n\x80\xC3";
  int sound = 0;
  for (int i = 0; i < 1000; ++i) {
    std::string text = whole;
    text[random.Below(text.size())] = replacements[random.Below(replacements.size())];
    const ReadResult result = ReadDesign("test", text);
    if (!result.findings.empty()) continue;
    v1::Design expected;
    ASSERT_TRUE(TextFormat::ParseFromString(text, &expected)) << text;
    EXPECT_TRUE(MessageDifferencer::Equals(result.document->design, expected)) << text;
    ++sound;
  }
  EXPECT_GT(sound, 100);
}

}  // namespace
}  // namespace withy
