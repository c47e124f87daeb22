// Where things lie along the rod, worked by hand.
#include <cmath>
#include <utility>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

#include "support/rod_of.h"

namespace withy::testing {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::Not;

const char kBlank[] = R"(
blank { sections { id: "s" length { mm: 2000 plus_minus: 1 } taper {
  stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }
)";
const char kTip[] = R"(tip_top { id: "tip" tube_length { mm: 10 } end_beyond_tube { mm: 6 } ring_outer { mm: 8 } })";

Rod Handle(const std::string& parts, const std::string& more = "") {
  return RodOf(kBlank + std::string("handle {") + parts + "}" + more);
}

double StartMm(const Along& at) { return at.from_butt_m ? at.from_butt_m->value() * 1000 : -1e9; }
double StartMm(const Rod& rod, int part) { return StartMm(rod.handle.parts[part].start); }

TEST(Places, PartsButtAgainstTheOneBefore) {
  const Rod rod = Handle(R"(
    parts { id: "cap" kind: "butt_cap" length { mm: 5 plus_minus: 0.3 } }
    parts { id: "grip" kind: "grip" length { mm: 200 plus_minus: 0.4 } }
    parts { id: "nut" kind: "locking_nut" loose: true length { mm: 12 } }
    parts { id: "check" kind: "winding_check" length { mm: 3 } }
    parts { id: "keeper" kind: "hook_keeper" place { after: "check" gap { mm: 20 } } length { mm: 20 } })");
  EXPECT_NEAR(StartMm(rod, 0), 0, 1e-9);
  EXPECT_NEAR(StartMm(rod, 1), 5, 1e-9);
  EXPECT_NEAR(StartMm(rod, 3), 205, 1e-9);  // the loose nut is no neighbour
  EXPECT_NEAR(StartMm(rod, 4), 228, 1e-9);
  EXPECT_NEAR(rod.handle.parts[3].start.from_butt_m->plus_minus() * 1000, 0.5, 1e-9);  // 0.3 and 0.4 in quadrature
}

TEST(Places, EachOriginMeansWhatItSays) {
  // The blank lies against the cap: its tip at 2005, the rod's at 2011, the ring's centre at 2005 + 6 - 8/2 = 2007.
  const Rod rod = Handle(R"(
    parts { id: "cap" kind: "butt_cap" length { mm: 5 } }
    parts { id: "a" length { mm: 10 } place { from_butt { mm: 50 } } }
    parts { id: "b" length { mm: 10 } place { from_tip { mm: 500 } } }
    parts { id: "c" length { mm: 10 } place { from_section_butt { mm: 300 } section: "s" } }
    parts { id: "d" length { mm: 10 } place { before: "c" gap { mm: 7 } } }
    parts { id: "e" length { mm: 10 } place { after: "c" } })", kTip);
  EXPECT_NEAR(rod.overall_m->value() * 1000, 2011, 1e-9);
  EXPECT_NEAR(rod.tip_ring_m->value() * 1000, 2007, 1e-9);
  EXPECT_NEAR(StartMm(rod, 1), 50, 1e-9);
  EXPECT_NEAR(StartMm(rod, 2), 2011 - 500 - 10, 1e-9);  // from_tip places the tip-side edge
  EXPECT_NEAR(StartMm(rod, 3), 305, 1e-9);
  EXPECT_NEAR(StartMm(rod, 4), 305 - 7 - 10, 1e-9);
  EXPECT_NEAR(StartMm(rod, 5), 315, 1e-9);
  EXPECT_EQ(rod.rest_basis, RestBasis::kAgainstCap);
}

TEST(Places, CyclesAreFindingsNotLoops) {
  const Rod rod = Handle(R"(
    parts { id: "a" length { mm: 10 } place { after: "b" } }
    parts { id: "b" length { mm: 10 } place { after: "a" } }
    parts { id: "on it" length { mm: 10 } place { after: "b" } }
    parts { id: "self" length { mm: 10 } place { before: "self" } })");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/place-cycle", "rod/place-cycle"));
  for (const Part& part : rod.handle.parts) EXPECT_FALSE(part.start.known()) << part.id;
}

// The part that was tried on starts from the tip of the rod, which the dry fit is to tell.
TEST(Places, ADryFitOfAPartThatHangsOnTheTipIsACycle) {
  const Rod rod = Handle(R"(
    parts { id: "h" kind: "one_piece_handle" length { mm: 300 } place { from_tip { mm: 1800 } } })",
    std::string(kTip) + "log { fit { part: \"h\" overall { mm: 2100 } } }");
  EXPECT_THAT(CodesIn(rod.findings), Contains("rod/place-cycle"));
  EXPECT_FALSE(rod.overall_m);
}

TEST(Places, ALongChainIsFollowedWithoutRecursion) {
  std::string parts;
  for (int i = 0; i < 1000; ++i) {
    parts += "parts { id: \"p" + std::to_string(i) + "\" length { mm: 1 } ";
    if (i + 1 < 1000) parts += "place { after: \"p" + std::to_string(i + 1) + "\" } ";
    parts += "}";
  }
  const Rod rod = Handle(parts);
  // The last one butts against the one before it in the list, which waits for the last one.
  EXPECT_THAT(CodesIn(rod.findings), Contains("rod/place-cycle"));
}

// Module 9 mm up, fit 2215.1 overall from its butt end, no cut since: the tip lies at 2224.1, the butt 2000 mm below.
TEST(Rest, FromTheLatestDryFit) {
  const std::string handle = R"(
    parts { id: "cap" kind: "butt_cap" length { mm: 9 } }
    parts { id: "module" kind: "one_piece_handle" length { mm: 355 } })";
  const Rod rod = Handle(handle, std::string(kTip) + R"(
    log { fit { part: "module" overall { mm: 2300 } } }
    log { fit { part: "module" overall { mm: 2215.1 plus_minus: 0.5 } } })");
  EXPECT_EQ(rod.rest_basis, RestBasis::kDryFit);
  EXPECT_NEAR(rod.blank_tip_m->value() * 1000, 2224.1, 1e-9);
  EXPECT_NEAR(rod.blank_butt_m->value() * 1000, 224.1, 1e-9);
  EXPECT_NEAR(rod.overall_m->value() * 1000, 2230.1, 1e-9);
  // What was measured is the whole: the blank's own length does not enter, but its butt's place does.
  EXPECT_NEAR(rod.overall_m->plus_minus() * 1000, 0.5, 1e-9);
  EXPECT_NEAR(rod.blank_butt_m->plus_minus() * 1000, std::hypot(0.5, 1.0), 1e-9);
}

// 2200 - 30 with 1 mm for 1 mm; between 0 and 2 are possible, and the rule's 1 mm.
TEST(Rest, ATipCutAfterTheFitShortensAndAButtCutIsDrawnOnFromIt) {
  const std::string handle = R"(parts { id: "module" kind: "one_piece_handle" length { mm: 355 } })";
  const std::string fit = std::string(kTip) + "log { fit { part: \"module\" overall { mm: 2200 } } }";
  const Rod tip = Handle(handle, fit + "log { cut { section: \"s\" at_end: TIP amount { mm: 30 } } }");
  EXPECT_NEAR(tip.overall_m->value() * 1000, 2200 - 30 + 6, 1e-9);
  const Rod butt = Handle(handle, fit + "log { cut { section: \"s\" amount { mm: 30 } } }");
  EXPECT_EQ(butt.rest_basis, RestBasis::kLaw);
  EXPECT_NEAR(butt.overall_m->value() * 1000, 2200 - 30 + 6, 1e-9);
  EXPECT_NEAR(butt.overall_m->plus_minus() * 1000, std::hypot(30.0, 1.0), 1e-9);
  EXPECT_TRUE(butt.dry_fits[0].stale);
  // A cut that was done before the fit is in it.
  const Rod before = Handle(handle, std::string(kTip) + R"(log { cut { section: "s" amount { mm: 30 } } }
    log { fit { part: "module" overall { mm: 2200 } } })");
  EXPECT_NEAR(before.overall_m->value() * 1000, 2206, 1e-9);
}

// With the arbors on it says nothing of the bore: there is nothing to draw on.
TEST(Rest, AFitWithArborsOnGoesStale) {
  const Rod rod = Handle("parts { id: \"module\" kind: \"one_piece_handle\" length { mm: 355 } }", R"(
    log { fit { part: "module" overall { mm: 2200 } arbors_on: true } } log { cut { section: "s" amount { mm: 30 } } })");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/dry-fit-stale"));
  EXPECT_FALSE(rod.blank_tip_m);
}

// The butt face stops where the bore is 0.1 mm wider: 10 + 0.02 z = 12 + 0.1 at 105, 5 mm of cap behind it.
TEST(Rest, BoreAgainstTaperWithoutADryFit) {
  const std::string bore = R"(parts { id: "cap" kind: "butt_cap" length { mm: 5 } }
    parts { id: "module" kind: "one_piece_handle" length { mm: 300 }
      bore { at { mm: 0 } diameter { mm: 10 plus_minus: 0.03 } } bore { at { mm: 300 } diameter { mm: 16 } } })";
  const Rod rod = Handle(bore);
  ASSERT_EQ(rod.rest_basis, RestBasis::kLaw);
  EXPECT_THAT(rod.findings, IsEmpty());
  EXPECT_NEAR(rod.blank_butt_m->value() * 1000, 110, 1e-6);
  EXPECT_NEAR(rod.blank_tip_m->value() * 1000, 2110, 1e-6);
  // 0.05 mm of a calliper and 0.03 of the bore are hypot(0.05, 0.03) / 0.02 mm of place; the blank's length is 1 mm open.
  EXPECT_NEAR(rod.blank_tip_m->plus_minus() * 1000, std::hypot(0.05 / 0.02, 0.03 / 0.02, 1.0), 1e-5);
  EXPECT_THAT(rod.assumptions, Contains(::testing::Field(&Assumption::used, "0.1 mm")));   // room for glue
  EXPECT_THAT(rod.assumptions, Contains(::testing::Field(&Assumption::used, "0.05 mm")));  // the calliper
}

TEST(Rest, AOnePieceHandleWithoutADryFitCannotBeTold) {
  const Rod rod = Handle("parts { id: \"module\" kind: \"one_piece_handle\" length { mm: 355 } }",
                         std::string(kTip) + "guides { id: \"g\" from_tip { mm: 500 } }");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/rest-unknown"));
  EXPECT_FALSE(rod.overall_m);
  // Guides hang on the tip: what is under them is known all the same. Ring centre 2 mm beyond the tip.
  EXPECT_FALSE(rod.guides[0].ring.from_butt_m);
  EXPECT_NEAR(rod.guides[0].ring.on_blank_m->value() * 1000, 1502, 1e-9);
}

TEST(Rest, AWrittenPlaceBeatsAll) {
  const Rod rod = RodOf(kBlank + std::string(R"(handle { blank_butt_from_butt { mm: 100 }
    parts { id: "cap" kind: "butt_cap" length { mm: 5 } } })"));
  EXPECT_EQ(rod.rest_basis, RestBasis::kGiven);
  EXPECT_NEAR(rod.blank_tip_m->value() * 1000, 2100, 1e-9);
}

Rod Wrapped(const std::string& wraps, const std::string& more = "") {
  return Handle("parts { id: \"cap\" kind: \"butt_cap\" length { mm: 5 } outer { at { mm: 0 } diameter { mm: 30 } } }",
                std::string(kTip) + R"(
    guide_models { id: "two" form: "double_foot" foot_length { mm: 12 } }
    guide_models { id: "one" form: "single_foot" foot_length { mm: 9 } }
    guides { id: "g1" model: "two" from_tip { mm: 1007 } }
    guides { id: "g2" model: "one" from_tip { mm: 507 } }
    guides { id: "g3" model: "one" from_tip { mm: 207 } foot_towards: TIP }
    threads { id: "t" turns_per_10_mm: 50 }
    )" + wraps + more);
}

// Rings at 1000, 1500 and 1800. Two feet: [984, 1000] and [1000, 1016]; one foot towards the butt: [1487, 1500]; towards
// the tip [1800, 1813]: foot and 4 mm.
TEST(Wraps, OnePerFoot) {
  const Rod rod = Wrapped("wraps { id: \"w\" kind: \"guide\" on: [\"g1\", \"g2\", \"g3\"] thread: \"t\" }");
  std::vector<std::pair<int, int>> edges;
  for (const Wrap& wrap : rod.wraps) {
    edges.emplace_back(std::lround(StartMm(wrap.start)), std::lround(StartMm(wrap.start) + wrap.length->mm()));
  }
  EXPECT_THAT(edges, ElementsAre(std::pair(984, 1000), std::pair(1000, 1016), std::pair(1487, 1500), std::pair(1800, 1813)));
  EXPECT_THAT(rod.assumptions, Contains(::testing::Field(&Assumption::used, "4 mm")).Times(1));
}

TEST(Wraps, MarginsAreWhatTheySay) {
  const Rod rod = Wrapped(R"(wraps { id: "w" kind: "guide" on: "g2" beyond_foot { mm: 5 } before_ring { mm: 2 } }
    wraps { id: "v" kind: "guide" on: "g3" beyond_foot { mm: 5 } length { mm: 8 } })");
  EXPECT_NEAR(StartMm(rod.wraps[0].start), 1500 - 9 - 5, 1e-9);
  EXPECT_NEAR(rod.wraps[0].length->mm(), 12, 1e-9);
  EXPECT_NEAR(StartMm(rod.wraps[1].start), 1800 + 9 + 5 - 8, 1e-9);  // length and margin both written: from the margin
}

// Tube from 1995 to 2005: the tip wrap lies against it, the band against that. 4 turns at 0.2 mm take 0.8 mm.
TEST(Wraps, TipWrapAndBand) {
  const Rod rod = Wrapped(R"(wraps { id: "w" kind: "tip" on: "tip" length { mm: 8 } }
    wraps { id: "band" kind: "trim" place { before: "w" } turns: 4 thread: "t" })");
  EXPECT_NEAR(StartMm(rod.wraps[0].start), 1987, 1e-9);
  EXPECT_NEAR(StartMm(rod.wraps[1].start), 1986.2, 1e-9);
}

TEST(Wraps, ARampRunsUpToItsPart) {
  const Rod rod = Wrapped("wraps { id: \"r\" kind: \"ramp\" on: \"cap\" length { mm: 6 } ramp { high_end: BUTT } thread: \"t\" }");
  EXPECT_NEAR(StartMm(rod.wraps[0].start), 5, 1e-9);
  EXPECT_NEAR(rod.wraps[0].high->mm(), 30, 1e-9);
}

TEST(Wraps, APlaceAgainstSeveralWrapsIsAmbiguous) {
  const Rod rod = Wrapped(R"(wraps { id: "w" kind: "guide" on: ["g1", "g2"] }
    wraps { id: "band" kind: "trim" place { after: "w" } length { mm: 1 } })");
  EXPECT_THAT(CodesIn(rod.findings), ElementsAre("rod/place-ambiguous"));
}

TEST(Wraps, JointWrapsLieOnTheOpenEnds) {
  const auto joint = [](const std::string& kind) {
    const Rod rod = RodOf(R"(blank {
      sections { id: "a" length { mm: 1000 } } sections { id: "b" length { mm: 1000 } }
      joints { id: "j" kind: ")" + kind + R"(" lower: "a" upper: "b" overlap { mm: 50 } } }
      wraps { id: "w" kind: "joint" on: "j" length { mm: 15 } })");
    std::vector<int> starts;
    for (const Wrap& wrap : rod.wraps) starts.push_back(static_cast<int>(std::lround(wrap.start.on_blank_m->value() * 1000)));
    return starts;
  };
  EXPECT_THAT(joint("tip_over_butt"), ElementsAre(950));   // from where the upper section begins
  EXPECT_THAT(joint("put_in"), ElementsAre(985));          // up to the lower section's end
  EXPECT_THAT(joint("spigot"), ElementsAre(985, 1000));    // both sides of the closed joint
}

// From the tip-top's ring, at 2007, as guides are always counted: 2007 - 700. From the butt 1311 mm are 2007 - 1311 = 696.
TEST(Places, TheLogMovesAGuide) {
  const Rod rod = Wrapped("", "log { placed { what: \"g1\" place { from_tip { mm: 700 } } } }");
  EXPECT_NEAR(StartMm(rod.guides[0].ring), 1307, 1e-9);
  EXPECT_NEAR(rod.guides[0].from_tip->value.mm(), 700, 1e-9);
  EXPECT_EQ(rod.guides[0].from_tip->source, Source::kMeasured);
  const Rod from_butt = Wrapped("", "log { placed { what: \"g1\" place { from_butt { mm: 1311 } } } }");
  EXPECT_NEAR(from_butt.guides[0].from_tip->value.mm(), 696, 1e-9);
}

TEST(Places, TheReelHangsWhereTheReelSeatHasItsMiddle) {
  const Rod rod = Handle(R"(
    parts { id: "cap" kind: "butt_cap" length { mm: 5 } }
    parts { id: "seat" kind: "reel_seat" length { mm: 100 } seat { foot_center { mm: 55 } } })");
  EXPECT_NEAR(rod.order.reel_foot_m->value() * 1000, 60, 1e-9);
}

}  // namespace
}  // namespace withy::testing
