// First-order uncertainties against many rods drawn at random (propagation of distributions, JCGM 101:2008).
#include <cmath>
#include <random>
#include <vector>

#include "bench_rod.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

// Of some hundred draws: twice their standard deviation is the expanded uncertainty, k = 2.
class Spread {
 public:
  void Add(double value) {
    ++count_;
    const double off = value - mean_;
    mean_ += off / count_;
    squares_ += off * (value - mean_);
  }
  double PlusMinus() const { return 2 * std::sqrt(squares_ / (count_ - 1)); }

 private:
  int count_ = 0;
  double mean_ = 0, squares_ = 0;
};

struct Doubted {
  Cone cone;
  double load_n, butt_deg, plus_minus_n, plus_minus_deg;
};

constexpr int kDraws = 600;  // the standard deviation of a standard deviation is then 3 %

// Standard deviations are half the expanded uncertainties.
Doubted Draw(const Doubted& of, std::mt19937& random) {
  std::normal_distribution<double> normal;
  Doubted drawn = of;
  drawn.cone.modulus_pa += of.cone.modulus_plus_minus_gpa / 2 * 1e9 * normal(random);
  drawn.cone.mass_g += of.cone.mass_plus_minus_g / 2 * normal(random);
  const double diameters = of.cone.diameter_plus_minus_mm / 2000 * normal(random);
  drawn.cone.butt_m += diameters;
  drawn.cone.tip_m += diameters;
  const double walls = of.cone.wall_plus_minus_mm / 2000 * normal(random);
  drawn.cone.wall_butt_m += walls;
  drawn.cone.wall_tip_m += walls;
  drawn.load_n += of.plus_minus_n / 2 * normal(random);
  drawn.butt_deg += of.plus_minus_deg / 2 * normal(random);
  return drawn;
}

BendingAnswers AnswersOf(const Doubted& rod) {
  return BendingAnswersOf(
      DesignOf(rod.cone, LoadCaseOf(rod.load_n, rod.butt_deg, -90, rod.plus_minus_n, rod.plus_minus_deg)));
}

void ExpectSpreadAsTold(const Doubted& rod, double share) {
  std::mt19937 random(20260311);
  Spread drop, moment, strain, frequency, power;
  for (int i = 0; i < kDraws; ++i) {
    const BendingAnswers answers = AnswersOf(Draw(rod, random));
    ASSERT_TRUE(answers.bare && answers.bare->power && answers.bare->first_frequency_hz);
    const BentRod& bent = answers.bare->cases.at(0);
    drop.Add(bent.tip_drop_m->value());
    moment.Add(bent.clamp_moment_n_m->value());
    strain.Add(bent.peak_strain->value());
    frequency.Add(answers.bare->first_frequency_hz->value());
    power.Add(answers.bare->power->load_kg.value());
  }
  const BendingAnswers told = AnswersOf(rod);
  const BentRod& bent = told.bare->cases.at(0);
  EXPECT_NEAR(bent.tip_drop_m->plus_minus() / drop.PlusMinus(), 1, share);
  EXPECT_NEAR(bent.clamp_moment_n_m->plus_minus() / moment.PlusMinus(), 1, share);
  EXPECT_NEAR(bent.peak_strain->plus_minus() / strain.PlusMinus(), 1, share);
  EXPECT_NEAR(told.bare->first_frequency_hz->plus_minus() / frequency.PlusMinus(), 1, share);
  EXPECT_NEAR(told.bare->power->load_kg.plus_minus() / power.PlusMinus(), 1, share);
}

// Three times the 3 % of the draws, and what is left out beyond the first order.
constexpr double kShare = 0.12;

Cone Tube() {
  Cone cone{2.1, 0.0125, 0.003, 0.001, 0.0006, 110e9};
  cone.mass_g = 60;
  return cone;
}

TEST(BendingUncertainty, OfEverythingTogether) {
  Cone cone = Tube();
  cone.modulus_plus_minus_gpa = 6;
  cone.mass_plus_minus_g = 3;
  cone.diameter_plus_minus_mm = 0.04;
  cone.wall_plus_minus_mm = 0.03;
  ExpectSpreadAsTold({cone, 4, 30, 0.2, 3}, kShare);
}

TEST(BendingUncertainty, OfALoadAndAnAngleFarBent) {
  Cone cone = Tube();
  cone.modulus_plus_minus_gpa = 1e-3;  // so that power and frequency spread at all
  ExpectSpreadAsTold({cone, 12, 45, 0.6, 3}, kShare);
}

TEST(BendingUncertainty, OfTheModulusFarBent) {
  Cone cone = Tube();
  cone.modulus_plus_minus_gpa = 9;
  ExpectSpreadAsTold({cone, 12, 45, 0, 0}, kShare);
}

// Its inputs have the names of what was written, and the modulus weighs most.
TEST(BendingUncertainty, KnowsWhereItComesFrom) {
  Cone cone = Tube();
  cone.modulus_plus_minus_gpa = 20;
  cone.diameter_plus_minus_mm = 0.02;
  const Rod rod = RodOf(DesignOf(cone, LoadCaseOf(4)));
  Inputs inputs = rod.inputs;
  const SectionsAnswers sections = ComputeSections(rod, inputs);
  const BendingAnswers answers = ComputeBending(rod, sections, {}, inputs);
  double modulus = 0, diameters = 0;
  for (const VarianceShare& share : answers.bare->cases.at(0).tip_drop_m->Shares()) {
    if (inputs.at(share.input).name == "blank.sections[s].modulus") modulus = share.of_variance;
    if (inputs.at(share.input).name == "blank.sections[s].taper.stations") diameters = share.of_variance;
  }
  EXPECT_GT(modulus, 0.9);
  EXPECT_GT(diameters, 0.001);
  EXPECT_NEAR(modulus + diameters, 1, 1e-6);
}

}  // namespace
}  // namespace withy::testing
