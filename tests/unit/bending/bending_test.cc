// Bending of whole rods against closed forms, published tables and the reference cases.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "bench_rod.h"
#include "gmock/gmock.h"
#include "gtest/gtest.h"

namespace withy::testing {
namespace {

constexpr double kDeg = std::numbers::pi / 180;

double RoundStiffness(const Cone& cone) {
  return cone.modulus_pa * std::numbers::pi / 64 * std::pow(cone.butt_m, 4);
}

// Uniform cantilever under a dead load across its far end (Bisshopp and Drucker 1945; the table computed from their
// elliptic integrals): P L^2 / EI, drop / L, angle of the free end.
TEST(ComputeBending, AUniformRodFollowsBisshoppAndDrucker) {
  const Cone cone;
  const double table[][3] = {{0.25, 0.08275, 0.12429}, {0.5, 0.16214, 0.24453}, {1, 0.30172, 0.46135},
                             {2, 0.49346, 0.78175},    {3, 0.60325, 0.98602},   {5, 0.71379, 1.21537},
                             {10, 0.81061, 1.43029}};
  for (const auto& [load, drop, angle] : table) {
    const double newtons = load * RoundStiffness(cone) / (cone.length_m * cone.length_m);
    const BendingAnswers answers = BendingAnswersOf(DesignOf(cone, LoadCaseOf(newtons)));
    ASSERT_TRUE(answers.bare) << load;
    const BentRod& bent = answers.bare->cases.at(0);
    ASSERT_EQ(bent.shape.state, ElasticaState::kSolved);
    EXPECT_NEAR(bent.tip_drop_m->value() / cone.length_m, drop, 6e-6) << load;
    EXPECT_NEAR(-bent.shape.tip().angle, angle, 6e-6) << load;
    // Load times lever, from the shape.
    EXPECT_NEAR(bent.clamp_moment_n_m->value(), newtons * bent.shape.tip().x, 1e-7 * newtons);
  }
}

struct Reference {
  const char* id;
  Cone cone;
  double butt_deg, load_n, direction_deg;
  double tip_x_m, tip_y_m, tip_angle, moment, strain, strain_at_m, energy_j;
};

// Cases of the reference file C_tapered_cantilevers.json, under their names there: three independent methods agree on
// each.
TEST(ComputeBending, TaperedRodsFollowTheReference) {
  const Reference cases[] = {
      {"C-P-LARGE-02",
       {1.8, 0.009, 0.002, 0, 0, 60e9},
       60,
       4,
       -105,
       1.294994857928,
       0.4618383639037,
       -1.311928893396,
       4.525345655389,
       0.0046654218329,
       1.4088368,
       2.124956125673},
      {"C-P-LARGE-05",
       {2.7, 0.011, 0.0016, 0.00045, 0.00045, 140e9},
       30,
       8,
       -100,
       1.732950985437,
       -1.093274293751,
       -1.713220536058,
       15.17174923879,
       0.0033823863781,
       0.99429085,
       6.25106485947},
      {"C-P-LARGE-06",
       {3.6, 0.022, 0.0026, 0.001, 0.001, 95e9},
       60,
       40,
       -112,
       2.190910764226,
       -0.01589171750046,
       -1.908979552096,
       81.49320918174,
       0.0059919840631,
       2.2672351,
       48.75795911955},
      {"C-P-LARGE-08",
       {2.4, 0.016, 0.0018, 0.0012, 0.0005, 60e9},
       75,
       30,
       -98,
       1.256805962764,
       0.0270712851315,
       -1.707532276781,
       37.22421656491,
       0.0082251218385,
       1.3205417,
       23.63476665994},
  };
  for (const Reference& c : cases) {
    const BendingAnswers answers =
        BendingAnswersOf(DesignOf(c.cone, LoadCaseOf(c.load_n, c.butt_deg, c.direction_deg)));
    ASSERT_TRUE(answers.bare) << c.id;
    const BentRod& bent = answers.bare->cases.at(0);
    ASSERT_EQ(bent.shape.state, ElasticaState::kSolved) << c.id;
    EXPECT_NEAR(bent.shape.tip().x, c.tip_x_m, 1e-7) << c.id;
    EXPECT_NEAR(bent.shape.tip().y, c.tip_y_m, 1e-7) << c.id;
    EXPECT_NEAR(bent.shape.tip().angle, c.tip_angle, 1e-7) << c.id;
    EXPECT_NEAR(bent.clamp_moment_n_m->value(), c.moment, 1e-7 * c.moment) << c.id;
    EXPECT_NEAR(bent.peak_strain->value(), c.strain, 1e-7 * c.strain) << c.id;
    EXPECT_NEAR(bent.peak_at_m, c.strain_at_m, 0.0009) << c.id;
    EXPECT_NEAR(bent.shape.strain_energy, c.energy_j, 1e-7 * c.energy_j) << c.id;
    // The straight rod stood at the butt angle.
    EXPECT_NEAR(bent.tip_drop_m->value(), c.cone.length_m * std::sin(c.butt_deg * kDeg) - c.tip_y_m, 1e-6) << c.id;
  }
}

// Small loads: closed form of a solid cone, delta = 64 P L^3 / (3 pi E d_butt^3 d_tip) (textbooks of mechanics), and of
// TipComplianceOf, which is a quadrature of its own, for a tube. Of both the load is a thousandth of what the rod would
// carry.
TEST(ComputeBending, SmallLoadsFollowTheClosedForms) {
  const Cone cone{1.8, 0.009, 0.002, 0, 0, 60e9};
  const BendingAnswers solid = BendingAnswersOf(DesignOf(cone, LoadCaseOf(0.001)));
  const double closed = 64 * 0.001 * std::pow(1.8, 3) / (3 * std::numbers::pi * 60e9 * std::pow(0.009, 3) * 0.002);
  EXPECT_NEAR(solid.bare->cases.at(0).tip_drop_m->value(), closed, 1e-5 * closed);
  const Cone tube{2.4, 0.012, 0.003, 0.001, 0.0005, 110e9};
  const BendingAnswers hollow = BendingAnswersOf(DesignOf(tube, LoadCaseOf(0.001)));
  const auto compliance = TipComplianceOf({{0, 2.4, 0.012, 0.003, 0.010, 0.002}}, Shape::kTube, 110e9);
  ASSERT_TRUE(compliance);
  const double drop = 0.001 * compliance->deflection_m_per_n;
  EXPECT_NEAR(hollow.bare->cases.at(0).tip_drop_m->value(), drop, 1e-5 * drop);
}

// A hexagon is as stiff as its second moment 5 sqrt(3)/144 d^4 says, about every axis (plane geometry).
TEST(ComputeBending, AHexagonIsItsSecondMoment) {
  Cone cone{1.5, 0.008, 0.008};
  cone.solid = "solid_hexagon";
  const BendingAnswers answers = BendingAnswersOf(DesignOf(cone, LoadCaseOf(0.001)));
  const double stiffness = 100e9 * 0.06014065 * std::pow(0.008, 4);
  const double drop = 0.001 * std::pow(1.5, 3) / (3 * stiffness);
  EXPECT_NEAR(answers.bare->cases.at(0).tip_drop_m->value(), drop, 1e-5 * drop);
  // Strain at its flats: M d / (2 EI), M = 0.0015 N m at the clamp.
  EXPECT_NEAR(answers.bare->cases.at(0).peak_strain->value(), 0.0015 * 0.008 / (2 * stiffness), 1e-10);
  EXPECT_NEAR(answers.bare->cases.at(0).peak_at_m, 0, 1e-6);
}

// Held 300 mm from its butt, a uniform rod of 1.8 m is one of 1.5 m; places count from the butt face of the blank.
TEST(ComputeBending, WhatIsBehindTheClampDoesNotBend) {
  const Cone cone{1.8, 0.008, 0.008};
  const BendingAnswers answers = BendingAnswersOf(DesignOf(cone, LoadCaseOf(0.001), 300));
  const double drop = 0.001 * std::pow(1.5, 3) / (3 * RoundStiffness(cone));
  ASSERT_TRUE(answers.bare);
  EXPECT_NEAR(answers.bare->clamp_m, 0.3, 1e-12);
  EXPECT_NEAR(answers.bare->beam.length(), 1.5, 1e-12);
  EXPECT_NEAR(answers.bare->cases.at(0).tip_drop_m->value(), drop, 1e-5 * drop);
}

// Held at 100 mm of a rod whose blank begins at 150 mm: it is held at its butt face, and that is said.
TEST(ComputeBending, AClampBehindTheBlankHoldsItsButtFace) {
  const Cone cone{1.5, 0.008, 0.008};
  const BendingAnswers answers =
      BendingAnswersOf(DesignOf(cone, LoadCaseOf(0.001), 100) + "handle { blank_butt_from_butt { mm: 150 } }");
  ASSERT_TRUE(answers.bare && answers.finished);
  EXPECT_EQ(answers.bare->clamp_m, 0);
  EXPECT_NEAR(answers.finished->clamp_m, 0.15, 1e-12);
  EXPECT_NEAR(answers.finished->beam.length(), 1.5, 1e-12);
  EXPECT_TRUE(std::any_of(answers.assumptions.begin(), answers.assumptions.end(), [](const Assumption& a) {
    return a.at.ToString() == "intent.holding_point_from_butt" &&
           a.used == "the blank is held at its butt face, 150.0 mm";
  }));
}

// Of its own weight a load case says nothing: a heavy rod sags by q L^4 / 8 EI, and the drop is what the load adds to
// it.
TEST(ComputeBending, TheDropCountsFromTheTipUnderOwnWeight) {
  Cone cone{1.5, 0.008, 0.008};
  cone.mass_g = 20;
  const BendingAnswers answers = BendingAnswersOf(DesignOf(cone, LoadCaseOf(0.01)));
  const BentRod& bent = answers.bare->cases.at(0);
  const double sag = 0.020 * 9.80665 * std::pow(1.5, 3) / (8 * RoundStiffness(cone));
  const double drop = 0.01 * std::pow(1.5, 3) / (3 * RoundStiffness(cone));
  EXPECT_NEAR(bent.tip_drop_m->value(), drop, 1e-3 * drop);
  EXPECT_NEAR(-bent.shape.tip().y, sag + drop, 1e-3 * (sag + drop));
  // Load times length, weight times half of it: both levers are shorter by less than a thousandth.
  EXPECT_NEAR(bent.clamp_moment_n_m->value(), 0.01 * 1.5 + 0.020 * 9.80665 * 0.75, 2e-4);
}

// Two straight tubes with 100 mm of one in the other, the upper over the lower: there both stiffnesses add.
// I = pi/64 (10^4 - 8^4) = 289.812 mm4, pi/64 (12^4 - 10^4) = 527.002 mm4 (tables of round tubes).
TEST(ComputeBending, StiffnessAddsWhereOneSectionIsInAnother) {
  const std::string tube = "length { mm: 1000 } density { g_per_cm3: 1.5 } modulus { gpa: 100 } ";
  const std::string design =
      "intent { holding_point_from_butt { mm: 0 } } blank {"
      "sections { id: 'lower' " +
      tube +
      "taper { stations { at { mm: 0 } outer { mm: 10 } wall { mm: 1 } } "
      "stations { at { mm: 1000 } outer { mm: 10 } wall { mm: 1 } } } }"
      "sections { id: 'upper' " +
      tube +
      "taper { stations { at { mm: 0 } outer { mm: 12 } wall { mm: 1 } } "
      "stations { at { mm: 1000 } outer { mm: 12 } wall { mm: 1 } } } }"
      "joints { id: 'j' kind: 'tip_over_butt' lower: 'lower' upper: 'upper' overlap { mm: 100 } } }";
  const BendingAnswers answers = BendingAnswersOf(design);
  ASSERT_TRUE(answers.bare);
  const std::vector<BeamPiece>& pieces = answers.bare->beam.pieces;
  ASSERT_EQ(pieces.size(), 3u);
  EXPECT_NEAR(pieces[0].StiffnessAt(0.5), 28.9812, 1e-4);
  EXPECT_NEAR(pieces[1].s0, 0.9, 1e-12);
  EXPECT_NEAR(pieces[1].s1, 1.0, 1e-12);
  EXPECT_NEAR(pieces[1].StiffnessAt(0.95), 28.9812 + 52.7002, 1e-4);
  EXPECT_NEAR(pieces[2].StiffnessAt(1.5), 52.7002, 1e-4);
  EXPECT_NEAR(answers.bare->outer_m[2], 0.012, 1e-15);
  // Masses add too: pi/4 (100 - 64) mm2 and pi/4 (144 - 100) mm2 of 1.5 g/cm3.
  EXPECT_NEAR(pieces[1].MassPerLengthAt(0.95), std::numbers::pi / 4 * 80e-6 * 1500, 1e-9);
  const bool said = std::any_of(answers.assumptions.begin(), answers.assumptions.end(),
                                [](const Assumption& a) { return a.at.ToString() == "blank.joints[j].overlap"; });
  EXPECT_TRUE(said);
}

// A gap of 10 mm in a spigot joint is bridged by a straight line between the two ends.
TEST(ComputeBending, AGapIsBridged) {
  const std::string rows =
      "taper { stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 1000 } outer { mm: 8 } } }";
  const std::string solid =
      "shape: 'solid_round' length { mm: 1000 } density { g_per_cm3: 1.5 } modulus { gpa: 100 } " + rows;
  const BendingAnswers answers = BendingAnswersOf(
      "intent { holding_point_from_butt { mm: 0 } } blank { sections { id: 'a' " + solid + " } sections { id: 'b' " +
      solid + " } joints { id: 'j' kind: 'spigot' lower: 'a' upper: 'b' gap { mm: 10 } } }");
  ASSERT_TRUE(answers.bare);
  const BeamPiece& gap = answers.bare->beam.pieces.at(1);
  // pi/64 D^4: 201.062 mm4 of 8 mm, 490.874 mm4 of 10 mm.
  EXPECT_NEAR(gap.StiffnessAt(1.005), (20.1062 + 49.0874) / 2, 1e-4);
  EXPECT_EQ(gap.MassPerLengthAt(1.005), 0);
}

// Two straight tubes 12/10 of 1 m at 100 and 80 GPa, 10 mm apart, on a plug 10/8 of 200 mm that is fixed 120 mm deep in
// the lower one. I = pi/64 (12^4 - 10^4) = 527.002 mm4, pi/64 (10^4 - 8^4) = 289.812 mm4. The plug lies from 880 to
// 1080 mm:
//   EI   0-880: 52.7002   880-1000: 52.7002 + 28.9812 = 81.6814   1000-1010: 28.9812
//        1010-1080: 0.8 x 52.7002 + 28.9812 = 71.1413             1080-2010: 42.1601 N m2
// Mass: 20 g over 200 mm is 0.1 kg/m.
constexpr char kOnAPlug[] =
    "intent { holding_point_from_butt { mm: 0 } } blank {"
    "sections { id: 'a' length { mm: 1000 } mass { g: 100 } density { g_per_cm3: 1.5 } modulus { gpa: 100 } taper {"
    "stations { at { mm: 0 } outer { mm: 12 } wall { mm: 1 } } stations { at { mm: 1000 } outer { mm: 12 } wall { mm: "
    "1 } } "
    "} } sections { id: 'b' length { mm: 1000 } mass { g: 100 } density { g_per_cm3: 1.5 } modulus { gpa: 80 } taper {"
    "stations { at { mm: 0 } outer { mm: 12 } wall { mm: 1 } } stations { at { mm: 1000 } outer { mm: 12 } wall { mm: "
    "1 } } "
    "} } joints { id: 'j' kind: 'spigot' lower: 'a' upper: 'b' gap { mm: 10 } spigot { length { mm: 200 } "
    "standing_out { mm: 80 } fixed_in: 'a' mass { g: 20 } taper { stations { at { mm: 0 } outer { mm: 10 } wall { mm: "
    "1 } } "
    "stations { at { mm: 200 } outer { mm: 10 } wall { mm: 1 } } } } } }";

TEST(ComputeBending, APlugStiffensItsJoint) {
  const BendingAnswers answers = BendingAnswersOf(kOnAPlug);
  ASSERT_TRUE(answers.bare);
  const double ends[] = {0, 0.88, 1, 1.01, 1.08, 2.01}, stiffness[] = {52.7002, 81.6814, 28.9812, 71.1413, 42.1601};
  const std::vector<BeamPiece>& pieces = answers.bare->beam.pieces;
  ASSERT_EQ(pieces.size(), 5u);
  for (int i = 0; i < 5; ++i) {
    EXPECT_NEAR(pieces[i].s0, ends[i], 1e-12);
    EXPECT_NEAR(pieces[i].StiffnessAt((ends[i] + ends[i + 1]) / 2), stiffness[i], 1e-4) << i;
    const double tube = i == 2 ? 0 : 0.1, plug = i > 0 && i < 4 ? 0.1 : 0;
    EXPECT_NEAR(pieces[i].MassPerLengthAt((ends[i] + ends[i + 1]) / 2), tube + plug, 1e-9) << i;
  }
  EXPECT_NEAR(answers.bare->outer_m[4], 0.010, 1e-15);  // in the gap there is the plug alone
  const auto said = std::find_if(answers.assumptions.begin(), answers.assumptions.end(),
                                 [](const Assumption& a) { return a.at.ToString() == "blank.joints[j].spigot"; });
  ASSERT_NE(said, answers.assumptions.end());
  EXPECT_EQ(said->used, "the modulus of section a");
}

// A small load across its tip: over each stretch, counted from the tip, ((L - s0)^3 - (L - s1)^3) / 3 EI.
TEST(ComputeBending, AJointOnAPlugFollowsTheSumOverItsStretches) {
  const BendingAnswers answers = BendingAnswersOf(kOnAPlug + LoadCaseOf(1e-3));
  ASSERT_TRUE(answers.bare);
  const double ends[] = {0, 0.88, 1, 1.01, 1.08, 2.01}, stiffness[] = {52.7002, 81.6814, 28.9812, 71.1413, 42.1601};
  double per_newton = 0;
  for (int i = 0; i < 5; ++i) {
    per_newton += (std::pow(2.01 - ends[i], 3) - std::pow(2.01 - ends[i + 1], 3)) / (3 * stiffness[i]);
  }
  const std::optional<Uncertain>& drop_m = answers.bare->cases.at(0).tip_drop_m;
  ASSERT_TRUE(drop_m);
  EXPECT_NEAR(drop_m->value(), 1e-3 * per_newton, 5e-3 * 1e-3 * per_newton);  // its own weight bends it by 2 degrees
}

// The plug's mass is in the blank: what was counted for it on the finished rod is not added again.
TEST(ComputeBending, APlugCountsOnce) {
  const Rod rod = RodOf(kOnAPlug);
  const OnTheBlank plug{"j", rod.blank.joints.front().at.Field("spigot"), 0.98, 0.2, Uncertain(0.02), ""};
  const BendingAnswers answers = BendingAnswersOf(rod, {plug});
  ASSERT_TRUE(answers.finished);
  EXPECT_TRUE(answers.finished->beam.masses.empty());
}

// Without its walls it cannot be told how stiff a plug is: that is said.
TEST(ComputeBending, APlugWithoutWallsIsBridged) {
  std::string design = kOnAPlug;
  for (const std::string row :
       {"at { mm: 0 } outer { mm: 10 } wall { mm: 1 }", "at { mm: 200 } outer { mm: 10 } wall { mm: 1 }"}) {
    const std::size_t at = design.find(row);
    ASSERT_NE(at, std::string::npos);
    design.replace(at, row.size(), row.substr(0, row.find(" wall")));
  }
  const BendingAnswers answers = BendingAnswersOf(design);
  ASSERT_TRUE(answers.bare);
  EXPECT_EQ(answers.bare->beam.pieces.size(), 3u);
  const bool said = std::any_of(answers.assumptions.begin(), answers.assumptions.end(),
                                [](const Assumption& a) { return a.used == "as stiff as the sections it joins"; });
  EXPECT_TRUE(said);
}

// A solid tip of another modulus: 1 m of tube 10/8 at 100 GPa, then 1 m solid of 8 mm at 40 GPa (201.062 mm4).
TEST(ComputeBending, ASolidTipHasItsOwnModulus) {
  const BendingAnswers answers = BendingAnswersOf(
      "intent { holding_point_from_butt { mm: 0 } } blank { sections { id: 's' length { mm: 2000 } density { "
      "g_per_cm3: 1.5 } "
      "modulus { gpa: 100 } splice { at { mm: 1000 } material: 'glass' modulus { gpa: 40 } } taper {"
      "stations { at { mm: 0 } outer { mm: 10 } wall { mm: 1 } } stations { at { mm: 1000 } outer { mm: 10 } wall { "
      "mm: 1 } }"
      "stations { at { mm: 1000 } outer { mm: 8 } wall { mm: 1 } } stations { at { mm: 2000 } outer { mm: 8 } wall { "
      "mm: 1 } } } } }");
  ASSERT_TRUE(answers.bare);
  const Beam& beam = answers.bare->beam;
  EXPECT_NEAR(beam.pieces.front().StiffnessAt(0.5), 28.9812, 1e-4);
  EXPECT_NEAR(beam.pieces.back().StiffnessAt(1.5), 0.4 * 20.1062, 1e-4);
}

// A straight cone read at 5001 places is the same cone: what is drawn through fewer rows loses nothing of it.
TEST(ComputeBending, ThousandsOfStationsAreTheSameCone) {
  std::string rows;
  for (int i = 0; i <= 5000; ++i) {
    rows += absl::StrFormat("stations { at { mm: %.17g } outer { mm: %.17g } }", 0.4 * i, 10 - 0.0016 * i);
  }
  const std::string more = "intent { holding_point_from_butt { mm: 0 } } " + LoadCaseOf(5) +
                           "blank { sections { id: 's' shape: 'solid_round' length { mm: 2000 } mass { g: 1e-9 } "
                           "modulus { gpa: 100 plus_minus: 0 } taper {";
  const BendingAnswers many = BendingAnswersOf(more + rows + "} } }");
  const BendingAnswers two = BendingAnswersOf(DesignOf({2, 0.01, 0.002}, LoadCaseOf(5)));
  ASSERT_TRUE(many.bare && two.bare);
  EXPECT_LT(many.bare->beam.pieces.size(), 500u);
  EXPECT_NEAR(many.bare->cases.at(0).tip_drop_m->value(), two.bare->cases.at(0).tip_drop_m->value(), 1e-8);
  EXPECT_NEAR(many.bare->cases.at(0).peak_at_m, two.bare->cases.at(0).peak_at_m, 1e-4);
}

TEST(ComputeBending, WithoutAWallItSaysWhatToMeasure) {
  const BendingAnswers answers = BendingAnswersOf(
      "intent { holding_point_from_butt { mm: 0 } } blank { sections { id: 's' length { mm: 2000 } taper {"
      "stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 2000 } outer { mm: 2 } } } } }");
  EXPECT_FALSE(answers.bare);
  EXPECT_FALSE(answers.finished);
  ASSERT_EQ(answers.unknowns.size(), 1u);
  EXPECT_EQ(answers.unknowns[0].figure, "bending");
  EXPECT_EQ(answers.unknowns[0].measure, "weigh section s or measure its wall");
}

// 7 mm of wall in a tube of 10 mm: no bore is left, and weighing it would not mend what is written.
TEST(ComputeBending, AWallThatCannotBeIsToBeMeasuredAgain) {
  Cone cone;
  cone.wall_butt_m = cone.wall_tip_m = 0.007;
  std::string design = DesignOf(cone, "");
  const std::size_t mass = design.find("mass {");
  design.erase(mass, design.find('}', mass) + 1 - mass);
  const BendingAnswers answers = BendingAnswersOf(design);
  ASSERT_FALSE(answers.unknowns.empty());
  EXPECT_EQ(answers.unknowns[0].measure, "measure the wall of section s again: the one written cannot be");
}

// Unidirectional carbon at 60 % fibre, 139 GPa; half of it is the doubt: 70 of 139 is 50.4 %, of the load as of the
// modulus.
TEST(ComputeBending, AMissingModulusIsAssumedWithItsRange) {
  const BendingAnswers answers = BendingAnswersOf(
      "intent { holding_point_from_butt { mm: 0 } } blank { sections { id: 's' shape: 'solid_round' material: 'carbon' "
      "length { mm: 2000 } mass { g: 1e-9 } taper {"
      "stations { at { mm: 0 } outer { mm: 10 } } stations { at { mm: 2000 } outer { mm: 5 } } } } }");
  ASSERT_TRUE(answers.bare && answers.bare->power);
  EXPECT_EQ(answers.modulus_from, Source::kAssumed);
  const Uncertain load = answers.bare->power->load_kg;
  EXPECT_NEAR(load.plus_minus() / load.value(), 70.0 / 139, 1e-6);
  EXPECT_TRUE(std::any_of(answers.assumptions.begin(), answers.assumptions.end(),
                          [](const Assumption& a) { return a.at.ToString() == "blank.sections[s].modulus"; }));
}

// Euler's column: standing upright it stays straight until P = pi^2 EI / 4 L^2, and then more than one shape holds the
// load.
TEST(ComputeBending, AColumnBranchesAtEulersLoad) {
  const Cone cone;
  const double euler = std::numbers::pi * std::numbers::pi * RoundStiffness(cone) / (4 * cone.length_m * cone.length_m);
  const BendingAnswers answers = BendingAnswersOf(DesignOf(cone, LoadCaseOf(2 * euler, 90)));
  ASSERT_TRUE(answers.bare);
  const BentRod& bent = answers.bare->cases.at(0);
  EXPECT_EQ(bent.shape.state, ElasticaState::kSeveral);
  EXPECT_NEAR(bent.shape.reached, 0.5, 1e-3);
}

}  // namespace
}  // namespace withy::testing
