// What a plugin gives: findings, 'cannot tell', refusals, files.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "subject.h"

namespace withy {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

PluginHost::CheckResult Checked(const std::string& body) {
  TestSubject subject;
  return Host().RunChecks(CheckPlugin(body), subject.get());
}

Finding OnlyFinding(const std::string& body) {
  PluginHost::CheckResult result = Checked(body);
  EXPECT_THAT(result.failures, IsEmpty()) << result.failures.front();
  EXPECT_EQ(result.findings.size(), 1u);
  return result.findings.empty() ? Finding() : result.findings.front();
}

std::string PlaceOf(const std::string& at) {
  return OnlyFinding("ctx:emit { message = 'm', at = " + at + " }").at.ToString();
}

TEST(Emit, AFindingHasCodeSeverityPlaceNumbersAndHelp) {
  Finding finding = OnlyFinding(
      "ctx:emit { at = ctx.design.intent.overall_length, numbers = { length_mm = 2212.34, least_mm = 2300 }, message = "
      "'short', "
      "help = 'ask' }");
  EXPECT_EQ(finding.code, "test/probe");
  EXPECT_EQ(finding.severity, Severity::kWarning);
  EXPECT_EQ(finding.at.ToString(), "intent.overall_length");
  EXPECT_EQ(finding.numbers, (std::vector<Number>{{"least_mm", 2300}, {"length_mm", 2212.34}}));  // by name
  EXPECT_EQ(finding.message, "short");
  EXPECT_EQ(finding.help, "ask");
}

TEST(Emit, TheSeverityCanBeGivenWithTheFinding) {
  EXPECT_EQ(OnlyFinding("ctx:emit { message = 'm', severity = 'error' }").severity, Severity::kError);
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', severity = 'fatal' }"),
              HasSubstr("\"error\", \"warning\" or \"advice\""));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', severity = 'cannot tell' }"),
              HasSubstr("\"error\", \"warning\" or \"advice\""));
}

TEST(Emit, APlaceIsAValueAPathOrAValueAndAField) {
  EXPECT_EQ(PlaceOf("nil"), "");
  EXPECT_EQ(PlaceOf("ctx.design.guides[2]"), "guides[g2]");
  EXPECT_EQ(PlaceOf("ctx.design.blank.sections[1].taper.stations[2]"), "blank.sections[butt].taper.stations[1]");
  EXPECT_EQ(PlaceOf("{ ctx.design.blank.sections[2], 'mass' }"), "blank.sections[tip].mass");
  EXPECT_EQ(PlaceOf("'guides[g1].from_tip'"), "guides[g1].from_tip");
  EXPECT_EQ(PlaceOf("'guides'"), "guides");  // the design's, although the report has that name too
  EXPECT_EQ(PlaceOf("'intent.reel.mass'"), "intent.reel.mass");
  EXPECT_EQ(PlaceOf("ctx.rod.guides[1]"), "guides[g1]");
  EXPECT_EQ(PlaceOf("ctx.design.extensions.club.nested"), "extensions[club]");
}

TEST(Emit, APlaceKnowsTheIndexOfWhatItNamesById) {
  Finding finding = OnlyFinding("ctx:emit { message = 'm', at = 'guides[g2].from_tip' }");
  EXPECT_EQ(finding.code, "test/probe");
  EXPECT_TRUE(finding.at.IsWithin(*FieldPath::Parse("guides[g2]")));
}

TEST(Emit, AWrongPlaceIsAnError) {
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', at = 'guides[g1].form_tip' }"),
              HasSubstr("did you mean 'from_tip'?"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', at = { ctx.design.guides[1], 'form_tip' } }"),
              HasSubstr("did you mean 'from_tip'?"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', at = 12 }"), HasSubstr("does not know where it was read"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', at = ctx.report.fit }"), HasSubstr("nowhere in the design"));
}

TEST(Emit, WhatIsNotPlainIsAnError) {
  EXPECT_THAT(FailureOf("ctx:emit { mesage = 'm' }"), HasSubstr("'message' is missing"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', hepl = 'h' }"),
              HasSubstr("there is no 'hepl'; did you mean 'help'?"));
  EXPECT_THAT(FailureOf("ctx:emit { message = '' }"), HasSubstr("empty"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'a\\nb' }"), HasSubstr("one line"));
  EXPECT_THAT(FailureOf("ctx:emit { message = '\\27[2J' }"), HasSubstr("control characters"));
  EXPECT_THAT(FailureOf("ctx:emit { message = '\\xff' }"), HasSubstr("UTF-8"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', numbers = { x_mm = 0/0 } }"), HasSubstr("finite"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', numbers = { x_mm = '1' } }"), HasSubstr("finite number"));
  EXPECT_THAT(FailureOf("ctx:emit { message = 'm', line = 3 }"), HasSubstr("importers"));
}

TEST(Emit, AFailedCheckKeepsNothingAndNamesFileAndLine) {
  PluginHost::CheckResult result = Checked("\nctx:emit { message = 'm' }\nlocal x = nil + 1");
  EXPECT_THAT(result.findings, IsEmpty());
  ASSERT_EQ(result.failures.size(), 1u);
  EXPECT_EQ(result.failures[0].code(), absl::StatusCode::kInvalidArgument);
  EXPECT_THAT(std::string(result.failures[0].message()),
              HasSubstr("test/probe: init.lua:3: attempt to perform arithmetic on a nil value"));
}

TEST(Emit, AFailedCheckDoesNotHideTheOthers) {
  TestSubject subject;
  PluginSource plugin =
      Plugin(R"(return { api = 1, name = "test", version = "1", license = "Apache-2.0", summary = "Test", checks = {
    { code = "first", severity = "advice", summary = "s", run = function(ctx) ctx:emit { message = "one" } end },
    { code = "second", severity = "advice", summary = "s", run = function(ctx) error("broken") end },
    { code = "third", severity = "advice", summary = "s", run = function(ctx) ctx:emit { message = "three" } end } } })");
  PluginHost::CheckResult result = Host().RunChecks(plugin, subject.get());
  ASSERT_EQ(result.findings.size(), 2u);
  EXPECT_EQ(result.findings[0].code, "test/first");
  EXPECT_EQ(result.findings[1].code, "test/third");
  ASSERT_EQ(result.failures.size(), 1u);
  EXPECT_THAT(std::string(result.failures[0].message()), HasSubstr("test/second: init.lua:3: broken"));
}

TEST(Need, GivesTheValueWhereThereIsOne) {
  EXPECT_EQ(OnlyFinding("ctx:emit { message = tostring(ctx:need('fit.overall_length_mm')) }").message, "2212.34");
}

TEST(Need, EndsTheCheckAsCannotTellWithTheHint) {
  Finding finding = OnlyFinding("pcall(ctx.need, ctx, 'intent.reel.mass', 'Weigh the reel.') error('never here')");
  EXPECT_EQ(finding.severity, Severity::kCannotTell);
  EXPECT_EQ(finding.code, "test/probe");
  EXPECT_EQ(finding.at.ToString(), "intent.reel.mass");
  EXPECT_EQ(finding.help, "Weigh the reel.");
}

TEST(Need, WithoutAHintTheReportSaysWhatToMeasure) {
  EXPECT_EQ(OnlyFinding("ctx:need('balance.mass_g')").help, "weigh the grip");
  EXPECT_EQ(OnlyFinding("ctx:need('guides[g2].from_tip')").help, "Add guides[g2].from_tip.");  // no unit: not known
}

TEST(Need, WhatWasFoundBeforeIsKept) {
  PluginHost::CheckResult result = Checked("ctx:emit { message = 'm' } ctx:need('balance.mass_g')");
  ASSERT_EQ(result.findings.size(), 2u);
  EXPECT_EQ(result.findings[0].severity, Severity::kWarning);
  EXPECT_EQ(result.findings[1].severity, Severity::kCannotTell);
}

TEST(Refuse, EndsTheRunInAnOrderlyWay) {
  PluginHost::CheckResult result = Checked("pcall(function() ctx:refuse('not today') end) error('never here')");
  ASSERT_EQ(result.failures.size(), 1u);
  EXPECT_EQ(result.failures[0].code(), absl::StatusCode::kFailedPrecondition);
  EXPECT_EQ(result.failures[0].message(), "test/probe: not today");
}

class Export : public testing::Test {
 protected:
  absl::StatusOr<std::vector<OutputFile>> Exported(const std::string& body, const OptionValues& options = {},
                                                   const std::string& stem = "rod") {
    return Host().Export(ExportPlugin(body), "probe", stem, options, subject_.get());
  }
  std::string ErrorOf(const std::string& body, const OptionValues& options = {}) {
    return std::string(Exported(body, options).status().message());
  }
  TestSubject subject_;
};

TEST_F(Export, WritesFilesInOrder) {
  auto files = Exported("ctx:write(ctx.stem .. '.csv', 'a\\0b') ctx:write('two.txt', '')");
  ASSERT_TRUE(files.ok()) << files.status();
  ASSERT_EQ(files->size(), 2u);
  EXPECT_EQ((*files)[0].name, "rod.csv");
  EXPECT_EQ((*files)[0].bytes, std::string("a\0b", 3));
  EXPECT_EQ((*files)[1].name, "two.txt");
}

TEST_F(Export, NamesArePlainAndUsedOnce) {
  for (const char* name :
       {"", ".", "..", ".hidden", "a/b", "a\\\\b", "/etc/passwd", "a\\nb", " a", "a ", "a.", "\\xc3\\xa9"}) {
    EXPECT_THAT(ErrorOf(std::string("ctx:write('") + name + "', 'x')"), HasSubstr("plain file name")) << name;
  }
  EXPECT_THAT(ErrorOf("ctx:write('a', 'x') ctx:write('A', 'y')"), HasSubstr("written already"));
}

TEST_F(Export, TheStemIsAPlainName) {
  EXPECT_EQ(Exported("ctx:write(ctx.stem, '')", {}, "my rod (2)")->at(0).name, "my rod _2_");
  EXPECT_EQ(Exported("ctx:write(ctx.stem, '')", {}, "../x")->at(0).name, "_._x");
}

TEST_F(Export, OptionsAreTypedAndHaveTheirDefaults) {
  const char* show =
      "local o = ctx.options ctx:write('o', o.paper .. ' ' .. o.copies .. ' ' .. tostring(o.mono) .. ' ' .. "
      "tostring(o.note))";
  EXPECT_EQ(Exported(show)->at(0).bytes, "A4 1.0 false nil");
  EXPECT_EQ(Exported(show, {{"paper", "Letter"}, {"copies", "2.5"}, {"mono", "true"}, {"note", "x"}})->at(0).bytes,
            "Letter 2.5 true x");
}

TEST_F(Export, AnUnknownOptionOrAWrongValueIsRefused) {
  EXPECT_EQ(Exported("", {{"papre", "A4"}}).status().code(), absl::StatusCode::kNotFound);
  EXPECT_THAT(ErrorOf("", {{"papre", "A4"}}), HasSubstr("no option 'papre'; did you mean 'paper'?"));
  EXPECT_EQ(Exported("", {{"copies", "two"}}).status().code(), absl::StatusCode::kOutOfRange);
  EXPECT_EQ(Exported("", {{"copies", "inf"}}).status().code(), absl::StatusCode::kOutOfRange);
  EXPECT_EQ(Exported("", {{"mono", "yes"}}).status().code(), absl::StatusCode::kOutOfRange);
  EXPECT_EQ(Exported("", {{"paper", "\xff"}}).status().code(), absl::StatusCode::kOutOfRange);
  EXPECT_THAT(ErrorOf("local x = ctx.options.papre"), HasSubstr("there is no option 'papre'; did you mean 'paper'?"));
}

TEST_F(Export, AnExporterThatDoesNotExistIsNotFound) {
  auto files = Host().Export(ExportPlugin(""), "prob", "rod", {}, subject_.get());
  EXPECT_EQ(files.status().code(), absl::StatusCode::kNotFound);
  EXPECT_THAT(std::string(files.status().message()), HasSubstr("did you mean 'probe'?"));
}

TEST_F(Export, WhatItNeedsAndIsNotKnownIsARefusal) {
  auto files = Exported("ctx:write('a', '') ctx:need('balance.mass_g')");
  EXPECT_EQ(files.status().code(), absl::StatusCode::kFailedPrecondition);
  EXPECT_EQ(files.status().message(), "test/probe: cannot tell: balance.mass_g is not known; weigh the grip");
}

TEST_F(Export, HasNoEmitAndAChecksHasNoWrite) {
  EXPECT_THAT(ErrorOf("ctx:emit { message = 'm' }"), HasSubstr("ctx.emit is not there in an exporter"));
  EXPECT_THAT(FailureOf("ctx:write('a', '')"), HasSubstr("ctx.write is not there in a check"));
}

}  // namespace
}  // namespace withy
