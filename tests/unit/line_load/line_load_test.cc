// Loads that pull through the line: their uncertainty against rods of another stiffness and pull, what cannot be told,
// and static tests.
#include "withy/line_load/line_load.h"

#include <algorithm>
#include <cmath>
#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "strung_design.h"
#include "support/rod_of.h"

namespace withy::testing {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

LineLoadAnswers AnswersOf(const Rod& rod) {
  Inputs inputs = rod.inputs;
  const SectionsAnswers sections = ComputeSections(rod, inputs);
  return ComputeLineLoad(rod, ComputeBending(rod, sections, {}, inputs), inputs);
}
LineLoadAnswers AnswersOf(const std::string& design) {
  return AnswersOf(RodOf(design));
}

std::vector<Finding> FindingsOf(const std::string& design) {
  const Rod rod = RodOf(design);
  std::vector<Finding> findings;
  CheckLineLoad(rod, AnswersOf(rod), findings);
  return findings;
}

struct Four {
  double tip_angle, tip_drop, clamp_moment, most_turn;
};

// `turned` is the guide looked at.
Four FourOf(const StrungDesign& design, int turned) {
  const LineLoadAnswers answers = AnswersOf(TextOf(design));
  const StrungBeam& bent = answers.cases.at(0).bent;
  EXPECT_EQ(bent.state, ElasticaState::kSolved);
  return {bent.tip().angle, bent.tip().y, bent.nodes.front().moment, bent.rings.at(turned).turn};
}

// Half the difference of two whole solutions, one standard uncertainty up and down: the expanded one to first order.
class Uncertainty : public ::testing::TestWithParam<double> {};  // friction

void ExpectAsBetween(const StrungDesign& doubted, const StrungDesign& less, const StrungDesign& more) {
  const LineLoadAnswers answers = AnswersOf(TextOf(doubted));
  const StrungRod& strung = answers.cases.at(0);
  ASSERT_TRUE(strung.solved());
  const Four a = FourOf(less, strung.most_turned), b = FourOf(more, strung.most_turned);
  const auto expect = [](const std::optional<Uncertain>& told, double from, double to) {
    ASSERT_TRUE(told.has_value());
    EXPECT_NEAR(told->plus_minus(), std::abs(to - from) / 2, 2e-3 * std::abs(to - from) / 2 + 1e-9);
  };
  expect(strung.tip_angle, a.tip_angle, b.tip_angle);
  expect(strung.tip_drop_m, a.tip_drop, b.tip_drop);
  expect(strung.clamp_moment_n_m, a.clamp_moment, b.clamp_moment);
  expect(strung.most_turn, a.most_turn, b.most_turn);
}

TEST_P(Uncertainty, OfTheStiffness) {
  StrungDesign design;
  design.friction = GetParam();
  StrungDesign less = design, more = design, doubted = design;
  doubted.modulus_plus_minus_gpa = 2.2;  // 2 %
  less.modulus_pa *= 0.98;
  more.modulus_pa *= 1.02;
  ExpectAsBetween(doubted, less, more);
}

TEST_P(Uncertainty, OfThePull) {
  StrungDesign design;
  design.friction = GetParam();
  StrungDesign less = design, more = design, doubted = design;
  doubted.tension_plus_minus_n = 0.4;  // 2 %
  less.tension_n *= 0.98;
  more.tension_n *= 1.02;
  ExpectAsBetween(doubted, less, more);
}

INSTANTIATE_TEST_SUITE_P(Friction, Uncertainty, ::testing::Values(0.0, 0.15));

// What two doubts do adds up as squares (JCGM 100:2008, 5.1.2); with a stiffness and a pull that are off by the same
// factor the shape stays.
TEST(LineLoad, PullAndStiffnessAddAsSquares) {
  StrungDesign both;
  both.modulus_plus_minus_gpa = 2.2;
  both.tension_plus_minus_n = 0.4;
  StrungDesign one = both;
  one.tension_plus_minus_n = 0;
  const double single = AnswersOf(TextOf(one)).cases.at(0).tip_drop_m->plus_minus();
  EXPECT_NEAR(AnswersOf(TextOf(both)).cases.at(0).tip_drop_m->plus_minus(), std::sqrt(2.0) * single, 1e-6 * single);
}

TEST(LineLoad, OnlyLoadsThroughTheLine) {
  const std::string rest = BlankText({}) + TrainText({}) + OrderText({});
  const LineLoadAnswers tip = AnswersOf("load_cases { id: 't' tension { n: 5 } at_tip: true }\n" + rest);
  EXPECT_THAT(tip.cases, IsEmpty());
  EXPECT_THAT(tip.unknowns, IsEmpty());
  const LineLoadAnswers two = AnswersOf("load_cases { id: 't' tension { n: 5 } at_tip: true }\n" + TextOf({}));
  ASSERT_EQ(two.cases.size(), 1u);
  EXPECT_EQ(two.cases[0].load_case, 1u);
}

// A weight hangs straight down however the butt is held: 45 degrees above the horizontal it pulls 135 from the butt.
TEST(LineLoad, AWeightHangsStraightDown) {
  const std::string rest = BlankText({}) + TrainText({}) + OrderText({});
  const LineLoadAnswers answers = AnswersOf("load_cases { id: 'w' lifted { g: 400 } butt_angle { deg: 45 } }\n" + rest);
  ASSERT_EQ(answers.cases.size(), 1u);
  EXPECT_NEAR(answers.cases[0].load.far_angle, 135 * M_PI / 180, 1e-12);
  EXPECT_NEAR(answers.cases[0].load.tension, 0.4 * 9.80665, 1e-12);
}

struct Held {
  const char* clamp;
  const char* measure;
};

// Ahead of the butt guide, or of the whole blank: said, not computed.
TEST(LineLoad, HeldWhereItCannotBe) {
  const Held all[] = {{"800", "behind 'g1'"}, {"2400", "on its blank"}};
  for (const Held& held : all) {
    const LineLoadAnswers answers =
        AnswersOf("load_cases { id: 'x' tension { n: 5 } clamp_from_butt { mm: " + std::string(held.clamp) + " } }\n" +
                  BlankText({}) + TrainText({}) + OrderText({}));
    ASSERT_EQ(answers.cases.size(), 1u);
    EXPECT_FALSE(answers.cases[0].told());
    ASSERT_EQ(answers.unknowns.size(), 1u);
    EXPECT_EQ(answers.unknowns[0].figure, "line_load.cases[x]");
    EXPECT_THAT(answers.unknowns[0].measure, HasSubstr(held.measure));
  }
}

// The reel may stand ahead of the clamp, but not ahead of the butt guide (at 500 mm from it).
TEST(LineLoad, ReelAheadOfTheClamp) {
  StrungDesign design;
  design.reel_s_m = 0.1;
  EXPECT_TRUE(AnswersOf(TextOf(design)).cases.at(0).solved());
  design.reel_s_m = 0.6;
  const LineLoadAnswers answers = AnswersOf(TextOf(design));
  EXPECT_FALSE(answers.cases.at(0).told());
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_THAT(answers.unknowns[0].measure, HasSubstr("reel foot"));
}

TEST(LineLoad, AGuideWithoutAPlaceIsAsked) {
  const LineLoadAnswers answers = AnswersOf(TextOf({}) + "guides { id: 'new' model: 'm1' }\n");
  EXPECT_FALSE(answers.train.has_value());
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_THAT(answers.unknowns[0].measure, HasSubstr("'new'"));
}

TEST(LineLoad, FrictionBeyondAnyIsNoFigure) {
  StrungDesign design;
  design.friction = 1.5;
  const LineLoadAnswers answers = AnswersOf(TextOf(design));
  EXPECT_FALSE(answers.cases.at(0).told());
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_THAT(answers.unknowns[0].measure, HasSubstr("friction"));
}

// A pull that no solver follows is no guess: no figures, and a word of it.
TEST(LineLoad, APullOutOfAllProportionIsNoFigure) {
  StrungDesign design;
  design.tension_n = 1e12;
  const LineLoadAnswers answers = AnswersOf(TextOf(design));
  const StrungRod& strung = answers.cases.at(0);
  EXPECT_FALSE(strung.solved());
  EXPECT_FALSE(strung.tip_drop_m.has_value());
  EXPECT_EQ(answers.unknowns.size(), strung.told() ? 0u : 1u);
}

TEST(LineLoad, TurnedGuidesSayWhatAPlaneCannotShow) {
  const std::string turned = "guides { id: 'side' model: 'm1' from_tip { mm: 1000 } angle { deg: 90 } }\n";
  const LineLoadAnswers answers = AnswersOf(TextOf({}) + turned);
  ASSERT_TRUE(answers.cases.at(0).solved());
  const bool said =
      std::any_of(answers.assumptions.begin(), answers.assumptions.end(), [](const Assumption& assumption) {
        return assumption.at.ToString() == "guides[side].angle" && assumption.why.find("roll") != std::string::npos;
      });
  EXPECT_TRUE(said);
}

std::string TestText(const StrungDesign& of, const std::string& seen) {
  return OrderText(of) + BlankText(of) + TrainText(of) +
         "log { id: 'e1' static_test { lifted { g: 500 } butt_angle { deg: 0 } " + seen + " } }\n";
}

// The rod is as good as weightless, and nothing but the reading is in doubt: 20 mm either way. Rings below: no line
// touches.
TEST(StaticTests, ADropFarFromTheComputedOneIsSaid) {
  StrungDesign design;
  design.side = -1;
  const LineLoadAnswers answers = AnswersOf(TestText(design, ""));
  ASSERT_EQ(answers.tests.size(), 1u);
  const double drop_mm = answers.tests[0].tip_drop_m->value() * 1000;
  const auto seen = [&](double off_mm) {
    return FindingsOf(TestText(design, absl::StrFormat("tip_drop { mm: %.17g plus_minus: 20 }", drop_mm + off_mm)));
  };
  EXPECT_THAT(CodesIn(seen(18)), IsEmpty());
  EXPECT_THAT(CodesIn(seen(-18)), IsEmpty());
  EXPECT_THAT(CodesIn(seen(22)), Contains("line_load/static-test-differs"));
  const std::vector<Finding> found = seen(-22);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].at.ToString(), "log[e1].static_test.tip_drop");
  EXPECT_NEAR(found[0].numbers[0].value, drop_mm - 22, 1e-6);
  EXPECT_NEAR(found[0].numbers[1].value, drop_mm, 0.01);
}

// After a guide was moved, or a test corrected, it says nothing of the rod as it is.
TEST(StaticTests, AnOutdatedOrCorrectedTestIsLeft) {
  const std::string test = TestText({}, "tip_drop { mm: 5 }");
  EXPECT_THAT(CodesIn(FindingsOf(test)), Contains("line_load/static-test-differs"));
  EXPECT_THAT(AnswersOf(test + "log { id: 'e2' placed { what: 'g3' place { from_tip { mm: 840 } } } }\n").tests,
              IsEmpty());
  EXPECT_THAT(AnswersOf(test + "log { id: 'e2' correction { entry: 'e1' } }\n").tests, IsEmpty());
  EXPECT_THAT(AnswersOf(test + "log { id: 'e2' placed { what: 'grip' place { from_butt { mm: 10 } } } }\n").tests,
              Not(IsEmpty()));
}

}  // namespace
}  // namespace withy::testing
