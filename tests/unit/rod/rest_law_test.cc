// The law of the cut, worked by hand on the bore and taper of the casting example:
//
//   bore   12.6 at 140 (a shoulder, 21 behind it), 13.6 at 190, straight to 260, 13.9 at 330, 14.2 at the mouth, 355
//   blank  13.46 at 0, 13.21 at 3 in, 12.94 at 6 in, 12.66 at 9 in, 2.06 at 87 in = 2209.8 mm;  room for glue 0.10
//
// Between 140 and 190 the bore widens by 0.02 mm per mm: the butt face comes to rest at 140 + (diameter + 0.10 - 12.6) / 0.02.
#include "withy/rod/rest_law.h"

#include <cmath>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

constexpr double kMm = 1e-3, kInch = 25.4e-3;
constexpr double kNear = 1e-7;  // metres: the search for a diameter stops at 1e-9, and 1 mm of diameter is 50 of place

Profile Mm(std::vector<Profile::Knot> knots) {
  for (Profile::Knot& knot : knots) knot = {knot.x * kMm, knot.y * kMm};
  return Profile(std::move(knots));
}

RestLaw::Setup Casting(double stop = 0) {
  RestLaw::Setup setup;
  setup.from = RestLaw::From::kContact;
  setup.host = 0;
  setup.blank_m = 2209.8 * kMm;
  setup.as_read = Insertion({.bore = Mm({{0, 21}, {140, 21}, {140, 12.6}, {190, 13.6}, {260, 13.6}, {330, 13.9}, {355, 14.2}}),
                             .shaft = Mm({{0, 13.46}, {76.2, 13.21}, {152.4, 12.94}, {228.6, 12.66}, {2209.8, 2.06}}),
                             .clearance = 0.1 * kMm,
                             .stop = stop});
  setup.diameter_plus_minus_m = 0.1 * kMm;
  return setup;
}

RestLaw::Seen Fit(double cut_m, double length_m, double plus_minus_m = kMm) {
  RestLaw::Seen seen;
  seen.cut_m = cut_m;
  seen.length_m = length_m;
  seen.plus_minus_m = plus_minus_m;
  return seen;
}

void ExpectBand(const RestLaw::Band& band, double low_mm, double value_mm, double high_mm) {
  EXPECT_NEAR(band.low, low_mm * kMm, kNear);
  EXPECT_NEAR(band.value, value_mm * kMm, kNear);
  EXPECT_NEAR(band.high, high_mm * kMm, kNear);
}

// 188.0 + 2209.8, 175.5 + 2133.6, 162.0 + 2057.4; at 6 3/4 in 12.87 + 0.10: 158.5 + 2038.35.
TEST(RestLaw, TheCastingExampleByHand) {
  const RestLaw law(Casting());
  EXPECT_NEAR(law.LengthAt(0).value, 2397.8 * kMm, kNear);
  EXPECT_NEAR(law.LengthAt(3 * kInch).value, 2309.1 * kMm, kNear);
  EXPECT_NEAR(law.LengthAt(6 * kInch).value, 2219.4 * kMm, kNear);
  EXPECT_NEAR(law.LengthAt(6.75 * kInch).value, 2196.85 * kMm, kNear);
  EXPECT_NEAR(law.RestAt(3 * kInch), 175.5 * kMm, kNear);
  EXPECT_NEAR(*law.LeastCut(2219.4 * kMm), 6 * kInch, 1e-7);
  EXPECT_TRUE(law.KnownAt(6 * kInch));
  // From 3 to 6 in the blank loses 0.27 mm over 76.2: 1 + (0.27 / 76.2) / 0.02 off the rod for one off the butt.
  EXPECT_NEAR(law.ShorterPer(4 * kInch), 1 + 0.27 / 76.2 / 0.02, 1e-9);
}

// 0.1 mm of diameter is 5 mm of place: at 3 in 170.5 to 180.5. The blank's length comes in quadrature.
TEST(RestLaw, TheBandIsTheContactOfAThinnerAndAThickerBlank) {
  RestLaw::Setup setup = Casting();
  ExpectBand(RestLaw(setup).LengthAt(3 * kInch), 2304.1, 2309.1, 2314.1);
  setup.blank_plus_minus_m = 3 * kMm;
  ExpectBand(RestLaw(setup).LengthAt(3 * kInch), 2309.1 - std::hypot(5, 3), 2309.1, 2309.1 + std::hypot(5, 3));
}

// Uncut, 0.04 mm more fill the straight bore: the blank stops not at 190 but beyond 260. With 0.1 mm more, at
// 260 + (13.66 - 13.6) / 0.3 x 70 = 274.
TEST(RestLaw, AJumpWithinTheUncertaintyIsInTheBand) {
  const RestLaw law(Casting());
  ExpectBand(law.LengthAt(0), 2392.8, 2397.8, 274 + 2209.8);
  EXPECT_TRUE(law.JumpNear(0));
  EXPECT_FALSE(law.JumpNear(3 * kInch));
}

// Read 2306.6: the face at 173.0, where the bore is 13.26. Expected were 13.31: 0.05 mm less than read, and the rule's 1 mm
// are 0.02 mm.
TEST(RestLaw, ADryFitTellsTheDiameters) {
  RestLaw::Setup setup = Casting();
  setup.blank_plus_minus_m = 3 * kMm;
  setup.seen = {Fit(3 * kInch, 2306.6 * kMm)};
  const RestLaw law(setup);
  EXPECT_NEAR(*law.seen()[0].expected_m, 2309.1 * kMm, kNear);
  EXPECT_NEAR(*law.seen()[0].tighter_m, -0.05 * kMm, 1e-9);
  EXPECT_NEAR(law.tighter_m(), -0.05 * kMm, 1e-9);
  // There the reading alone is open, and the blank's length has been read along.
  ExpectBand(law.LengthAt(3 * kInch), 2305.6, 2306.6, 2307.6);
  EXPECT_NEAR(law.DiameterErrorAt(3 * kInch), 0.02 * kMm, 2e-9);
  // Half way to 75 mm: 0.02 + (0.10 - 0.02) / 2; beyond: 0.10.
  EXPECT_NEAR(law.DiameterErrorAt(3 * kInch + 37.5 * kMm), 0.06 * kMm, 2e-9);
  EXPECT_NEAR(law.DiameterErrorAt(6 * kInch), 0.10 * kMm, 2e-9);
  // 12.94 + 0.10 - 0.05 = 12.99: at 159.5, and 5 mm to both sides.
  EXPECT_NEAR(law.LengthAt(6 * kInch).value, 2216.9 * kMm, 1e-7);
  EXPECT_NEAR(law.LengthAt(6 * kInch).low, 2211.9 * kMm, 1e-7);
}

TEST(RestLaw, OfSeveralDryFitsTheLatestCounts) {
  RestLaw::Setup setup = Casting();
  setup.seen = {Fit(0, 2396.8 * kMm), Fit(3 * kInch, 2306.6 * kMm)};
  const RestLaw law(setup);
  EXPECT_NEAR(*law.seen()[0].tighter_m, -0.02 * kMm, 1e-9);  // 1 mm deeper
  EXPECT_NEAR(law.tighter_m(), -0.05 * kMm, 1e-9);
}

// 9 in off: 12.76 would go to 148, the stop is at 150. Any blank that is not 0.04 mm thicker stands there.
TEST(RestLaw, AFitOnAStopTellsNothingOfTheDiameters) {
  RestLaw::Setup setup = Casting(150 * kMm);
  setup.seen = {Fit(9 * kInch, (150 + 1981.2) * kMm)};
  const RestLaw law(setup);
  EXPECT_FALSE(law.seen()[0].tighter_m);
  EXPECT_EQ(law.tighter_m(), 0);
  EXPECT_EQ(law.DiameterErrorAt(9 * kInch), 0.1 * kMm);
}

// 3 m of blank and handle are 2564.8 at most: no diameter explains it, and none is made up.
TEST(RestLaw, AFitThatNoDiameterExplainsTellsNothing) {
  RestLaw::Setup setup = Casting();
  setup.seen = {Fit(0, 3.0)};
  const RestLaw law(setup);
  EXPECT_FALSE(law.seen()[0].tighter_m);
  EXPECT_NEAR(law.LengthAt(0).value, 2397.8 * kMm, kNear);
}

// Two plugs, 13.0 at 160 and 13.6 at 190. At 9 in the butt, 12.76, would go to 148, if the bore went on as it was: it may
// stand at 160, or go 2 mm for each mm from where the thinnest blank passes 160. That has 13.0 there with the 0.1 mm it is
// thinner: 13.0 lies at 76.2 + 76.2 x 0.21 / 0.27 = 135.467.
TEST(RestLaw, BehindTheDeepestPlugTheBandSaysSo) {
  RestLaw::Setup setup = Casting();
  setup.as_read = Insertion({.bore = Mm({{0, 9.8}, {160, 13.0}, {190, 13.6}, {355, 16.9}}),
                             .shaft = setup.as_read->shaft(),
                             .clearance = 0.1 * kMm});
  setup.known_from_z_m = 160 * kMm;
  setup.known_to_z_m = 190 * kMm;
  const RestLaw law(setup);
  const double behind = 76.2 + 76.2 * 0.21 / 0.27;
  ExpectBand(law.LengthAt(9 * kInch), 160 + 2209.8 - behind - 2 * (228.6 - behind), 148 + 1981.2, 160 + 1981.2);
  EXPECT_FALSE(law.KnownAt(9 * kInch));
  EXPECT_TRUE(law.KnownAt(3 * kInch));
}

// Uncut the butt stops at 188, or 0.1 mm thicker beyond the widest plug at 190: then anywhere up to the mouth.
TEST(RestLaw, AheadOfTheWidestPlugTheBandSaysSo) {
  RestLaw::Setup setup = Casting();
  setup.known_to_z_m = 190 * kMm;
  const RestLaw law(setup);
  ExpectBand(law.LengthAt(0), 2392.8, 2397.8, 355 + 2209.8);
}

// 1 mm for 1 mm, and 0 to 2 possible: 2300 - 30, 30 to both sides and the rule's 1 mm.
TEST(RestLaw, OneDryFitAloneIsDrawnOnWithAllThatCanBe) {
  RestLaw::Setup setup;
  setup.from = RestLaw::From::kDryFits;
  setup.blank_m = 2.2;
  setup.seen = {Fit(50 * kMm, 2300 * kMm)};
  const RestLaw law(setup);
  ExpectBand(law.LengthAt(80 * kMm), 2270 - std::hypot(30, 1), 2270, 2270 + std::hypot(30, 1));
  ExpectBand(law.LengthAt(50 * kMm), 2299, 2300, 2301);
  EXPECT_EQ(law.ShorterPer(80 * kMm), 1);
  EXPECT_NEAR(*law.LeastCut(2270 * kMm), 80 * kMm, kNear);
  EXPECT_FALSE(law.KnownAt(80 * kMm));
}

// 88.7 mm for 76.2: the next 76.2 take 88.7 again, within a quarter (22.175) and what two readings of 1 mm leave open.
TEST(RestLaw, TheLastTwoDryFitsGiveTheSlope) {
  RestLaw::Setup setup;
  setup.from = RestLaw::From::kDryFits;
  setup.blank_m = 2.2;
  setup.seen = {Fit(0, 2397.8 * kMm), Fit(3 * kInch, 2309.1 * kMm), Fit(3 * kInch, 2309.1 * kMm)};
  const RestLaw law(setup);
  const double open = std::hypot(88.7 / 4, std::sqrt(2.0), 1);
  ExpectBand(law.LengthAt(6 * kInch), 2220.4 - open, 2220.4, 2220.4 + open);
  EXPECT_NEAR(law.ShorterPer(6 * kInch), 88.7 / 76.2, 1e-9);
}

TEST(RestLaw, ABlankThatRunsThroughGetsShorterByWhatComesOff) {
  RestLaw::Setup setup;
  setup.through_m = 9 * kMm;
  setup.blank_m = 2000 * kMm;
  setup.blank_plus_minus_m = 1 * kMm;
  const RestLaw law(setup);
  ExpectBand(law.LengthAt(100 * kMm), 1908, 1909, 1910);
  EXPECT_EQ(law.ShorterPer(100 * kMm), 1);
  EXPECT_NEAR(*law.LeastCut(1909 * kMm), 100 * kMm, kNear);
  EXPECT_FALSE(law.LeastCut(8 * kMm));
  EXPECT_EQ(law.insertion(), nullptr);
}

}  // namespace
}  // namespace withy::testing
