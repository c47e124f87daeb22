// The exact contact solution against a second, independent method: a rigid shaft is pushed in step by step and every
// position is tried knot by knot, the last step is halved; what follows from it, by finite differences and scanning.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "withy/numerics/insertion.h"

namespace withy {
namespace {

constexpr double kStep_m = 0.0005;

// shaft + clearance <= bore over the open overlap: between two breakpoints the gap is linear, so its limits at either
// end decide, found from two places inside.
bool Admissible(const Insertion& in, double cut, double e) {
  const double lo = std::max(0.0, e), hi = std::min(in.bore_length(), e + in.shaft_length() - cut);
  std::vector<double> breaks{lo, hi};
  for (const auto& knot : in.bore().knots()) breaks.push_back(knot.x);
  for (const auto& knot : in.shaft().knots()) breaks.push_back(knot.x - cut + e);
  std::sort(breaks.begin(), breaks.end());
  for (size_t i = 1; i < breaks.size(); ++i) {
    const double a = std::max(lo, breaks[i - 1]), b = std::min(hi, breaks[i]);
    if (b - a <= 1e-12) continue;
    const double third = (b - a) / 3;
    const auto gap = [&](double z) { return in.bore().At(z) - in.shaft().At(z - e + cut) - in.clearance(); };
    const double left = gap(a + third), right = gap(b - third);
    if (2 * left - right < -1e-13 || 2 * right - left < -1e-13) return false;
  }
  return true;
}

// Where the shaft stops when it is pushed from the mouth.
double Pushed(const Insertion& in, double cut) {
  double good = in.bore_length();
  while (good > in.stop()) {
    double bad = std::max(in.stop(), good - kStep_m);
    if (Admissible(in, cut, bad)) {
      good = bad;
      continue;
    }
    while (good - bad > 1e-11) {
      const double middle = (good + bad) / 2;
      (Admissible(in, cut, middle) ? good : bad) = middle;
    }
    break;
  }
  return good;
}

// Random profiles from a coarse or a fine set of numbers: with the coarse one faces are often parallel, edges meet
// corners, and diameters tie.
class Random {
 public:
  explicit Random(unsigned seed) : engine_(seed) {}
  double Between(double a, double b) { return std::uniform_real_distribution<double>(a, b)(engine_); }
  bool Chance(double p) { return Between(0, 1) < p; }
  int Below(int n) { return std::uniform_int_distribution<int>(0, n - 1)(engine_); }

  Profile MakeProfile(double length, double base, bool coarse, double jumps) {
    std::vector<double> places{0, length};
    for (int i = Below(6); i > 0; --i) {
      places.push_back(coarse ? std::floor(Between(1, length * 100)) / 100 : Between(0, length));
    }
    std::sort(places.begin(), places.end());
    places.erase(std::unique(places.begin(), places.end()), places.end());
    std::vector<Profile::Knot> knots;
    double diameter = base, last = 0;
    for (double place : places) {
      const double slope = coarse ? 0.01 * (Below(6) - 3) : Between(-0.02, 0.02);
      diameter = std::max(0.001, diameter + slope * (place - last));
      knots.push_back({place, diameter});
      if (Chance(jumps)) {
        diameter = std::max(0.001, diameter + (coarse ? 0.0002 * (Below(9) - 4) : Between(-0.001, 0.001)));
        knots.push_back({place, diameter});
      }
      last = place;
    }
    return Profile(std::move(knots));
  }

  Insertion MakeInsertion() {
    const bool coarse = Chance(0.5);
    const double bore = coarse ? 0.2 : Between(0.05, 0.3), shaft = Chance(0.2) ? bore / 2 : 0.8;
    return Insertion({MakeProfile(bore, Chance(0.5) ? 0.012 : 0.013, coarse, 0.25),
                      MakeProfile(shaft, 0.012, coarse, Chance(0.3) ? 0.3 : 0), Chance(0.5) ? 0 : 0.0002,
                      Chance(0.5) ? 0 : 0.02});
  }
  double MakeCut(const Insertion& in) {
    const auto& knots = in.shaft().knots();
    if (Chance(0.3)) return std::min(knots[Below(static_cast<int>(knots.size()))].x, 0.9 * in.shaft_length());
    return Chance(0.1) ? 0 : Between(0, 0.9 * in.shaft_length());
  }

 private:
  std::mt19937 engine_;
};

TEST(InsertionProperty, RestsWhereAPushedShaftStops) {
  Random random(20240917);
  int narrow = 0, held = 0;
  constexpr int kCases = 4000;
  for (int i = 0; i < kCases; ++i) {
    const Insertion in = random.MakeInsertion();
    const double cut = random.MakeCut(in), rest = in.RestAt(cut), pushed = Pushed(in, cut);
    held += rest > in.stop() + 1e-9;
    if (rest > pushed + 1e-8) {
      ++narrow;  // an obstruction that the push has stepped over must really be there
      EXPECT_FALSE(Admissible(in, cut, rest - 1e-9)) << "case " << i << ": rest " << rest << ", pushed " << pushed;
    } else {
      EXPECT_NEAR(rest, pushed, 1e-8) << "case " << i;
    }
    EXPECT_TRUE(Admissible(in, cut, std::min(rest + 1e-9, in.bore_length()))) << "case " << i;
  }
  EXPECT_LT(narrow, kCases / 20);
  EXPECT_GT(held, kCases / 4);
}

TEST(InsertionProperty, LeastCutIsTheLeast) {
  Random random(7);
  int found = 0;
  for (int i = 0; i < 1500; ++i) {
    const Insertion in = random.MakeInsertion();
    const double end = in.shaft_length();
    const double length =
        random.Chance(0.3) ? in.LengthAt(random.MakeCut(in)) : random.Between(in.stop(), in.LengthAt(0));
    const auto cut = in.LeastCut(length);
    if (!cut) {
      EXPECT_GT(in.LengthAt(end - 1e-8), length) << "case " << i;
      continue;
    }
    ++found;
    EXPECT_LE(in.LengthAt(*cut), length + 1.001e-9) << "case " << i;
    for (int k = 0; k < 100; ++k) {
      // Just before it the length must be more; where it falls slowly only well before.
      const double before = *cut - end * std::pow(10, -6 * (k + 1) / 100.0);
      if (before < 0) continue;
      EXPECT_GT(in.LengthAt(before), length - 1e-9) << "case " << i << " at " << before << " of " << *cut;
    }
  }
  EXPECT_GT(found, 1000);
}

TEST(InsertionProperty, SlopesAndJumpsAreThoseOfTheLength) {
  Random random(11);
  int compared = 0;
  for (int i = 0; i < 3000; ++i) {
    const Insertion in = random.MakeInsertion();
    const double cut = random.MakeCut(in), d = 1e-6;
    const auto state = in.At(cut);
    const double ahead[] = {in.LengthAt(cut), in.LengthAt(cut + d), in.LengthAt(cut + 2 * d)};
    const double slope = (ahead[2] - ahead[0]) / (2 * d);
    if (std::abs((ahead[1] - ahead[0]) / d - slope) < 1e-7) {  // no kink that near
      EXPECT_NEAR(state.slope_after, slope, 1e-6) << "case " << i;
      ++compared;
    }
    if (cut < 3 * d) continue;
    const double behind[] = {in.LengthAt(cut - d), in.LengthAt(cut - 2 * d), in.LengthAt(cut - 3 * d)};
    const double slope_behind = (behind[0] - behind[2]) / (2 * d);
    if (std::abs((behind[0] - behind[1]) / d - slope_behind) > 1e-7) continue;
    ASSERT_TRUE(state.slope_before);
    EXPECT_NEAR(*state.slope_before, slope_behind, 1e-6) << "case " << i;
    EXPECT_NEAR(state.jump, behind[0] + slope_behind * d - ahead[0], 2e-9) << "case " << i;
    EXPECT_NEAR(in.LengthBefore(cut), behind[0] + slope_behind * d, 2e-9) << "case " << i;
  }
  EXPECT_GT(compared, 2500);
}

TEST(InsertionProperty, SensitivityIsThatOfThickerShafts) {
  Random random(13);
  int compared = 0;
  for (int i = 0; i < 3000; ++i) {
    const Insertion in = random.MakeInsertion();
    const double cut = random.MakeCut(in), d = 1e-9;
    const auto sensitivity = in.SensitivityAt(cut);
    const auto length = [&](double by) { return in.Thicker(by).LengthAt(cut); };
    const double thicker = (length(3 * d) - length(d)) / (2 * d), thinner = (length(0) - length(-2 * d)) / (2 * d);
    // Where both halves agree there is no kink that near.
    const auto agree = [](double a, double b) { return std::abs(a - b) <= 1e-4 * std::max(1.0, std::abs(a)); };
    if (agree(thicker, (length(2 * d) - length(d)) / d)) {
      EXPECT_TRUE(agree(sensitivity.thicker, thicker))
          << "case " << i << ": " << sensitivity.thicker << ", " << thicker;
      ++compared;
    }
    if (agree(thinner, (length(0) - length(-d)) / d)) {
      EXPECT_TRUE(agree(sensitivity.thinner, thinner))
          << "case " << i << ": " << sensitivity.thinner << ", " << thinner;
    }
  }
  EXPECT_GT(compared, 2500);
}

// Halves a step of the thickness towards the larger rise until it is too small to hold anything but a jump.
double JumpWithin(const Insertion& in, double cut, double a, double b) {
  const auto length = [&](double by) { return in.Thicker(by).LengthAt(cut); };
  double low = length(a), high = length(b);
  while (b - a > 1e-13) {
    const double middle = (a + b) / 2, at = length(middle);
    if (at - low > high - at) {
      b = middle, high = at;
    } else {
      a = middle, low = at;
    }
  }
  return high - low;
}

TEST(InsertionProperty, LargestJumpIsFoundByScanningToo) {
  Random random(17);
  int jumps = 0;
  for (int i = 0; i < 2000; ++i) {
    const Insertion in = random.MakeInsertion();
    const double cut = random.MakeCut(in), from = -0.000407, to = 0.000393;
    double scanned = 0;
    for (int k = 0; k < 200; ++k) {
      const double a = from + k * 4e-6, b = a + 4e-6;
      if (in.Thicker(b).LengthAt(cut) - in.Thicker(a).LengthAt(cut) <= scanned) continue;
      scanned = std::max(scanned, JumpWithin(in, cut, a, b));
    }
    const double exact = in.LargestJump(cut, from, to);
    if (scanned < 1e-6 && exact < 1e-6) continue;
    ++jumps;
    EXPECT_NEAR(exact, scanned, 1e-6) << "case " << i;
  }
  EXPECT_GT(jumps, 40);
}

}  // namespace
}  // namespace withy
