// What a design means: sections, cuts, joints, log.
#include "withy/rod/resolve.h"

#include <cmath>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

const char kTaper[] = "taper { stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 1000 } outer { mm: 2 } } }";

std::string Section(const std::string& id, const std::string& more = "") {
  return "sections { id: \"" + id + "\" length { mm: 1000 plus_minus: 1 } " + kTaper + more + "}";
}

double Mm(const std::optional<Uncertain>& meters) { return meters ? meters->value() * 1000 : -1e9; }

TEST(Resolve, AnEmptyDesignIsARodOfWhichNothingIsKnown) {
  const Rod rod = RodOf("");
  EXPECT_FALSE(rod.overall_m);
  EXPECT_FALSE(rod.blank.length_m);
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/no-blank"));
}

// 39 inches are 990.6 mm exactly; +/- 1/16 in is 1.5875 mm.
TEST(Resolve, QuantitiesBecomeSiWithTheirUncertaintyAndPlace) {
  const Rod rod = RodOf("blank { sections { id: \"s\" length { inch: 39 plus_minus: 0.0625 source: MEASURED } } }");
  const Known<Length>& length = *rod.blank.sections[0].length;
  EXPECT_NEAR(length.value.mm(), 990.6, 1e-9);
  EXPECT_NEAR(*length.plus_minus, 0.0015875, 1e-15);
  EXPECT_EQ(length.source, Source::kMeasured);
  EXPECT_EQ(length.at.ToString(), "blank.sections[s].length");
}

TEST(Resolve, OfPlannedAndLoggedCutsTheLargerHolds) {
  const Rod planned = RodOf("blank {" + Section("s") + R"(cuts { section: "s" amount { mm: 100 } } }
    log { cut { section: "s" amount { mm: 60 } } })");
  EXPECT_NEAR(Mm(planned.blank.length_m), 900, 1e-9);
  EXPECT_NEAR(planned.blank.sections[0].cut_butt.done.mm(), 60, 1e-9);
  EXPECT_THAT(planned.findings, IsEmpty());

  const Rod more = RodOf("blank {" + Section("s") + R"(cuts { section: "s" amount { mm: 100 } } }
    log { cut { section: "s" amount { mm: 60 } } } log { cut { section: "s" amount { mm: 70 } } })");
  EXPECT_NEAR(Mm(more.blank.length_m), 870, 1e-9);
  EXPECT_THAT(CodesIn(more.findings), ElementsAre("rod/cut-beyond-plan"));
}

// Stations stay as supplied: 100 mm off the butt leaves 12 - 10 x 0.1 = 11 mm at the new butt.
TEST(Resolve, ACutMovesTheEndsNotTheStations) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(cuts { section: "s" amount { mm: 100 } }
    cuts { section: "s" at_end: TIP amount { mm: 200 } } })");
  EXPECT_NEAR(*rod.DiameterOnBlank(0) * 1000, 11, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.7) * 1000, 4, 1e-9);
  EXPECT_FALSE(rod.DiameterOnBlank(0.7001));
}

TEST(Resolve, ACorrectedEntryDoesNotCount) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(}
    log { id: "slip" cut { section: "s" amount { mm: 500 } } }
    log { correction { entry: "slip" reason: "read the wrong side of the tape" } }
    log { cut { section: "s" amount { mm: 50 } } })");
  EXPECT_NEAR(Mm(rod.blank.length_m), 950, 1e-9);
}

TEST(Resolve, ACorrectionCanBeCorrected) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(}
    log { id: "cut" cut { section: "s" amount { mm: 500 } } }
    log { id: "wrong" correction { entry: "cut" } }
    log { correction { entry: "wrong" reason: "the cut was right after all" } })");
  EXPECT_NEAR(Mm(rod.blank.length_m), 500, 1e-9);
}

// Of three corrections only the last names an entry before it; the cuts of 100 and 20 mm stay, the one of 300 mm does
// not.
TEST(Resolve, ACorrectionOfItselfOrOfALaterEntryIsAFindingAndHasNoEffect) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(}
    log { id: "self" correction { entry: "self" } }
    log { id: "ahead" correction { entry: "later" } }
    log { id: "later" cut { section: "s" amount { mm: 100 } } }
    log { id: "slip" cut { section: "s" amount { mm: 300 } } }
    log { cut { section: "s" amount { mm: 20 } } }
    log { correction { entry: "slip" } })");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/correction-not-of-earlier", "rod/correction-not-of-earlier"));
  EXPECT_NEAR(Mm(rod.blank.length_m), 880, 1e-9);
}

// Two that name each other: the earlier of them is the one that could not know what it names.
TEST(Resolve, CorrectionsThatNameEachOtherAreAFindingAndCancelNoCut) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(}
    log { id: "cut" cut { section: "s" amount { mm: 100 } } }
    log { id: "a" correction { entry: "b" } }
    log { id: "b" correction { entry: "a" } })");
  EXPECT_NEAR(Mm(rod.blank.length_m), 900, 1e-9);
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/correction-not-of-earlier"));
}

// Ends are BUTT and TIP; 7 is neither, and off which end the 100 mm came decides every diameter.
TEST(Resolve, ACutOffAnEndThatIsNotKnownIsNotUnderstood) {
  const Rod rod = RodOf("blank {" + Section("s") + "} log { cut { section: \"s\" at_end: 7 amount { mm: 100 } } }");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/entry-not-understood"));
  EXPECT_FALSE(rod.blank.length_m);
  EXPECT_FALSE(rod.DiameterOnBlank(0));
}

TEST(Resolve, AnEntryThatIsNotUnderstoodMayBeACut) {
  const std::string text = "blank {" + Section("s") + "} log { note: \"?\" }";
  const Rod rod = RodOf(text);
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/entry-not-understood"));
  EXPECT_FALSE(rod.blank.length_m);
  EXPECT_FALSE(rod.overall_m);
  // So does a cut of an unknown section, or without amount.
  EXPECT_FALSE(RodOf("blank {" + Section("s") + "} log { cut { section: \"x\" amount { mm: 1 } } }").blank.length_m);
  EXPECT_FALSE(RodOf("blank {" + Section("s") + "} log { cut { section: \"s\" } }").blank.length_m);
}

TEST(Resolve, WhatIsCutAwayIsAFinding) {
  const Rod rod = RodOf("blank {" + Section("s") + "cuts { section: \"s\" amount { mm: 1000 } } }");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/nothing-left"));
  EXPECT_FALSE(rod.blank.length_m);
}

TEST(Resolve, TheCalliperedTaperBeatsTheBlanks) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(}
    log { calipered { section: "s" taper {
      stations { at { mm: 0 } outer { mm: 12.2 } } stations { at { mm: 1000 } outer { mm: 2.2 } } } } })");
  EXPECT_NEAR(*rod.DiameterOnBlank(0) * 1000, 12.2, 1e-9);
  EXPECT_EQ(rod.blank.sections[0].taper.at.ToString(), "log[0].calipered.taper");
}

// One diameter read again changes one row; the rows beside it, the walls and the bores stay. By hand: 12 at 0, 10.2 read
// again at 200, 8 at 400, 2 at 1000. Half way from 200 to 400: 9.1. The bore at 200 stays 8, so the wall is (10.2 - 8) / 2.
TEST(Resolve, OneDiameterReadAgainIsLaidOverTheTable) {
  const Rod rod = RodOf(R"(blank { sections { id: "s" length { mm: 1000 } taper {
      stations { at { mm: 0 } outer { mm: 12 } wall { mm: 1.5 } } stations { at { mm: 200 } outer { mm: 10 } inner { mm: 8 } }
      stations { at { mm: 400 } outer { mm: 8 } wall { mm: 0.9 } } stations { at { mm: 1000 } outer { mm: 2 } } } } }
    log { calipered { section: "s" taper { stations { at { mm: 200 } outer { mm: 10.2 plus_minus: 0.02 } } } } })");
  const auto& section = rod.blank.sections[0];
  EXPECT_NEAR(*rod.DiameterOnBlank(0) * 1000, 12, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.2) * 1000, 10.2, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.3) * 1000, 9.1, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(1) * 1000, 2, 1e-9);
  ASSERT_FALSE(section.wall.empty());
  EXPECT_NEAR(section.wall.At(0) * 1000, 1.5, 1e-9);
  EXPECT_NEAR(section.wall.At(0.2) * 1000, 1.1, 1e-9);
  EXPECT_NEAR(section.wall.At(0.4) * 1000, 0.9, 1e-9);
  EXPECT_FALSE(section.wall_measured);
  std::vector<std::string> rows;
  for (const Station& station : section.taper.stations) {
    if (station.outer) rows.push_back(section.taper.PathOf(station).ToString());
  }
  EXPECT_THAT(rows, ElementsAre("blank.sections[s].taper.stations[0]", "log[0].calipered.taper.stations[0]",
                                "blank.sections[s].taper.stations[2]", "blank.sections[s].taper.stations[3]"));
}

// From its first to its last row the later reading is the taper: the old row at 200 is gone, those at 0 and 1000 are not.
TEST(Resolve, AReadingOfAStretchReplacesTheRowsInIt) {
  const Rod rod = RodOf(R"(blank { sections { id: "s" length { mm: 1000 } taper {
      stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 200 } outer { mm: 11 } }
      stations { at { mm: 1000 } outer { mm: 2 } } } } }
    log { calipered { section: "s" taper {
      stations { at { mm: 100 } outer { mm: 11 } } stations { at { mm: 300 } outer { mm: 9 } } } } })");
  EXPECT_NEAR(*rod.DiameterOnBlank(0.05) * 1000, 11.5, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.2) * 1000, 10, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.65) * 1000, 5.5, 1e-9);
}

TEST(Resolve, ATableThatFallsBackIsNoProfile) {
  const Rod rod = RodOf(R"(blank { sections { id: "s" length { mm: 1000 } taper {
    stations { at { mm: 1000 } outer { mm: 2 } } stations { at { mm: 0 } outer { mm: 12 } } } } })");
  EXPECT_TRUE(rod.blank.sections[0].outer.empty());
  EXPECT_EQ(rod.blank.sections[0].taper.stations.size(), 2u);
}

// Overlap shortens: 1000 + 1000 - 50; a put-over tip is outside from where it begins.
TEST(Resolve, TipOverButt) {
  const Rod rod = RodOf("blank {" + Section("a") + Section("b") +
                        R"(joints { id: "j" kind: "tip_over_butt" lower: "a" upper: "b" overlap { mm: 50 } } })");
  EXPECT_NEAR(Mm(rod.blank.length_m), 1950, 1e-9);
  EXPECT_NEAR(rod.blank.length_m->plus_minus() * 1000, std::sqrt(2.0), 1e-9);  // two lengths, 1 mm each
  EXPECT_NEAR(*rod.blank.joints[0].upper_start_m * 1000, 950, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.949) * 1000, 12 - 10 * 0.949, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.960) * 1000, 12 - 10 * 0.010, 1e-9);
}

// Of a put-in joint the lower section is outside up to its end.
TEST(Resolve, PutIn) {
  const Rod rod = RodOf("blank {" + Section("a") + Section("b") +
                        R"(joints { kind: "put_in" lower: "a" upper: "b" overlap { mm: 50 } } })");
  EXPECT_NEAR(Mm(rod.blank.length_m), 1950, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(0.960) * 1000, 12 - 10 * 0.960, 1e-9);
  EXPECT_NEAR(*rod.DiameterOnBlank(1.100) * 1000, 12 - 10 * 0.150, 1e-9);
}

TEST(Resolve, ASpigotsGapLengthens) {
  const std::string sections = "blank {" + Section("a") + Section("b");
  EXPECT_NEAR(Mm(RodOf(sections + "joints { kind: \"spigot\" gap { mm: 4 } } }").blank.length_m), 2004, 1e-9);
  EXPECT_NEAR(Mm(RodOf(sections + "joints { kind: \"spigot\" } }").blank.length_m), 2000, 1e-9);
}

TEST(Resolve, WithoutAJointTheLengthCannotBeTold) {
  const Rod rod = RodOf("blank {" + Section("a") + Section("b") + "}");
  EXPECT_FALSE(rod.blank.length_m);
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/joint-missing"));
}

TEST(Resolve, ASpareTipIsNotOfTheAssembledRod) {
  const Rod rod = RodOf("blank {" + Section("a") + Section("spare", "spare_for: \"a\"") + "}");
  EXPECT_NEAR(Mm(rod.blank.length_m), 1000, 1e-9);
  EXPECT_THAT(rod.findings, IsEmpty());
}

TEST(Resolve, TheLogsMassBeatsTheParts) {
  const Rod rod = RodOf("blank {" + Section("s") + R"(} handle { parts { id: "p" mass { g: 20 source: MEASURED } } }
    log { weighed { what: "p" mass { g: 21 } } })");
  EXPECT_NEAR(rod.handle.parts[0].mass->value.grams(), 21, 1e-9);
  EXPECT_EQ(rod.handle.parts[0].mass->source, Source::kMeasured);
  EXPECT_EQ(rod.handle.parts[0].mass->at.ToString(), "log[0].weighed.mass");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/measurements-differ"));
}

TEST(Resolve, MeasurementsThatAgreeWithinTheirUncertaintyAreNoFinding) {
  const Rod rod =
      RodOf("blank {" + Section("s") + R"(} handle { parts { id: "p" mass { g: 20 plus_minus: 0.3 source: MEASURED } } }
    log { weighed { what: "p" mass { g: 20.4 plus_minus: 0.3 } } })");
  EXPECT_THAT(rod.findings, IsEmpty());
}

// nylon, 1.14 g/cm3: d = sqrt(4 T / (pi rho)): 45 tex 0.224 mm; letter B is taken as 45 tex. 50 turns over 10 mm: 0.2 mm.
TEST(Resolve, ThreadDiameters) {
  const Rod rod = RodOf(R"(
    threads { id: "counted" turns_per_10_mm: 50 diameter { mm: 0.3 } tex: 45 }
    threads { id: "gauged" diameter { mm: 0.3 } tex: 45 }
    threads { id: "weighed" tex: 45 material: "nylon" }
    threads { id: "letter" size: "B" material: "nylon" }
    threads { id: "nothing" size: "Q" })");
  EXPECT_NEAR(rod.threads[0].diameter->value.mm(), 0.2, 1e-12);
  EXPECT_NEAR(rod.threads[1].diameter->value.mm(), 0.3, 1e-12);
  EXPECT_NEAR(rod.threads[2].diameter->value.mm(), 0.224, 5e-4);
  EXPECT_NEAR(rod.threads[3].diameter->value.mm(), 0.224, 5e-4);
  EXPECT_EQ(rod.threads[3].diameter->source, Source::kAssumed);
  EXPECT_FALSE(rod.threads[4].diameter);
  EXPECT_EQ(rod.assumptions.size(), 2u);  // density of nylon; letter B
}

TEST(Resolve, MoreOfAKindThanAnyRodHasIsNotWorkedOut) {
  std::string text = "blank {";
  for (int i = 0; i < 65; ++i) text += Section("s" + std::to_string(i));
  const Rod rod = RodOf(text + "}");
  EXPECT_THAT(CodesIn(rod.findings), Contains("rod/too-many"));
  EXPECT_FALSE(rod.blank.length_m);
}

// Values that no rod has must not become infinities further on.
TEST(Resolve, AbsurdQuantitiesAreNotKnown) {
  const Rod rod = RodOf("blank { sections { id: \"s\" length { mm: 1e300 } mass { g: 1e300 } } }");
  EXPECT_FALSE(rod.blank.sections[0].length);
  EXPECT_FALSE(rod.blank.sections[0].mass);
}

}  // namespace
}  // namespace withy::testing
