// Every design below this folder has one thing wrong with it and is told so: code, severity, place and numbers.
#include <cmath>

#include "faulty/expected.h"
#include "gtest/gtest.h"
#include "support/design_files.h"

namespace withy::testing {
namespace {

class FaultyDesign : public ::testing::TestWithParam<DesignFile> {
 protected:
  FaultyDesign()
      : expected_(ReadExpected(ExpectedPathOf(GetParam().path), problem_)),
        reviewed_(ReviewFile(GetParam().path, expected_.limits)) {}

  std::string problem_;
  const Expected expected_;
  const Reviewed reviewed_;
};

TEST_P(FaultyDesign, IsToldWhatIsWrong) {
  ASSERT_EQ(problem_, "") << ExpectedPathOf(GetParam().path);
  EXPECT_EQ(Differences(expected_, reviewed_.review.findings), "");
  EXPECT_EQ(reviewed_.exit_status, expected_.exit_status);
}

// What a builder reads: a message, a help, and numbers that are numbers.
TEST_P(FaultyDesign, IsToldInWholeFindings) {
  for (const Finding& finding : reviewed_.review.findings) {
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
