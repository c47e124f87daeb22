// Balance worked by hand, and against the moments of the same bodies added up another way.
#include "withy/balance/balance.h"

#include <algorithm>
#include <cmath>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

#include "unit/balance/balanced_rod.h"

namespace withy::testing {
namespace {

// A straight blank of 40 g, 2000 mm, from 10 mm up; cap 10 g on the first 10 mm; one guide of 2 g, 500 mm below the tip.
//   mass 52 g; moment 10 x 5 + 40 x 1010 + 2 x 1510 = 43 470 g mm; balance 835.96 mm.
const char kRod[] = R"(
blank { sections { id: "s" length { mm: 2000 } mass { g: 40 plus_minus: 0.3 source: MEASURED }
  balance_from_butt { mm: 1000 plus_minus: 2 }
  taper { stations { at { mm: 0 } outer { mm: 8 } wall { mm: 1 } } stations { at { mm: 2000 } outer { mm: 8 } } } } }
guide_models { id: "m" mass { g: 2 plus_minus: 0 } }
guides { id: "g" model: "m" from_tip { mm: 500 } }
)";
const char kCap[] = R"(parts { id: "cap" kind: "butt_cap" length { mm: 10 } mass { g: 10 plus_minus: 0.1 } })";

Rod WithHandle(const std::string& more, const std::string& parts = "") {
  return RodOf(std::string(kRod) + "handle {" + kCap + parts + "}" + more);
}

TEST(ComputeBalance, MassAndBalancePoint) {
  const BalanceAnswers answers = BalanceOf(WithHandle(""));
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 52, 1e-9);
  EXPECT_NEAR(answers.balance_m->value() * 1000, 43470.0 / 52, 1e-6);
  EXPECT_NEAR(answers.mass_kg->plus_minus() * 1000, std::hypot(0.3, 0.1), 1e-9);
}

// Derivatives by hand: of x = S/M to the blank's mass (1010 - x)/M, to its balance point 40/M, to the cap's mass (5 - x)/M.
TEST(ComputeBalance, UncertaintyToFirstOrder) {
  const BalanceAnswers answers = BalanceOf(WithHandle(""));
  const double x = 43470.0 / 52;
  const double expected = std::sqrt(std::pow(0.3 * (1010 - x) / 52, 2) + std::pow(2 * 40.0 / 52, 2) +
                                    std::pow(0.1 * (5 - x) / 52, 2));
  EXPECT_NEAR(answers.balance_m->plus_minus() * 1000, expected, 1e-6);
}

// A reel of 200 g at 100 mm, held at 120: moment g x (0.052 x (0.83596 - 0.12) + 0.2 x (0.1 - 0.12)), tip-heavy.
TEST(ComputeBalance, WithTheReel) {
  const BalanceAnswers answers = BalanceOf(WithHandle(R"(intent { holding_point_from_butt { mm: 120 }
    reel { mass { g: 200 plus_minus: 1 } foot_center_from_butt { mm: 100 } } })"));
  EXPECT_NEAR(answers.mass_with_reel_kg->value() * 1000, 252, 1e-9);
  EXPECT_NEAR(answers.balance_with_reel_m->value() * 1000, (43470.0 + 20000) / 252, 1e-6);
  EXPECT_NEAR(answers.moment_about_hold_n_m->value(), 9.80665 * (43470e-6 - 0.052 * 0.12 + 0.2 * -0.02), 1e-9);
}

// About the hold: the blank m L^2/12 + m r^2/4 (1 + (6/8)^2) + m 890^2, the cap as a rod of 10 mm, the guide as a point.
TEST(ComputeBalance, Inertia) {
  const BalanceAnswers answers = BalanceOf(WithHandle("intent { holding_point_from_butt { mm: 120 } }"));
  const double blank = 0.040 * (4.0 / 12 + 0.004 * 0.004 / 4 * (1 + 36.0 / 64) + 0.89 * 0.89);
  const double cap = 0.010 * (0.01 * 0.01 / 12 + 0.115 * 0.115);
  const double guide = 0.002 * 1.39 * 1.39;
  EXPECT_NEAR(*answers.inertia_about_hold_kg_m2, blank + cap + guide, 1e-12);
}

TEST(ComputeBalance, WhatHasNoMassKeepsTheSumOpen) {
  const BalanceAnswers answers = BalanceOf(WithHandle("", "parts { id: \"check\" kind: \"winding_check\" length { mm: 3 } }"));
  EXPECT_FALSE(answers.mass_kg);
  EXPECT_FALSE(answers.balance_m);
  ASSERT_EQ(answers.unknowns.size(), 1u);  // no reel is asked for before the rod's own mass is known
  EXPECT_EQ(answers.unknowns[0].figure, "balance.mass_g");
  EXPECT_EQ(answers.unknowns[0].measure, "weigh handle.parts[check]");
}

// A cork cone 30 to 20 mm over 100 mm, bore 10: pi/12 x 100 (900 + 600 + 400) - pi/4 x 100 x 100 mm3 at 0.2 g/cm3.
TEST(ComputeBalance, APartWithoutMassIsWeighedByItsShape) {
  const BalanceAnswers answers = BalanceOf(WithHandle("", R"(parts { id: "grip" length { mm: 100 } density { g_per_cm3: 0.2 }
    outer { at { mm: 0 } diameter { mm: 30 } } outer { at { mm: 100 } diameter { mm: 20 } }
    bore { at { mm: 0 } diameter { mm: 10 } } })"));
  const double volume = M_PI / 12 * 100 * 1900 - M_PI / 4 * 100 * 100;
  const Contribution& grip = answers.parts[2];
  EXPECT_EQ(grip.id, "grip");
  EXPECT_NEAR(grip.mass_kg->value() * 1e6, volume * 0.2, 1e-6);
  EXPECT_EQ(grip.mass_from, Source::kComputed);
}

// 7 weights of 10 g, 9 mm long, 5 mm across, three abreast in a cavity 11 mm wide that begins at 20 mm: layers of 3, 3, 1 at
// 4.5, 13.5 and 22.5 mm: (3 x 4.5 + 3 x 13.5 + 22.5) / 7 = 10.929 mm.
TEST(ComputeBalance, Counterweights) {
  const BalanceAnswers answers = BalanceOf(WithHandle("", R"(parts { id: "butt" length { mm: 100 } mass { g: 30 }
    cavity { at { mm: 20 } length { mm: 60 } diameter { mm: 11 } }
    weights { count: 7 unit_mass { g: 10 } unit_length { mm: 9 } unit_diameter { mm: 5 } } })"));
  const Contribution& weights = answers.parts[3];
  EXPECT_NEAR(weights.mass_kg->value() * 1000, 70, 1e-9);
  EXPECT_NEAR(weights.center_m->value() * 1000, 10 + 20 + 76.5 / 7, 1e-6);
}

// A measured total of two models of printed guides moves the guides, not the blank.
TEST(ComputeBalance, GuidesWeighedTogether) {
  const Rod rod = RodOf(std::string(kRod) + R"(
    guide_models { id: "n" mass { g: 4 plus_minus: 0.2 } }
    guide_models { id: "o" mass { g: 3 plus_minus: 0.1 } }
    guides { id: "h" model: "n" from_tip { mm: 400 } }
    guides { id: "i" model: "o" from_tip { mm: 300 } }
    log { weighed { what: ["h", "i"] mass { g: 7.5 plus_minus: 0.05 } } })");
  const BalanceAnswers answers = BalanceOf(rod);
  EXPECT_NEAR(answers.parts[2].mass_kg->value() * 1000, 4.4, 1e-9);  // 0.5 g shared 4 : 1
  EXPECT_NEAR(answers.parts[3].mass_kg->value() * 1000, 3.1, 1e-9);
}

// 52 g by its parts, of which the blank is open by 0.3 and the cap by 0.1 g; the scales say 52.2 g: the 0.2 g are shared 9 : 1.
// Moment 43 470 + 0.18 x 1010 + 0.02 x 5 g mm.
TEST(ComputeBalance, TheWholeOnTheScalesFixesTheSum) {
  const BalanceAnswers answers = BalanceOf(WithHandle("log { weighed { mass { g: 52.2 plus_minus: 0.05 } } }"));
  EXPECT_NEAR(answers.remainder_kg->value() * 1000, 0.2, 1e-9);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 52.2, 1e-9);
  EXPECT_NEAR(answers.mass_kg->plus_minus() * 1000, 0.05, 1e-9);
  EXPECT_NEAR(answers.parts[0].mass_kg->value() * 1000, 40.18, 1e-9);
  EXPECT_NEAR(answers.parts[1].mass_kg->value() * 1000, 10.02, 1e-9);
  EXPECT_NEAR(answers.parts[2].mass_kg->value() * 1000, 2, 1e-9);
  EXPECT_NEAR(answers.balance_m->value() * 1000, (43470 + 0.18 * 1010 + 0.02 * 5) / 52.2, 1e-6);
}

// 1.5 g more than the parts, which leave open sqrt(0.3^2 + 0.1^2) = 0.32 g: something was not counted. Nothing is glued, so
// it is counted at the middle of the blank, 1010 mm.
TEST(ComputeBalance, WhatTheWholeWeighsBeyondItsPartsIsCounted) {
  const BalanceAnswers answers = BalanceOf(WithHandle("log { weighed { mass { g: 53.5 plus_minus: 0.1 } } }"));
  EXPECT_NEAR(answers.remainder_kg->value() * 1000, 1.5, 1e-9);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 53.5, 1e-9);
  EXPECT_NEAR(answers.mass_kg->plus_minus() * 1000, 0.1, 1e-9);
  ASSERT_EQ(answers.parts.size(), 4u);
  EXPECT_NEAR(answers.parts[3].mass_kg->value() * 1000, 1.5, 1e-9);
  EXPECT_NEAR(answers.balance_m->value() * 1000, (43470 + 1.5 * 1010) / 53.5, 1e-6);
}

TEST(ComputeBalance, ThePointWhereTheWholeBalancedFixesTheMoment) {
  const BalanceAnswers answers = BalanceOf(
      WithHandle("log { weighed { mass { g: 52 plus_minus: 0.1 } balance_from_butt { mm: 835 plus_minus: 1 } } }"));
  EXPECT_NEAR(answers.balance_m->value() * 1000, 835, 1e-6);
  EXPECT_NEAR(answers.balance_m->plus_minus() * 1000, 1, 1e-6);
  double mass = 0, moment = 0;
  for (const Contribution& part : answers.parts) {
    mass += part.mass_kg->value();
    moment += part.mass_kg->value() * part.center_m->value();
  }
  EXPECT_NEAR(mass * 1000, 52, 1e-9);
  EXPECT_NEAR(moment / mass * 1000, 835, 1e-6);
}

// With a part that was not weighed the sum is open, but not the whole.
TEST(ComputeBalance, TheWholeIsKnownWhereAPartIsNot) {
  const BalanceAnswers answers = BalanceOf(WithHandle("log { weighed { mass { g: 54 plus_minus: 0.1 } } }",
                                                      "parts { id: \"check\" kind: \"winding_check\" length { mm: 3 } }"));
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 54, 1e-9);
  EXPECT_FALSE(answers.balance_m);
  EXPECT_FALSE(answers.remainder_kg);
  ASSERT_FALSE(answers.unknowns.empty());
  EXPECT_EQ(answers.unknowns[0].figure, "balance.balance_from_butt_mm");
}

// What was on the scales was longer.
TEST(ComputeBalance, AWeighingBeforeACutIsNotUsed) {
  const BalanceAnswers answers = BalanceOf(WithHandle(
      "log { weighed { mass { g: 52.2 plus_minus: 0.05 } } } log { cut { section: \"s\" at_end: TIP amount { mm: 1000 } } }"));
  EXPECT_EQ(answers.whole, -1);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 32, 1e-9);
}

// Its mass is known within bounds wherever it lies (40 mg/m, 200 turns on 8.2 mm, one diameter all along); its share of the
// balance is not.
TEST(ComputeBalance, AWrapWithoutAPlaceIsWeighed) {
  const BalanceAnswers answers = BalanceOf(WithHandle(R"(
    threads { id: "t" turns_per_10_mm: 50 tex: 40 }
    wraps { id: "w" kind: "trim" length { mm: 40 } thread: "t" })"));
  ASSERT_TRUE(answers.mass_kg);
  EXPECT_NEAR(answers.mass_kg->value() * 1e6, 52000 + 40 * 0.2 * std::hypot(M_PI * 8.2, 0.2), 1e-6);
  EXPECT_FALSE(answers.balance_m);
}

// The mass leaves the wrap out, so which one and what to add has to be said.
TEST(ComputeBalance, AWrapThatIsNotCountedIsNamedOnce) {
  const BalanceAnswers answers = BalanceOf(WithHandle(R"(
    threads { id: "t" turns_per_10_mm: 50 tex: 40 }
    finishes { id: "clear" coats: 2 mix { density { g_per_cm3: 1.1 } } }
    wraps { id: "w" kind: "trim" place { from_butt { mm: 500 } } length { mm: 40 } thread: "t" coats: "clear" })"));
  int told = 0;
  for (const Assumption& assumption : answers.assumptions) {
    if (assumption.at.ToString() != "wraps[w]") continue;
    ++told;
    EXPECT_NE(assumption.why.find("clear has no film"), std::string::npos) << assumption.why;
  }
  EXPECT_EQ(told, 1);
}

// 3 g of adhesive at 10 mm: 55 g, moment 43 470 + 30 g mm.
TEST(ComputeBalance, AdhesiveIsCounted) {
  BondingAnswers bonding;
  GluedJoint joint;
  joint.what = "cap";
  joint.at = FieldPath().Field("handle").Field("parts").Item("cap", 0);
  joint.mass_kg = Uncertain(0.003);
  joint.center_m = 0.010;
  bonding.joints.push_back(joint);
  const BalanceAnswers answers = BalanceOf(WithHandle(""), bonding);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 55, 1e-9);
  EXPECT_NEAR(answers.balance_m->value() * 1000, 43500.0 / 55, 1e-6);
  EXPECT_EQ(answers.parts[2].at.ToString(), "handle.parts[cap].bond");
}

TEST(ComputeBalance, AdhesiveThatCannotBeToldIsListed) {
  BondingAnswers bonding;
  GluedJoint joint;
  joint.what = "cap";
  joint.at = FieldPath().Field("handle").Field("parts").Item("cap", 0);
  joint.measure = "measure the bore";
  bonding.joints.push_back(joint);
  const auto listed = [](const BalanceAnswers& answers) {
    return std::any_of(answers.assumptions.begin(), answers.assumptions.end(), [](const Assumption& assumption) {
      return assumption.at.ToString() == "handle.parts[cap].bond" && assumption.used == "0 g";
    });
  };
  EXPECT_TRUE(listed(BalanceOf(WithHandle(""), bonding)));
  // What the whole weighs holds it.
  EXPECT_FALSE(listed(BalanceOf(WithHandle("log { weighed { mass { g: 52.2 plus_minus: 0.05 } } }"), bonding)));
}

// Tape 10 mm wide between the blank's 8 and 12 mm: pi/4 (144 - 64) x 10 = 628.32 mm3 at 1 g/cm3, at 10 + 20 + 5 mm.
TEST(ComputeBalance, ATapeArborIsWeighedByItsSize) {
  const BalanceAnswers answers = BalanceOf(WithHandle("", R"(parts { id: "grip" length { mm: 100 } mass { g: 20 }
    bore { at { mm: 0 } diameter { mm: 12.2 } }
    arbors { id: "a" kind: "tape" at { mm: 20 } length { mm: 10 } outer { mm: 12 } density { g_per_cm3: 1 } } })"));
  ASSERT_EQ(answers.parts[3].id, "a");
  EXPECT_NEAR(answers.parts[3].mass_kg->value() * 1000, M_PI / 4 * 80 * 10 * 1e-3, 1e-9);
  EXPECT_NEAR(answers.parts[3].center_m->value() * 1000, 35, 1e-6);
}

// Two arbors that fit proposes for a grip that has none, 12 mm wide, 8 to 12 mm: pi/4 80 x 24 mm3 = 1.508 g of tape at
// 1 g/cm3.
TEST(ComputeBalance, ProposedArborsAreNotCountedAndThatIsSaid) {
  const Rod rod = WithHandle("", R"(parts { id: "grip" length { mm: 100 } mass { g: 20 } bond: "glue" })");
  Inputs inputs = rod.inputs;
  const SectionsAnswers sections = ComputeSections(rod, inputs);
  FitAnswers fit = ComputeFit(rod, sections);
  ArborFit arbor;
  arbor.length_m = 0.012;
  arbor.blank_m = 0.008;
  arbor.outer_m = 0.012;
  fit.parts[1].proposed = {arbor, arbor};
  const BalanceAnswers answers = ComputeBalance(rod, sections, fit, {}, ComputeWraps(rod), inputs);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 72, 1e-9);
  int told = 0;
  for (const Assumption& assumption : answers.assumptions) {
    if (assumption.at.ToString() != "handle.parts[grip].arbors") continue;
    ++told;
    EXPECT_NE(assumption.why.find("the 2 that are proposed are not counted: about 1.5 g"), std::string::npos)
        << assumption.why;
  }
  EXPECT_EQ(told, 1);
}

// The reel turns about the hold as a point: 0.2 x 0.02^2 more.
TEST(ComputeBalance, SwingWithTheReel) {
  const BalanceAnswers answers = BalanceOf(WithHandle(R"(intent { holding_point_from_butt { mm: 120 }
    reel { mass { g: 200 } foot_center_from_butt { mm: 100 } } })"));
  EXPECT_NEAR(*answers.swing_inertia_kg_m2 - *answers.inertia_about_hold_kg_m2, 0.2 * 0.02 * 0.02, 1e-12);
}

// 43 470 + 20 000 - 252 x 100 g mm.
TEST(ComputeBalance, HeldAtTheReelFootWhereTheOrderDoesNotSay) {
  const BalanceAnswers answers =
      BalanceOf(WithHandle("intent { reel { mass { g: 200 } foot_center_from_butt { mm: 100 } } }"));
  EXPECT_NEAR(answers.moment_about_hold_n_m->value(), 9.80665e-6 * (43470 + 20000 - 25200), 1e-9);
  EXPECT_TRUE(std::any_of(answers.assumptions.begin(), answers.assumptions.end(), [](const Assumption& assumption) {
    return assumption.at.ToString() == "intent.holding_point_from_butt";
  }));
}

}  // namespace
}  // namespace withy::testing
