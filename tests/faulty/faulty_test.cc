// Every design below this folder has one thing wrong with it and is told so: code, severity, place and numbers.
#include <cmath>

#include "gtest/gtest.h"

#include "faulty/expected.h"
#include "support/design_files.h"

namespace withy::testing {
namespace {

class FaultyDesign : public ::testing::TestWithParam<DesignFile> {};

TEST_P(FaultyDesign, IsToldWhatIsWrong) {
  std::string problem;
  const Expected expected = ReadExpected(ExpectedPathOf(GetParam().path), problem);
  ASSERT_EQ(problem, "") << ExpectedPathOf(GetParam().path);
  const Reviewed reviewed = ReviewFile(GetParam().path);
  EXPECT_EQ(Differences(expected, reviewed.review.findings), "");
  EXPECT_EQ(reviewed.exit_status, expected.exit_status);
}

// What a builder reads: a message, a help, and numbers that are numbers.
TEST_P(FaultyDesign, IsToldInWholeFindings) {
  for (const Finding& finding : ReviewFile(GetParam().path).review.findings) {
    EXPECT_FALSE(finding.message.empty()) << finding.code;
    EXPECT_FALSE(finding.message.ends_with('.')) << finding.code << ": " << finding.message;
    EXPECT_EQ(finding.message.find('\n'), std::string::npos) << finding.code;
    EXPECT_FALSE(finding.help.empty()) << finding.code;
    for (const Number& number : finding.numbers) {
      EXPECT_TRUE(std::isfinite(number.value)) << finding.code << ' ' << number.name;
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Files, FaultyDesign, ::testing::ValuesIn(DesignFilesBelow("tests/faulty")),
                         [](const auto& info) { return TestNameOf(info.param); });

}  // namespace
}  // namespace withy::testing
