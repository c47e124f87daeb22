// The JSON reader, judged by protobuf's own JSON parser on sound input, and by a table of faults on the rest. The
// grammar is RFC 8259, the mapping "ProtoJSON Format" (protobuf.dev).
#include <gmock/gmock.h>
#include <google/protobuf/util/json_util.h>
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include <string>

#include "reading.h"
#include "support/random_design.h"
#include "withy/document/document.h"

namespace withy {
namespace {

using google::protobuf::util::JsonStringToMessage;
using google::protobuf::util::MessageDifferencer;

v1::Design Read(const std::string& json) {
  const ReadResult result = ReadDesign("test", json);
  EXPECT_EQ(FaultsOf(result), std::vector<Fault>{}) << json;
  EXPECT_TRUE(result.document) << json;
  return result.document ? result.document->design : v1::Design();
}

void ExpectSameAsBare(const std::string& json) {
  v1::Design expected;
  ASSERT_TRUE(JsonStringToMessage(json, &expected).ok()) << json;
  EXPECT_TRUE(MessageDifferencer::Equals(Read(json), expected)) << json;
}

std::string BareJson(const v1::Design& design, bool proto_names) {
  std::string json;
  google::protobuf::util::JsonPrintOptions options;
  options.preserve_proto_field_names = proto_names;
  EXPECT_TRUE(MessageToJsonString(design, &json, options).ok());
  return json;
}

TEST(ReadJson, AgreesWithTheParserOfProtocolBuffersOnDesigns) {
  for (const char* name : {"casting.txtpb", "fly.txtpb"}) {
    const ReadResult text = ReadDesign(name, DataFile(name));
    ASSERT_TRUE(text.document);
    for (const bool proto_names : {false, true}) {
      const std::string json = BareJson(text.document->design, proto_names);
      EXPECT_TRUE(MessageDifferencer::Equals(Read(json), text.document->design)) << json;
    }
  }
}

TEST(ReadJson, AgreesWithTheParserOfProtocolBuffersOnRandomDesigns) {
  // Whole numbers that plugin data cannot keep exactly are refused here on purpose, so the plugin data is made apart.
  RandomDesigns designs(/*seed=*/20260315, {.max_depth = 12});
  for (int i = 0; i < 60; ++i) {
    v1::Design design = designs.Next();
    design.clear_extensions();
    ExpectSameAsBare(BareJson(design, /*proto_names=*/i % 2 == 0));
  }
}

TEST(ReadJson, AgreesOnEveryWayOfWriting) {
  for (
      const char* json : {
          R"({"format": "withy/1"})",
          "\t{\r\n\"format\":\"withy/1\" }\n ",
          R"({"format": "withy/1", "tipTop": {"tubeBore": {"in64": 5.5}}})",
          R"({"format": "withy/1", "tip_top": {"tube_bore": {"in64": 55e-1}}})",
          R"({"format": "withy/1", "blank": null, "guides": null, "identity": {"name": null, "revision": null}})",
          R"({"format": "withy/1", "identity": {"name": "\u00e9\ud83d\udc1f\"\\\/\b\f\n\r\t"}})",
          R"({"format": "withy/1", "identity": {"units": 2}, "guides": [{"foot_towards": "TIP", "locked": true}]})",
          R"({"format": "withy/1", "guides": [], "identity": {"tags": []}})",
          R"({"format": "withy/1", "extensions": {}})",
          R"({"format": "withy/1", "extensions": {"club": {"a": [1, -2.5, [], {}, null, true, "x"], "b": {"c": {"d": 1e3}}}}})",
      }) {
    ExpectSameAsBare(json);
  }
}

TEST(ReadJson, TakesAByteOrderMark) {
  EXPECT_EQ(Read("\xEF\xBB\xBF{\"format\": \"withy/1\"}").format(), "withy/1");
}

class BadJson : public ::testing::TestWithParam<BadInput> {};
TEST_P(BadJson, IsReportedInPlace) {
  ExpectFaults(GetParam());
}

// `{"format": "withy/1",` is line 1; lines and columns were counted by hand.
std::string Json(const std::string& rest) {
  return "{\"format\": \"withy/1\",\n" + rest + "}";
}

INSTANTIATE_TEST_SUITE_P(
    Fields, BadJson,
    ::testing::Values(BadInput{"misspelt",
                               Json("\"blank\": {\"sectons\": [{\"a\": [[1], {}]}], \"name\": \"x\"}"),
                               {{"document/unknown-field", 2, 11, "blank.sectons"}},
                               true},
                      BadInput{"two_misspelt",
                               Json("\"x1\": 5, \"x2\": null, \"x3\": {\"a\": []}"),
                               {{"document/unknown-field", 2, 1, "x1"},
                                {"document/unknown-field", 2, 10, "x2"},
                                {"document/unknown-field", 2, 22, "x3"}},
                               true},
                      BadInput{"duplicate",
                               Json("\"blank\": {},\n \"blank\": {\"name\": 5}"),
                               {{"document/duplicate-field", 3, 2, "blank"}}},
                      BadInput{"duplicate_in_both_spellings",
                               Json("\"tip_top\": {}, \"tipTop\": {}"),
                               {{"document/duplicate-field", 2, 16, "tip_top"}}},
                      BadInput{"duplicate_list",
                               Json("\"guides\": [], \"guides\": []"),
                               {{"document/duplicate-field", 2, 15, "guides"}}},
                      BadInput{"duplicate_after_null",
                               Json("\"blank\": null, \"blank\": {}"),
                               {{"document/duplicate-field", 2, 16, "blank"}}},
                      BadInput{"two_units",
                               Json("\"guides\": [{\"id\": \"g1\", \"from_tip\": {\"mm\": 1, \"inch\": 2}}]"),
                               {{"document/two-of-one", 2, 47, "guides[g1].from_tip.inch"}}},
                      BadInput{"one_key_twice",
                               Json("\"extensions\": {\"a\": {\"b\": 1, \"b\": 2}, \"a\": {}}"),
                               {{"document/duplicate-key", 2, 30, "extensions[a].fields[b]"},
                                {"document/duplicate-key", 2, 39, "extensions[a]"}}}),
    NameOfCase);

// Found by fuzzing: an object under a repeated key, in which a key is repeated.
INSTANTIATE_TEST_SUITE_P(FieldsWithin, BadJson,
                         ::testing::Values(BadInput{
                             "keys_twice_within_one_another",
                             Json("\"extensions\": {\"a\": {\"b\": {}, \"b\": {\"c\": 1, \"c\": {}, \"d\": 2}}}"),
                             {{"document/duplicate-key", 2, 31, "extensions[a].fields[b]"},
                              {"document/duplicate-key", 2, 45, "extensions[a].fields[b].struct_value.fields[c]"}}}),
                         NameOfCase);

INSTANTIATE_TEST_SUITE_P(
    Values, BadJson,
    ::testing::Values(
        BadInput{"number_as_text",
                 Json("\"guides\": [{\"from_tip\": {\"mm\": \"12\"}}]"),
                 {{"document/bad-number", 2, 32, "guides[0].from_tip.mm"}}},
        BadInput{"not_a_number_as_text",
                 Json("\"guides\": [{\"from_tip\": {\"mm\": \"NaN\", \"plus_minus\": \"Infinity\"}}]"),
                 {{"document/bad-number", 2, 32, "guides[0].from_tip.mm"},
                  {"document/bad-number", 2, 53, "guides[0].from_tip.plus_minus"}}},
        BadInput{"too_large",
                 Json("\"guides\": [{\"from_tip\": {\"mm\": 1e999}}]"),
                 {{"document/bad-number", 2, 32, "guides[0].from_tip.mm"}}},
        BadInput{"number_for_a_quantity",
                 Json("\"blank\": {\"mass\": 12, \"name\": 5}"),
                 {{"document/bad-value", 2, 19, "blank.mass"}, {"document/bad-value", 2, 31, "blank.name"}}},
        BadInput{"null_in_a_list",
                 Json("\"guides\": [null, {\"id\": \"g2\", \"locked\": 1}]"),
                 {{"document/bad-value", 2, 12, "guides[0]"}, {"document/bad-value", 2, 41, "guides[g2].locked"}}},
        BadInput{
            "object_for_a_list", Json("\"guides\": {\"id\": \"g1\"}"), {{"document/bad-value", 2, 11, "guides[0]"}}},
        BadInput{"list_for_an_object", Json("\"blank\": [{}]"), {{"document/bad-value", 2, 10, "blank"}}},
        BadInput{
            "list_in_a_list",
            Json("\"identity\": {\"tags\": [[\"a\"], \"b\", 5]}"),
            {{"document/bad-value", 2, 23, "identity.tags[0]"}, {"document/bad-value", 2, 35, "identity.tags[2]"}}},
        BadInput{"fraction_of_a_count",
                 Json("\"identity\": {\"revision\": 1.5}"),
                 {{"document/bad-number", 2, 26, "identity.revision"}}},
        BadInput{"unknown_enum_name",
                 Json("\"identity\": {\"units\": \"INCHES\"}"),
                 {{"document/unknown-enum-name", 2, 23, "identity.units"}}},
        BadInput{"unknown_enum_number",
                 Json("\"identity\": {\"units\": 99}"),
                 {{"document/unknown-enum-number", 2, 23, "identity.units"}},
                 true},
        BadInput{"whole_number_that_no_double_holds",
                 Json("\"extensions\": {\"a\": {\"n\": 9007199254740993}}"),
                 {{"document/bad-number", 2, 27, "extensions[a].fields[n].number_value"}}},
        BadInput{"plugin_data_that_is_no_object",
                 Json("\"extensions\": {\"a\": 5}"),
                 {{"document/bad-value", 2, 21, "extensions[a]"}}},
        BadInput{"half_a_surrogate_pair",
                 Json("\"identity\": {\"name\": \"\\udc00\"}"),
                 {{"document/not-utf8", 2, 22, "identity"}}}),
    NameOfCase);

INSTANTIATE_TEST_SUITE_P(
    Grammar, BadJson,
    ::testing::Values(
        BadInput{"trailing_comma", "{\"format\": \"withy/1\",}", {{"document/syntax", 1, 22, ""}}},
        BadInput{"trailing_comma_in_a_list", Json("\"guides\": [{},]"), {{"document/syntax", 2, 15, ""}}},
        BadInput{"comment", "{\"format\": \"withy/1\" // no\n}", {{"document/syntax", 1, 22, ""}}},
        BadInput{"single_quotes",
                 "{'format': \"withy/1\"}",
                 {{"document/format-missing", 1, 1, "format"}, {"document/syntax", 1, 2, ""}}},
        BadInput{"not_finite",
                 Json("\"guides\": [{\"from_tip\": {\"mm\": NaN}}]"),
                 {{"document/syntax", 2, 32, "guides[0].from_tip.mm"}}},
        BadInput{
            "line_break_in_text", Json("\"identity\": {\"name\": \"a\nb\"}"), {{"document/syntax", 2, 24, "identity"}}},
        BadInput{"text_after_the_end", "{\"format\": \"withy/1\"} {}", {{"document/syntax", 1, 23, ""}}},
        BadInput{"cut", "{\"format\": \"withy/1\",\n\"blank\": {", {{"document/truncated", 2, 11, "blank"}}}),
    NameOfCase);

TEST(ReadJson, ANulIsNoEnd) {
  using std::string_literals::operator""s;
  const ReadResult result = ReadDesign("test", "{\"format\": \"withy/1\"}\0 {}"s);
  EXPECT_FALSE(result.document);
  ASSERT_FALSE(result.findings.empty());
  EXPECT_EQ(result.findings.back().position->offset, 21u);
}

TEST(ReadJson, CutAtEveryByteIsAPlacedErrorOrADesign) {
  const ReadResult text = ReadDesign("casting.txtpb", DataFile("casting.txtpb"));
  ASSERT_TRUE(text.document);
  const std::string whole = BareJson(text.document->design, true);
  for (std::size_t length = 0; length < whole.size(); ++length) {
    const ReadResult result = ReadDesign("test", whole.substr(0, length));
    ASSERT_FALSE(result.document) << length;
    ASSERT_FALSE(result.findings.empty()) << length;
    for (const Finding& finding : result.findings) {
      ASSERT_TRUE(finding.position) << length;
      ASSERT_LE(finding.position->offset, length);
    }
  }
}

// One byte changed: what is taken without a finding, the bare parser takes alike.
TEST(ReadJson, AgreesWithTheParserOfProtocolBuffersOnMutations) {
  const ReadResult text = ReadDesign("fly.txtpb", DataFile("fly.txtpb"));
  ASSERT_TRUE(text.document);
  const std::string whole = BareJson(text.document->design, true);
  RandomDesigns random(/*seed=*/6);
  const std::string replacements = "{}[]:,\"'\\-.0159eEnt \n\x80";
  int sound = 0;
  for (int i = 0; i < 1000; ++i) {
    std::string json = whole;
    json[random.Below(json.size())] = replacements[random.Below(replacements.size())];
    const ReadResult result = ReadDesign("test", json);
    if (!result.findings.empty()) continue;
    v1::Design expected;
    ASSERT_TRUE(JsonStringToMessage(json, &expected).ok()) << json;
    EXPECT_TRUE(MessageDifferencer::Equals(result.document->design, expected)) << json;
    ++sound;
  }
  EXPECT_GT(sound, 100);
}

}  // namespace
}  // namespace withy
