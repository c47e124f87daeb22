// Figures opened: what is in the tree, shares worked by hand, what cannot be opened.
#include "withy/review/why.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>
#include <vector>

#include "support/design_files.h"
#include "withy/review/review.h"

namespace withy {
namespace {

using ::testing::HasSubstr;

// Two sections with a gap of their joint closed: the blank's length is the sum of both, 3 and 4 mm uncertain.
constexpr char kTwoSections[] = R"(format: "withy/1"
blank {
  sections { id: "butt" length { mm: 1100 plus_minus: 3 source: MEASURED } }
  sections { id: "tip"
    length { mm: 1000 plus_minus: 4 source: CATALOGUE } }
  joints { kind: "spigot" lower: "butt" upper: "tip" }
}
tip_top { end_beyond_tube { mm: 5 } ring_center_beyond_tube { mm: 2 } }
)";

struct Asked {
  ReadResult read;
  Review review;
  absl::StatusOr<v1::WhyReport> why = absl::UnknownError("not asked");
};

Asked Ask(std::string design, std::string_view figure, const WhyOptions& options = {}) {
  Asked asked;
  asked.read = ReadDesign("rod.txtpb", std::move(design));
  if (!asked.read.document) return asked;
  asked.review = ReviewDesign(asked.read);
  asked.why = Why(*asked.read.document, asked.review.report, figure, options);
  return asked;
}

std::string Example(const std::string& name) {
  return testing::BytesOf(std::filesystem::path(WITHY_SOURCE_DIR) / "examples/designs" / name);
}

// The step of that path anywhere below `step`; null where there is none.
const v1::WhyStep* Find(const v1::WhyStep& step, const std::string& path) {
  if (step.path() == path) return &step;
  for (const v1::WhyStep& input : step.inputs()) {
    if (const v1::WhyStep* found = Find(input, path)) return found;
  }
  return nullptr;
}

TEST(Why, SharesOfAThreeAndAFourAreThirtySixAndSixtyFourPercent) {
  // Variance of the sum: 3^2 + 4^2 = 25; 16 / 25 = 64 %, 9 / 25 = 36 %; uncertainty 5.
  const Asked asked = Ask(kTwoSections, "sections.blank_length_mm", {.depth = 3});
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  const v1::WhyStep& step = asked.why->figures(0);
  EXPECT_NEAR(step.value(), 2100, 1e-9);
  EXPECT_NEAR(step.plus_minus(), 5, 1e-9);
  EXPECT_EQ(step.unit(), "mm");
  EXPECT_EQ(step.text(), "2100.0 ± 5.0 mm");
  ASSERT_EQ(step.shares_size(), 2);
  EXPECT_EQ(step.shares(0).at(), "blank.sections[tip].length");
  EXPECT_NEAR(step.shares(0).of_variance(), 0.64, 1e-12);
  EXPECT_EQ(step.shares(1).at(), "blank.sections[butt].length");
  EXPECT_NEAR(step.shares(1).of_variance(), 0.36, 1e-12);
}

TEST(Why, LeavesAreAsWrittenWithLineAndSource) {
  const Asked asked = Ask(kTwoSections, "sections.blank_length_mm", {.depth = 3});
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  const v1::WhyStep* leaf = Find(asked.why->figures(0), "blank.sections[tip].length");
  ASSERT_NE(leaf, nullptr);
  EXPECT_TRUE(leaf->written());
  EXPECT_EQ(leaf->text(), "1000 ± 4 mm");
  EXPECT_EQ(leaf->source(), "catalogue");
  EXPECT_EQ(leaf->line(), 5u);  // counted in the text above
  EXPECT_NEAR(leaf->share(), 0.64, 1e-12);
}

TEST(Why, DepthSaysHowFarItOpens) {
  const Asked asked = Ask(kTwoSections, "sections.blank_length_mm", {.depth = 1});
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  const v1::WhyStep* section = Find(asked.why->figures(0), "sections.sections[tip].length_mm");
  ASSERT_NE(section, nullptr);
  EXPECT_EQ(section->inputs_size(), 0);
  EXPECT_TRUE(section->deeper());
}

TEST(Why, AnUncertaintyIsOpenedAsItsFigure) {
  const Asked asked = Ask(kTwoSections, "sections.blank_length_plus_minus_mm");
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  EXPECT_EQ(asked.why->figures(0).path(), "sections.blank_length_mm");
}

TEST(Why, AnItemIsNamedByIdOrByNumber) {
  const Asked by_id = Ask(kTwoSections, "sections.sections[tip].length_mm");
  const Asked by_number = Ask(kTwoSections, "sections.sections[1].length_mm");
  ASSERT_TRUE(by_id.why.ok()) << by_id.why.status();
  ASSERT_TRUE(by_number.why.ok()) << by_number.why.status();
  EXPECT_EQ(by_id.why->SerializeAsString(), by_number.why->SerializeAsString());
  EXPECT_NE(Find(by_id.why->figures(0), "blank.sections[tip].length"), nullptr);
  EXPECT_EQ(Find(by_id.why->figures(0), "blank.sections[butt].length"), nullptr);
}

TEST(Why, OfTwoItemsWithOneIdTheSecondGoesByItsNumber) {
  // The handle and the weights in it are both "module" in the list of masses.
  const Asked asked = Ask(Example("casting.txtpb"), "balance");
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  std::vector<std::string> of_weights;
  for (const v1::WhyStep& step : asked.why->figures()) {
    if (step.about() == "handle.parts[module].weights" && step.path().ends_with("mass_g"))
      of_weights.push_back(step.path());
  }
  ASSERT_EQ(of_weights.size(), 1u);
  const Asked weights = Ask(Example("casting.txtpb"), of_weights[0]);
  ASSERT_TRUE(weights.why.ok()) << weights.why.status();
  // Three quarter-ounce units: 3 x 0.25 oz x 28.349523125 g/oz (exact, NIST Handbook 44) = 21.2621 g.
  EXPECT_NEAR(weights.why->figures(0).value(), 21.2621, 1e-4);
  EXPECT_NE(Find(weights.why->figures(0), "handle.parts[module].weights.unit_mass"), nullptr);
  EXPECT_EQ(Find(weights.why->figures(0), "handle.parts[module].mass"), nullptr);
}

TEST(Why, OfTheDryFitsTheOneThatCountsIsShown) {
  const Asked asked = Ask(Example("casting.txtpb"), "fit.overall_length_mm");
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  const v1::WhyStep& step = asked.why->figures(0);
  ASSERT_EQ(step.shares_size(), 1);
  EXPECT_EQ(step.shares(0).at(), "log[e10].fit.overall");  // the last of five
  EXPECT_NE(Find(step, "log[e10].fit.overall"), nullptr);
  EXPECT_EQ(Find(step, "log[e8].fit.overall"), nullptr);
}

TEST(Why, WhatWasAssumedIsSaidSo) {
  const Asked asked = Ask(Example("fly.txtpb"), "fit.overall_length_mm", {.depth = 3});
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  const v1::WhyStep* rest = Find(asked.why->figures(0), "handle.blank_butt_from_butt");
  ASSERT_NE(rest, nullptr);
  EXPECT_EQ(rest->source(), "assumed");
  EXPECT_EQ(rest->line(), 0u);
}

TEST(Why, AFigureThatCannotBeToldSaysWhatSettlesIt) {
  const Asked asked = Ask(R"(format: "withy/1" blank { sections { id: "butt" } })", "fit.short_of_target_mm");
  ASSERT_TRUE(asked.why.ok()) << asked.why.status();
  const v1::WhyStep& step = asked.why->figures(0);
  EXPECT_FALSE(step.has_value());
  EXPECT_EQ(step.text(), "");
  EXPECT_FALSE(step.measure().empty());
  EXPECT_NE(Find(step, "fit.overall_length_mm"), nullptr);  // what keeps it from being told
}

TEST(Why, AMisspeltNameGetsTheNearest) {
  const Asked figure = Ask(kTwoSections, "fit.overal_length_mm");
  EXPECT_EQ(figure.why.status().code(), absl::StatusCode::kNotFound);
  EXPECT_THAT(std::string(figure.why.status().message()), HasSubstr("fit.overall_length_mm"));
  const Asked item = Ask(kTwoSections, "sections.sections[but].mass_g");
  EXPECT_EQ(item.why.status().code(), absl::StatusCode::kNotFound);
  EXPECT_THAT(std::string(item.why.status().message()), HasSubstr("'butt'"));
}

TEST(Why, WhatIsNoPathOrNoFigureIsRefused) {
  EXPECT_EQ(Ask(kTwoSections, "fit..length").why.status().code(), absl::StatusCode::kInvalidArgument);
  EXPECT_EQ(Ask(kTwoSections, "").why.status().code(), absl::StatusCode::kInvalidArgument);
  for (const char* none :
       {"fit.overall_length_mm.mm", "sections.sections.mass_g", "sections.sections[7].mass_g", "unknown",
        "design_digest", "sections.sections[butt].id", "fit[0]", "sections.sections[0][1]"}) {
    EXPECT_EQ(Ask(kTwoSections, none).why.status().code(), absl::StatusCode::kNotFound) << none;
  }
}

// The weights' own centre moves with nothing that is uncertain but by rounding: no "± 0.000000000 mm".
TEST(Why, NoUncertaintyIsRoundingAlone) {
  for (const testing::DesignFile& file : testing::DesignFilesBelow("examples/designs")) {
    const ReadResult read = ReadDesign("rod", testing::BytesOf(file.path));
    const Review review = ReviewDesign(read);
    const auto all = Why(*read.document, review.report, "balance");
    ASSERT_TRUE(all.ok());
    for (const v1::WhyStep& step : all->figures()) {
      EXPECT_THAT(step.text(), ::testing::Not(HasSubstr("± 0.00000"))) << file << " " << step.path();
    }
  }
}

// A batch of parts lists its parts: what is potted in one of them is mixed for by itself. A moment without counterweights
// rests on neither them nor their potting.
TEST(Why, OpensWhatIsMeantAndNothingElse) {
  const Asked batch = Ask(Example("casting.txtpb"), "bonding.batches[0].need_ml");
  ASSERT_TRUE(batch.why.ok()) << batch.why.status();
  EXPECT_FALSE(batch.review.report.bonding().batches(0).potting());
  double sum = 0;
  for (const v1::WhyStep& input : batch.why->figures(0).inputs()) sum += input.value();
  EXPECT_NEAR(sum, batch.why->figures(0).value(), 1e-9);
  const Asked moment = Ask(Example("casting.txtpb"), "balance.counterweights.moment_without_n_m");
  ASSERT_TRUE(moment.why.ok()) << moment.why.status();
  EXPECT_GT(moment.why->figures(0).inputs_size(), 3);
  for (const v1::WhyStep& input : moment.why->figures(0).inputs()) {
    if (input.path().starts_with("balance.parts")) EXPECT_THAT(input.about(), ::testing::Not(HasSubstr("weights")));
  }
}

// Every figure of every example can be opened to the bottom, and what it rests on exists.
TEST(Why, EveryFigureOfTheExamplesOpens) {
  for (const testing::DesignFile& file : testing::DesignFilesBelow("examples/designs")) {
    const ReadResult read = ReadDesign("rod", testing::BytesOf(file.path));
    ASSERT_TRUE(read.document);
    const Review review = ReviewDesign(read);
    int opened = 0;
    for (const char* part : {"sections", "fit", "bonding", "guides", "wraps", "balance"}) {
      const auto all = Why(*read.document, review.report, part);
      ASSERT_TRUE(all.ok()) << file << " " << part << ": " << all.status();
      std::set<std::string> kinds;
      for (const v1::WhyStep& step : all->figures()) {
        // One item of each list is as good as all of them.
        std::string kind = step.path();
        while (kind.find('[') != std::string::npos) kind.erase(kind.find('['), kind.find(']') - kind.find('[') + 1);
        if (!kinds.insert(kind).second) continue;
        const auto why = Why(*read.document, review.report, step.path(), {.depth = 20});
        ASSERT_TRUE(why.ok()) << file << " " << step.path() << ": " << why.status();
        EXPECT_EQ(why->figures(0).path(), step.path());
        EXPECT_FALSE(why->figures(0).formula().empty()) << step.path();
        double sum = 0;
        for (const v1::WhyShare& share : why->figures(0).shares()) sum += share.of_variance();
        if (why->figures(0).shares_size() > 0) EXPECT_NEAR(sum, 1, 1e-9) << step.path();
        ++opened;
      }
    }
    EXPECT_GT(opened, 40) << file;
  }
}

}  // namespace
}  // namespace withy
