// The plan for counterweights, worked by hand on the rod of balanced_rod.h.
#include "gtest/gtest.h"
#include "unit/balance/balanced_rod.h"

namespace withy::testing {
namespace {

// 20 500 g mm tip-heavy. Potted, 3 take 23.1612 x 3 x 250 = 17 371 and 4 take 22 235 g mm; taped in, 4 take 19 200: 3, and 4
// if potting is forgotten. 20 500 - 15 000 = 5 500 g mm are lifted at the tip's ring, 900 mm from the hold.
TEST(CounterweightPlan, StopsJustTipHeavyAfterPotting) {
  const BalanceAnswers answers = BalanceOf(MakeRod({}));
  ASSERT_TRUE(answers.counterweights);
  const CounterweightPlan& plan = *answers.counterweights;
  EXPECT_EQ(plan.part, "module");
  EXPECT_EQ(plan.status, CounterweightStatus::kBalanced);
  EXPECT_EQ(plan.count, 3);
  EXPECT_EQ(plan.count_if_potting_ignored, 4);
  EXPECT_EQ(plan.stack->fit(), 6);
  EXPECT_EQ(plan.confidence, Confidence::kSure);
  EXPECT_NEAR(plan.moment_without_n_m->value(), 9.80665 * 0.0205, 1e-12);
  EXPECT_NEAR(plan.moment_before_potting_n_m->value(), 9.80665 * 0.0055, 1e-12);
  EXPECT_NEAR(plan.moment_after_n_m->value(), 9.80665e-6 * (20500 - kUnitAndPottingG * 750), 1e-12);
  EXPECT_NEAR(*plan.moment_with_one_more_n_m, 9.80665e-6 * (20500 - kUnitAndPottingG * 960), 1e-12);
  EXPECT_NEAR(*plan.stop_short_at_tip_kg * 1000, 5500.0 / 900, 1e-9);
  EXPECT_NEAR(*plan.added_kg * 1000, 3 * kUnitAndPottingG, 1e-9);
  // Each as an even column of 60 mm whose centre is 250 mm from the hold.
  EXPECT_NEAR(*plan.added_inertia_kg_m2, 3e-9 * kUnitAndPottingG * (60 * 60 / 12.0 + 250 * 250), 1e-12);
}

// The sum of everything on the rod as designed, and the plan for as many, are worked out apart.
TEST(CounterweightPlan, AgreesWithTheRodAsDesigned) {
  const BalanceAnswers answers = BalanceOf(MakeRod({}));
  EXPECT_NEAR(answers.moment_about_hold_n_m->value(), answers.counterweights->moment_after_n_m->value(), 1e-12);
  EXPECT_NEAR(answers.balance_with_reel_m->value(), *answers.counterweights->balance_after_m, 1e-12);
  EXPECT_NEAR(answers.moment_about_hold_n_m->plus_minus(), answers.counterweights->moment_after_n_m->plus_minus(), 1e-12);
}

// The blank known to 10 g is 4 000 g mm; 3 129 are left after 3, and 4 lack 1 735: it may be 2, 3 or 4. To 40 g it is
// 16 000: 0 to 6.
TEST(CounterweightPlan, SaysHowSureItIs) {
  BalancedRod rod;
  rod.blank_plus_minus_g = "10";
  EXPECT_EQ(BalanceOf(MakeRod(rod)).counterweights->confidence, Confidence::kOneMoreOrLess);
  rod.blank_plus_minus_g = "40";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_EQ(answers.counterweights->count, 3);
  EXPECT_EQ(answers.counterweights->confidence, Confidence::kCannotTell);
}

TEST(CounterweightPlan, WhatIsPottedIsAFact) {
  BalancedRod rod;
  rod.log = "log { potted { part: \"module\" count: 4 } }";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  const CounterweightPlan& plan = *answers.counterweights;
  EXPECT_TRUE(plan.potted);
  EXPECT_EQ(plan.planned, 4u);
  EXPECT_EQ(plan.count, 4);
  EXPECT_EQ(plan.status, CounterweightStatus::kButtHeavy);
  EXPECT_NEAR(plan.moment_after_n_m->value(), 9.80665e-6 * (20500 - kUnitAndPottingG * 960), 1e-12);
}

TEST(CounterweightPlan, ButtHeavyWithoutAny) {
  BalancedRod rod;
  rod.module_g = "300";  // 40000 - 45000
  rod.count = "";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_EQ(answers.counterweights->status, CounterweightStatus::kButtHeavy);
  EXPECT_FALSE(answers.counterweights->count);
  EXPECT_FALSE(answers.counterweights->moment_after_n_m);
  EXPECT_NEAR(answers.moment_about_hold_n_m->value(), 9.80665 * -0.005, 1e-12);
}

TEST(CounterweightPlan, WithoutTheSizeOfOneHowManyFitCannotBeTold) {
  const Rod rod = RodOf(R"(handle { parts { id: "butt" length { mm: 100 } mass { g: 30 }
    cavity { at { mm: 20 } length { mm: 60 } diameter { mm: 11 } } } })");
  const BalanceAnswers answers = BalanceOf(rod);
  ASSERT_TRUE(answers.counterweights);
  EXPECT_FALSE(answers.counterweights->stack);
  EXPECT_FALSE(answers.counterweights->count);
  // A quarter of an ounce where neither part nor shop says.
  EXPECT_NEAR(answers.counterweights->unit_kg.value() * 1000, 28.349523125 / 4, 1e-12);
  ASSERT_FALSE(answers.unknowns.empty());
  EXPECT_EQ(answers.unknowns.back().figure, "balance.counterweights.count");
  EXPECT_EQ(answers.unknowns.back().measure, "measure length and diameter of one counterweight");
}

// The order's point comes before the hold: 318 mm instead of 300. Blank 100 x (700 - 318) = 38200, handle 130 x (150 -
// 318) = -21840, reel 200 x (300 - 318) = -3600: 12 760 g mm. Potted, n of 23.1612 g at 20 + 10 n take 23.1612 n (298 -
// 10 n): 1 takes 6671 and leaves 6089, 2 take 12 877. The inertia that they add is still about the hand: 20 mm long,
// 270 mm off.
TEST(CounterweightPlan, AimsAtTheBalancePointOrdered) {
  BalancedRod of;
  of.order = "balance_from_butt { mm: 318 plus_minus: 20 }";
  const BalanceAnswers answers = BalanceOf(MakeRod(of));
  ASSERT_TRUE(answers.aim);
  EXPECT_EQ(answers.aim->kind, Aim::Kind::kOrder);
  EXPECT_EQ(answers.aim->at_m.value(), 0.318);
  EXPECT_EQ(answers.aim->at_m.plus_minus(), 0);  // a tolerance is no uncertainty
  EXPECT_EQ(answers.hold_m->value(), 0.300);
  const CounterweightPlan& plan = *answers.counterweights;
  EXPECT_NEAR(plan.moment_without_n_m->value(), 9.80665e-6 * 12760, 1e-12);
  EXPECT_EQ(plan.count, 1);
  EXPECT_NEAR(plan.moment_after_n_m->value(), 9.80665e-6 * (12760 - kUnitAndPottingG * 288), 1e-12);
  EXPECT_NEAR(*plan.stop_short_at_tip_kg * 1000, (12760 - 20 * 288.0) / 882, 1e-9);
  EXPECT_NEAR(*plan.added_inertia_kg_m2, 1e-9 * kUnitAndPottingG * (20 * 20 / 12.0 + 270 * 270), 1e-12);
  EXPECT_NEAR(answers.moment_about_hold_n_m->value(), 9.80665e-6 * (20500 - kUnitAndPottingG * 750), 1e-12);
}

// 3 balance at 317.8 - 11.5 = 306.3 mm: within 20 of the 318 that are ordered, where 1 is planned for just tip-heavy.
TEST(CheckBalance, LeavesANumberThatMeetsTheOrderAlone) {
  BalancedRod of;
  of.order = "balance_from_butt { mm: 318 plus_minus: 20 }";
  const Rod rod = MakeRod(of);
  std::vector<Finding> findings;
  CheckBalance(rod, SectionsAnswers{}, WrapsAnswers{}, BalanceOf(rod), findings);
  EXPECT_EQ(CodesIn(findings), std::vector<std::string>{});
}

TEST(CounterweightPlan, AimsAtTheReelFootWhereTheOrderNamesNothing) {
  const BalanceAnswers answers =
      BalanceOf(RodOf(R"(intent { reel { mass { g: 200 } foot_center_from_butt { mm: 100 } } }
    handle { parts { id: "butt" length { mm: 100 } mass { g: 30 } } })"));
  EXPECT_EQ(answers.aim->kind, Aim::Kind::kReelFoot);
  EXPECT_EQ(answers.aim->at_m.value(), 0.100);
}

// A second part with weights: 2 of 10 g, 10 mm long, that fill its bore of 15 mm but for pi/4 (225 - 100) x 20 mm3 of
// 1.15e-3 g; they have their centre at 420 mm and pull 120 mm in front of the hold.
const double kOtherG = 20 + M_PI / 4 * 125 * 20 * 1.15e-3;
const char kOther[] =
    R"(parts { id: "fore" kind: "grip" place { from_butt { mm: 400 } } length { mm: 100 } mass { g: 0 }
    cavity { at { mm: 10 } length { mm: 50 } diameter { mm: 15 } }
    weights { count: 2 unit_mass { g: 10 plus_minus: 0 } unit_length { mm: 10 } unit_diameter { mm: 10 } cover { mm: 0 } } })";

TEST(CounterweightPlan, TheWeightsOfEveryPartAreCounted) {
  BalancedRod of;
  of.parts = kOther;
  const BalanceAnswers answers = BalanceOf(MakeRod(of));
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 230 + 3 * kUnitAndPottingG + kOtherG, 1e-9);
  EXPECT_EQ(answers.counterweights->part, "module");
  EXPECT_NEAR(answers.counterweights->moment_without_n_m->value(), 9.80665e-6 * (20500 + kOtherG * 120), 1e-12);
  int told = 0;
  for (const Assumption& assumption : answers.assumptions) {
    told += assumption.at.ToString() == "handle.parts[fore].weights.count" && assumption.used == "2";
  }
  EXPECT_EQ(told, 1);
}

// The part that can be planned comes first, though one without a cavity stands before it.
TEST(CounterweightPlan, PlansThePartWithACavity) {
  BalancedRod of;
  of.parts = R"(parts { id: "cap" kind: "butt_cap" length { mm: 10 } mass { g: 5 }
    weights { count: 1 unit_mass { g: 7 plus_minus: 0 } } })";
  of.before = true;
  EXPECT_EQ(BalanceOf(MakeRod(of)).counterweights->part, "module");
}

// How exactly potting is filled in widens the plan, so it is said.
TEST(CounterweightPlan, ListsHowExactlyPottingIsFilledIn) {
  const BalanceAnswers answers = BalanceOf(MakeRod({}));
  int told = 0;
  for (const Assumption& assumption : answers.assumptions) {
    told += assumption.at.ToString() == "handle.parts[module].weights.bond" && assumption.used == "within 10 %";
  }
  EXPECT_EQ(told, 1);
}

// With n of them, in g and g mm: 430 + 23.1612 n at 149500 + 23.1612 n (20 + 10 n): 347.7, 331.4, 317.8, 306.3 mm.
TEST(CheckBalance, SaysWhichNumberMeetsTheOrder) {
  BalancedRod of;
  of.order = "balance_from_butt { mm: 318 plus_minus: 5 }";
  const Rod rod = MakeRod(of);
  std::vector<Finding> findings;
  CheckBalance(rod, SectionsAnswers{}, WrapsAnswers{}, BalanceOf(rod), findings);
  ASSERT_EQ(CodesIn(findings), std::vector<std::string>{"balance/target"});
  EXPECT_NEAR(findings[0].numbers[0].value, (149500 + kUnitAndPottingG * 150) / (430 + kUnitAndPottingG * 3), 1e-6);
  // 2 are butt-heavy of 318 by a hair; the plan stops at 1.
  EXPECT_NE(findings[0].help.find("With 2 counterweights in 'module' instead of 3 it balances at 318 mm; with 1, the most "
                                  "that leave it tip-heavy of that point, at 331 mm."),
            std::string::npos)
      << findings[0].help;
}

// Within 0.1 mm of 318 none of them does: the number of the plan is said, and no other.
TEST(CheckBalance, SaysTheNumberOfThePlanWhereNoneMeetsTheOrder) {
  BalancedRod of;
  of.order = "balance_from_butt { mm: 318 plus_minus: 0.1 }";
  const Rod rod = MakeRod(of);
  const BalanceAnswers answers = BalanceOf(rod);
  ASSERT_EQ(answers.counterweights->count, 1);
  std::vector<Finding> findings;
  CheckBalance(rod, SectionsAnswers{}, WrapsAnswers{}, answers, findings);
  ASSERT_EQ(CodesIn(findings), std::vector<std::string>{"balance/target"});
  EXPECT_NE(findings[0].help.find("With 1 counterweight in 'module' instead of 3 it balances at 331 mm."), std::string::npos)
      << findings[0].help;
}

const BalanceRemedy* Find(const BalanceAnswers& answers, BalanceRemedy::Kind kind) {
  for (const BalanceRemedy& remedy : answers.instead) {
    if (remedy.kind == kind) return &remedy;
  }
  return nullptr;
}

// 40000 - 230 x 150 = 5 500 g mm: on the handle's arm of 150 mm 36.67 g. As heavy per length as the handle, 230 / 300 g/mm, a
// butt longer by y: 230/300 y (300 + y/2) = 5500, y = 23.029. The reel is on the hold and balances nothing.
TEST(BalanceRemedies, OfATipHeavyRod) {
  BalancedRod rod;
  rod.module_g = "230";
  rod.count = "";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_EQ(Find(answers, BalanceRemedy::Kind::kReel), nullptr);
  const BalanceRemedy* part = Find(answers, BalanceRemedy::Kind::kPart);
  ASSERT_NE(part, nullptr);
  EXPECT_EQ(part->what, "module");
  EXPECT_NEAR(*part->mass_kg * 1000, 230 + 5500.0 / 150, 1e-9);
  const BalanceRemedy* longer = Find(answers, BalanceRemedy::Kind::kExtension);
  ASSERT_NE(longer, nullptr);
  const double y = *longer->longer_m * 1000;
  EXPECT_NEAR(y, 23.029, 0.001);
  EXPECT_NEAR(230.0 / 300 * y * (300 + y / 2), 5500, 1e-6);
}

// 40000 - 30000 - 200 x 100 = -10 000 g mm: on the reel's arm of 100 mm 100 g less.
TEST(BalanceRemedies, OfAButtHeavyRod) {
  BalancedRod rod;
  rod.module_g = "200";
  rod.foot_mm = "200";
  rod.count = "";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  const BalanceRemedy* reel = Find(answers, BalanceRemedy::Kind::kReel);
  ASSERT_NE(reel, nullptr);
  EXPECT_NEAR(*reel->mass_kg * 1000, 100, 1e-9);
  EXPECT_NE(reel->text.find("100 g less"), std::string::npos) << reel->text;
  EXPECT_EQ(Find(answers, BalanceRemedy::Kind::kExtension), nullptr);
}

}  // namespace
}  // namespace withy::testing
