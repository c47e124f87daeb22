// Family P: layouts, best known and classic, on four rods: same figures for the same layout, and as good a layout
// found.
//
// public/P_guide_placement.json holds its own conventions, sources and tolerances. Its best layouts are the best known
// from 60 starts and differential evolution on each rod, with J evaluated by another solver (spectral finite elements).
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

#include "gmock/gmock.h"
#include "gtest/gtest.h"
#include "reference/placement_answers.h"

namespace withy::reference {
namespace {

using rapidjson::Document;
using rapidjson::Value;
using ::testing::DoubleNear;
using ::testing::Pointwise;

constexpr double kEighthOfAnInch = 0.0254 / 8;
constexpr double kRounded = 1e-6;  // places in the file have six digits after the point

std::vector<double> NumbersOf(const Value& list) {
  std::vector<double> numbers;
  for (const Value& number : list.GetArray()) numbers.push_back(number.GetDouble());
  return numbers;
}

class Placement : public ::testing::Test {
 protected:
  void SetUp() override {
    std::ifstream stream(std::string(WITHY_SOURCE_DIR) + "/tests/reference/public/P_guide_placement.json");
    const std::string text{std::istreambuf_iterator<char>(stream), {}};
    file_.Parse<rapidjson::kParseFullPrecisionFlag>(text.c_str());
    ASSERT_TRUE(file_.IsObject() && file_.HasMember("cases"));
    ASSERT_EQ(file_["cases"].Size(), 4u);
  }

  // judge(problem, expected, tolerances) for each rod.
  template <typename Judge>
  void ForEachRod(Judge judge) {
    for (const Value& entry : file_["cases"].GetArray()) {
      SCOPED_TRACE(entry["id"].GetString());
      judge(PlacementOf(entry["input"]), entry["expected"], entry["tol"]);
    }
  }

  Document file_;
};

void ExpectSameFigures(const Layout& layout, const Value& want, const Value& tolerance) {
  ASSERT_TRUE(layout.solved) << layout.why;
  const double j_off = tolerance["J_of_a_given_layout_abs_rad"].GetDouble();
  EXPECT_NEAR(layout.j, want["J_rad"].GetDouble(), j_off);
  EXPECT_NEAR(layout.r, want["R_rad"].GetDouble(), j_off);
  EXPECT_NEAR(layout.f, want["F_rad"].GetDouble(), j_off);
  EXPECT_NEAR(layout.clearance_violation_m, want["clearance_violation_m"].GetDouble(), 1e-6);
  EXPECT_LE(layout.position_violation_m, kRounded);
}

void ExpectSameCase(const LayoutCase& at, const Value& want, const Value& tolerance) {
  const double angle = tolerance["angles_abs_rad"].GetDouble();
  EXPECT_THAT(at.turns, Pointwise(DoubleNear(angle), NumbersOf(want["line_deflection_angle_rad"])));
  std::vector<double> spans = NumbersOf(want["blank_turn_span_rad"]);
  spans.erase(spans.begin());  // from the clamp to the first guide: no part of R
  EXPECT_THAT(at.span_turns, Pointwise(DoubleNear(angle), spans));
  EXPECT_NEAR(at.entry, want["tip_top_entry_angle_rad"].GetDouble(), angle);
  EXPECT_THAT(at.clearances_m,
              Pointwise(DoubleNear(tolerance["clearance_abs_m"].GetDouble()), NumbersOf(want["min_clearance_m"])));
  EXPECT_THAT(at.forces_n,
              Pointwise(DoubleNear(tolerance["forces_abs_N"].GetDouble()), NumbersOf(want["force_magnitude_N"])));
}

TEST_F(Placement, FiguresOfGivenLayouts) {
  ForEachRod([](const PlacementProblem& problem, const Value& expected, const Value& tolerance) {
    for (const auto& given : expected["layouts"].GetObject()) {
      SCOPED_TRACE(given.name.GetString());
      ExpectSameFigures(EvaluateLayout(problem, NumbersOf(given.value["s_m"])), given.value, tolerance);
    }
    const Value& best = expected["best_known"];
    const Layout layout = EvaluateLayout(problem, NumbersOf(best["s_m"]));
    ExpectSameFigures(layout, best, tolerance);
    for (const Value& want : best["per_load_case"].GetArray()) {
      ExpectSameCase(layout.cases[static_cast<std::size_t>(want["load_case"].GetInt() - 1)], want, tolerance);
    }
  });
}

void ExpectAsGood(const PlacementProblem& problem, double best_j, const Value& tolerance) {
  const withy::Placement found = PlaceGuides(problem);
  EXPECT_TRUE(found.feasible) << found.why;
  EXPECT_LE(found.best.j, tolerance["objective_good_ratio"].GetDouble() * best_j);
  // A J far below the best of 60 starts would rather be a fault.
  EXPECT_GE(found.best.j, 0.999 * best_j);
  EXPECT_LE(found.best.position_violation_m, tolerance["feasible_position_m"].GetDouble());
  EXPECT_LE(found.best.clearance_violation_m, tolerance["feasible_clearance_m"].GetDouble());
  EXPECT_LE(found.solves, 600);
}

TEST_F(Placement, FindsTheBestKnown) {
  ForEachRod([](const PlacementProblem& problem, const Value& expected, const Value& tolerance) {
    ExpectAsGood(problem, expected["J_best_rad"].GetDouble(), tolerance);
  });
}

TEST_F(Placement, FindsTheBestKnownWithGapsThatNeverGrow) {
  ForEachRod([](PlacementProblem problem, const Value& expected, const Value& tolerance) {
    problem.gaps_never_grow = true;
    ExpectAsGood(problem, expected["monotone"]["J_rad"].GetDouble(), tolerance);
  });
}

TEST_F(Placement, FindsTheBestKnownWithOneGuideFewerAndOneMore) {
  ForEachRod([](const PlacementProblem& problem, const Value& expected, const Value& tolerance) {
    const auto fewer = OneFewer(problem), more = OneMore(problem);
    ASSERT_TRUE(fewer && more);
    ExpectAsGood(*fewer, expected["one_guide_fewer"]["J_rad"].GetDouble(), tolerance);
    ExpectAsGood(*more, expected["one_guide_more"]["J_rad"].GetDouble(), tolerance);
  });
}

TEST_F(Placement, WhatClearanceCosts) {
  ForEachRod([](PlacementProblem problem, const Value& expected, const Value& tolerance) {
    if (expected["J_best_without_clearance_rad"].IsNull()) return;
    for (PlacementCase& load_case : problem.cases) load_case.clearance_m.reset();
    ExpectAsGood(problem, expected["J_best_without_clearance_rad"].GetDouble(), tolerance);
  });
}

TEST_F(Placement, OnAnEighthOfAnInch) {
  ForEachRod([](PlacementProblem problem, const Value& expected, const Value& tolerance) {
    for (const bool never_grow : {false, true}) {
      problem.gaps_never_grow = never_grow;
      const withy::Placement ruled = OnGrid(problem, PlaceGuides(problem).best, kEighthOfAnInch);
      EXPECT_TRUE(ruled.feasible) << ruled.why;
      const double best_j = never_grow ? expected["monotone"]["J_rad"].GetDouble() : expected["J_best_rad"].GetDouble();
      EXPECT_LE(ruled.best.j, tolerance["objective_pass_ratio_on_eighth_inch_grid"].GetDouble() * best_j);
      EXPECT_LE(ruled.best.clearance_violation_m, tolerance["feasible_clearance_m"].GetDouble());
      for (const double place : ruled.best.s_m) {
        const double steps = (problem.beam.length() - place) / kEighthOfAnInch;
        EXPECT_NEAR(steps, std::round(steps), 1e-6);
      }
    }
  });
}

TEST_F(Placement, OneGuideOffByThreeMillimetres) {
  ForEachRod([](const PlacementProblem& problem, const Value& expected, const Value& tolerance) {
    const Value& best = expected["best_known"];
    const auto moved = MovedBy(problem, EvaluateLayout(problem, NumbersOf(best["s_m"])), 0.003);
    ASSERT_EQ(moved.size(), expected["sensitivity"].Size());
    for (const Value& want : expected["sensitivity"].GetArray()) {
      const double worst = std::max(want["J_minus_3mm_rad"].GetDouble(), want["J_plus_3mm_rad"].GetDouble());
      const MovedGuide& guide = moved[static_cast<std::size_t>(want["guide"].GetInt() - 1)];
      EXPECT_NEAR(guide.j_ratio * best["J_rad"].GetDouble(), worst,
                  2 * tolerance["J_of_a_given_layout_abs_rad"].GetDouble());
      EXPECT_NEAR(guide.clearance_violation_m,
                  std::max(want["clearance_violation_minus_3mm_m"].GetDouble(),
                           want["clearance_violation_plus_3mm_m"].GetDouble()),
                  1e-6);
    }
  });
}

TEST_F(Placement, ClassicLayouts) {
  ForEachRod([](const PlacementProblem& problem, const Value& expected, const Value&) {
    const Value& layouts = expected["layouts"];
    const auto near_start = [&](const char* name) {
      return Pointwise(DoubleNear(kRounded), NumbersOf(layouts[name]["s_m"]));
    };
    EXPECT_THAT(ArithmeticLayout(problem), near_start("arithmetic_start"));
    EXPECT_THAT(GeometricLayout(problem), near_start("geometric_start"));
    EXPECT_THAT(EqualLayout(problem), near_start("equal_start"));
  });
}

}  // namespace
}  // namespace withy::reference
