// What the log has closed, and what opens it again.
#include <algorithm>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using Kind = Closed::Kind;

const char kRod[] = R"(
blank { sections { id: "s" length { mm: 2000 } taper {
  stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } )";
const char kHandle[] = R"(}
handle { parts { id: "h" kind: "one_piece_handle" length { mm: 300 } bond: "a" arbors { id: "arbor" kind: "tape" }
  weights { count: 3 } } }
tip_top { id: "tip" bond: "a" }
adhesives { id: "a" }
wraps { id: "w" kind: "trim" place { from_butt { mm: 400 } } length { mm: 10 } }
wraps { id: "v" kind: "trim" place { from_butt { mm: 500 } } length { mm: 10 } }
log { fit { part: "h" overall { mm: 2150 } } }
)";

Rod After(const std::string& log, const std::string& plan = "") { return RodOf(kRod + plan + kHandle + log); }

const Closed* Find(const Rod& rod, Kind kind, const char* id, End end = End::kUnknown) { return rod.FindClosed(kind, id, end); }

TEST(Closed, CutsOfAnEndAddUp) {
  const Rod rod = After(R"(log { cut { section: "s" amount { mm: 40 } } } log { cut { section: "s" at_end: TIP amount { mm: 5 } } }
    log { cut { section: "s" at_end: BUTT amount { mm: 30 } } })");
  ASSERT_TRUE(Find(rod, Kind::kCut, "s", End::kButt));
  EXPECT_NEAR(Find(rod, Kind::kCut, "s", End::kButt)->amount, 0.070, 1e-12);
  EXPECT_NEAR(Find(rod, Kind::kCut, "s", End::kTip)->amount, 0.005, 1e-12);
  EXPECT_EQ(Find(rod, Kind::kCut, "s", End::kButt)->at.ToString(), "log[3].cut");
  EXPECT_EQ(rod.closed.size(), 2u);
}

TEST(Closed, ACorrectedCutNeverWas) {
  const Rod rod = After(R"(log { id: "slip" cut { section: "s" amount { mm: 400 } } } log { cut { section: "s" amount { mm: 40 } } }
    log { correction { entry: "slip" } })");
  EXPECT_NEAR(Find(rod, Kind::kCut, "s", End::kButt)->amount, 0.040, 1e-12);
}

// 40 mm were meant for 400, and a dry fit stood after that cut: what is right counts before the fit, too.
TEST(Closed, WhatStandsInsteadCountsInThePlaceOfTheOther) {
  const Rod rod = After(R"(log { id: "slip" cut { section: "s" amount { mm: 400 } } } log { fit { part: "h" overall { mm: 2110 } } }
    log { correction { entry: "slip" } } log { id: "right" cut { section: "s" amount { mm: 40 } } instead_of: "slip" })");
  EXPECT_NEAR(Find(rod, Kind::kCut, "s", End::kButt)->amount, 0.040, 1e-12);
  EXPECT_EQ(Find(rod, Kind::kCut, "s", End::kButt)->at.ToString(), "log[right].cut");
  EXPECT_NEAR(rod.dry_fits.back().cut_butt_m, 0.040, 1e-12);
}

// Corrected twice: the last one stands where the first stood.
TEST(Closed, WhatStandsInsteadIsCorrectedInTurn) {
  const Rod rod = After(R"(log { id: "a" cut { section: "s" amount { mm: 400 } } } log { fit { part: "h" overall { mm: 2110 } } }
    log { correction { entry: "a" } } log { id: "b" cut { section: "s" amount { mm: 4 } } instead_of: "a" }
    log { correction { entry: "b" } } log { id: "c" cut { section: "s" amount { mm: 40 } } instead_of: "b" })");
  EXPECT_NEAR(rod.dry_fits.back().cut_butt_m, 0.040, 1e-12);
  EXPECT_EQ(Find(rod, Kind::kCut, "s", End::kButt)->at.ToString(), "log[c].cut");
}

TEST(Closed, NothingStandsInsteadOfWhatCounts) {
  const Rod rod = After(R"(log { id: "a" cut { section: "s" amount { mm: 30 } } } log { fit { part: "h" overall { mm: 2120 } } }
    log { id: "b" cut { section: "s" amount { mm: 10 } } instead_of: "a" })");
  EXPECT_NEAR(Find(rod, Kind::kCut, "s", End::kButt)->amount, 0.040, 1e-12);
  EXPECT_NEAR(rod.dry_fits.back().cut_butt_m, 0.030, 1e-12);
  const auto misplaced = std::find_if(rod.findings.begin(), rod.findings.end(),
                                      [](const Finding& f) { return f.code == "rod/correction-not-of-earlier"; });
  ASSERT_NE(misplaced, rod.findings.end());
  EXPECT_EQ(misplaced->at.ToString(), "log[b].instead_of");
}

// What is broken tells no length, until its repair is logged.
TEST(Closed, NoLengthOfWhatIsBroken) {
  const std::string broke = R"(log { breakage { what: "s" } } )";
  EXPECT_TRUE(After("").blank_tip_m.has_value());
  EXPECT_FALSE(After(broke).blank_tip_m.has_value());
  EXPECT_THAT(After(broke).rest_measure, ::testing::HasSubstr("broken"));
  EXPECT_TRUE(After(broke + R"(log { done { step: "repaired" what: "s" } } log { fit { part: "h" overall { mm: 2150 } } })")
                  .blank_tip_m.has_value());
}

// A fit that names no uncertainty is not exact: 1 mm, and said so.
TEST(Closed, ADryFitIsReadToAMillimetre) {
  const Rod rod = After("");
  EXPECT_DOUBLE_EQ(rod.dry_fits.front().overall->plus_minus.value_or(0), 0.001);
  EXPECT_TRUE(std::any_of(rod.assumptions.begin(), rod.assumptions.end(), [](const Assumption& assumed) {
    return assumed.at.ToString() == "log[0].fit.overall" && assumed.used == "+/- 1 mm";
  }));
}

TEST(Closed, EachKind) {
  const Rod rod = After(R"(
    log { done { step: "reamed" what: "h" } } log { fit { part: "h" overall { mm: 2150 } } }
    log { glued { what: ["arbor", "h", "tip", "no such thing"] } } log { potted { part: "h" } }
    log { done { step: "wrapped" what: "w" } }
    log { coated { what: ["w", "v"] } } log { coated { what: "w" } })");
  EXPECT_TRUE(Find(rod, Kind::kReamed, "h"));
  EXPECT_TRUE(Find(rod, Kind::kGlued, "h"));
  EXPECT_TRUE(Find(rod, Kind::kGlued, "arbor"));
  EXPECT_TRUE(Find(rod, Kind::kGlued, "tip"));
  EXPECT_FALSE(Find(rod, Kind::kGlued, "no such thing"));
  EXPECT_EQ(Find(rod, Kind::kPotted, "h")->amount, 3);  // as many as the part says
  EXPECT_TRUE(Find(rod, Kind::kWrapped, "w"));
  EXPECT_FALSE(Find(rod, Kind::kWrapped, "v"));
  EXPECT_EQ(Find(rod, Kind::kCoated, "w")->amount, 2);
  EXPECT_EQ(Find(rod, Kind::kCoated, "v")->amount, 1);
}

TEST(Closed, WrappedWithoutNamesIsEveryWrap) {
  const Rod rod = After("log { done { step: \"wrapped\" } }");
  EXPECT_TRUE(Find(rod, Kind::kWrapped, "w"));
  EXPECT_TRUE(Find(rod, Kind::kWrapped, "v"));
}

TEST(Closed, TheLatestPottingSaysHowManyAreIn) {
  const Rod rod = After("log { potted { part: \"h\" count: 4 } } log { potted { part: \"h\" count: 2 } }");
  EXPECT_EQ(Find(rod, Kind::kPotted, "h")->amount, 2);
  EXPECT_EQ(Find(rod, Kind::kPotted, "h")->at.ToString(), "log[2].potted");
}

// A weighing is read with as many as were in by then: 4, then 2, then none since the handle came off, then the 3 of the part.
TEST(Closed, AWeighingKnowsWhatWasPottedByThen) {
  const Rod rod = After(R"(log { potted { part: "h" count: 4 } } log { weighed { mass { g: 300 } } }
    log { potted { part: "h" count: 2 } } log { weighed { mass { g: 300 } } }
    log { removed { what: "h" } } log { weighed { mass { g: 300 } } }
    log { potted { part: "h" } } log { weighed { mass { g: 300 } } }
    log { id: "slip" potted { part: "h" count: 9 } } log { weighed { mass { g: 300 } weights: 0 } }
    log { correction { entry: "slip" } })");
  std::vector<std::uint32_t> potted, in;
  for (const WholeWeighing& weighing : rod.wholes) {
    potted.push_back(weighing.potted);
    in.push_back(weighing.weights);
  }
  EXPECT_THAT(potted, ElementsAre(4, 2, 0, 3, 3));
  EXPECT_THAT(in, ElementsAre(4, 2, 0, 3, 0));
  EXPECT_EQ(Find(rod, Kind::kPotted, "h")->amount, 3);
}

TEST(Closed, WhatIsRemovedOrBrokeIsOpenAgain) {
  const Rod rod = After(R"(log { done { step: "wrapped" what: ["w", "v"] } } log { coated { what: ["w", "v"] } }
    log { removed { what: "w" } } log { breakage { what: "v" } })");
  EXPECT_THAT(rod.closed, IsEmpty());
  EXPECT_THAT(rod.findings, IsEmpty());
  const Rod again = After(R"(log { coated { what: "w" } } log { removed { what: "w" } } log { coated { what: "w" } })");
  EXPECT_EQ(Find(again, Kind::kCoated, "w")->amount, 1);  // the new coat
}

TEST(Closed, ACutSectionStaysCutWhenItBreaks) {
  const Rod rod = After(R"(log { cut { section: "s" amount { mm: 40 } } } log { breakage { what: "s" } })");
  EXPECT_NEAR(Find(rod, Kind::kCut, "s", End::kButt)->amount, 0.040, 1e-12);
}

// 2150 read, 2000 of blank: the butt face 150 from the handle's own butt end; 20 off the tip later alter nothing of that.
TEST(Closed, AGluedHandleHoldsTheBlankWhereItWas) {
  const Rod rod = After(R"(log { glued { what: "h" } } log { cut { section: "s" at_end: TIP amount { mm: 20 } } })");
  ASSERT_TRUE(Find(rod, Kind::kGlued, "h")->rest_m);
  EXPECT_NEAR(*Find(rod, Kind::kGlued, "h")->rest_m, 0.150, 1e-12);
  EXPECT_EQ(rod.rest_basis, RestBasis::kDryFit);
  EXPECT_NEAR(rod.blank_butt_m->value(), 0.150, 1e-12);
  EXPECT_NEAR(rod.blank_tip_m->value(), 2.130, 1e-12);
}

TEST(Closed, OfAHandleGluedAfterACutWithoutADryFitThePlaceIsNotTold) {
  const Rod rod = After(R"(log { cut { section: "s" amount { mm: 40 } } } log { glued { what: "h" } })");
  EXPECT_FALSE(Find(rod, Kind::kGlued, "h")->rest_m);
}

// 100 planned, 40 done: nothing more comes off a butt that is glued in, until it comes out again.
TEST(Closed, NoPlanGoesBeyondAGlueUp) {
  const std::string plan = "cuts { section: \"s\" amount { mm: 100 } }";
  const std::string glued = R"(log { cut { section: "s" amount { mm: 40 } } } log { fit { part: "h" overall { mm: 2105 } } }
    log { glued { what: "h" } })";
  const Rod rod = After(glued, plan);
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/plan-closed"));
  EXPECT_NEAR(rod.blank.length_m->value(), 1.960, 1e-12);
  EXPECT_EQ(rod.rest_basis, RestBasis::kDryFit);
  const Rod removed = After(glued + "log { removed { what: \"h\" } }", plan);
  EXPECT_THAT(removed.findings, IsEmpty());
  EXPECT_NEAR(removed.blank.length_m->value(), 1.900, 1e-12);
}

TEST(Closed, AfterTheGlueUpNothingIsCutOrTried) {
  const std::string later = R"(log { cut { section: "s" amount { mm: 40 } } } log { fit { part: "h" overall { mm: 2105 } } })";
  const Rod rod = After("log { glued { what: \"h\" } }" + later);
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/after-glue-up", "rod/after-glue-up"));
  // The glue-up holds: the blank's tip is where it was, and the last fit counts for nothing.
  EXPECT_NEAR(rod.blank_tip_m->value(), 2.150, 1e-12);
  EXPECT_THAT(After("log { glued { what: \"h\" } } log { removed { what: \"h\" } }" + later).findings, IsEmpty());
}

TEST(Closed, ARemovalOfWhatWasNotOn) {
  EXPECT_THAT(CodesIn(After("log { removed { what: [\"w\", \"h\"] } }").findings), ElementsAre("rod/removed-not-on"));
}

}  // namespace
}  // namespace withy::testing
