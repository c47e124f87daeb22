// The review as a whole: order of findings, waivers, verdict, and that any design at all is survived.
#include "withy/review/review.h"

#include <algorithm>
#include <cmath>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/rod_of.h"

namespace withy::testing {
namespace {

using ::testing::Contains;
using ::testing::Not;

Review ReviewOf(const std::string& text) {
  const ReadResult read = ReadText(text);
  Review review = ReviewDesign(read);
  ApplyWaivers(*read.document, {}, review);
  return review;
}

// Two sections and no joint: rod/joint-missing, cannot tell.
const char kNoJoint[] = R"(blank {
  sections { id: "a" length { mm: 1000 } }
  sections { id: "b" length { mm: 1000 } }
})";

// A section that broke: rod/broken, an error that may be accepted.
const char kBrokenSection[] = R"(blank { sections { id: "a" length { mm: 1000 } } }
  log { breakage { what: "a" } }
)";

// What exporters see: an exporter that cannot tell a design with errors prints sheets for it.
TEST(ReviewDesign, TheReportSaysWhatWasFoundAndIsNotWaived) {
  const Review review = ReviewDesign(ReadText(kNoJoint));
  bool told = false;
  for (const v1::FindingRecord& finding : review.report.findings()) {
    told = told || (finding.code() == "rod/joint-missing" && finding.severity() == "cannot tell" &&
                    finding.at() == "blank.sections[b]" && !finding.message().empty());
  }
  EXPECT_TRUE(told);
  const Review waived = ReviewDesign(ReadText(
      std::string(kBrokenSection) + "waivers { code: \"rod/broken\" reason: \"seen\" at: \"log[0].breakage\" }"));
  for (const v1::FindingRecord& finding : waived.report.findings()) EXPECT_NE(finding.code(), "rod/broken");
}

TEST(Waivers, TakeAFindingOut) {
  const Review review = ReviewOf(std::string(kBrokenSection) +
                                 "waivers { code: \"rod/broken\" reason: \"seen\" at: \"log[0].breakage\" }");
  EXPECT_THAT(CodesIn(review.findings), Not(Contains("rod/broken")));
  ASSERT_THAT(CodesIn(review.waived), Contains("rod/broken"));
  EXPECT_EQ(review.waived[0].related[0].ToString(), "waivers[0]");
}

TEST(Waivers, ElsewhereWaiveNothingAndAreUnused) {
  const Review review =
      ReviewOf(std::string(kBrokenSection) + "waivers { code: \"rod/broken\" reason: \"seen\" at: \"log[1]\" }");
  EXPECT_THAT(CodesIn(review.findings), Contains("rod/broken"));
  EXPECT_THAT(CodesIn(review.findings), Contains("review/unused-waiver"));
}

TEST(Waivers, NeverTakeOutWhatCannotBeTold) {
  const Review review = ReviewOf(std::string(kNoJoint) + "waivers { code: \"rod/joint-missing\" reason: \"seen\" }");
  EXPECT_THAT(CodesIn(review.findings), Contains("rod/joint-missing"));
  EXPECT_THAT(CodesIn(review.findings), Contains("review/not-waivable"));
  EXPECT_EQ(VerdictOf(review, Severity::kError).kind, Verdict::Kind::kCannotTell);
}

// A code that is mostly an error may be 'cannot tell' in one design; and so may a plugin's.
TEST(Waivers, NeverTakeOutWhatAPluginCannotTell) {
  const ReadResult read =
      ReadText(std::string(kBrokenSection) + "waivers { code: \"club/short-rod\" reason: \"a child's rod\" }");
  Review review = ReviewDesign(read);
  Finding finding;
  finding.code = "club/short-rod";
  finding.severity = Severity::kCannotTell;
  ApplyWaivers(*read.document, {finding}, review);
  EXPECT_THAT(CodesIn(review.findings), Contains("club/short-rod"));
  EXPECT_THAT(CodesIn(review.findings), Contains("review/not-waivable"));
}

TEST(Waivers, NeverTakeOutWhatIsNotUnderstoodOfTheFile) {
  const ReadResult read =
      ReadText(R"(blank { sections { id: "a" lenght { mm: 1 } length { mm: 1000 source: 9 } } sections { id: "a" } }
    waivers { code: "document/unknown-field" reason: "x" } waivers { code: "document/unknown-enum-number" reason: "x" }
    waivers { code: "document/duplicate-id" reason: "x" } waivers { code: "review/not-waivable" reason: "x" })");
  Review review = ReviewDesign(read);
  ApplyWaivers(*read.document, {}, review);
  EXPECT_THAT(review.waived, ::testing::IsEmpty());
  const std::vector<std::string> codes = CodesIn(review.findings);
  for (const char* code : {"document/unknown-field", "document/unknown-enum-number", "document/duplicate-id"}) {
    EXPECT_THAT(codes, Contains(code));
  }
  EXPECT_EQ(std::count(codes.begin(), codes.end(), "review/not-waivable"), 4);
}

TEST(Waivers, WithoutAReasonDoNotCount) {
  const Review review = ReviewOf(std::string(kNoJoint) + "waivers { code: \"rod/joint-missing\" }");
  EXPECT_THAT(CodesIn(review.findings), Contains("rod/joint-missing"));
}

TEST(Waivers, CoverTheFindingsOfPlugins) {
  const ReadResult read = ReadText(std::string(kNoJoint) + "waivers { code: \"club/short-rod\" reason: \"a child's rod\" }");
  Review review = ReviewDesign(read);
  Finding finding;
  finding.code = "club/short-rod";
  ApplyWaivers(*read.document, {finding}, review);
  EXPECT_THAT(CodesIn(review.waived), Contains("club/short-rod"));
  EXPECT_THAT(CodesIn(review.findings), Not(Contains("review/unused-waiver")));
}

TEST(Verdict, WorstFirst) {
  Review review;
  EXPECT_EQ(VerdictOf(review, Severity::kError).kind, Verdict::Kind::kClean);
  review.findings.resize(2);
  review.findings[0].severity = Severity::kCannotTell;
  review.findings[1].severity = Severity::kWarning;
  EXPECT_EQ(VerdictOf(review, Severity::kError).kind, Verdict::Kind::kCannotTell);
  EXPECT_EQ(VerdictOf(review, Severity::kWarning).kind, Verdict::Kind::kFindings);
  EXPECT_EQ(VerdictOf(review, Severity::kError).warnings, 1);
  EXPECT_EQ(VerdictOf(review, Severity::kError).cannot_tell, 1);
}

TEST(Review, FindingsStandInTheOrderOfTheFile) {
  const Review review = ReviewOf(std::string(kNoJoint) + R"(
    waivers { code: "rod/broken" reason: "x" }
    waivers { code: "rod/place-cycle" reason: "x" })");
  const std::vector<std::string> codes = CodesIn(review.findings);
  const auto joint = std::find(codes.begin(), codes.end(), "rod/joint-missing");
  const auto waiver = std::find(codes.begin(), codes.end(), "review/unused-waiver");
  ASSERT_TRUE(joint != codes.end() && waiver != codes.end());
  EXPECT_LT(joint - codes.begin(), waiver - codes.begin());
}

TEST(Review, OfAnUnreadableDesignHasTheFindingsOfReading) {
  const ReadResult read = ReadDesign("test", "blank { sections {");
  ASSERT_FALSE(read.document);
  EXPECT_EQ(ReviewDesign(read).findings.size(), read.findings.size());
}

TEST(FindCode, NamesTheNearest) {
  std::string nearest;
  EXPECT_EQ(FindCode("rod/place-cycel", &nearest), nullptr);
  EXPECT_EQ(nearest, "rod/place-cycle");
  EXPECT_NE(FindCode("rod/place-cycle", nullptr), nullptr);
}

}  // namespace
}  // namespace withy::testing
