// Facts of SARIF 2.1.0 (OASIS Standard, 27 March 2020) that are relied on, with their sections, are named beside the
// checks.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "rapidjson/document.h"
#include "withy/review/findings_json.h"
#include "withy/review/findings_sarif.h"

namespace withy {
namespace {

using ::testing::ElementsAre;

Finding Of(Severity severity, std::string code, std::optional<Position> position) {
  Finding finding;
  finding.code = std::move(code);
  finding.severity = severity;
  finding.message = "message";
  finding.help = "help";
  finding.numbers = {{"length_mm", 12.5}};
  finding.from_tip_mm = 1200;
  finding.position = position;
  return finding;
}

CheckedDesign Example() {
  CheckedDesign checked;
  checked.name = "my rod.txtpb";
  checked.read.document.emplace();
  checked.review.report.set_design_digest("sha256:00");
  checked.review.findings = {Of(Severity::kError, "fit/short", Position{40, 3, 5}),
                             Of(Severity::kCannotTell, "house/x", Position{7, 0, 0}),
                             Of(Severity::kAdvice, "fit/short", std::nullopt)};
  checked.review.findings[0].at = FieldPath().Field("guides").Item("g5", 4);
  checked.review.findings[0].related = {FieldPath().Field("tip_top")};
  checked.review.waived = {Of(Severity::kWarning, "guides/spacing", std::nullopt)};
  checked.failures = {"plugin bad: no"};
  return checked;
}

TEST(CheckedFileOf, CarriesEverything) {
  v1::CheckedFile file = CheckedFileOf(Example(), Severity::kError);
  EXPECT_EQ(file.file(), "my rod.txtpb");
  EXPECT_EQ(file.digest(), "sha256:00");
  EXPECT_EQ(file.verdict(), "incomplete");
  ASSERT_EQ(file.findings_size(), 3);
  const v1::FindingRecord& first = file.findings(0);
  EXPECT_EQ(first.code(), "fit/short");
  EXPECT_EQ(first.severity(), "error");
  EXPECT_EQ(first.at(), "guides[g5]");
  EXPECT_THAT(first.related(), ElementsAre("tip_top"));
  EXPECT_EQ(first.numbers(0).name(), "length_mm");
  EXPECT_EQ(first.numbers(0).value(), 12.5);
  EXPECT_EQ(first.from_tip_mm(), 1200);
  EXPECT_EQ(first.line(), 3u);
  EXPECT_EQ(first.column(), 5u);
  EXPECT_EQ(first.offset(), 40u);
  EXPECT_FALSE(file.findings(1).has_line());  // binary: the offset alone
  EXPECT_TRUE(file.findings(1).has_offset());
  EXPECT_FALSE(file.findings(2).has_offset());
  EXPECT_EQ(file.waived(0).code(), "guides/spacing");
  EXPECT_THAT(file.failures(), ElementsAre("plugin bad: no"));
}

class Sarif : public ::testing::Test {
 protected:
  void SetUp() override {
    v1::CheckReport report = EmptyCheckReport();
    *report.add_files() = CheckedFileOf(Example(), Severity::kError);
    text_ = FindingsSarif(report, "1.2.3");
    ASSERT_FALSE(log_.Parse(text_.c_str()).HasParseError());
  }
  const rapidjson::Value& run() const { return log_["runs"][0]; }
  const rapidjson::Value& result(unsigned i) const { return run()["results"][i]; }

  std::string text_;
  rapidjson::Document log_;
};

TEST_F(Sarif, NamesVersionAndTool) {
  EXPECT_STREQ(log_["version"].GetString(), "2.1.0");  // 3.13.2
  EXPECT_STREQ(run()["tool"]["driver"]["name"].GetString(), "withy");
  EXPECT_STREQ(run()["tool"]["driver"]["version"].GetString(), "1.2.3");
  EXPECT_STREQ(run()["columnKind"].GetString(), "unicodeCodePoints");  // 3.14.17
}

TEST_F(Sarif, LevelsAndKinds) {
  EXPECT_STREQ(result(0)["kind"].GetString(), "fail");
  EXPECT_STREQ(result(0)["level"].GetString(), "error");
  EXPECT_STREQ(result(1)["kind"].GetString(), "open");   // 3.27.9: not enough information to decide
  EXPECT_STREQ(result(1)["level"].GetString(), "none");  // 3.27.10: 'none' where the kind is not 'fail'
  EXPECT_STREQ(result(2)["level"].GetString(), "note");
}

TEST_F(Sarif, EachRuleOnceAndIndexed) {
  const rapidjson::Value& rules = run()["tool"]["driver"]["rules"];
  ASSERT_EQ(rules.Size(), 3u);  // fit/short, house/x, guides/spacing
  for (unsigned i = 0; i < run()["results"].Size(); ++i) {
    EXPECT_STREQ(rules[static_cast<unsigned>(result(i)["ruleIndex"].GetInt())]["id"].GetString(),
                 result(i)["ruleId"].GetString());
  }
}

TEST_F(Sarif, PlacesInTextAndBinary) {
  const rapidjson::Value& place = result(0)["locations"][0];
  EXPECT_STREQ(place["physicalLocation"]["artifactLocation"]["uri"].GetString(), "my%20rod.txtpb");  // RFC 3986 2.1
  EXPECT_EQ(place["physicalLocation"]["region"]["startLine"].GetInt(), 3);
  EXPECT_EQ(place["physicalLocation"]["region"]["startColumn"].GetInt(), 5);
  EXPECT_STREQ(place["logicalLocations"][0]["fullyQualifiedName"].GetString(), "guides[g5]");
  EXPECT_EQ(result(1)["locations"][0]["physicalLocation"]["region"]["byteOffset"].GetInt(), 7);  // 3.30.11
  EXPECT_FALSE(result(2)["locations"][0]["physicalLocation"].HasMember("region"));
}

TEST_F(Sarif, WaivedIsSuppressedAndFailureIsNotSuccess) {
  EXPECT_STREQ(result(3)["suppressions"][0]["kind"].GetString(), "inSource");  // 3.35.2
  const rapidjson::Value& invocation = run()["invocations"][0];
  EXPECT_FALSE(invocation["executionSuccessful"].GetBool());  // 3.20.14
  EXPECT_STREQ(invocation["toolExecutionNotifications"][0]["message"]["text"].GetString(),
               "my rod.txtpb: plugin bad: no");
}

}  // namespace
}  // namespace withy
