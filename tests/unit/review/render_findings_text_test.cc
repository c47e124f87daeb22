// The layout is withy's own, written down in findings_text.h; the expected text is laid out here by hand.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "withy/review/findings_text.h"

namespace withy {
namespace {

using ::testing::EndsWith;
using ::testing::HasSubstr;
using ::testing::Not;
using ::testing::StartsWith;

// A file of which nothing is known but its bytes: an unreadable one, with one finding.
CheckedDesign WithFinding(const std::string& bytes, Finding finding) {
  CheckedDesign checked;
  checked.name = "rod.txtpb";
  checked.bytes = bytes;
  checked.read.findings.push_back(std::move(finding));
  return checked;
}

Finding SpacingAt(std::size_t offset, int line, int column) {
  Finding finding;
  finding.code = "guides/spacing";
  finding.severity = Severity::kWarning;
  finding.message = "guide g5 stands 20 mm behind g4";
  finding.position = Position{offset, line, column};
  return finding;
}

std::string TextOf(const CheckedDesign& checked) {
  return FindingText(checked, checked.read.findings.front(), LengthUnits::kMm, {.color = false, .width = 60});
}

TEST(FindingText, ShowsLineCaretPlaceAndHelp) {
  Finding finding = SpacingAt(12, 2, 3);
  finding.at = FieldPath().Field("guides").Item("g5", 4).Field("from_tip");
  finding.from_tip_mm = 1200.4;
  finding.help = "Measure again from the tip-top's ring centre, or move one of the two.";
  EXPECT_EQ(TextOf(WithFinding("id: \"g5\"\r\n  from_tip { mm: 1200 }\r\n", finding)),
            "rod.txtpb:2:3: warning[guides/spacing]: guide g5 stands 20 mm behind g4\n"
            "    2 |   from_tip { mm: 1200 }\n"
            "      |   ^~~~~~~~ 1200 mm from the tip\n"
            "  at: guides[g5].from_tip\n"
            "  help: Measure again from the tip-top's ring centre, or\n"
            "        move one of the two.\n");
}

TEST(FindingText, PlaceOnTheRodInInches) {
  Finding finding = SpacingAt(0, 1, 1);
  finding.from_tip_mm = 1200;  // 47.244 in, nearest 1/16: 47 1/4
  CheckedDesign checked = WithFinding("guides", finding);
  EXPECT_THAT(FindingText(checked, finding, LengthUnits::kInch, {}), HasSubstr("^~~~~~ 47 1/4\" from the tip\n"));
}

TEST(FindingText, CaretStandsUnderItsCharacterBehindWideOnesAndTabs) {
  // A tab and a wide character before the place: two columns each.
  std::string text = TextOf(WithFinding("\t# 竹\tmass", SpacingAt(7, 1, 6)));
  EXPECT_THAT(text, HasSubstr("    1 |   # 竹  mass\n"
                              "      |         ^~~~\n"));
}

TEST(FindingText, ControlCharactersOfTheFileDoNotReachTheTerminal) {
  Finding finding = SpacingAt(0, 1, 1);
  finding.message = "name is 'a\x1b[2Jb'";
  std::string text = TextOf(WithFinding("name: \"a\x1b[2Jb\"", finding));
  EXPECT_THAT(text, Not(HasSubstr("\x1b")));
  EXPECT_THAT(text, HasSubstr("name: \"a\\x1b[2Jb\""));
}

TEST(FindingText, CutsALongLineAroundThePlace) {
  std::string line(500, 'x');
  line.replace(250, 8, " mass: 1");
  std::string text = TextOf(WithFinding(line, SpacingAt(251, 1, 252)));
  std::size_t first = text.find('\n') + 1;
  std::string shown = text.substr(first, text.find('\n', first) - first);
  std::string mark = text.substr(text.find('\n', first) + 1);
  EXPECT_LE(DisplayWidth(shown), 60);
  EXPECT_THAT(shown, StartsWith("    1 | ...xxx"));
  EXPECT_THAT(shown, EndsWith("xxx..."));
  EXPECT_EQ(shown.find("mass"), mark.find("^~~~"));
}

TEST(FindingText, ALineOfAMegabyteIsLookedAtOnlyAroundThePlace) {
  std::string line(1 << 20, 'x');
  EXPECT_LE(TextOf(WithFinding(line, SpacingAt(700'000, 1, 700'001))).size(), 400u);
}

TEST(FindingText, PlaceAtTheEndOfTheFile) {
  EXPECT_THAT(TextOf(WithFinding("blank {\n", SpacingAt(8, 2, 1))), HasSubstr("    2 |\n      | ^\n"));
  EXPECT_THAT(TextOf(WithFinding("", SpacingAt(0, 1, 1))), HasSubstr("    1 |\n      | ^\n"));
  EXPECT_THAT(TextOf(WithFinding("a", SpacingAt(99, 7, 1))), Not(HasSubstr("|")));  // beyond the end: nothing to show
}

TEST(FindingText, BinaryFilesHaveAnOffsetOnly) {
  std::string text = TextOf(WithFinding("\x0a\x07withy/1\xff", SpacingAt(9, 0, 0)));
  EXPECT_EQ(text, "rod.txtpb: warning[guides/spacing]: guide g5 stands 20 mm behind g4\n  at: byte 9\n");
}

TEST(VerdictText, SaysTheOutcomeAndCounts) {
  CheckedDesign checked = WithFinding("", SpacingAt(0, 1, 1));
  EXPECT_EQ(VerdictText(checked, Severity::kError, {}), "rod.txtpb: unreadable (1 warning)\n");
  checked.name = "-";
  EXPECT_THAT(VerdictText(checked, Severity::kError, {}), StartsWith("standard input: "));

  CheckedDesign clean;
  clean.name = "rod.txtpb";
  clean.read.document.emplace();
  EXPECT_EQ(VerdictText(clean, Severity::kError, {}), "rod.txtpb: clean\n");
  clean.failures.push_back("plugin house-rules: init.lua:3: no");
  EXPECT_EQ(VerdictText(clean, Severity::kError, {}), "rod.txtpb: incomplete (1 plugin failure)\n");
}

TEST(VerdictText, WhatStandsIsNotCalledClean) {
  CheckedDesign checked;
  checked.name = "rod.txtpb";
  checked.read.document.emplace();
  Finding finding = SpacingAt(0, 1, 1);
  finding.severity = Severity::kAdvice;
  checked.review.findings = {finding};
  EXPECT_EQ(VerdictText(checked, Severity::kError, {}), "rod.txtpb: no errors or warnings (1 piece of advice)\n");
  finding.severity = Severity::kWarning;
  checked.review.findings.push_back(finding);
  EXPECT_EQ(VerdictText(checked, Severity::kError, {}), "rod.txtpb: no errors (1 warning, 1 piece of advice)\n");
  EXPECT_EQ(VerdictText(checked, Severity::kWarning, {}), "rod.txtpb: findings (1 warning, 1 piece of advice)\n");
}

TEST(OverallText, CountsFiles) {
  EXPECT_EQ(OverallText({Outcome::kClean, Outcome::kUnreadable, Outcome::kClean, Outcome::kFindings}, {}),
            "4 files: 2 passed, 1 with findings, 1 unreadable\n");
}

TEST(OutcomeOf, AFailedPluginIsNeverClean) {
  CheckedDesign checked;
  checked.read.document.emplace();
  checked.failures.push_back("plugin house-rules: init.lua:3: no");
  Finding error = SpacingAt(0, 1, 1);
  error.severity = Severity::kError;
  checked.review.findings.push_back(error);
  EXPECT_EQ(OutcomeOf(checked, Severity::kError), Outcome::kIncomplete);
}

}  // namespace
}  // namespace withy
