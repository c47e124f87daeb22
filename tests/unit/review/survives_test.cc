// Any design at all: the review ends, and every figure is a number.
#include <chrono>
#include <cmath>

#include "gtest/gtest.h"

#include "support/design_files.h"
#include "support/finite.h"
#include "support/mutation.h"
#include "support/random_design.h"
#include "support/rod_of.h"
#include "withy/review/review.h"

namespace withy::testing {
namespace {

void ExpectSurvives(const v1::Design& design, const std::string& what) {
  ReadResult read;
  read.document.emplace();
  read.document->design = design;
  Review review = ReviewDesign(read);
  ApplyWaivers(*read.document, {}, review);
  EXPECT_EQ(FirstNotFinite(review.report), "") << what;
  EXPECT_EQ(FirstNotFinite(review.rod), "") << what;
  for (const Finding& finding : review.findings) {
    for (const Number& number : finding.numbers) EXPECT_TRUE(std::isfinite(number.value)) << finding.code << ", " << what;
  }
}

TEST(Review, SurvivesRandomDesigns) {
  RandomDesigns designs(/*seed=*/11);
  for (int i = 0; i < 300; ++i) ExpectSurvives(designs.Next(), std::to_string(i));
}

// A sound rod with one thing changed gets much further than a random one.
TEST(Review, SurvivesEveryChangeOfOneThing) {
  const std::string path = std::string(WITHY_SOURCE_DIR) + "/examples/designs/casting.txtpb";
  ReadResult read = ReadDesign("casting", BytesOf(path));
  ASSERT_TRUE(read.document);
  v1::Design design = read.document->design;
  int n = 0;
  ForEachMutation(&design, [&](const std::string& what) {
    if (++n % 7 == 0) ExpectSurvives(design, what);  // a sample, for the time it takes
  });
  EXPECT_GT(n, 1000);
}

double SecondsForStations(int count) {
  std::string text = "blank { sections { id: \"s\" length { mm: 3000 } mass { g: 80 } material: \"carbon\" taper {";
  for (int i = 0; i < count; ++i) {
    const double at = 3000.0 * i / (count - 1);
    text += "stations { at { mm: " + std::to_string(at) + " } outer { mm: " + std::to_string(15 - at * 0.004) + " } }";
  }
  text += R"( } } cuts { section: "s" amount { mm: 10 } } }
    handle { parts { id: "g" kind: "grip" length { mm: 300 } bore { at { mm: 0 } diameter { mm: 16 } } mass { g: 30 } } })";
  const ReadResult read = ReadText(text);
  const auto start = std::chrono::steady_clock::now();
  const Review review = ReviewDesign(read);
  EXPECT_TRUE(review.report.balance().has_mass_g());
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

// Ten times the stations: a quadratic step would take a hundred times as long. Generous, for busy machines.
TEST(Review, CostGrowsWithTheStationsNotWithTheirSquare) {
  SecondsForStations(1000);
  EXPECT_LT(SecondsForStations(10000), 40 * SecondsForStations(1000));
}

}  // namespace
}  // namespace withy::testing
