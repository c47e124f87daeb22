// Designs that are sound, though a hasty rule might take them for faulty, or for designs that nothing can be told of.
#include "gtest/gtest.h"
#include "support/design_files.h"

namespace withy::testing {
namespace {

class SoundDesign : public ::testing::TestWithParam<DesignFile> {};

TEST_P(SoundDesign, IsToldNothingButAdvice) {
  const Reviewed reviewed = ReviewFile(GetParam().path);
  for (const Finding& finding : reviewed.review.findings) {
    EXPECT_EQ(finding.severity, Severity::kAdvice) << SeverityName(finding.severity) << '[' << finding.code << "] "
                                                   << finding.at.ToString() << ": " << finding.message;
  }
  EXPECT_EQ(reviewed.exit_status, 0);
}

INSTANTIATE_TEST_SUITE_P(Files, SoundDesign, ::testing::ValuesIn(DesignFilesBelow("tests/sound")),
                         [](const auto& info) { return TestNameOf(info.param); });

}  // namespace
}  // namespace withy::testing
