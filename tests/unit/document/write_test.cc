// The writers, judged by the parsers of the Protocol Buffers library: what we write, they read back to an equal
// message.
#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/json_util.h>
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <sstream>

#include "support/random_design.h"
#include "withy/document/document.h"
#include "withy/document/print.h"
#include "withy/v1/check.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {
namespace {

using google::protobuf::TextFormat;
using google::protobuf::util::MessageDifferencer;
using ::testing::HasSubstr;
using ::testing::Not;

v1::Design FromText(const std::string& text) {
  v1::Design design;
  EXPECT_TRUE(TextFormat::ParseFromString(text, &design)) << text;
  return design;
}

v1::Design FromJson(const std::string& json) {
  v1::Design design;
  const auto status = google::protobuf::util::JsonStringToMessage(json, &design);
  EXPECT_TRUE(status.ok()) << status.ToString() << "\n" << json;
  return design;
}

v1::Design FromBinary(const std::string& bytes) {
  v1::Design design;
  EXPECT_TRUE(design.ParseFromString(bytes));
  return design;
}

// Equal to the last bit, signs of zeros included: deterministic bytes of both.
void ExpectSame(const v1::Design& a, const v1::Design& b) {
  std::string difference;
  MessageDifferencer differencer;
  differencer.ReportDifferencesToString(&difference);
  EXPECT_TRUE(differencer.Compare(a, b)) << difference;
  EXPECT_EQ(WriteDesign(a, Form::kBinary), WriteDesign(b, Form::kBinary));
}

// The library's JSON parser stops at 100 levels and takes control characters only escaped; its text parser at no depth.
TEST(WriteDesign, ProtobufReadsBackRandomDesigns) {
  RandomDesignOptions options;
  options.unknown_enums = true;
  RandomDesigns designs(1, options);
  for (int i = 0; i < 60; ++i) {
    const v1::Design design = designs.Next();
    ExpectSame(FromText(WriteDesign(design, Form::kText)), design);
    ExpectSame(FromJson(WriteDesign(design, Form::kJson)), design);
    ExpectSame(FromBinary(WriteDesign(design, Form::kBinary)), design);
    if (HasFailure()) break;
  }
}

TEST(WriteDesign, BinaryKeepsUnknownFields) {
  RandomDesignOptions options;
  options.unknown_fields = true;
  RandomDesigns designs(2, options);
  for (int i = 0; i < 20; ++i) {
    const v1::Design design = designs.Next();
    ExpectSame(FromBinary(WriteDesign(design, Form::kBinary)), design);
  }
}

TEST(WriteDesign, ProtobufReadsBackTheExamples) {
  for (const char* name : {"casting", "spinning", "fly", "surf"}) {
    std::ifstream file(std::string(WITHY_SOURCE_DIR) + "/examples/designs/" + name + ".txtpb");
    std::stringstream text;
    text << file.rdbuf();
    const v1::Design design = FromText(text.str());
    ExpectSame(FromText(WriteDesign(design, Form::kText)), design);
    ExpectSame(FromJson(WriteDesign(design, Form::kJson)), design);
  }
}

// The layout, by hand: 120 columns, a quantity on one line, a table row per line, groups apart.
TEST(WriteDesign, TextLayout) {
  const v1::Design design = FromText(R"(
    format: "withy/1"
    guides { id: "g1" from_tip { inch: 4.5 } } guides { id: "g2" from_tip { inch: 9 source: MEASURED } locked: true }
    blank { sections { id: "butt" length { plus_minus: 0.1 mm: 1000 }
      taper { stations { outer { mm: 8.30 } at { mm: 0 } } stations { at { mm: 1e3 } outer { in64: 5.5 } } } } }
    identity { tags: "one" tags: "t\"w\\o" authors {} }
    intent { technique: "fly" }
    wraps { id: "w" on: "g1" coats: ["a", "b"] }
    extensions { key: "b" value { fields { key: "n" value { number_value: 100000 } } } }
    extensions { key: "a" value {} }
  )");
  EXPECT_EQ(WriteDesign(design, Form::kText), R"(# proto-file: withy/v1/design.proto
# proto-message: withy.v1.Design

format: "withy/1"

identity {
  authors {}
  tags: ["one", "t\"w\\o"]
}

intent {
  technique: "fly"
}

blank {
  sections {
    id: "butt"
    length { mm: 1000 plus_minus: 0.1 }
    taper {
      stations { at { mm: 0 } outer { mm: 8.3 } }
      stations { at { mm: 1000 } outer { in64: 5.5 } }
    }
  }
}

guides { id: "g1" from_tip { inch: 4.5 } }
guides { id: "g2" from_tip { inch: 9 source: MEASURED } locked: true }

wraps { id: "w" on: "g1" coats: ["a", "b"] }

extensions { key: "a" value {} }

extensions {
  key: "b"
  value {
    fields { key: "n" value { number_value: 100000 } }
  }
}
)");
}

TEST(WriteDesign, TextLinesEndAt120WhereThereIsAChoice) {
  v1::Design design;
  design.set_format("withy/1");
  for (int length = 60; length < 130; ++length) {
    design.clear_guides();
    design.add_guides()->set_id(std::string(static_cast<std::size_t>(length), 'x'));
    const std::string text = WriteDesign(design, Form::kText);
    // guides { id: "xx...x" } is 17 characters and the id.
    EXPECT_EQ(text.find("guides {\n") != std::string::npos, length + 17 > 120) << length;
  }
}

TEST(WriteDesign, LongListsTakeALineEach) {
  v1::Design design;
  for (int i = 0; i < 3; ++i) design.mutable_identity()->add_tags(std::string(50, static_cast<char>('a' + i)));
  EXPECT_THAT(WriteDesign(design, Form::kText), HasSubstr("  tags: [\n    \"aaaa"));
  ExpectSame(FromText(WriteDesign(design, Form::kText)), design);
}

// The form of a number tells the wire type, as the schema's README says.
TEST(WriteDesign, TextShowsUnknownFieldsByNumber) {
  v1::Design design;
  auto* unknown = design.GetReflection()->MutableUnknownFields(&design);
  unknown->AddVarint(900, 7);
  unknown->AddFixed32(901, 0x1234);
  unknown->AddFixed64(902, 0x1234);
  unknown->AddLengthDelimited(903)->assign("a\xff\n");
  unknown->AddGroup(904)->AddVarint(1, 2);
  EXPECT_THAT(WriteDesign(design, Form::kText), HasSubstr("900: 7\n"
                                                          "901: 0x00001234\n"
                                                          "902: 0x0000000000001234\n"
                                                          "903: \"a\\377\\n\"\n"
                                                          "904 { 1: 2 }\n"));
}

// JSON layout by hand; RFC 8259 escapes; keys of maps and objects sorted, fields in the order of the schema.
TEST(WriteDesign, JsonLayout) {
  v1::Design design = FromText(R"(
    format: "withy/1"
    identity { name: "a\"\001\n\xe2\x82\xac" authors {} units: INCH }
    guides { id: "g1" from_tip { inch: 4.5 } angle { deg: -0.0 } foot_towards: 9 }
    extensions { key: "p" value {
      fields { key: "z" value { null_value: NULL_VALUE } }
      fields { key: "a" value { list_value { values { bool_value: true } values { list_value {} } values { struct_value {} } } } } } }
  )");
  EXPECT_EQ(WriteDesign(design, Form::kJson), R"({
  "format": "withy/1",
  "identity": {
    "name": "a\"\u0001\n€",
    "authors": [
      {}
    ],
    "units": "INCH"
  },
  "guides": [
    {
      "id": "g1",
      "from_tip": {
        "inch": 4.5
      },
      "angle": {
        "deg": -0.0
      },
      "foot_towards": 9
    }
  ],
  "extensions": {
    "p": {
      "a": [
        true,
        [],
        {}
      ],
      "z": null
    }
  }
}
)");
}

// IEEE 754 binary64: 17 digits always suffice, the shortest are asked for; what a bench reads has no exponent.
TEST(WriteDesign, DoublesAreShortest) {
  const std::pair<double, const char*> cases[] = {{0.1, "0.1"},
                                                  {100000, "100000"},
                                                  {1e14, "100000000000000"},
                                                  {1e15, "1e+15"},
                                                  {1.0 / 3, "0.3333333333333333"},
                                                  {0.00001, "0.00001"},
                                                  {0.000001, "1e-06"},
                                                  {-0.0, "-0.0"},
                                                  {5e-324, "5e-324"},
                                                  {1.7976931348623157e308, "1.7976931348623157e+308"},
                                                  {2209.8, "2209.8"}};
  for (const auto& [value, text] : cases) {
    v1::Design design;
    design.mutable_shop()->set_margin(value);
    EXPECT_THAT(WriteDesign(design, Form::kText), HasSubstr("margin: " + std::string(text) + "\n"));
    EXPECT_THAT(WriteDesign(design, Form::kJson), HasSubstr("\"margin\": " + std::string(text) + "\n"));
  }
}

// RFC 8259 section 7 leaves DEL and C1 to the writer; U+009B begins a command of a terminal (ECMA-48). The euro sign, whose
// bytes end in 0x82 and 0xAC, and U+00A0 stay.
TEST(WriteDesign, JsonHoldsNothingThatSteersATerminal) {
  v1::Design design;
  design.mutable_identity()->set_name("a\x1b\x7f\xc2\x80\xc2\x9b\xc2\x9f\xc2\xa0\xe2\x82\xac" "b");
  const std::string json = WriteDesign(design, Form::kJson);
  EXPECT_NE(json.find(R"("a\u001B\u007F\u0080\u009B\u009F)" "\xc2\xa0\xe2\x82\xac" R"(b")"), std::string::npos) << json;
  ExpectSame(FromJson(json), design);
}

TEST(WriteDesign, JsonNeverHoldsNan) {
  v1::Design design;
  design.mutable_shop()->set_margin(std::nan(""));
  design.mutable_shop()->set_tax(INFINITY);
  const std::string json = WriteDesign(design, Form::kJson);
  EXPECT_EQ(json, "{\n  \"shop\": {}\n}\n");
}

TEST(WriteDesign, SameBytesWhateverTheOrderOfAMap) {
  v1::Design a, b;
  for (int i = 0; i < 20; ++i) (*a.mutable_extensions())[std::to_string(i)];
  for (int i = 19; i >= 0; --i) (*b.mutable_extensions())[std::to_string(i)];
  for (const Form form : {Form::kText, Form::kJson, Form::kBinary})
    EXPECT_EQ(WriteDesign(a, form), WriteDesign(b, form));
}

// Computed figures: 12 significant digits, so that the last bit does not show.
TEST(MessageToJson, RoundsDoubles) {
  v1::Report report;
  report.set_format("withy-report/1");
  report.mutable_balance()->set_mass_g(0.1 + 0.2);  // 0.30000000000000004
  report.mutable_fit()->set_overall_length_mm(2209.8000000000002);
  report.mutable_fit()->set_short_of_target_mm(-0.0);
  const std::string json = MessageToJson(report);
  EXPECT_THAT(json, HasSubstr("\"mass_g\": 0.3\n"));
  EXPECT_THAT(json, HasSubstr("\"overall_length_mm\": 2209.8,\n"));
  EXPECT_THAT(json, HasSubstr("\"short_of_target_mm\": 0\n"));
  v1::Report back;
  EXPECT_TRUE(google::protobuf::util::JsonStringToMessage(json, &back).ok());
  EXPECT_DOUBLE_EQ(back.balance().mass_g(), 0.3);
}

TEST(MessageToJson, CheckReport) {
  v1::CheckReport report;
  report.set_format("withy-check/1");
  report.add_files()->mutable_counts()->set_error(2);
  EXPECT_EQ(MessageToJson(report), R"({
  "format": "withy-check/1",
  "files": [
    {
      "counts": {
        "error": 2
      }
    }
  ]
}
)");
}

TEST(MessageToText, HasNoHeader) {
  v1::Report report;
  report.set_format("withy-report/1");
  report.mutable_fit()->set_tip_ring_mm(1.5);
  EXPECT_EQ(MessageToText(report), "format: \"withy-report/1\"\n\nfit {\n  tip_ring_mm: 1.5\n}\n");
}

}  // namespace
}  // namespace withy
