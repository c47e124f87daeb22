// An opened figure as text. The trees are made here by hand, so that the layout is judged apart from any rod.
#include <gtest/gtest.h>

#include <string>

#include "google/protobuf/text_format.h"
#include "withy/review/why.h"

namespace withy {
namespace {

v1::WhyReport Parsed(const std::string& text) {
  v1::WhyReport why;
  EXPECT_TRUE(google::protobuf::TextFormat::ParseFromString(text, &why));
  return why;
}

TEST(WhyText, ATreeThatReadsWithoutColour) {
  const v1::WhyReport why = Parsed(R"(figures {
    path: "a.sum_mm" value: 7 plus_minus: 5 unit: "mm" text: "7.0 ± 5.0 mm" formula: "x + y" source: "a book"
    inputs { path: "a.x_mm" value: 3 unit: "mm" text: "3.0 ± 3.0 mm" formula: "as written" source: "own definition"
      inputs { path: "x" written: true text: "3 ± 3 mm" source: "measured" line: 12 share: 0.36 } }
    inputs { path: "a.y_mm" text: "4.0 mm" deeper: true more: 2 }
    shares { at: "y" text: "4 ± 4 mm" source: "plan" line: 13 of_variance: 0.64 }
    shares { at: "x" text: "3 ± 3 mm" source: "measured" line: 12 of_variance: 0.36 }
  })");
  EXPECT_EQ(WhyText(why, {}), R"(a.sum_mm = 7.0 ± 5.0 mm
│ x + y
│ [a book]
├─ a.x_mm = 3.0 ± 3.0 mm
│  │ as written
│  │ [own definition]
│  └─ x = 3 ± 3 mm  measured, line 12, 36 % of the variance
├─ a.y_mm = 4.0 mm  ...
└─ and 2 more like it

Where ± 5.0 mm comes from, by share of the variance
   64 %  y = 4 ± 4 mm  plan, line 13
   36 %  x = 3 ± 3 mm  measured, line 12

'...' stands for more: --depth N opens it.
)");
}

TEST(WhyText, WhatCannotBeToldSaysWhatToMeasure) {
  const v1::WhyReport why =
      Parsed(R"(figures { path: "a.b_mm" formula: "f" source: "s" measure: "weigh the module" })");
  EXPECT_EQ(WhyText(why, {}), "a.b_mm: cannot be told\n  to settle it: weigh the module\n  f\n  [s]\n");
}

TEST(WhyText, FiguresUnopenedAreAList) {
  const v1::WhyReport why = Parsed(R"(figures { path: "a.b" text: "2" } figures { path: "a.c" })");
  EXPECT_EQ(WhyText(why, {}), "a.b = 2\na.c: not told of this rod\n");
}

TEST(WhyText, NothingOfAFileReachesATerminalRaw) {
  const v1::WhyReport why = Parsed(R"(figures {
    path: "a[\033[2J].b" text: "\033[1mx" formula: "f" source: "s"
    inputs { path: "w[\007]" written: true text: "\033c" source: "plan" }
    shares { at: "\033" of_variance: 1 text: "\033" source: "plan" } plus_minus: 1 value: 1
  })");
  const std::string text = WhyText(why, {});
  EXPECT_EQ(text.find('\033'), std::string::npos);
  EXPECT_EQ(text.find('\007'), std::string::npos);
}

TEST(WhyText, SmallSharesAreCountedTogether) {
  std::string shares;
  for (int i = 0; i < 12; ++i) shares += "shares { at: \"x\" source: \"plan\" of_variance: 0.001 } ";
  const v1::WhyReport why = Parsed(
      "figures { path: \"a_mm\" value: 1 plus_minus: 1 unit: \"mm\" text: \"1\" formula: \"f\" "
      "source: \"s\" shares { at: \"big\" source: \"plan\" of_variance: 0.988 } " +
      shares + "}");
  const std::string text = WhyText(why, {});
  EXPECT_NE(text.find("   99 %  big  plan\n"), std::string::npos) << text;
  EXPECT_NE(text.find("    1 %  12 more\n"), std::string::npos) << text;
}

}  // namespace
}  // namespace withy
