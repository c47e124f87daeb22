// Turns and thread against the geometry of the helix.
#include "withy/wraps/wraps.h"

#include <cmath>
#include <numbers>

#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

// 40 mm of 0.20 mm thread on 6.0 mm: 200 turns, 3895.78 mm on the thread's centre line (6.2 mm).
TEST(Wind, OneLayer) {
  const Winding w = Wind(0.040, 0.006, 0.006, 0.0002, 1);
  EXPECT_DOUBLE_EQ(w.turns, 200);
  EXPECT_NEAR(w.thread_length_m * 1000, 3895.78, 0.005);
}

// Helix of diameter 5, pitch 0.25, 80 turns: 1256.7962 mm. The blank is thinner than the centre line by one thread.
TEST(Wind, HelixOnACylinder) {
  EXPECT_NEAR(Wind(0.020, 0.00475, 0.00475, 0.00025, 1).thread_length_m * 1000, 1256.7962, 5e-5);
}

// Equal-pitch helix on a cone, 4 to 6 mm over 20 mm, 80 turns: 1256.7988 mm.
TEST(Wind, HelixOnAConeIsOnItsMeanDiameterWithinTwoMillionths) {
  EXPECT_NEAR(Wind(0.020, 0.00375, 0.00575, 0.00025, 1).thread_length_m * 1000, 1256.7988, 1256.8 * 3e-6);
}

// The second layer lies one thread higher all around: 2 pi d more per turn, but for the pitch (1e-4 of it).
TEST(Wind, SecondLayer) {
  const double one = Wind(0.010, 0.005, 0.005, 0.0002, 1).thread_length_m;
  const double two = Wind(0.010, 0.005, 0.005, 0.0002, 2).thread_length_m;
  EXPECT_NEAR(two - 2 * one, 50 * 2 * std::numbers::pi * 0.0002, 1e-5);
}

const char kStraight[] = R"(
blank { sections { id: "s" length { mm: 2000 }
  taper { stations { at { mm: 0 } outer { mm: 6 } } stations { at { mm: 2000 } outer { mm: 6 } } } } }
threads { id: "t" turns_per_10_mm: 50 tex: 40 }
)";

// Thread: 3.89578 m at 40 mg/m = 155.8 mg. Film of 0.2 mm over 6.4 mm (thread included) and 44 mm, 1.1 g/cm3:
// pi x 0.2 x 6.6 x 44 x 1.1 = 200.7 mg.
TEST(ComputeWraps, ThreadAndFilm) {
  const Rod rod = RodOf(std::string(kStraight) + R"(
    finishes { id: "f" coats: 2 film { mm: 0.1 } beyond_thread { mm: 2 } mix { density { g_per_cm3: 1.1 } } }
    wraps { id: "w" kind: "trim" place { from_butt { mm: 500 } } length { mm: 40 } thread: "t" coats: "f" })");
  const WrapsAnswers answers = ComputeWraps(rod);
  ASSERT_EQ(answers.wraps.size(), 1u);
  EXPECT_NEAR(*answers.wraps[0].thread_kg * 1e6, 155.83, 0.01);
  EXPECT_NEAR(*answers.wraps[0].finish_kg * 1e6, std::numbers::pi * 0.2 * 6.6 * 44 * 1.1, 1e-6);
  ASSERT_EQ(answers.threads.size(), 1u);
  EXPECT_NEAR(answers.threads[0].length_m, 3.89578, 1e-5);
}

// Without a place the mass lies between that on 4 mm and that on 8 mm: 200 turns on centre lines of 4.2 and 8.2 mm, 40 mg/m.
TEST(ComputeWraps, TheMassDoesNotWaitForThePlace) {
  const Rod rod = RodOf(R"(
    blank { sections { id: "s" length { mm: 2000 }
      taper { stations { at { mm: 0 } outer { mm: 8 } } stations { at { mm: 2000 } outer { mm: 4 } } } } }
    threads { id: "t" turns_per_10_mm: 50 tex: 40 }
    wraps { id: "w" kind: "trim" length { mm: 40 } thread: "t" })");
  const WrapAnswer wrap = ComputeWraps(rod).wraps[0];
  const auto milligrams = [](double around_mm) {
    return 40 * 0.2 * std::hypot(std::numbers::pi * around_mm, 0.2);
  };
  ASSERT_TRUE(wrap.thread_kg);
  EXPECT_FALSE(wrap.thread_length_m);
  EXPECT_NEAR(*wrap.thread_kg * 1e6, (milligrams(4.2) + milligrams(8.2)) / 2, 1e-6);
  EXPECT_NEAR(wrap.mass_plus_minus_kg * 1e6, (milligrams(8.2) - milligrams(4.2)) / 2, 1e-6);
}

// A guide's foot and an underwrap take a little more thread than the bare blank, and nobody is to think that they are in.
TEST(ComputeWraps, WhatLiesUnderAWrapIsListedAsNotCounted) {
  const std::string plain = "wraps { id: \"w\" kind: \"trim\" place { from_butt { mm: 500 } } length { mm: 40 } thread: \"t\" }";
  EXPECT_TRUE(ComputeWraps(RodOf(kStraight + plain)).assumptions.empty());
  const WrapsAnswers over = ComputeWraps(RodOf(kStraight + plain + "wraps { id: \"x\" on: \"w\" thread: \"t\" }"));
  ASSERT_EQ(over.assumptions.size(), 1u);
  EXPECT_EQ(over.assumptions[0].at.ToString(), "wraps");
}

TEST(ComputeWraps, AnAbsurdWrapIsUnknownNotInfinite) {
  for (const char* wrap : {"layers: 4000000000 length { mm: 10 }", "layers: 0 length { mm: 10 }", "turns: 4000000000",
                           "length { mm: -5 }", ""}) {
    const Rod rod = RodOf(std::string(kStraight) + "wraps { id: \"w\" kind: \"trim\" thread: \"t\" place { from_butt { mm: 1 } } " +
                          wrap + "}");
    const WrapsAnswers answers = ComputeWraps(rod);
    EXPECT_FALSE(answers.wraps[0].thread_length_m) << wrap;
    EXPECT_EQ(answers.unknowns.size(), 1u) << wrap;
    EXPECT_FALSE(answers.threads[0].complete);
  }
}

// Where the blank will rest is not known: a band behind the handle is six turns all the same, and nothing about the band
// itself is asked for.
TEST(ComputeWraps, BeforeTheDryFitTheFitIsAskedFor) {
  const Rod rod = RodOf(std::string(kStraight) + R"(
    handle { parts { id: "module" kind: "one_piece_handle" length { mm: 300 } } }
    wraps { id: "band" kind: "trim" place { after: "module" } turns: 6 thread: "t" })");
  const WrapsAnswers answers = ComputeWraps(rod);
  EXPECT_EQ(answers.wraps[0].turns, 6);
  EXPECT_FALSE(answers.wraps[0].thread_length_m);
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_EQ(answers.unknowns[0].measure.find("band"), std::string::npos) << answers.unknowns[0].measure;
}

}  // namespace
}  // namespace withy::testing
