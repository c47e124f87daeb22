// What the uncertainty of the law of the cut comes from; all shares worked by hand.
#include "withy/rod/rest_inputs.h"

#include <gtest/gtest.h>

#include <map>
#include <utility>

namespace withy {
namespace {

// A straight shaft of 10 mm in a bore that widens from 9 mm to 11 mm over 100 mm: 0.02 per unit, so that the shaft
// rests where the bore is 10 mm wide, and 0.08 mm on the diameter are 0.08 / 0.02 = 4 mm of place.
Rod ConeRod(double length_plus_minus_m, double diameter_plus_minus_m) {
  Rod rod;
  rod.blank.at = FieldPath().Field("blank");
  Section section;
  section.id = "b";
  section.at = rod.blank.at.Field("sections").Item("b", 0);
  rod.blank.sections.push_back(section);
  rod.blank.assembled = {0};
  Part part;
  part.id = "h";
  part.at = FieldPath().Field("handle").Field("parts").Item("h", 0);
  part.bore_known = BoreKnown::kProfile;
  rod.handle.parts.push_back(part);
  RestLaw::Setup setup;
  setup.from = RestLaw::From::kContact;
  setup.host = 0;
  setup.blank_m = 1;
  setup.blank_plus_minus_m = length_plus_minus_m;
  setup.diameter_plus_minus_m = diameter_plus_minus_m;
  setup.as_read.emplace(
      Insertion::Setup{.bore = Profile({{0, 0.009}, {0.1, 0.011}}), .shaft = Profile({{0, 0.010}, {1, 0.010}})});
  rod.rest_law.emplace(std::move(setup));
  return rod;
}

std::map<std::string, double> Shares(const Rod& rod, double cut_m) {
  std::map<std::string, double> shares;
  for (const RestInput& input : RestInputsOf(rod, cut_m)) shares[input.name] = input.of_variance;
  return shares;
}

TEST(RestInputs, ThreeOfLengthAndFourOfDiameters) {
  // 3^2 and 4^2 of 25.
  const auto shares = Shares(ConeRod(0.003, 0.00008), 0);
  ASSERT_EQ(shares.size(), 2u);
  EXPECT_NEAR(shares.at("blank.sections[b].length"), 0.36, 1e-6);
  EXPECT_NEAR(shares.at("handle.parts[h].bore (its diameters and the blank's)"), 0.64, 1e-6);
}

TEST(RestInputs, WhereADryFitWasReadItIsAllThatCounts) {
  // At the dry fit itself neither the blank's length nor the diameters count: it reads them along (see rest_law.h).
  Rod rod = ConeRod(0.003, 0.00008);
  DryFit fit;
  fit.at = FieldPath().Field("log").Item("e1", 0).Field("fit");
  rod.dry_fits.push_back(fit);
  RestLaw::Setup setup = rod.rest_law->setup();
  RestLaw::Seen seen;
  seen.cut_m = 0.02;
  seen.length_m = rod.rest_law->LengthAt(0.02).value;
  seen.plus_minus_m = 0.001;
  setup.seen.push_back(seen);
  rod.rest_law.emplace(std::move(setup));
  const auto there = Shares(rod, 0.02);
  ASSERT_TRUE(there.contains("log[e1].fit.overall"));
  EXPECT_NEAR(there.at("log[e1].fit.overall"), 1, 1e-3);
  // Far away, past the 75 mm after which it says no more than the readings, it is nothing.
  const auto far = Shares(rod, 0.2);
  EXPECT_FALSE(far.contains("log[e1].fit.overall") && far.at("log[e1].fit.overall") > 1e-3);
}

TEST(RestInputs, NothingWithoutALawOrAnUncertainty) {
  EXPECT_TRUE(RestInputsOf(Rod(), 0).empty());
  EXPECT_TRUE(Shares(ConeRod(0, 0), 0).empty());
}

TEST(RestInputs, ABlankThatRunsThroughDependsOnItsLength) {
  Rod rod = ConeRod(0.003, 0.00008);
  RestLaw::Setup setup;
  setup.from = RestLaw::From::kThrough;
  setup.blank_m = 1;
  setup.blank_plus_minus_m = 0.003;
  rod.rest_law.emplace(std::move(setup));
  const auto shares = Shares(rod, 0.1);
  ASSERT_EQ(shares.size(), 1u);
  EXPECT_EQ(shares.at("blank.sections[b].length"), 1);
}

}  // namespace
}  // namespace withy
