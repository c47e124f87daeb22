#include "withy/guides/guides.h"

#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

// Blank 2000 mm, 12 to 2 mm, its tip at 2000 mm; ring centre 3 mm beyond. A guide 503 mm down from there stands at
// 1500 mm, on 12 - 10 x 0.75 = 4.5 mm.
TEST(ComputeGuides, FromTheTipTopsRing) {
  const Rod rod = RodOf(R"(
    blank { sections { id: "s" length { mm: 2000 }
      taper { stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
    guides { id: "tipmost" from_tip { mm: 103 } }
    guides { id: "buttmost" from_tip { mm: 503 } }
    guides { id: "open" }
    tip_top { id: "t" end_beyond_tube { mm: 6 } ring_center_beyond_tube { mm: 3 } })");
  const GuidesAnswers answers = ComputeGuides(rod);
  ASSERT_EQ(answers.guides.size(), 3u);
  EXPECT_EQ(rod.guides[answers.guides[0].guide].id, "buttmost");
  EXPECT_EQ(rod.guides[answers.guides[2].guide].id, "open");
  EXPECT_NEAR(*answers.guides[0].blank_diameter_m * 1000, 4.5, 1e-9);
  EXPECT_NEAR(rod.guides[1].ring.from_butt_m->value() * 1000, 1500, 1e-9);
  EXPECT_FALSE(answers.guides[2].blank_diameter_m);
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_EQ(answers.unknowns[0].figure, "guides.guides[open].from_tip_mm");
}

}  // namespace
}  // namespace withy::testing
