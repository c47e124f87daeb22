// Spans against the definition, tried on every pair: two stretches overlap where the lesser end lies beyond the greater
// start by more than kTouch_m.
#include "withy/fit/span.h"

#include <algorithm>
#include <random>
#include <set>

#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;
using ::testing::Pair;

double Shared(const Span& a, const Span& b) {
  return std::min(a.end, b.end) - std::max(a.start, b.start);
}

// Stretches on a grid of 10 mm, so that many touch.
std::vector<Placed> RandomThings(std::mt19937& random, int count) {
  std::uniform_int_distribution<int> place(0, 100), length(0, 12);
  std::vector<Placed> things;
  for (int i = 0; i < count; ++i) {
    const double start = place(random) * 0.01;
    things.push_back({i, {start, start + length(random) * 0.01}});
  }
  return things;
}

TEST(Overlaps, TouchingIsNoOverlap) {
  EXPECT_THAT(Overlaps({{0, {0, 0.3}}, {1, {0.3, 0.4}}}), IsEmpty());
  EXPECT_THAT(Overlaps({{0, {0, 0.3}}, {1, {0.29, 0.4}}}), ElementsAre(Pair(0, 1)));
}

TEST(Overlaps, ALongThingIsFoundBehindShortOnes) {
  EXPECT_THAT(Overlaps({{0, {0, 1}}, {1, {0.1, 0.2}}, {2, {0.8, 0.9}}}), ElementsAre(Pair(0, 1), Pair(0, 2)));
}

TEST(Overlaps, FindsEveryThingThatLiesOnOneBeforeIt) {
  std::mt19937 random(1);
  for (int round = 0; round < 200; ++round) {
    std::vector<Placed> things = RandomThings(random, 12);
    std::set<int> expected, found;
    for (const auto& [first, second] : Overlaps(things)) {
      EXPECT_GT(Shared(things[first].span, things[second].span), kTouch_m);
      found.insert(second);
    }
    std::vector<Placed> sorted = things;
    std::stable_sort(sorted.begin(), sorted.end(),
                     [](const Placed& a, const Placed& b) { return a.span.start < b.span.start; });
    for (std::size_t i = 0; i < sorted.size(); ++i) {
      for (std::size_t k = 0; k < i; ++k) {
        if (Shared(sorted[k].span, sorted[i].span) > kTouch_m) expected.insert(sorted[i].index);
      }
    }
    EXPECT_EQ(found, expected) << "round " << round;
  }
}

TEST(SpanIndex, FindsAThingUnderAStretchWhereThereIsOne) {
  std::mt19937 random(2);
  for (int round = 0; round < 200; ++round) {
    const std::vector<Placed> things = RandomThings(random, 8);
    const SpanIndex index(things);
    for (const Placed& probe : RandomThings(random, 20)) {
      const std::optional<int> hit = index.Under(probe.span);
      const bool any = std::any_of(things.begin(), things.end(), [&](const Placed& thing) {
        return thing.span.start < probe.span.end - kTouch_m && thing.span.end > probe.span.start + kTouch_m;
      });
      ASSERT_EQ(hit.has_value(), any) << "round " << round;
      if (hit) {
        EXPECT_GT(things[*hit].span.end, probe.span.start + kTouch_m);
      }
    }
  }
}

// A joint without a gap is a point: bridged where thread lies on both sides of it, not where it ends there.
TEST(SpanIndex, APointIsBridgedOnlyFromBothSides) {
  const SpanIndex seams(std::vector<Placed>{{0, {0.95, 0.95}}});
  EXPECT_EQ(seams.Under({0.94, 0.96}), 0);
  EXPECT_EQ(seams.Under({0.95, 0.97}), std::nullopt);
  EXPECT_EQ(seams.Under({0.93, 0.95}), std::nullopt);
}

TEST(SeamOn, IsTheMouthOfTheOuterSection) {
  Rod rod;
  rod.blank.length_m = Uncertain(1.95);
  rod.blank_butt_m = Uncertain(0.1);
  Joint joint;
  joint.upper_start_m = 0.95;  // the upper section begins 50 mm before the lower one ends
  joint.lower_end_m = 1.0;
  joint.kind = JointKind::kTipOverButt;
  EXPECT_DOUBLE_EQ(SeamOn(Origin::kFromButt, rod, joint)->start, 1.05);
  EXPECT_DOUBLE_EQ(SeamOn(Origin::kFromButt, rod, joint)->end, 1.05);
  joint.kind = JointKind::kPutIn;
  EXPECT_DOUBLE_EQ(SeamOn(Origin::kOnBlank, rod, joint)->start, 1.0);
  joint.kind = JointKind::kSpigot;  // with a gap of 5 mm
  joint.upper_start_m = 1.005;
  EXPECT_DOUBLE_EQ(SeamOn(Origin::kOnBlank, rod, joint)->start, 1.0);
  EXPECT_DOUBLE_EQ(SeamOn(Origin::kOnBlank, rod, joint)->end, 1.005);
}

}  // namespace
}  // namespace withy
