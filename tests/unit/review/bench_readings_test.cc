// Typing errors at the bench: each is refused with its numbers, and what is right passes. The rod of these tests: a
// blank of 2000 mm with 100 mm off by the log and 50 mm more planned, so 1900 mm are left; a handle of 300 mm.
#include "withy/review/bench_readings.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace withy {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

class BenchReadingsTest : public ::testing::Test {
 protected:
  BenchReadingsTest() {
    v1::Part& module = *design_.mutable_handle()->add_parts();
    module.set_id("module");
    design_.mutable_tip_top()->set_id("tip");
    design_.add_log()->set_id("e1");
    v1::SectionReport& section = *report_.mutable_sections()->add_sections();
    section.set_id("blank");
    section.set_cut_butt_mm(150);
    section.set_length_mm(1850);
    report_.mutable_sections()->set_blank_length_mm(1850);
    v1::FittedPart& part = *report_.mutable_fit()->add_parts();
    part.set_id("module");
    part.set_length_mm(300);
    v1::CutPlan& plan = *report_.mutable_fit()->mutable_cut_plan();
    plan.set_host("module");
    plan.set_cut_done_mm(100);
    plan.add_stages()->set_take_mm(50);
    plan.mutable_stages(0)->set_total_mm(150);
    design_.mutable_shop()->mutable_last_cut()->set_mm(50);
    Close("cut", "blank", "log[e1].cut");
    report_.mutable_closed(0)->set_at_end("butt");
    report_.mutable_closed(0)->set_amount_mm(100);
    report_.mutable_fit()->set_overall_length_mm(2100);
    report_.mutable_balance()->set_mass_g(200);
  }

  void Close(const std::string& kind, const std::string& what, const std::string& at) {
    v1::ClosedFact& fact = *report_.add_closed();
    fact.set_kind(kind);
    fact.set_what(what);
    fact.set_at(at);
  }

  std::vector<std::string> Messages(const BenchReadings& readings) const {
    std::vector<std::string> messages;
    for (const Refusal& refusal : RefusalsOf(design_, report_, readings, LengthUnits::kMm)) {
      messages.push_back(refusal.message);
    }
    return messages;
  }

  v1::Design design_;
  v1::Report report_;
};

// 1850 as planned and the 50 of the plan that are not off yet.
TEST_F(BenchReadingsTest, WhatIsLeftIsWhatTheLogSays) {
  EXPECT_DOUBLE_EQ(*BlankLeftMm(report_), 1900);
}

TEST_F(BenchReadingsTest, ACutAndADryFitAsPlannedPass) {
  EXPECT_THAT(Messages({.cut_mm = 50, .dry_fit_mm = 2000, .part = "module"}), IsEmpty());
  EXPECT_THAT(Messages({.cut_mm = 30}), IsEmpty());
}

TEST_F(BenchReadingsTest, WhatIsNotAboveZeroIsNeverRecorded) {
  for (double mm : {0.0, -3.0, std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN()}) {
    const std::vector<Refusal> refusals = RefusalsOf(design_, report_, {.cut_mm = mm}, LengthUnits::kMm);
    ASSERT_EQ(refusals.size(), 1u) << mm;
    EXPECT_FALSE(refusals[0].may_be_forced);
  }
}

TEST_F(BenchReadingsTest, ACutOfMoreThanIsLeft) {
  EXPECT_THAT(Messages({.cut_mm = 1900}),
              ElementsAre("a cut of 1900.0 mm is more than is left of the blank: 1900.0 mm"));
}

// 1.5 x 76.2 = 114.3.
TEST_F(BenchReadingsTest, ACutFarBeyondTheLargest) {
  EXPECT_THAT(Messages({.cut_mm = 114.3}), IsEmpty());
  EXPECT_THAT(Messages({.cut_mm = 115}),
              ElementsAre(HasSubstr("is more than 1.5 times the largest single cut, 76.2 mm")));
  design_.mutable_shop()->mutable_largest_single_cut()->set_inch(4);  // 152.4 with the factor
  EXPECT_THAT(Messages({.cut_mm = 150}), IsEmpty());
}

// 50 mm planned: 1270 mm are 25.4 times that, 5 mm a tenth, 1.97 mm the 25.4th part.
TEST_F(BenchReadingsTest, ACutInTheWrongUnitOrWithItsPointElsewhere) {
  EXPECT_THAT(Messages({.cut_mm = 1270}), ElementsAre(testing::_, HasSubstr("25.4 times the 50.0 mm planned")));
  EXPECT_THAT(Messages({.cut_mm = 5}), ElementsAre(HasSubstr("1/10 of the 50.0 mm planned")));
  EXPECT_THAT(Messages({.cut_mm = 1.97}), ElementsAre(HasSubstr("1/25.4 of the 50.0 mm planned")));
}

// After the cut 1850 are left: shorter than these, or longer than 1850 + 300, it was not read like that. A tape may be
// off by two thousandths, 3.7 mm.
TEST_F(BenchReadingsTest, ADryFitLiesBetweenTheBlankAndBlankAndPart) {
  EXPECT_THAT(Messages({.cut_mm = 50, .dry_fit_mm = 1847, .part = "module"}), IsEmpty());
  EXPECT_THAT(Messages({.cut_mm = 50, .dry_fit_mm = 1840, .part = "module"}),
              ElementsAre("a dry fit of 1840.0 mm is shorter than the blank that is left: 1850.0 mm"));
  EXPECT_THAT(Messages({.cut_mm = 50, .dry_fit_mm = 2160, .part = "module"}),
              ElementsAre("a dry fit of 2160.0 mm is longer than blank and module together: 2150.0 mm"));
}

// 78.74 mm are 78.74 in of 25.4 mm each = 2000 mm.
TEST_F(BenchReadingsTest, ADryFitInTheWrongUnitIsTold) {
  const auto refusals = RefusalsOf(design_, report_, {.dry_fit_mm = 78.74, .part = "module"}, LengthUnits::kMm);
  ASSERT_EQ(refusals.size(), 1u);
  EXPECT_THAT(refusals[0].help, HasSubstr("was 2000.0 mm meant?"));
}

TEST_F(BenchReadingsTest, WhatIsGluedIsNeitherCutNorTriedOn) {
  Close("glued", "module", "log[e7].glued");
  EXPECT_THAT(Messages({.cut_mm = 50}),
              ElementsAre("module is glued (log[e7]): nothing more comes off the blank's butt"));
  EXPECT_THAT(Messages({.dry_fit_mm = 2000, .part = "module"}), ElementsAre(HasSubstr("cannot be tried on dry")));
  EXPECT_THAT(Messages({.tip_cut_mm = 5}), IsEmpty());
  Close("glued", "tip", "log[e8].glued");
  EXPECT_THAT(Messages({.tip_cut_mm = 5}), ElementsAre(HasSubstr("tip is glued (log[e8])")));
}

TEST_F(BenchReadingsTest, APartThatIsNotThere) {
  const auto refusals = RefusalsOf(design_, report_, {.dry_fit_mm = 2000, .part = "modul"}, LengthUnits::kMm);
  ASSERT_FALSE(refusals.empty());
  EXPECT_EQ(refusals[0].help, "is 'module' meant?");
}

// 200 g: 7.05 oz read as grams, 2000 g with a digit too many. 190 g are near enough.
TEST_F(BenchReadingsTest, AMassInTheWrongUnit) {
  EXPECT_THAT(Messages({.mass_g = 190}), IsEmpty());
  EXPECT_THAT(Messages({.mass_g = 7.05}), ElementsAre(HasSubstr("199.9 g would be near")));
  EXPECT_THAT(Messages({.mass_g = 2000}), ElementsAre(HasSubstr("200.0 g would be near")));
}

TEST_F(BenchReadingsTest, ABalancePointOffTheRod) {
  EXPECT_THAT(Messages({.balance_mm = 2099}), IsEmpty());
  EXPECT_THAT(Messages({.balance_mm = 2101}), ElementsAre(HasSubstr("is off the rod, which is 2100.0 mm long")));
}

TEST_F(BenchReadingsTest, CounterweightsThatDoNotFitOrAreIn) {
  v1::CounterweightPlan& plan = *report_.mutable_balance()->mutable_counterweights();
  plan.set_part("module");
  plan.set_fit(4);
  EXPECT_THAT(Messages({.part = "module", .weights = 4, .potted = true}), IsEmpty());
  EXPECT_THAT(Messages({.weights = 5}), ElementsAre("5 counterweights, and 4 fit in module"));
  Close("potted", "module", "log[e9].potted");
  EXPECT_THAT(Messages({.part = "module", .weights = 4, .potted = true}),
              ElementsAre("counterweights are potted in module (log[e9])"));
}

TEST_F(BenchReadingsTest, OnlyAnEntryThatIsThereAndStandsIsCorrected) {
  EXPECT_THAT(Messages({.corrects = "e1"}), IsEmpty());
  EXPECT_THAT(Messages({.corrects = "e11"}), ElementsAre("the log has no entry e11"));
  v1::Entry& correction = *design_.add_log();
  correction.set_id("e2");
  correction.mutable_correction()->set_entry("e1");
  EXPECT_THAT(Messages({.corrects = "e1"}), ElementsAre("e1 is corrected already, by e2"));
}

TEST_F(BenchReadingsTest, RefusesWhatASawDoesNotTakeAndAReadingThatSaysNothing) {
  EXPECT_THAT(Messages({.cut_mm = 1e-320}), ElementsAre(HasSubstr("less than a saw")));
  EXPECT_THAT(Messages({.plus_minus_mm = 12700, .dry_fit_mm = 2100, .part = "module"}),
              ElementsAre(HasSubstr("decides nothing")));
  EXPECT_THAT(Messages({.plus_minus_mm = 1.5, .dry_fit_mm = 2100, .part = "module"}), IsEmpty());
}

// 200 g of rod and 200 g of reel.
TEST_F(BenchReadingsTest, AsksWhetherTheReelWasOn) {
  report_.mutable_balance()->set_mass_with_reel_g(400);
  EXPECT_THAT(Messages({.mass_g = 390}), ElementsAre(HasSubstr("with the reel")));
  EXPECT_THAT(Messages({.mass_g = 205, .with_reel = true}), ElementsAre(HasSubstr("without the reel")));
  EXPECT_THAT(Messages({.mass_g = 390, .with_reel = true}), IsEmpty());
  EXPECT_THAT(Messages({.mass_g = 205}), IsEmpty());
  EXPECT_THAT(Messages({.mass_g = 290}), IsEmpty());  // between the two: a rod half built
}

// What the log says with one more entry. Worked by hand: 50 mm off cannot make the next dry fit 10 mm longer.
CheckedDesign Logged(const std::string& entries) {
  const std::string text = R"(format: "withy/1"
blank { sections { id: "b" length { mm: 2000 } taper {
  stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
handle { parts { id: "module" kind: "one_piece_handle" length { mm: 300 } outer { at { mm: 0 } diameter { mm: 28 } }
  bore { at { mm: 300 } diameter { mm: 12.4 } } bore_known: "mouth" bond: "epoxy" } }
adhesives { id: "epoxy" kind: "epoxy_paste" }
log { id: "first" fit { part: "module" overall { mm: 2180 } } }
)" + entries;
  CheckedDesign checked{.name = "rod", .bytes = text};
  checked.read = ReadDesign("rod", text);
  checked.review = ReviewDesign(checked.read);
  return checked;
}

TEST(ContradictionsOfTheLog, OfNewEntriesAlone) {
  const std::string grown = R"(log { id: "cut" cut { section: "b" amount { mm: 50 } } }
    log { id: "fit" fit { part: "module" overall { mm: 2190 } } } )";
  const std::vector<Refusal> refusals = ContradictionsOf(Logged(grown), 1);
  ASSERT_EQ(refusals.size(), 1u);
  EXPECT_THAT(refusals[0].message, HasSubstr("10.0 mm longer"));
  EXPECT_TRUE(refusals[0].may_be_forced);
  EXPECT_THAT(ContradictionsOf(Logged(grown), 3), IsEmpty());  // they stood there before
  EXPECT_THAT(ContradictionsOf(Logged(R"(log { id: "cut" cut { section: "b" amount { mm: 50 } } }
    log { id: "fit" fit { part: "module" overall { mm: 2125 } } } )"), 1), IsEmpty());
}

TEST(ContradictionsOfTheLog, NothingIsCutOffWhatIsBroken) {
  const std::string broke = R"(log { id: "door" breakage { what: "b" } } )";
  EXPECT_THAT(ContradictionsOf(Logged(broke + R"(log { id: "cut" cut { section: "b" amount { mm: 50 } } })"), 2),
              ElementsAre(::testing::Field(&Refusal::message, HasSubstr("broke"))));
  EXPECT_THAT(ContradictionsOf(Logged(broke + R"(log { id: "note" note: "sad" weighed { mass { g: 300 } } })"), 2), IsEmpty());
}

}  // namespace
}  // namespace withy
