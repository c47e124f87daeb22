#include "withy/findings/finding.h"

#include <gtest/gtest.h>

namespace withy {
namespace {

constexpr Code kExample = {.name = "guides/example",
                           .severity = Severity::kWarning,
                           .summary = "An example",
                           .why = "It shows.",
                           .action = "Look at it."};

TEST(Finding, TakesSeverityAndHelpFromItsCode) {
  const Finding finding = MakeFinding(kExample, FieldPath().Field("guides"), "seen", {{"length_mm", 2}});
  EXPECT_EQ(finding.code, "guides/example");
  EXPECT_EQ(finding.severity, Severity::kWarning);
  EXPECT_EQ(finding.at.ToString(), "guides");
  EXPECT_EQ(finding.message, "seen");
  EXPECT_EQ(finding.help, "Look at it.");
  ASSERT_EQ(finding.numbers.size(), 1u);
  EXPECT_EQ(finding.numbers[0], (Number{"length_mm", 2}));
  EXPECT_EQ(MakeFinding(kExample, {}, "seen", {}, "Do this.").help, "Do this.");
}

TEST(Finding, CannotTellSaysWhatToMeasure) {
  const Finding finding = CannotTell(kExample, FieldPath().Field("guides"), "not known", "Measure the ring.");
  EXPECT_EQ(finding.code, "guides/example");
  EXPECT_EQ(finding.severity, Severity::kCannotTell);
  EXPECT_EQ(finding.help, "Measure the ring.");
}

TEST(Finding, SeveritiesHaveNames) {
  EXPECT_EQ(SeverityName(Severity::kAdvice), "advice");
  EXPECT_EQ(SeverityName(Severity::kCannotTell), "cannot tell");
  EXPECT_EQ(SeverityName(Severity::kWarning), "warning");
  EXPECT_EQ(SeverityName(Severity::kError), "error");
}

}  // namespace
}  // namespace withy
