// A whole re-plan after any log: the review ends, and every figure is a number. (That nothing closed changes is held to the
// rod: tests/unit/rod/random_logs_test.cc.)
#include <cmath>

#include "gtest/gtest.h"
#include "support/finite.h"
#include "support/random_log.h"
#include "support/rod_of.h"
#include "withy/review/review.h"

namespace withy::testing {
namespace {

#ifdef NDEBUG
constexpr int kLogs = 10000;
#else
constexpr int kLogs = 300;
#endif
constexpr int kMostEntries = 16;

void ExpectSound(const Review& review) {
  EXPECT_EQ(FirstNotFinite(review.report), "");
  EXPECT_EQ(FirstNotFinite(review.rod), "");
  for (const Finding& finding : review.findings) {
    EXPECT_FALSE(finding.message.empty()) << finding.code;
    for (const Number& number : finding.numbers) EXPECT_TRUE(std::isfinite(number.value)) << finding.code;
  }
}

TEST(Replan, NeverFailsWhateverTheLog) {
  ReadResult read = ReadDesign("test", kRodForLogs);
  ASSERT_TRUE(read.document);
  const v1::Design plan = read.document->design;
  RandomLog entries(20260323);
  for (int log = 0; log < kLogs; ++log) {
    read.document->design = plan;
    for (std::uint64_t n = 1 + entries.Below(kMostEntries); n > 0; --n) entries.AppendTo(read.document->design);
    ExpectSound(ReviewDesign(read));
    ASSERT_FALSE(HasFailure()) << "log " << log << ": " << read.document->design.ShortDebugString();
  }
}

}  // namespace
}  // namespace withy::testing
