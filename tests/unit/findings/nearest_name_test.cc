// Distances worked by hand.
#include "withy/findings/nearest_name.h"

#include <gtest/gtest.h>

namespace withy {
namespace {

TEST(EditDistance, CountsEdits) {
  EXPECT_EQ(EditDistance("", ""), 0u);
  EXPECT_EQ(EditDistance("bore", ""), 4u);
  EXPECT_EQ(EditDistance("kitten", "sitting"), 3u);  // k-s, e-i, +g (Levenshtein's own example)
  EXPECT_EQ(EditDistance("lenght", "length"), 1u);   // two neighbours swapped
  EXPECT_EQ(EditDistance("ca", "abc"), 3u);          // optimal string alignment: no edit between swapped letters
}

TEST(NearestName, IsTheClosest) {
  EXPECT_EQ(NearestName("lenght", {"length", "mass", "bore"}), "length");
  EXPECT_EQ(NearestName("from-tip", {"from_butt", "from_tip"}), "from_tip");
  EXPECT_EQ(NearestName("MASS", {"bore", "mass"}), "mass");
  EXPECT_EQ(NearestName("ring", {"ring_height", "bore"}), "ring_height");  // the only one that begins so
}

TEST(NearestName, IsNothingWhereNothingIsClose) {
  EXPECT_EQ(NearestName("zzz", {"length", "mass", "bore"}), "");
  EXPECT_EQ(NearestName("ring", {"ring_height", "ring_outer"}), "");  // two begin so
  EXPECT_EQ(NearestName("x", {"g", "n"}), "");
  EXPECT_EQ(NearestName("", {"mass"}), "");
}

}  // namespace
}  // namespace withy
