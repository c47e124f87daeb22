// Which law a design gives: what is known of bore, taper and dry fits.
//
//   blank   2000 long, 12 mm at the butt, 2 at the tip: 0.005 mm per mm
//   bore    300 long, 10 + 0.02 z, as a drawing or as plugs; 0.1 mm of room for glue
//   by hand the butt face rests at (12 - 0.005 cut + 0.1 - 10) / 0.02 = 105 - cut / 4
#include <cmath>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "support/rod_of.h"

namespace withy::testing {
namespace {

using From = RestLaw::From;

constexpr char kBore[] = "bore { at { mm: 0 } diameter { mm: 10 } } bore { at { mm: 300 } diameter { mm: 16 } }";

Rod RodWith(const std::string& handle, const std::string& log = "", const std::string& cuts = "",
            const std::string& first_row = "stations { at { mm: 0 } outer { mm: 12 } }") {
  return RodOf("blank { sections { id: \"s\" length { mm: 2000 } taper {" + first_row +
               "stations { at { mm: 2000 } outer { mm: 2 } } } } " + cuts +
               "} handle { parts { id: \"h\" kind: \"one_piece_handle\" length { mm: 300 } " + handle + "} } " + log);
}

double LengthMm(const Rod& rod, double cut_mm) {
  return rod.rest_law->LengthAt(cut_mm / 1000).value * 1000;
}

TEST(MakeRestLaw, BoreAgainstTaper) {
  const Rod rod = RodWith(kBore);
  ASSERT_TRUE(rod.rest_law);
  EXPECT_EQ(rod.rest_law->from(), From::kContact);
  EXPECT_NEAR(LengthMm(rod, 0), 2105, 1e-6);
  EXPECT_NEAR(LengthMm(rod, 100), 80 + 1900, 1e-6);
  // hypot(0.05, 0.1) of a calliper and a drawing, over 0.02.
  EXPECT_NEAR(rod.rest_law->LengthAt(0).high * 1000, 2105 + std::hypot(0.05, 0.1) / 0.02, 1e-6);
}

// The law is of the blank as supplied, wherever its butt is now; what is planned elsewhere is off.
TEST(MakeRestLaw, TheCutIsCountedFromTheBlankAsSupplied) {
  const Rod rod =
      RodWith(kBore, "log { cut { section: \"s\" amount { mm: 60 } } }",
              "cuts { section: \"s\" amount { mm: 100 } } cuts { section: \"s\" at_end: TIP amount { mm: 30 } }");
  EXPECT_NEAR(LengthMm(rod, 0), 2105 - 30, 1e-6);
  EXPECT_NEAR(LengthMm(rod, 60), 90 + 1940 - 30, 1e-6);
  EXPECT_NEAR(rod.blank_tip_m->value() * 1000, 80 + 1900 - 30, 1e-6);
}

TEST(MakeRestLaw, RoomForGlueAndStopAreTheParts) {
  EXPECT_NEAR(LengthMm(RodWith(std::string(kBore) + "fitting { glue_clearance { mm: 0.3 } }"), 0), 2115, 1e-6);
  EXPECT_NEAR(LengthMm(RodWith(std::string(kBore) + "fitting { stop { mm: 120 } }"), 0), 2120, 1e-6);
}

// Plugs of 12 and 13 stop at 300 - 200 = 100 and 300 - 150 = 150.
TEST(MakeRestLaw, PlugsTellTheBoreBetweenThem) {
  const Rod rod = RodWith("plugs { plug { mm: 13 } depth { mm: 150 } } plugs { plug { mm: 12 } depth { mm: 200 } }");
  ASSERT_TRUE(rod.rest_law);
  EXPECT_EQ(rod.rest_law->from(), From::kContact);
  EXPECT_NEAR(LengthMm(rod, 0), 2105, 1e-6);
  EXPECT_TRUE(rod.rest_law->KnownAt(0.010));   // 102.5
  EXPECT_FALSE(rod.rest_law->KnownAt(0.040));  // 95
}

// It came to rest at 90, where no plug has been: from there on dry fits count.
TEST(MakeRestLaw, ADryFitBeyondThePlugsSaysMore) {
  const Rod rod = RodWith("plugs { plug { mm: 13 } depth { mm: 150 } } plugs { plug { mm: 12 } depth { mm: 200 } }",
                          "log { fit { part: \"h\" overall { mm: 2090 } } }");
  EXPECT_EQ(rod.rest_law->from(), From::kDryFits);
}

TEST(MakeRestLaw, PlugsThatContradictEachOtherTellNothing) {
  EXPECT_FALSE(
      RodWith("plugs { plug { mm: 12 } depth { mm: 150 } } plugs { plug { mm: 13 } depth { mm: 200 } }").rest_law);
}

// Read 2100 with 30 still to come off the tip: 2070 as the blank will be. 2105 - 5 = 100: 0.1 mm less than read.
TEST(MakeRestLaw, DryFitsAreSeenAsTheBlankWillBe) {
  const Rod rod = RodWith(kBore, R"(log { fit { part: "h" overall { mm: 2400 } arbors_on: true } }
    log { fit { part: "h" overall { mm: 2100 plus_minus: 0.5 } } })",
                          "cuts { section: \"s\" at_end: TIP amount { mm: 30 } }");
  ASSERT_EQ(rod.rest_law->seen().size(), 1u);  // with arbors on it tells nothing of the bore
  const RestLaw::Seen& seen = rod.rest_law->seen()[0];
  EXPECT_EQ(seen.dry_fit, 1);
  EXPECT_NEAR(seen.length_m * 1000, 2070, 1e-9);
  EXPECT_NEAR(*seen.expected_m * 1000, 2075, 1e-6);
  EXPECT_NEAR(*seen.tighter_m * 1000, -0.1, 1e-6);
}

TEST(MakeRestLaw, AReamedBoreIsNotTheOneThatWasRead) {
  const Rod rod =
      RodWith(kBore, R"(log { fit { part: "h" overall { mm: 2100 } } } log { done { step: "reamed" what: "h" } }
    log { fit { part: "h" overall { mm: 2060 } } })");
  EXPECT_EQ(rod.rest_law->from(), From::kDryFits);
  EXPECT_EQ(rod.rest_law->seen().size(), 1u);
  EXPECT_FALSE(RodWith(kBore, "log { done { step: \"reamed\" what: \"h\" } }").rest_law);
}

TEST(MakeRestLaw, WithoutTheButtsDiameterThereIsNoContact) {
  EXPECT_FALSE(RodWith(kBore, "", "", "stations { at { mm: 200 } outer { mm: 11 } }").rest_law);
}

TEST(MakeRestLaw, WithoutABoreThereIsNone) {
  EXPECT_FALSE(RodWith("").rest_law);
  EXPECT_FALSE(RodWith("bore { at { mm: 300 } diameter { mm: 16 } } bore_known: \"mouth\"").rest_law);
  EXPECT_FALSE(RodWith(std::string(kBore) + "slides_on_from: TIP").rest_law);
}

// 9 of cap behind the blank.
TEST(MakeRestLaw, ABlankThatRunsThroughHasOneToo) {
  const Rod rod = RodOf(R"(blank { sections { id: "s" length { mm: 2000 } } }
    handle { parts { kind: "butt_cap" length { mm: 9 } } })");
  ASSERT_TRUE(rod.rest_law);
  EXPECT_EQ(rod.rest_law->from(), From::kThrough);
  EXPECT_EQ(rod.rest_law->host(), -1);
  EXPECT_NEAR(LengthMm(rod, 100), 1909, 1e-9);
}

}  // namespace
}  // namespace withy::testing
