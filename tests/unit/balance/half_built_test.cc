// Weighings of a rod that is not finished, worked by hand on the rod of balanced_rod.h.
#include "gtest/gtest.h"
#include "unit/balance/balanced_rod.h"

namespace withy::testing {
namespace {

// With three taped in and the reel on it lies level on an edge at 320 mm. Then the blank, the one thing that is open, weighs
// (130 x 170 + 200 x 20 + 60 x 270) / 380 = 111.316 g, the rod is 111.316 x 400 - 19500 = 25 026 g mm tip-heavy, and takes not
// 3 units but 4: 22 235 g mm (5: 26 635).
TEST(HalfBuilt, TrialWeightsOnAnEdgeBeatTheEstimate) {
  BalancedRod rod;
  rod.blank_plus_minus_g = "40";
  rod.log = "log { weighed { balance_from_butt { mm: 320 plus_minus: 0 } with_reel: true weights: 3 } }";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  const double blank_g = 42300.0 / 380;
  EXPECT_NEAR(answers.parts[0].mass_kg->value() * 1000, blank_g, 1e-9);
  EXPECT_EQ(answers.rests_on, RestsOn::kHalfBuilt);
  EXPECT_EQ(answers.counterweights->count, 4);
  EXPECT_EQ(answers.counterweights->confidence, Confidence::kSure);
  EXPECT_NEAR(answers.counterweights->moment_without_n_m->value(), 9.80665e-6 * (blank_g * 400 - 19500), 1e-10);
  EXPECT_NEAR(answers.counterweights->moment_without_n_m->plus_minus(), 0, 1e-10);
}

// Weights of another part are on the scales once they are potted. The 2 of 10 g in the cap, and 3.927 g of potting of 1
// g/cm3 (pi/4 (225 - 100) x 40 mm3), come on top of a weighing before, and are in one after, whose 5 are 3 in the
// handle and these 2.
TEST(HalfBuilt, WeightsOfAnotherPartAreOnOncePotted) {
  const double other_g = 20 + M_PI / 4 * 125 * 40 * 1e-3;
  const std::string potted = "log { potted { part: \"cap\" } }";
  BalancedRod rod;
  rod.blank_plus_minus_g = "10";
  rod.parts = R"(parts { id: "fore" kind: "grip" place { from_butt { mm: 400 } } length { mm: 100 } mass { g: 0 } }
    parts { id: "cap" kind: "grip" place { from_butt { mm: 500 } } length { mm: 100 } mass { g: 0 }
    cavity { length { mm: 50 } diameter { mm: 15 } }
    weights { count: 2 bond: "glue" unit_mass { g: 10 plus_minus: 0 } unit_length { mm: 20 } unit_diameter { mm: 10 }
      cover { mm: 0 } } })";
  rod.more = "adhesives { id: \"glue\" mix { density { g_per_cm3: 1 } } }";
  rod.log = "log { weighed { mass { g: 231 plus_minus: 0 } } }" + potted;
  EXPECT_NEAR(BalanceOf(MakeRod(rod)).mass_kg->value() * 1000, 231 + other_g + 3 * kUnitAndPottingG, 1e-9);
  rod.log = potted + "log { weighed { mass { g: 321 plus_minus: 0 } weights: 5 } }";
  const BalanceAnswers after = BalanceOf(MakeRod(rod));
  EXPECT_NEAR(after.mass_kg->value() * 1000, 321 + 3 * (kUnitAndPottingG - 20), 1e-9);
}

// The blank alone on the scales, 101 g: the handle, 3 units and their potting come on top as reckoned.
TEST(HalfBuilt, WhatWasMissingIsAddedAsEstimated) {
  BalancedRod rod;
  rod.blank_plus_minus_g = "4";
  rod.log = "log { weighed { mass { g: 101 plus_minus: 0 } missing: \"module\" } }";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_EQ(answers.rests_on, RestsOn::kHalfBuilt);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 101 + 130 + 3 * kUnitAndPottingG, 1e-9);
  EXPECT_NEAR(answers.remainder_kg->value() * 1000, 1, 1e-9);
  EXPECT_NEAR(answers.counterweights->moment_without_n_m->value(), 9.80665e-6 * (101 * 400 - 19500), 1e-10);
}

// 231 g without counterweights; with two taped in and the reel the scales say 231 + 40 + 200 and a gram.
TEST(HalfBuilt, ReelAndTrialWeightsAreTakenOff) {
  BalancedRod rod;
  rod.blank_plus_minus_g = "4";
  rod.count = "count: 2";
  rod.log = "log { weighed { mass { g: 471 plus_minus: 0 } with_reel: true weights: 2 } }";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_NEAR(answers.parts[0].mass_kg->value() * 1000, 101, 1e-9);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 231 + 2 * kUnitAndPottingG, 1e-9);
}

TEST(HalfBuilt, AFinishedRodIsWeighed) {
  BalancedRod rod;
  rod.blank_plus_minus_g = "20";
  rod.log = "log { potted { part: \"module\" count: 3 } } log { weighed { mass { g: 305 plus_minus: 0.1 } } }";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_EQ(answers.rests_on, RestsOn::kWeighed);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 305, 1e-9);
}

// Mass from one entry, balance point from a later one: b + m = 240 and 700 b + 150 m = 240 x 400 give b = 109.09 g.
TEST(HalfBuilt, AMassAndALaterBalancePointAreBothUsed) {
  BalancedRod rod;
  rod.blank_plus_minus_g = "20";
  rod.module_plus_minus_g = "5";
  rod.count = "";
  rod.log = R"(log { weighed { mass { g: 240 plus_minus: 0 } } }
               log { weighed { balance_from_butt { mm: 400 plus_minus: 0 } } })";
  const BalanceAnswers answers = BalanceOf(MakeRod(rod));
  EXPECT_EQ(answers.whole, 0);
  EXPECT_EQ(answers.rests_on, RestsOn::kWeighed);
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 240, 1e-9);
  EXPECT_NEAR(answers.balance_m->value() * 1000, 400, 1e-6);
  EXPECT_NEAR(answers.parts[0].mass_kg->value() * 1000, 60000.0 / 550, 1e-9);
}

// Film of 0.2 mm on 8.4 mm over 40 mm: pi 0.2 x 8.6 x 40 mm3 at 1.1 g/cm3 = 0.23775 g, which comes after the weighing.
TEST(HalfBuilt, AMissingFinishIsItsFilmOnEveryWrap) {
  const std::string design = R"(
    blank { sections { id: "s" length { mm: 2000 } mass { g: 40 plus_minus: 0.3 source: MEASURED } balance_from_butt { mm: 1000 }
      taper { stations { at { mm: 0 } outer { mm: 8 } wall { mm: 1 } } stations { at { mm: 2000 } outer { mm: 8 } } } } }
    handle { blank_butt_from_butt { mm: 0 } }
    threads { id: "t" turns_per_10_mm: 50 tex: 40 }
    finishes { id: "clear" coats: 2 film { mm: 0.1 } mix { density { g_per_cm3: 1.1 } } }
    wraps { id: "w" kind: "trim" place { from_butt { mm: 500 } } length { mm: 40 } thread: "t" coats: "clear" }
    log { weighed { mass { g: 40.4 plus_minus: 0.01 } missing: "clear" } })";
  const BalanceAnswers answers = BalanceOf(RodOf(design));
  EXPECT_NEAR(answers.mass_kg->value() * 1000, 40.4 + M_PI * 0.2 * 8.6 * 40 * 1.1e-3, 1e-9);
}

}  // namespace
}  // namespace withy::testing
