// Designs that are sound, though a hasty rule might take them for faulty: none is told of an error or a warning.
#include "gtest/gtest.h"

#include "support/design_files.h"

namespace withy::testing {
namespace {

class SoundDesign : public ::testing::TestWithParam<DesignFile> {};

TEST_P(SoundDesign, HasNoErrorAndNoWarning) {
  const Reviewed reviewed = ReviewFile(GetParam().path);
  for (const Finding& finding : reviewed.review.findings) {
    EXPECT_TRUE(finding.severity == Severity::kAdvice || finding.severity == Severity::kCannotTell)
        << SeverityName(finding.severity) << '[' << finding.code << "] " << finding.at.ToString() << ": " << finding.message;
  }
  EXPECT_TRUE(reviewed.exit_status == 0 || reviewed.exit_status == 4) << reviewed.exit_status;
}

INSTANTIATE_TEST_SUITE_P(Files, SoundDesign, ::testing::ValuesIn(DesignFilesBelow("tests/sound")),
                         [](const auto& info) { return TestNameOf(info.param); });

}  // namespace
}  // namespace withy::testing
