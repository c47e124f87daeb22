// Importers: a table as a design, with names as strict as when it is read.
#include <gmock/gmock.h>
#include <google/protobuf/text_format.h>
#include <google/protobuf/util/message_differencer.h>
#include <gtest/gtest.h>

#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;

absl::StatusOr<PluginHost::ImportResult> Imported(const std::string& body, const std::string& input = "",
                                                  bool built_in = true) {
  return Host().Import(ImportPlugin(body, built_in), "probe", "table.csv", input, {});
}

std::string ErrorOf(const std::string& body) {
  return std::string(Imported(body).status().message());
}

void ExpectDesign(const v1::Design& actual, const char* expected_text) {
  v1::Design expected;
  ASSERT_TRUE(google::protobuf::TextFormat::ParseFromString(expected_text, &expected));
  EXPECT_TRUE(google::protobuf::util::MessageDifferencer::Equals(expected, actual)) << actual.DebugString();
}

TEST(Import, ATableIsADesign) {
  for (bool built_in : {true, false}) {
    auto result = Imported(R"(return {
      identity = { name = ctx.input_name, tags = { "a", "b" }, revision = 3 },
      blank = { sections = { { id = "butt", length = { inch = 87.1, plus_minus = 0.25, source = "MEASURED" } } } },
      guides = { { id = ctx.input, locked = true } },
      extensions = { club = { member = true, years = { 2024, 2025 }, nested = { a = "x" } } } })",
                           "g1", built_in);
    ASSERT_TRUE(result.ok()) << result.status();
    ExpectDesign(result->design, R"(
      format: "withy/1" identity { name: "table.csv" tags: "a" tags: "b" revision: 3 }
      blank { sections { id: "butt" length { inch: 87.1 plus_minus: 0.25 source: MEASURED } } }
      guides { id: "g1" locked: true }
      extensions { key: "club" value { fields { key: "member" value { bool_value: true } }
        fields { key: "years" value { list_value { values { number_value: 2024 } values { number_value: 2025 } } } }
        fields { key: "nested" value { struct_value { fields { key: "a" value { string_value: "x" } } } } } } })");
  }
}

TEST(Import, NamesAreStrictAndErrorsHaveThePath) {
  EXPECT_THAT(ErrorOf("return { blank = { sections = { {}, { lenght = {} } } } }"),
              HasSubstr("blank.sections[1].lenght: Section has no field 'lenght'; did you mean 'length'?"));
  EXPECT_THAT(ErrorOf("return { blank = { sections = { { length = { g = 1 } } } } }"),
              HasSubstr("Length has no unit 'g'"));
  EXPECT_THAT(ErrorOf("return { blank = { sections = { { length = { mm = 1, inch = 2 } } } } }"),
              HasSubstr("only one of unit"));
  EXPECT_THAT(ErrorOf("return { blank = { sections = { { length = { mm = 1, source = 'MEASSURED' } } } } }"),
              HasSubstr("did you mean 'MEASURED'?"));
}

TEST(Import, ValuesHaveTheirTypes) {
  EXPECT_THAT(ErrorOf("return 12"), HasSubstr("a Design is a table"));
  EXPECT_THAT(ErrorOf("return { identity = 'x' }"), HasSubstr("identity: a Identity is a table"));
  EXPECT_THAT(ErrorOf("return { identity = { name = 12 } }"), HasSubstr("identity.name: must be a text, not a number"));
  EXPECT_THAT(ErrorOf("return { identity = { revision = 1.5 } }"), HasSubstr("whole number"));
  EXPECT_THAT(ErrorOf("return { identity = { revision = -1 } }"), HasSubstr("whole number from 0"));
  EXPECT_THAT(ErrorOf("return { identity = { name = '\\xff' } }"), HasSubstr("not UTF-8"));
  EXPECT_THAT(ErrorOf("return { shop = { margin = 1/0 } }"), HasSubstr("shop.margin: is not a finite number"));
  EXPECT_THAT(ErrorOf("return { guides = { [2] = {} } }"), HasSubstr("guides: a list counts from 1"));
  EXPECT_THAT(ErrorOf("return { guides = { id = 'g' } }"), HasSubstr("guides: a list counts from 1"));
  EXPECT_THAT(ErrorOf("local t = {} t.x = { t } t.x[1] = t return { extensions = { club = t } }"),
              HasSubstr("too deep"));
  EXPECT_THAT(ErrorOf("return { extensions = { club = { f = function() end } } }"),
              HasSubstr("cannot be kept in a design"));
}

TEST(Import, ARefusalSaysWhereInTheInput) {
  auto refused = Imported("ctx:refuse('no unit', { line = 3, column = 7 })");
  EXPECT_EQ(refused.status().code(), absl::StatusCode::kFailedPrecondition);
  EXPECT_EQ(refused.status().message(), "test/probe: table.csv:3:7: no unit");
  EXPECT_EQ(Imported("ctx:refuse('no unit', { line = 3 })").status().message(), "test/probe: table.csv:3: no unit");
}

TEST(Import, ARemarkHasLineAndColumn) {
  auto result = Imported("ctx:emit { message = 'odd', line = 3, column = 7, at = 'blank.sections' } return {}");
  ASSERT_TRUE(result.ok()) << result.status();
  ASSERT_EQ(result->findings.size(), 1u);
  const Finding& finding = result->findings[0];
  EXPECT_EQ(finding.code, "test/probe");
  EXPECT_EQ(finding.severity, Severity::kAdvice);
  EXPECT_EQ(finding.at.ToString(), "blank.sections");
  ASSERT_TRUE(finding.position.has_value());
  EXPECT_EQ(finding.position->line, 3);
  EXPECT_EQ(finding.position->column, 7);
}

TEST(Import, HasNoDesign) {
  EXPECT_THAT(ErrorOf("return { identity = { name = ctx.design.format } }"),
              HasSubstr("ctx.design is not there in an importer"));
}

}  // namespace
}  // namespace withy
