// Adhesives and the shop, in SI.
#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/rod_of.h"

namespace withy::testing {
namespace {

using ::testing::ElementsAre;

// 73.4 F = (73.4 - 32) x 5/9 = 23 C; 45 min = 2700 s, 24 h = 86400 s.
TEST(Bonds, AnAdhesiveInSi) {
  const Rod rod = RodOf(R"(adhesives { id: "a" kind: "epoxy_paste" mix {
    by_volume { resin: 1 hardener: 1 } by_mass { resin: 100 } density { g_per_cm3: 1.15 }
    pot_life { minutes: 45 } pot_life_at { fahrenheit: 73.4 } pot_life_mass { g: 100 } set { hours: 6 }
    full_cure { days: 1 } cure_at { celsius: 23 } } })");
  ASSERT_EQ(rod.adhesives.size(), 1u);
  const Adhesive& adhesive = rod.adhesives[0];
  EXPECT_EQ(adhesive.by_volume, (Ratio{1, 1}));
  EXPECT_FALSE(adhesive.by_mass);  // half a ratio is none
  EXPECT_NEAR(adhesive.density_kg_m3->value, 1150, 1e-9);
  EXPECT_NEAR(adhesive.pot_life_s->value, 2700, 1e-9);
  EXPECT_NEAR(*adhesive.pot_life_at_c, 23, 1e-12);
  EXPECT_NEAR(adhesive.pot_life_mass->value.grams(), 100, 1e-9);
  EXPECT_NEAR(adhesive.full_cure_s->value, 86400, 1e-9);
  EXPECT_EQ(adhesive.pot_life_s->at.ToString(), "adhesives[a].mix.pot_life");
}

// 1 fl oz = 29.5735295625 ml.
TEST(Bonds, TheShopInSi) {
  const Rod rod =
      RodOf(R"(shop { smallest_batch { fl_oz: 1 } adhesive_waste: 1.25 saw_kerf { mm: 0.6 } last_cut { inch: 0.25 }
    gluing_time { minutes: 8 } temperature { celsius: 21 }
    winding_check_bores { mm: 12.5 } winding_check_bores { mm: -1 } winding_check_bores { mm: 11 } })");
  EXPECT_NEAR(rod.shop.smallest_batch_m3->value, 29.5735295625e-6, 1e-18);
  EXPECT_EQ(rod.shop.adhesive_waste, 1.25);
  EXPECT_NEAR(rod.shop.last_cut->value.mm(), 6.35, 1e-12);
  EXPECT_NEAR(rod.shop.gluing_time_s->value, 480, 1e-9);
  EXPECT_EQ(rod.shop.temperature_c, 21);
  EXPECT_THAT(rod.shop.winding_check_bores, ElementsAre(Length::Mm(11), Length::Mm(12.5)));
}

// A factor below 1 would take adhesive away.
TEST(Bonds, AWasteFactorBelowOneIsNotKnown) {
  EXPECT_FALSE(RodOf("shop { adhesive_waste: 0.5 }").shop.adhesive_waste);
}

TEST(Bonds, APartsRoomForAdhesiveAndItsWeights) {
  const Rod rod = RodOf(R"(handle { parts { id: "p" fitting { glue_clearance { mm: 0.2 } stop { mm: 30 } }
    arbors { bond: "b" } weights { count: 1 bond: "a" potted: "first" cover { mm: 4 } } } })");
  const Part& part = rod.handle.parts[0];
  EXPECT_NEAR(part.glue_clearance->value.mm(), 0.2, 1e-12);
  EXPECT_NEAR(part.stop->value.mm(), 30, 1e-12);
  EXPECT_EQ(part.arbors[0].bond, "b");
  EXPECT_TRUE(part.weights->potted_first);
  EXPECT_NEAR(part.weights->cover->value.mm(), 4, 1e-12);
}

}  // namespace
}  // namespace withy::testing
