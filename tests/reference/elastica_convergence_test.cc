// How fast the elastica converges: case C-P-LARGE-04 of the reference (a tapering tube under 20 N, tip turned by 132
// degrees) in elements of equal length and of one degree, against the reference values of its file. Theory: with degree
// p the free end is off by h^(2 p) (Galerkin's superconvergence; Strang and Fix, An Analysis of the Finite Element
// Method, 1973, 1.6 and 3.4).
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <numbers>
#include <string>
#include <vector>

#include "elastica_elements.h"
#include "elastica_path.h"
#include "elastica_shape.h"
#include "rapidjson/document.h"
#include "reference/fields.h"
#include "support/tube_beam.h"

namespace withy {
namespace {

constexpr double kLength = 2.1, kTipX = 1.519115471694, kTipY = -0.3159845881075;

struct Case {
  Beam beam = TubeBeam({0, 0.0125, 0.0105}, {kLength, 0.002, 0.0011}, 110e9, 0);
  ElasticaLoad load{.clamp_angle = std::numbers::pi / 4, .force_y = -20};
};

// How far the free end is off, over the length.
double ErrorOf(const Case& one, int degree, int count) {
  std::vector<double> ends;
  for (int k = 0; k <= count; ++k) ends.push_back(kLength * k / count);
  ElasticaElements elements(one.beam, one.load, MeshOf(one.beam, one.load, ends), degree);
  EXPECT_EQ(RaiseLoad(elements, 400).state, ElasticaState::kSolved) << degree << " " << count;
  EXPECT_TRUE(Settle(elements, 1)) << degree << " " << count;
  Elastica shape;
  Trace(one.beam, one.load, elements.mesh(), elements.angle(), degree, 1, shape);
  return std::hypot(shape.tip().x - kTipX, shape.tip().y - kTipY) / kLength;
}

TEST(ElasticaConvergence, HalvingTheElementsGainsTwiceTheDegree) {
  const Case one;
  for (int degree : {1, 2, 3}) {
    const int coarse = degree == 1 ? 64 : 32;
    const double first = ErrorOf(one, degree, coarse), second = ErrorOf(one, degree, 2 * coarse);
    const double order = std::log2(first / second);
    std::printf("degree %d: off by %.2e of the length in %d elements, %.2e in %d: order %.2f\n", degree, first, coarse,
                second, 2 * coarse, order);
    EXPECT_NEAR(order, 2 * degree, 0.3) << degree;
  }
}

TEST(ElasticaConvergence, EachDegreeGainsAFactor) {
  const Case one;
  double before = 1;
  for (int degree = 1; degree <= 6; ++degree) {
    const double error = ErrorOf(one, degree, 16);
    std::printf("16 elements of degree %d: off by %.2e of the length\n", degree, error);
    EXPECT_LT(error, before / 5) << degree;
    before = error;
  }
}

// The estimate told with each result is of the size of the error: for all large deflections of family C, at tolerances
// from rough to fine, as long as the error is well above the digits of the reference values.
TEST(ElasticaConvergence, ErrorEstimateIsOfTheSizeOfTheError) {
  std::ifstream stream(std::string(WITHY_SOURCE_DIR) + "/tests/reference/public/C_tapered_cantilevers.json");
  const std::string text{std::istreambuf_iterator<char>(stream), {}};
  rapidjson::Document file;
  file.Parse<rapidjson::kParseFullPrecisionFlag>(text.c_str());
  ASSERT_FALSE(file.HasParseError());
  int compared = 0;
  for (const rapidjson::Value& entry : file["cases"].GetArray()) {
    if (std::string(entry["type"].GetString()) != "large_deflection_tip_force") continue;
    const rapidjson::Value &in = entry["input"], &expected = entry["expected"];
    using reference::Get;
    const double outer0 = Get(in, "od_butt_m"), outer1 = Get(in, "od_tip_m"), length = Get(in, "L_m");
    const bool solid = in["solid"].GetBool();
    const Beam beam = TubeBeam({0, outer0, solid ? 0 : outer0 - 2 * Get(in, "wall_butt_m")},
                               {length, outer1, solid ? 0 : outer1 - 2 * Get(in, "wall_tip_m")}, Get(in, "E_Pa"), 0);
    const double direction = Get(in, "force_direction_deg") * std::numbers::pi / 180;
    const ElasticaLoad load{.clamp_angle = Get(in, "butt_angle_deg") * std::numbers::pi / 180,
                            .force_x = Get(in, "P_N") * std::cos(direction),
                            .force_y = Get(in, "P_N") * std::sin(direction)};
    for (double tolerance : {1e-3, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10}) {
      const Elastica shape = SolveElastica(beam, load, {.tolerance = tolerance});
      ASSERT_EQ(shape.state, ElasticaState::kSolved);
      EXPECT_LE(shape.error, tolerance * length);
      const double off = std::hypot(shape.tip().x - Get(expected, "tip_x_m"), shape.tip().y - Get(expected, "tip_y_m"));
      if (off < 2e-11) continue;
      ++compared;
      EXPECT_LT(shape.error, 10 * off) << entry["id"].GetString() << " " << tolerance;
      EXPECT_GT(shape.error, off / 10) << entry["id"].GetString() << " " << tolerance;
    }
  }
  EXPECT_GE(compared, 30);
}

}  // namespace
}  // namespace withy
