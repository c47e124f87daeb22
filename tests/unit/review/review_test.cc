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

// What a reel seat of 100 mm and bore 16 takes on a blank that is `butt_mm` thick at its butt-side face and tapers by
// 0.005 mm a mm: the bore less a frustum, and a fillet of 1 mm by 1 mm (Pappus) at either end; in ml.
double SeatVolume(double butt_mm) {
  const double pi = std::acos(-1.0), tip_mm = butt_mm - 0.5;
  const double blank = pi / 12 * 100 * (butt_mm * butt_mm + butt_mm * tip_mm + tip_mm * tip_mm);
  const double fillets = pi * (butt_mm / 2 + 1.0 / 3) + pi * (tip_mm / 2 + 1.0 / 3);
  return (pi / 4 * 256 * 100 - blank + fillets) / 1000;
}

// A blank of 2000 mm that runs through to a cap of 5 mm, ordered at 1805 mm: 200 mm are to come off, and nobody has planned
// that. The seat begins 95 mm up the blank: 12 - 0.475 = 11.525 mm now, 10.525 mm after the cuts.
TEST(ReviewDesign, TellsTheAdhesiveBeforeAndAfterTheCutsToCome) {
  const auto design = [](const std::string& cuts) {
    return R"(intent { overall_length { mm: 1805 } } blank { )" + cuts + R"(
      sections { id: "b" length { mm: 2000 } taper { reading { diameter_plus_minus { mm: 0.02 } }
      stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
    handle {
      parts { id: "cap" kind: "butt_cap" length { mm: 5 } }
      parts { id: "seat" kind: "reel_seat" length { mm: 100 } place { from_butt { mm: 100 } }
        bore { at { mm: 0 } diameter { mm: 16 } } slides_on_from: BUTT bond: "paste" } }
    tip_top { id: "tip" tube_bore { mm: 2.2 } tube_length { mm: 10 } end_beyond_tube { mm: 0 } }
    adhesives { id: "paste" kind: "epoxy_paste" mix { by_volume { resin: 1 hardener: 1 } } } )";
  };
  const v1::BondingReport bonding = ReviewDesign(ReadText(design(""))).report.bonding();
  ASSERT_EQ(bonding.batches_size(), 1);
  EXPECT_NEAR(bonding.batches(0).mix_ml(), SeatVolume(11.525), 1e-9);
  EXPECT_NEAR(bonding.batches(0).mix_after_cuts_ml(), SeatVolume(10.525), 1e-6);
  EXPECT_NEAR(bonding.joints(0).volume_after_cuts_ml(), SeatVolume(10.525), 1e-6);
  const std::string planned = R"(cuts { section: "b" amount { mm: 200 } })";
  const v1::BondingReport after = ReviewDesign(ReadText(design(planned))).report.bonding();
  EXPECT_NEAR(after.batches(0).mix_ml(), SeatVolume(10.525), 1e-6);
  EXPECT_FALSE(after.batches(0).has_mix_after_cuts_ml());
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
