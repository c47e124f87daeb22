// Placing guides: against what theory says of one load, searches without derivatives, and rules checked one by one.
#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <random>
#include <string>
#include <utility>
#include <vector>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "placement_rods.h"

namespace withy::testing {
namespace {

using ::testing::HasSubstr;

constexpr double kEighthOfAnInch = 0.0254 / 8;

// Every rule but clearance, said once more in plain words.
void ExpectWithinRules(const PlacementProblem& problem, const Layout& layout) {
  const std::size_t guides = problem.offsets_m.size();
  ASSERT_EQ(layout.s_m.size(), guides);
  const auto locked = [&](std::size_t k) { return k < problem.locked_m.size() && problem.locked_m[k].has_value(); };
  const auto place = [&](std::size_t k) { return k == guides ? problem.beam.length() : layout.s_m[k]; };
  for (std::size_t k = 0; k < guides; ++k) {
    if (locked(k)) {
      EXPECT_EQ(layout.s_m[k], *problem.locked_m[k]);
      continue;
    }
    if (k == 0) {
      EXPECT_GE(place(0), problem.first_low_m - kPlaceTolerance);
    }
    if (k == 0) {
      EXPECT_LE(place(0), problem.first_high_m + kPlaceTolerance);
    }
    if (k + 1 == guides) {
      EXPECT_LE(place(k), problem.last_high_m + kPlaceTolerance);
    }
    EXPECT_GE(place(k + 1) - place(k), problem.least_gaps_m[k] - kPlaceTolerance) << "guide " << k + 1;
    if (k > 0) {
      EXPECT_GE(place(k) - place(k - 1), problem.least_gaps_m[k - 1] - kPlaceTolerance) << "guide " << k + 1;
    }
    if (problem.gaps_never_grow && k > 0) {
      EXPECT_LE(place(k + 1) - place(k), place(k) - place(k - 1) + 2 * kPlaceTolerance) << "guide " << k + 1;
    }
    if (problem.closed.empty()) continue;
    for (const ClosedStretch& stretch : problem.closed[k]) {
      EXPECT_TRUE(place(k) <= stretch.from_m + kPlaceTolerance || place(k) >= stretch.to_m - kPlaceTolerance)
          << "guide " << k + 1 << " at " << place(k);
    }
  }
}

// Frictionless, the turns of one load sum up to the angle between the line's two ends, which layout hardly changes: the
// least largest is met where all are equal, if no bound is in the way.
TEST(PlaceGuides, OneLoadTurnsTheLineEquallyAtEveryGuide) {
  for (const std::size_t guides : {2u, 4u, 6u}) {
    PlacementProblem problem = Underneath(guides);
    problem.cases = {{"only", 6, std::numbers::pi / 2, 0, 1, std::nullopt}};
    problem.first_low_m = 0.05;
    problem.first_high_m = 1.5;
    problem.reel_offset_m = 0.02;
    const Placement found = PlaceGuides(problem);
    ASSERT_TRUE(found.feasible) << found.why;
    const std::vector<double>& turns = found.best.cases[0].turns;
    for (std::size_t k = 0; k < guides; ++k) EXPECT_NEAR(std::abs(turns[k]), found.best.j, 2e-5) << guides << ", " << k;
  }
}

// Against differential evolution (Storn and Price 1997; rand/1/bin, 24 members, 120 generations) over F and a fine for
// missing clearance.
TEST(PlaceGuides, NoWorseThanDifferentialEvolution) {
  for (const PlacementProblem& problem : {Underneath(3), OnTop(3)}) {
    std::mt19937 random(7);
    std::uniform_real_distribution<double> unit(0, 1);
    const auto cost = [&](std::vector<double> places) {
      std::sort(places.begin(), places.end());
      const Layout layout = EvaluateLayout(problem, places);
      if (!layout.solved || layout.position_violation_m > 0) return std::numeric_limits<double>::infinity();
      return layout.f + 60 * layout.clearance_violation_m;
    };
    std::vector<std::pair<double, std::vector<double>>> members;
    while (members.size() < 24) {
      std::vector<double> places{0.4 + 0.5 * unit(random), 0.6 + 1.4 * unit(random), 0.6 + 1.4 * unit(random)};
      const double here = cost(places);
      if (std::isfinite(here)) members.emplace_back(here, std::move(places));
    }
    for (int trial = 0; trial < 24 * 80; ++trial) {
      auto& member = members[static_cast<std::size_t>(trial) % 24];
      const auto& a = members[random() % 24].second;
      const auto& b = members[random() % 24].second;
      const auto& c = members[random() % 24].second;
      std::vector<double> places = member.second;
      for (std::size_t k = 0; k < 3; ++k) {
        if (unit(random) < 0.9) places[k] = a[k] + 0.7 * (b[k] - c[k]);
      }
      if (const double there = cost(places); there < member.first) member = {there, places};
    }
    const double evolved = std::min_element(members.begin(), members.end())->first;
    const double found = cost(PlaceGuides(problem).best.s_m);
    EXPECT_LE(found, evolved + 1e-6);
    EXPECT_GE(found, evolved - 2e-3 * evolved);  // nor is the evolution far off: they mean the same
  }
}

PlacementProblem RandomProblem(std::mt19937& random) {
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  PlacementProblem problem = between(0, 1) < 0.5 ? Underneath(1 + random() % 9) : OnTop(6 + random() % 4);
  for (double& gap : problem.least_gaps_m) gap = between(0.02, 0.08);
  problem.gaps_never_grow = between(0, 1) < 0.5;
  problem.cases[1].tension_n = between(4, 16);
  problem.cases[1].phi = between(0.6, 2.2);
  const std::size_t guides = problem.offsets_m.size();
  if (between(0, 1) < 0.4) {
    problem.locked_m.resize(guides);
    const std::size_t k = random() % guides;
    problem.locked_m[k] = EqualLayout(problem)[k] + between(-0.04, 0.04);
  }
  if (between(0, 1) < 0.6) {
    const double joint = between(0.9, 1.4);
    problem.closed.assign(guides, {{joint, joint + between(0.02, 0.12)}});
  }
  return problem;
}

TEST(PlaceGuides, KeepsEveryRuleAndIsNoWorseThanTheClassics) {
  std::mt19937 random(11);
  int feasible = 0;
  for (int trial = 0; trial < 60; ++trial) {
    SCOPED_TRACE(trial);
    const PlacementProblem problem = RandomProblem(random);
    const Placement found = PlaceGuides(problem);
    EXPECT_EQ(found.feasible, found.why.empty()) << found.why;
    if (!found.feasible) continue;
    ++feasible;
    ExpectWithinRules(problem, found.best);
    for (std::size_t c = 0; c < problem.cases.size(); ++c) {
      const auto& clearances = found.best.cases[c].clearances_m;
      EXPECT_GE(*std::min_element(clearances.begin(), clearances.end()), -kClearanceTolerance);
    }
    for (const auto& classic : {ArithmeticLayout(problem), GeometricLayout(problem), EqualLayout(problem)}) {
      const Layout layout = EvaluateLayout(problem, classic);
      if (!IsFeasible(layout)) continue;
      EXPECT_LE(found.best.f, layout.f * (1 + 2e-3));  // R gives way where it took more than a tie
    }
    const Placement ruled = OnGrid(problem, found.best, kEighthOfAnInch);
    if (ruled.feasible) {
      ExpectWithinRules(problem, ruled.best);
      EXPECT_LE(ruled.best.j, 1.03 * found.best.j);
    } else {
      EXPECT_NE(ruled.why, "");
    }
  }
  EXPECT_GE(feasible, 45);
}

// With the joint over where guide 2 would stand, it ends at that edge which is better: no worse than with guide 2 held
// to either.
TEST(PlaceGuides, TakesTheBetterSideOfAJoint) {
  PlacementProblem problem = Underneath(5);
  const double wanted = PlaceGuides(problem).best.s_m[1];
  for (const double share : {0.2, 0.8}) {
    problem.closed.assign(5, {});
    const ClosedStretch joint{wanted - share * 0.06, wanted + (1 - share) * 0.06};
    problem.closed[1] = {joint};
    const Placement found = PlaceGuides(problem);
    ASSERT_TRUE(found.feasible) << found.why;
    ExpectWithinRules(problem, found.best);
    for (const double edge : {joint.from_m, joint.to_m}) {
      PlacementProblem held = problem;
      held.locked_m.assign(5, std::nullopt);
      held.locked_m[1] = edge;
      EXPECT_LE(found.best.f, PlaceGuides(held).best.f * (1 + 2e-3));
    }
  }
}

// Against each number of guides before a joint tried in turn.
TEST(PlaceGuides, PassesAJointWhereThatCostsLeast) {
  std::mt19937 random(5);
  for (int trial = 0; trial < 8; ++trial) {
    SCOPED_TRACE(trial);
    PlacementProblem problem = Underneath(4 + random() % 4);
    problem.gaps_never_grow = trial % 2 == 0;
    const std::size_t guides = problem.offsets_m.size();
    const double from = std::uniform_real_distribution<double>(0.8, 1.4)(random), to = from + 0.1;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t before = 0; before <= guides; ++before) {
      problem.closed.assign(guides, {{-1, to}});
      std::fill_n(problem.closed.begin(), before, std::vector<ClosedStretch>{{from, 3}});
      const Placement found = PlaceGuides(problem);
      if (found.feasible) least = std::min(least, found.best.f);
    }
    problem.closed.assign(guides, {{from, to}});
    const Placement found = PlaceGuides(problem);
    EXPECT_TRUE(found.feasible) << found.why;
    EXPECT_LE(found.best.f, least * (1 + 2e-3));
    EXPECT_LE(found.solves, 600);
  }
}

TEST(PlaceGuides, AWallOfClosedStretchesLeavesNoPlace) {
  PlacementProblem problem = Underneath(2);
  problem.closed = {{{0.3, 0.95}}, {}};  // all of guide 1's room
  const Placement found = PlaceGuides(problem);
  EXPECT_FALSE(found.feasible);
  EXPECT_THAT(found.why, HasSubstr("guide 1 finds no place"));
}

// No ring stands off the blank by 40 mm: what is found misses that by no more than the classic layouts do.
TEST(PlaceGuides, ClearanceThatCannotBeHadIsNamed) {
  PlacementProblem problem = OnTop(4);
  for (PlacementCase& load_case : problem.cases) load_case.clearance_m = 0.04;
  const Placement found = PlaceGuides(problem);
  EXPECT_FALSE(found.feasible);
  EXPECT_THAT(found.why, HasSubstr("short of its clearance"));
  EXPECT_GT(found.best.clearance_violation_m, 0.01);
  for (const auto& classic : {ArithmeticLayout(problem), EqualLayout(problem)}) {
    EXPECT_LE(found.best.clearance_violation_m, EvaluateLayout(problem, classic).clearance_violation_m);
  }
}

// Even gaps from 0.8 m on a rod of 2.1 m keep every rule: 1.3 m / 55 is 23.6 mm, and 14 mm are asked.
TEST(PlaceGuides, ManyGuidesWhoseGapsNeverGrow) {
  for (const std::size_t guides : {34u, 40u, 55u}) {
    PlacementProblem problem = Underneath(guides);
    problem.gaps_never_grow = true;
    problem.least_gaps_m.assign(guides, 0.014);
    problem.last_high_m = 2.1 - 0.014;
    problem.cases.resize(1);
    problem.cases.front().clearance_m.reset();
    const Placement found = PlaceGuides(problem, {10});
    EXPECT_TRUE(found.feasible) << guides << ": " << found.why;
    ExpectWithinRules(problem, found.best);
  }
}

TEST(PlaceGuides, SameAnswerTwice) {
  const Placement once = PlaceGuides(OnTop(7)), again = PlaceGuides(OnTop(7));
  EXPECT_EQ(once.best.s_m, again.best.s_m);
  EXPECT_EQ(once.best.j, again.best.j);
}

TEST(PlaceGuides, StopsWhenSolvesRunOut) {
  const Placement found = PlaceGuides(Underneath(8), {.most_solves = 12});
  EXPECT_LE(found.solves, 16);
  EXPECT_TRUE(found.best.solved);
}

TEST(PlaceGuides, BadInputIsSaid) {
  constexpr double kNone = std::numeric_limits<double>::quiet_NaN(),
                   kInfinite = std::numeric_limits<double>::infinity();
  using Spoil = std::function<void(PlacementProblem&)>;
  const std::vector<std::pair<Spoil, std::string>> spoilt{
      {[](auto& p) {
         p.offsets_m.clear();
         p.least_gaps_m.clear();
       },
       "no guide"},
      {[](auto& p) { p.offsets_m[1] = -0.01; }, "guide 2"},
      {[&](auto& p) { p.offsets_m[1] = kNone; }, "guide 2"},
      {[](auto& p) { p.offsets_m[0] = 50; }, "guide 1"},
      {[](auto& p) { p.least_gaps_m.pop_back(); }, "as many as guides"},
      {[&](auto& p) { p.least_gaps_m[2] = kInfinite; }, "guide 3"},
      {[](auto& p) { p.least_gaps_m[2] = 1.9; }, "no room for guide"},
      {[](auto& p) { p.first_high_m = 0.3; }, "guide 1 has no room"},
      {[](auto& p) { p.last_high_m = 0.45; }, "no room for guide"},
      {[](auto& p) { p.last_high_m = 7; }, "not all of that lies on the rod"},
      {[](auto& p) {
         p.locked_m = {std::nullopt, 1.2, 1.1, std::nullopt};
       },
       "not beyond guide 2"},
      {[](auto& p) {
         p.locked_m = {std::nullopt, 3.0, std::nullopt, std::nullopt};
       },
       "guide 2: locked at 3 m"},
      {[](auto& p) {
         p.locked_m = {std::nullopt, 0.42, std::nullopt, std::nullopt};
       },
       "no room for guide 1"},
      {[](auto& p) { p.cases.clear(); }, "no load case"},
      {[](auto& p) { p.cases[0].tension_n = 0; }, "load case light"},
      {[&](auto& p) { p.cases[1].tension_n = kNone; }, "load case heavy"},
      {[](auto& p) { p.cases[1].weight = -1; }, "load case heavy"},
      {[](auto& p) { p.cases[1].phi = 9; }, "load case heavy"},
      {[](auto& p) { p.side = 0; }, "side"},
      {[](auto& p) { p.outer_m.clear(); }, "outer diameters"},
      {[](auto& p) { p.beam.pieces[0].stiffness = {}; }, "stiffness"},
      {[](auto& p) { p.beam.pieces.clear(); }, ""},
      {[&](auto& p) { p.reel_s_m = kNone; }, "reel"},
      {[](auto& p) { p.reel_s_m = 0.5; }, "guide 1 may stand 0.4 m ahead of where the rod is held"},
      {[](auto& p) { p.first_low_m = 0; }, "guide 1 may stand 0 m ahead of where the rod is held"},
      {[](auto& p) {
         p.closed.assign(4, {{1.2, 1.1}});
       },
       "closed stretch"},
  };
  for (std::size_t i = 0; i < spoilt.size(); ++i) {
    PlacementProblem problem = Underneath(4);
    spoilt[i].first(problem);
    const Placement found = PlaceGuides(problem);
    EXPECT_FALSE(found.feasible) << i;
    EXPECT_NE(found.why, "") << i;
    EXPECT_THAT(found.why, HasSubstr(spoilt[i].second)) << i;
    EXPECT_FALSE(EvaluateLayout(problem, {0.5, 1.0, 1.5}).solved);  // and three places are none for four guides
  }
}

// A tonne along the rod, back to the butt: an answer in numbers or a reason, within the solves there are.
TEST(PlaceGuides, AnAbsurdLoad) {
  for (const PlacementProblem& rod : {Underneath(4), OnTop(4)}) {
    PlacementProblem problem = rod;
    problem.cases[1].tension_n = 1e4;
    problem.cases[1].phi = 3.1;
    const Placement found = PlaceGuides(problem);
    EXPECT_LE(found.solves, 700);
    EXPECT_EQ(found.feasible, found.why.empty());
    for (const LayoutCase& at : found.best.cases) {
      for (const double turn : at.turns) EXPECT_TRUE(std::isfinite(turn));
    }
  }
}

TEST(EvaluateLayout, PlacesThatAreNone) {
  const PlacementProblem problem = Underneath(3);
  for (const std::vector<double>& places : {std::vector<double>{1, 0.9, 1.5},
                                            {0.5, 0.5, 1.5},
                                            {0.5, 1, 2.1},
                                            {-0.1, 1, 1.5},
                                            {0.5, std::nan(""), 1.5},
                                            {}}) {
    const Layout layout = EvaluateLayout(problem, places);
    EXPECT_FALSE(layout.solved);
    EXPECT_NE(layout.why, "");
  }
}

TEST(EvaluateLayout, MeasuresWhatIsBroken) {
  PlacementProblem problem = Underneath(3);
  EXPECT_NEAR(EvaluateLayout(problem, {0.39, 1.0, 1.5}).position_violation_m, 0.01, 1e-12);  // before 0.4
  EXPECT_NEAR(EvaluateLayout(problem, {0.5, 1.0, 1.03}).position_violation_m, 0.02, 1e-12);  // 50 mm asked, 30 there
  EXPECT_NEAR(EvaluateLayout(problem, {0.5, 1.0, 1.5}).position_violation_m, 0, 1e-12);
  problem.gaps_never_grow = true;
  EXPECT_NEAR(EvaluateLayout(problem, {0.5, 1.0, 1.5}).position_violation_m, 0.1, 1e-12);  // 500, 500, 600 mm
  problem.locked_m = {std::nullopt, 1.0, 1.5};
  EXPECT_NEAR(EvaluateLayout(problem, {0.5, 1.0, 1.5}).position_violation_m, 0, 1e-12);  // all of 500, 600 is locked
  problem.closed.assign(3, {{0.48, 0.53}, {0.9, 1.1}});
  EXPECT_NEAR(EvaluateLayout(problem, {0.5, 1.0, 1.5}).position_violation_m, 0.02,
              1e-12);  // a locked guide may stand there
}

TEST(OnGrid, LockedGuidesStayAndTheRestLandsOnTheGrid) {
  PlacementProblem problem = Underneath(6);
  problem.gaps_never_grow = true;
  problem.locked_m.resize(6);
  problem.locked_m[3] = 1.4567;
  const Placement found = PlaceGuides(problem), ruled = OnGrid(problem, found.best, 0.002);
  ASSERT_TRUE(ruled.feasible) << ruled.why;
  ExpectWithinRules(problem, ruled.best);
  for (std::size_t k = 0; k < 6; ++k) {
    if (k == 3) continue;
    const double steps = (2.1 - ruled.best.s_m[k]) / 0.002;
    EXPECT_NEAR(steps, std::round(steps), 1e-6);
  }
}

// Placement model, section 7: the best layout on an eighth of an inch is within 1.5 % of the best anywhere; dense trains
// whose gaps may alternate as well.
TEST(OnGrid, DenseTrainsStayNearTheOptimum) {
  for (const std::size_t guides : {11u, 13u, 16u}) {
    for (const PlacementProblem& problem : {Underneath(guides), OnTop(guides)}) {
      const Placement found = PlaceGuides(problem), ruled = OnGrid(problem, found.best, kEighthOfAnInch);
      ASSERT_TRUE(ruled.feasible) << ruled.why;
      EXPECT_LE(ruled.best.j, 1.015 * found.best.j) << guides;
      EXPECT_LE(ruled.solves, 600);
    }
  }
}

// On 0.7 m steps only 0.7 m and 1.4 m are left on a rod of 2.1 m, for four guides.
TEST(OnGrid, TooCoarse) {
  const PlacementProblem problem = Underneath(4);
  const Placement ruled = OnGrid(problem, PlaceGuides(problem).best, 0.7);
  EXPECT_FALSE(ruled.feasible);
  EXPECT_THAT(ruled.why, HasSubstr("no layout on a grid of 700 mm"));
}

TEST(OnGrid, NoGrid) {
  const PlacementProblem problem = Underneath(3);
  const Layout best = PlaceGuides(problem).best;
  for (const double grid : {0.0, -0.002, std::nan(""), 5.0})
    EXPECT_THAT(OnGrid(problem, best, grid).why, HasSubstr("a grid of"));
}

TEST(WhatIf, OneGuideFewerAndOneMore) {
  PlacementProblem problem = Underneath(3);
  problem.least_gaps_m = {0.06, 0.05, 0.03};
  problem.closed = {{{1, 1.1}}, {}, {{1.2, 1.3}}};
  const auto fewer = OneFewer(problem), more = OneMore(problem);
  ASSERT_TRUE(fewer && more);
  EXPECT_EQ(fewer->least_gaps_m, (std::vector<double>{0.06, 0.03}));  // the tip-top keeps its own
  EXPECT_EQ(more->least_gaps_m, (std::vector<double>{0.06, 0.05, 0.05, 0.03}));
  EXPECT_EQ(more->offsets_m.back(), problem.offsets_m.back());
  EXPECT_EQ(more->closed.size(), 4u);
  EXPECT_EQ(WhatIsWrongWith(*fewer), "");
  EXPECT_EQ(WhatIsWrongWith(*more), "");
  problem.locked_m = {std::nullopt, std::nullopt, 1.9};
  EXPECT_FALSE(OneFewer(problem));
  EXPECT_FALSE(OneFewer(Underneath(1)));
  EXPECT_TRUE(OneMore(Underneath(1)));
}

}  // namespace
}  // namespace withy::testing
