// Where rings and reel stand, worked by hand.
#include <cmath>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/rod_of.h"
#include "withy/line_load/line_load.h"

namespace withy::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;

// 2000 mm that taper from 12 to 2 mm: 12 - at / 200. The tip-top's ring stands 3 mm beyond the blank.
constexpr char kBlank[] = R"(
blank { sections { id: 'b' length { mm: 2000 }
  taper { stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
guide_models { id: 'high' form: 'single_foot' ring_height { mm: 20 } }
guide_models { id: 'low' form: 'single_foot' ring_height { mm: 6 } }
)";
constexpr char kTipTop[] = "tip_top { id: 'tip' ring_height { mm: 5 } ring_center_beyond_tube { mm: 3 } }\n";
// Written tip first: the train is butt first.
constexpr char kGuides[] =
    "guides { id: 'g2' model: 'low' from_tip { mm: 203 } } guides { id: 'g1' model: 'high' from_tip { mm: 1003 } }\n";
constexpr char kReel[] =
    "intent { technique: 'casting' reel { foot_center_from_butt { mm: 250 } spool_axis_height { mm: 22 } } }\n";

struct Told {
  std::optional<LineTrain> train;
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

Told Ask(const std::string& design, const std::vector<double>* places = nullptr) {
  Told told;
  told.train = TrainOf(RodOf(design), places, &told.assumptions, &told.unknowns);
  return told;
}

TEST(Train, HeightsBelowZeroAreNamedAndNotTakenAsNone) {
  const std::string low =
      "guide_models { id: 'under' ring_height { mm: -6 } } guides { id: 'g1' model: 'under' from_tip { mm: 900 } }\n";
  const Told ring = Ask(std::string(kReel) + kBlank + low + kTipTop);
  EXPECT_FALSE(ring.train.has_value());
  ASSERT_EQ(ring.unknowns.size(), 1u);
  EXPECT_THAT(ring.unknowns[0].measure, HasSubstr("guide_models[under].ring_height"));
  const Told reel = Ask(std::string("intent { technique: 'casting' reel { foot_center_from_butt { mm: 250 } "
                                    "spool_axis_height { mm: -40 } } }\n") +
                        kBlank + kGuides + kTipTop);
  EXPECT_FALSE(reel.train.has_value());
  ASSERT_EQ(reel.unknowns.size(), 1u);
  EXPECT_THAT(reel.unknowns[0].measure, HasSubstr("intent.reel.spool_axis_height"));
}

TEST(Loads, RefusedPullsAndDirectionsAreNamed) {
  EXPECT_THAT(
      WhatIsWrongWithPulls(RodOf("load_cases { id: 'a' tension { n: 3 } } load_cases { id: 'b' tension { n: 0 } }")),
      HasSubstr("load_cases[b]"));
  EXPECT_EQ(WhatIsWrongWithPulls(RodOf("load_cases { id: 'a' tension { n: 3 } }")), "");
  const Rod rod = RodOf("load_cases { id: 'a' tension { n: 3 } line_angle { deg: 181 } }");
  ASSERT_EQ(rod.load_cases.size(), 1u);
  EXPECT_THAT(WhatIsWrongWithDirection(rod.load_cases[0]), HasSubstr("load_cases[a].line_angle"));
}

// Rings at 2003 - 1003 = 1000 mm, where the blank is 12 - 5 = 7 mm, and 1800 mm, 12 - 9 = 3 mm: 20 + 3.5 and 6 + 1.5 mm
// from the axis.
TEST(Train, HeightAndHalfTheBlank) {
  const Told told = Ask(std::string(kReel) + kBlank + kGuides + kTipTop);
  ASSERT_TRUE(told.train.has_value());
  EXPECT_EQ(told.train->side, 1);
  EXPECT_THAT(told.train->guides, ElementsAre(1, 0));
  ASSERT_EQ(told.train->ring_m.size(), 3u);
  EXPECT_NEAR(told.train->ring_m[0], 1.000, 1e-9);
  EXPECT_NEAR(told.train->ring_m[1], 1.800, 1e-9);
  EXPECT_NEAR(told.train->ring_m[2], 2.003, 1e-9);
  EXPECT_NEAR(told.train->offset_m[0], 0.0235, 1e-9);
  EXPECT_NEAR(told.train->offset_m[1], 0.0075, 1e-9);
  EXPECT_NEAR(told.train->offset_m[2], 0.005, 1e-9);
  EXPECT_THAT(told.train->turned, ElementsAre(0, 0, 0));
}

// A spool across the rod: its axis stands for where the line leaves, and that is said.
TEST(Train, ReelAcrossTheRod) {
  const Told told = Ask(std::string(kReel) + kBlank + kGuides + kTipTop);
  ASSERT_TRUE(told.train.has_value());
  EXPECT_NEAR(told.train->reel_m, 0.250, 1e-12);
  EXPECT_NEAR(told.train->reel_height_m, 0.022, 1e-12);
  ASSERT_EQ(told.assumptions.size(), 1u);
  EXPECT_EQ(told.assumptions[0].at.ToString(), "intent.reel.spool_lip_from_foot_center");
}

// The lip 40 mm ahead of the foot, tilted by 3 degrees towards the blank: 60 - 40 tan 3 = 60 - 2.09631 = 57.90369 mm.
TEST(Train, SpoolLipAndTilt) {
  const Told told = Ask(std::string("intent { technique: 'spinning' reel { foot_center_from_butt { mm: 250 } "
                                    "spool_axis_height { mm: 60 } spool_axis_angle { deg: 3 } "
                                    "spool_lip_from_foot_center { mm: 40 } } }\n") +
                        kBlank + kGuides + kTipTop);
  ASSERT_TRUE(told.train.has_value());
  EXPECT_EQ(told.train->side, -1);
  EXPECT_NEAR(told.train->reel_m, 0.290, 1e-12);
  EXPECT_NEAR(told.train->reel_height_m, 0.05790369, 1e-8);
  EXPECT_TRUE(told.assumptions.empty());
}

// Clockwise seen from the butt: from above towards the right, which is out of the picture of a rod that points to the
// right; from below towards the left, into it.
TEST(Train, GuidesTurnedAboutTheBlank) {
  const std::string guides = "guides { id: 'g1' model: 'high' from_tip { mm: 1003 } angle { deg: 60 } }\n";
  const Told above = Ask(std::string(kReel) + kBlank + guides + kTipTop);
  ASSERT_TRUE(above.train.has_value());
  EXPECT_NEAR(above.train->turned[0], std::numbers::pi / 3, 1e-12);
  const Told below = Ask(std::string("intent { technique: 'fly' reel { foot_center_from_butt { mm: 60 } "
                                     "spool_axis_height { mm: 48 } } }\n") +
                         kBlank + guides + kTipTop);
  ASSERT_TRUE(below.train.has_value());
  EXPECT_NEAR(below.train->turned[0], -std::numbers::pi / 3, 1e-12);
  EXPECT_EQ(below.train->turned.back(), 0);
}

// A spiral arrangement ends with the tip-top under the blank.
TEST(Train, TipTopTurnedAboutTheBlank) {
  std::string tip_top = kTipTop;
  tip_top.insert(tip_top.find('{') + 1, " angle { deg: 180 } ");
  const Told told = Ask(std::string(kReel) + kBlank + tip_top);
  ASSERT_TRUE(told.train.has_value());
  EXPECT_NEAR(std::abs(told.train->turned.back()), std::numbers::pi, 1e-12);
}

// Places that a layout proposes count as those of the design do; guides that it gives none are left out.
TEST(Train, PlacesOfALayout) {
  const std::vector<double> places = {0.4, std::numeric_limits<double>::quiet_NaN()};
  const Told told = Ask(std::string(kReel) + kBlank + kGuides + kTipTop, &places);
  ASSERT_TRUE(told.train.has_value());
  EXPECT_THAT(told.train->guides, ElementsAre(0));
  EXPECT_NEAR(told.train->ring_m[0], 2.003 - 0.4, 1e-9);
  EXPECT_NEAR(told.train->offset_m[0], 0.006 + (12 - 1603 / 200.0) / 2000, 1e-9);
}

struct Missing {
  std::string design, measure;
};

TEST(Train, WhatIsMissingIsToBeMeasured) {
  const std::string blank = kBlank, reel = kReel, guides = kGuides, tip = kTipTop;
  const std::vector<Missing> all = {
      {"intent { technique: 'surf' reel { foot_center_from_butt { mm: 250 } spool_axis_height { mm: 90 } } }\n" +
           blank + guides + tip,
       "which side"},
      {"intent { technique: 'casting' reel { foot_center_from_butt { mm: 250 } } }\n" + blank + guides + tip,
       "intent.reel.spool_axis_height"},
      {"intent { technique: 'casting' reel { spool_axis_height { mm: 22 } } }\n" + blank + guides + tip,
       "intent.reel.foot_center_from_butt"},
      {reel + blank + guides, "tip-top"},
      {reel + blank + guides + "tip_top { id: 'tip' }", "tip_top.ring_height"},
      {reel + blank + "guide_models { id: 'm' } guides { id: 'x' model: 'm' from_tip { mm: 500 } }" + tip, "'x'"},
      {reel + blank + "guides { id: 'x' model: 'low' from_tip { mm: -20 } }" + tip, "'x' is not behind the tip-top"},
      {reel + blank + "guides { id: 'x' model: 'low' from_tip { mm: 2500 } }" + tip, "'x' is not on the blank"},
      {reel + blank + kGuides + "guides { id: 'x' model: 'low' from_tip { mm: 203 } }" + tip, "at one place"},
  };
  for (const Missing& missing : all) {
    const Told told = Ask(missing.design);
    EXPECT_FALSE(told.train.has_value()) << missing.measure;
    ASSERT_FALSE(told.unknowns.empty()) << missing.measure;
    EXPECT_THAT(told.unknowns[0].measure, HasSubstr(missing.measure));
    EXPECT_EQ(told.unknowns[0].figure, "line_load");
  }
}

}  // namespace
}  // namespace withy::testing
