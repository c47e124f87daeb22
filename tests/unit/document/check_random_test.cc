// What must hold of the findings on any design, sense or nonsense.
#include <set>

#include "checked.h"
#include "support/random_design.h"

namespace withy {
namespace {

TEST(CheckRandomDesigns, FindingsAreWellFormed) {
  std::set<std::string> codes;
  for (const Code& code : DocumentCodes()) codes.insert(std::string(code.name));
  RandomDesigns designs(/*seed=*/20260314, {.nonsense = 0.3, .unknown_enums = true, .unknown_fields = true});
  std::set<std::string> met;
  for (int round = 0; round < 300; ++round) {
    const v1::Design design = designs.Next();
    for (const Finding& finding : CheckDesign(design)) {
      met.insert(finding.code);
      EXPECT_TRUE(codes.contains(finding.code)) << finding.code;
      const auto path = FieldPath::Parse(finding.at.ToString());
      ASSERT_TRUE(path.ok()) << path.status();
      EXPECT_EQ(path->ToString(), finding.at.ToString());
      EXPECT_FALSE(finding.message.empty());
      EXPECT_FALSE(finding.help.empty());
      for (const Number& number : finding.numbers)
        EXPECT_TRUE(std::isfinite(number.value)) << finding.code << ' ' << number.name;
    }
  }
  // Nonsense enough to have tried something.
  EXPECT_GE(met.size(), 12u);
}

}  // namespace
}  // namespace withy
