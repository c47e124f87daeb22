#include "withy/guides/practice.h"

#include "gtest/gtest.h"

namespace withy::testing {
namespace {

constexpr double kInch_m = 0.0254;

// Builders of fly rods quote: butt guide 28 to 32 in from the butt end, and one guide per foot and one more: ten on
// nine feet, here give or take one.
TEST(Practice, OfFlyRodsIsWhatIsQuoted) {
  const Practice fly = PracticeFor("fly");
  EXPECT_NEAR(fly.butt_guide_from_butt->least, 28 * kInch_m, 1e-12);
  EXPECT_NEAR(fly.butt_guide_from_butt->most, 32 * kInch_m, 1e-12);
  const UsualRange nine_feet = fly.guides->For(9 * 12 * kInch_m);
  EXPECT_EQ(nine_feet.least, 9);
  EXPECT_EQ(nine_feet.most, 11);
  EXPECT_FALSE(fly.butt_guide_from_reel);
}

// Every value says where it comes from, and its least is below its most.
TEST(Practice, SaysItsSourceAndIsARange) {
  for (const Practice& practice : UsualPractices()) {
    for (const auto& range :
         {practice.butt_guide_from_reel, practice.butt_guide_from_butt, practice.butt_ring, practice.running_ring}) {
      if (!range) continue;
      EXPECT_LT(range->least, range->most) << practice.technique;
      EXPECT_FALSE(range->source.empty()) << practice.technique;
      EXPECT_EQ(range->plugin, "") << practice.technique;
    }
    ASSERT_TRUE(practice.guides) << practice.technique;
    EXPECT_FALSE(practice.guides->source.empty()) << practice.technique;
  }
}

TEST(Practice, OfATechniqueWithoutRulesIsThatOfTheNearestOrNone) {
  const Practice trolling = PracticeFor("trolling");
  EXPECT_EQ(trolling.technique, "trolling");
  EXPECT_EQ(trolling.butt_ring->most, PracticeFor("conventional").butt_ring->most);
  const Practice unknown = PracticeFor("other: kite");
  EXPECT_FALSE(unknown.butt_guide_from_reel || unknown.butt_guide_from_butt || unknown.guides || unknown.butt_ring);
}

// A club's figures stand in place of the usual ones, one by one; of two plugins the first counts.
TEST(Practice, OfPluginsStandsInPlace) {
  Practice club, shop, other;
  club.technique = shop.technique = "casting";
  other.technique = "surf";
  club.butt_guide_from_butt = UsualRange{0.8, 0.9, "the club's rule", "club"};
  shop.butt_guide_from_butt = UsualRange{0.7, 0.8, "the shop's rule", "shop"};
  shop.guides = UsualCount{0, 8, 11, "the shop's rule", "shop"};
  other.butt_ring = UsualRange{0.05, 0.06, "the club's rule", "club"};
  const Practice casting = PracticeFor("casting", {club, shop, other});
  EXPECT_EQ(casting.butt_guide_from_butt->plugin, "club");
  EXPECT_FALSE(casting.butt_guide_from_reel);  // the same place by another origin
  EXPECT_EQ(casting.guides->For(2.2).least, 8);
  EXPECT_EQ(casting.guides->For(2.2).most, 11);
  EXPECT_EQ(casting.guides->For(2.2).plugin, "shop");
  EXPECT_EQ(casting.butt_ring->plugin, "");
}

TEST(ButtGuideBounds, IsWhatBothRulesHaveInCommon) {
  Practice practice;
  EXPECT_FALSE(ButtGuideBounds(practice, 0.25));
  practice.butt_guide_from_reel = UsualRange{0.4, 0.6, "a", "club"};
  EXPECT_FALSE(ButtGuideBounds(practice, std::nullopt));
  EXPECT_NEAR(ButtGuideBounds(practice, 0.25)->least, 0.65, 1e-12);
  practice.butt_guide_from_butt = UsualRange{0.7, 0.9, "b", ""};
  const std::optional<UsualRange> both = ButtGuideBounds(practice, 0.25);
  ASSERT_TRUE(both);
  EXPECT_NEAR(both->least, 0.70, 1e-12);
  EXPECT_NEAR(both->most, 0.85, 1e-12);
  practice.butt_guide_from_butt = UsualRange{0.9, 1.0, "b", ""};
  EXPECT_FALSE(ButtGuideBounds(practice, 0.25));
}

}  // namespace
}  // namespace withy::testing
