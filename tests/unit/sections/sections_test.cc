// Masses of sections worked by hand.
#include "withy/sections/sections.h"

#include "gmock/gmock.h"
#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

SectionsAnswers SectionsOf(const Rod& rod) {
  Inputs inputs = rod.inputs;
  return ComputeSections(rod, inputs);
}

// A cylinder, so that shares of the mass are shares of the length.
const char kStraight[] = R"(
blank {
  sections {
    id: "s" length { mm: 1000 } density { g_per_cm3: 1.5 }
    taper {
      stations { at { mm: 0 } outer { mm: 10 } wall { mm: 1 } }
      stations { at { mm: 1000 } outer { mm: 10 } wall { mm: 1 } }
    }
    %s
  }
  %s
}
)";

std::string Straight(const std::string& in_section, const std::string& in_blank = "") {
  std::string text = kStraight;
  text.replace(text.find("%s"), 2, in_section);
  text.replace(text.find("%s"), 2, in_blank);
  return text;
}

// pi/4 (10^2 - 8^2) mm2 x 1000 mm x 1.5 mg/mm3 = 42.412 g.
TEST(ComputeSections, FromWallAndDensity) {
  const SectionsAnswers answers = SectionsOf(RodOf(Straight("")));
  ASSERT_TRUE(answers.sections[0].mass_kg);
  EXPECT_NEAR(answers.sections[0].mass_kg->value() * 1000, 42.4115, 1e-3);
  EXPECT_EQ(answers.sections[0].mass_from, Source::kComputed);
  EXPECT_TRUE(answers.sections[0].wall_known);
}

// A weighed mass is spread along the section: 250 of 1000 mm off a straight tube leaves three quarters. Its balance point
// was measured 10 mm towards the butt: what is left balances where 40 g x 490 mm less the cut-off's 10 g x 125 mm puts it:
// (19600 - 1250) / 30 = 611.67 mm as supplied.
TEST(ComputeSections, AMeasuredMassLosesTheShareOfTheCut) {
  const Rod rod = RodOf(Straight("mass { g: 40 plus_minus: 0.2 source: MEASURED } balance_from_butt { mm: 490 plus_minus: 1 }",
                                 "cuts { section: \"s\" amount { mm: 250 } }"));
  const SectionsAnswers answers = SectionsOf(rod);
  const SectionAnswer& s = answers.sections[0];
  ASSERT_TRUE(s.mass_kg && s.moment_kg_m);
  EXPECT_NEAR(s.mass_kg->value() * 1000, 30, 1e-9);
  EXPECT_NEAR(s.mass_kg->plus_minus() * 1000, 0.15, 1e-9);
  EXPECT_NEAR((*s.moment_kg_m / *s.mass_kg).value() * 1000 + 250, 611.667, 1e-3);
  // The balance point of the whole moves by 1 mm: that of what is left, three quarters of the mass, by 4/3 mm.
  EXPECT_NEAR((*s.moment_kg_m / *s.mass_kg).plus_minus() * 1000, 4.0 / 3, 1e-9);
  EXPECT_EQ(s.mass_from, Source::kMeasured);
  EXPECT_NEAR(*s.mass_if_computed_kg * 1000, 42.4115, 1e-3);
}

// Weighed again after the cut, without balancing it again: the balance point of the whole still tells, 611.67 mm as above.
TEST(ComputeSections, AWeighingAfterTheCutKeepsTheBalancePoint) {
  const Rod rod = RodOf(Straight("mass { g: 40 plus_minus: 0.2 source: MEASURED } balance_from_butt { mm: 490 plus_minus: 1 }",
                                 "") +
                        R"(log { cut { section: "s" amount { mm: 250 } } }
                           log { weighed { what: "s" mass { g: 30.1 plus_minus: 0.1 } } })");
  const SectionAnswer s = SectionsOf(rod).sections[0];
  ASSERT_TRUE(s.mass_kg && s.moment_kg_m);
  EXPECT_NEAR(s.mass_kg->value() * 1000, 30.1, 1e-9);
  EXPECT_NEAR((*s.moment_kg_m / *s.mass_kg).value() * 1000 + 250, 611.667, 1e-3);
  EXPECT_NEAR((*s.moment_kg_m / *s.mass_kg).plus_minus() * 1000, 4.0 / 3, 1e-9);
  EXPECT_NEAR(*s.mass_if_only_cut_kg * 1000, 30, 1e-9);
}

// A wall of 0.6 mm on 10 mm outside, 1000 mm long, 1.5 g/cm3, weighs pi (10 - 0.6) 0.6 x 1000 x 1.5 mg = 26.5779 g.
TEST(ComputeSections, AnUnknownWallIsInferredFromTheMass) {
  const Rod rod = RodOf(R"(
    blank { sections {
      id: "s" length { mm: 1000 } density { g_per_cm3: 1.5 } mass { g: 26.5779 source: MEASURED }
      taper { stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 1000 } outer { mm: 10 } } }
    } })");
  const SectionAnswer s = SectionsOf(rod).sections[0];
  ASSERT_FALSE(s.frusta.empty());
  EXPECT_TRUE(s.wall_known);
  EXPECT_EQ(s.wall_from, Source::kComputed);
  EXPECT_NEAR((s.frusta[0].outer0 - s.frusta[0].inner0) / 2 * 1000, 0.6, 1e-5);
}

TEST(ComputeSections, WithoutMassOrWallTheWallIsAssumedAndSaidSo) {
  const Rod rod = RodOf(R"(
    blank { sections {
      id: "s" length { mm: 1000 } material: "carbon"
      taper { stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 1000 } outer { mm: 10 } } }
    } })");
  const SectionsAnswers answers = SectionsOf(rod);
  ASSERT_TRUE(answers.sections[0].mass_kg);
  EXPECT_GT(answers.sections[0].mass_kg->plus_minus(), 0.4 * answers.sections[0].mass_kg->value());
  EXPECT_FALSE(answers.sections[0].wall_known);
  EXPECT_THAT(answers.sections[0].ei_n_m2, ::testing::IsEmpty());
  EXPECT_EQ(answers.assumptions.size(), 2u);  // density of carbon, wall
}

TEST(ComputeSections, WithoutAnythingItAsksForTheScales) {
  const Rod rod = RodOf(R"(
    blank { sections {
      id: "s" length { mm: 1000 }
      taper { stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 1000 } outer { mm: 10 } } }
    } })");
  const SectionsAnswers answers = SectionsOf(rod);
  EXPECT_FALSE(answers.sections[0].mass_kg);
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_EQ(answers.unknowns[0].figure, "sections.sections[s].mass_g");
}

std::string TwoSections(const std::string& first, const std::string& second, const std::string& blank) {
  const auto section = [](const std::string& id, const std::string& more) {
    return "sections { id: \"" + id + R"(" length { mm: 1000 }
      taper { stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 1000 } outer { mm: 10 } } } )" + more + "}";
  };
  return "blank {" + section("a", first) + section("b", second) +
         " joints { kind: \"sleeve\" lower: \"a\" upper: \"b\" }" + blank + "}";
}

// Printed 30 and 20 g, each +/- 1 and 2 g, weighed together 53 g: the 3 g that are missing are shared 1 : 4.
TEST(ComputeSections, AWeighedTotalFixesTheSum) {
  const Rod rod = RodOf(TwoSections("mass { g: 30 plus_minus: 1 source: CATALOGUE }",
                                    "mass { g: 20 plus_minus: 2 source: CATALOGUE }",
                                    "mass { g: 53 plus_minus: 0.1 source: MEASURED }"));
  const SectionsAnswers answers = SectionsOf(rod);
  EXPECT_NEAR(answers.sections[0].mass_kg->value() * 1000, 30.6, 1e-9);
  EXPECT_NEAR(answers.sections[1].mass_kg->value() * 1000, 22.4, 1e-9);
  EXPECT_NEAR((*answers.sections[0].mass_kg + *answers.sections[1].mass_kg).plus_minus() * 1000, 0.1, 1e-9);
  EXPECT_FALSE(answers.remainder_kg);
}

TEST(ComputeSections, MeasuredPartsDoNotGiveWayAndTheRemainderIsShown) {
  const Rod rod = RodOf(TwoSections("mass { g: 30 plus_minus: 0.1 source: MEASURED }",
                                    "mass { g: 20 plus_minus: 0.1 source: MEASURED }",
                                    "mass { g: 50.4 plus_minus: 0.1 source: MEASURED }"));
  const SectionsAnswers answers = SectionsOf(rod);
  EXPECT_NEAR(answers.sections[0].mass_kg->value() * 1000, 30, 1e-9);
  ASSERT_TRUE(answers.remainder_kg);
  EXPECT_NEAR(*answers.remainder_kg * 1000, 0.4, 1e-9);
}

// No density, no masses: two equal cylinders share the total evenly.
TEST(ComputeSections, ATotalIsEnoughForMasses) {
  const SectionsAnswers answers = SectionsOf(RodOf(TwoSections("", "", "mass { g: 60 source: MEASURED }")));
  EXPECT_NEAR(answers.sections[0].mass_kg->value() * 1000, 30, 1e-9);
  EXPECT_NEAR(answers.sections[1].mass_kg->value() * 1000, 30, 1e-9);
}

// Weighed again after 100 mm came off the butt: that reading speaks of 900 mm.
TEST(ComputeSections, ALoggedWeighingSpeaksOfWhatWasOnTheScales) {
  const Rod rod = RodOf(Straight("mass { g: 40 source: MEASURED }") + R"(
    log { cut { section: "s" amount { mm: 100 } } }
    log { weighed { what: "s" mass { g: 36.9 plus_minus: 0.1 } } }
    log { cut { section: "s" at_end: TIP amount { mm: 300 } } })");
  const SectionAnswer s = SectionsOf(rod).sections[0];
  EXPECT_NEAR(s.mass_kg->value() * 1000, 36.9 * 600 / 900, 1e-9);
  EXPECT_EQ(s.mass_from, Source::kMeasured);
}

// A solid tip of the last 200 mm: pi/4 (36 - 16) x 800 x 1.5 + pi/4 x 36 x 200 x 2.0 = 18850 + 11310 mg.
TEST(ComputeSections, ASplicedTipIsSolid) {
  const Rod rod = RodOf(R"(
    blank { sections {
      id: "s" length { mm: 1000 } density { g_per_cm3: 1.5 } splice { at { mm: 800 } density { g_per_cm3: 2 } }
      taper { stations { at { mm: 0 } outer { mm: 6 } wall { mm: 1 } } stations { at { mm: 1000 } outer { mm: 6 } } }
    } })");
  EXPECT_NEAR(SectionsOf(rod).sections[0].mass_kg->value() * 1e6, 18849.56 + 11309.73, 0.02);
}

}  // namespace
}  // namespace withy::testing
