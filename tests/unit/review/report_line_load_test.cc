// Line load in the report: the reference cases of family G (tests/reference/public/G_line_load.json), each written as a
// design and read, resolved, computed and reported; then the examples by what must hold between their figures.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "gtest/gtest.h"
#include "reference/fields.h"
#include "support/design_files.h"
#include "unit/line_load/strung_design.h"
#include "withy/review/review.h"

namespace withy::testing {
namespace {

using reference::Get;
using reference::Value;

constexpr double kDeg = 180 / std::numbers::pi;

const rapidjson::Document& FamilyG() {
  static const rapidjson::Document* const family = [] {
    auto* document = new rapidjson::Document();
    document->Parse(
        BytesOf(std::filesystem::path(WITHY_SOURCE_DIR) / "tests/reference/public/G_line_load.json").c_str());
    return document;
  }();
  return *family;
}

StrungDesign DesignOf(const Value& in) {
  StrungDesign design;
  design.length_m = Get(in, "L_m");
  design.outer_butt_m = Get(in, "od_butt_m");
  design.outer_tip_m = Get(in, "od_tip_m");
  design.wall_butt_m = Get(in, "wall_butt_m");
  design.wall_tip_m = Get(in, "wall_tip_m");
  design.modulus_pa = Get(in, "E_Pa");
  design.side = in["side"].GetInt();
  design.reel_s_m = Get(in, "reel_s_m");
  design.reel_offset_m = Get(in, "reel_offset_m");
  design.rings.clear();
  for (const Value& guide : in["guides"].GetArray()) {
    design.rings.emplace_back(Get(guide, "s_m"), Get(guide, "offset_m"));
  }
  design.tension_n = Get(in, "tension_far_N");
  design.line_deg = Get(in, "far_direction_phi_deg");
  design.butt_deg = Get(in, "butt_angle_deg");
  design.friction = Get(in, "friction_mu");
  return design;
}

// Those of a tube; a design's friction is that of a line that runs out.
bool CanBeADesign(const Value& in) {
  return !in.HasMember("EI_constant_Nm2") && std::string(in["slip"].GetString()) != "in";
}

v1::StrungRod Reported(const StrungDesign& design) {
  const ReadResult read = ReadDesign("g.txtpb", "format: \"withy/1\"\n" + TextOf(design));
  if (!read.document) return {};
  const v1::Report report = ReviewDesign(read).report;
  return report.line_load().cases_size() == 1 ? report.line_load().cases(0) : v1::StrungRod();
}

class ReferenceCase : public ::testing::TestWithParam<int> {
 protected:
  const Value& given() const { return FamilyG()["cases"][GetParam()]; }
  const Value& expected() const { return given()["expected"]; }
  double Tolerance(const char* of) const { return Get(given()["tol"], of); }
};

TEST_P(ReferenceCase, ThroughTheWholeChain) {
  const StrungDesign design = DesignOf(given()["input"]);
  const v1::StrungRod strung = Reported(design);
  ASSERT_EQ(strung.state(), "bent");
  const double mm = 1000 * Tolerance("lengths_abs_m"), deg = kDeg * Tolerance("angles_abs_rad");
  const double moment = Tolerance("moments_abs_Nm");
  const int last = strung.at_mm_size() - 1;
  EXPECT_NEAR(strung.forward_mm(last), 1000 * Get(expected(), "tip_x_m"), mm);
  EXPECT_NEAR(strung.up_mm(last), 1000 * Get(expected(), "tip_y_m"), mm);
  EXPECT_NEAR(strung.tip_angle_deg(), kDeg * Get(expected(), "tip_angle_rad"), deg);
  EXPECT_NEAR(strung.tip_to_line_deg(), kDeg * std::abs(Get(expected(), "tip_to_line_angle_rad")), deg);
  EXPECT_NEAR(strung.moment_n_m(0), Get(expected(), "root_moment_Nm"), moment);
  EXPECT_NEAR(strung.clamp_moment_n_m(), std::abs(Get(expected(), "root_moment_Nm")), moment);
  EXPECT_NEAR(strung.peak_strain_millistrain(), 1000 * Get(expected(), "max_abs_outer_fibre_strain"), 1e-5);
  EXPECT_NEAR(strung.strain_energy_j(), Get(expected(), "strain_energy_J"), 1e-5);
  EXPECT_NEAR(strung.line_path_mm(), 1000 * Get(expected(), "line_path_reel_to_tiptop_m"), mm);
  EXPECT_NEAR(strung.tension_at_reel_n(), Get(expected(), "tension_at_reel_N"), Tolerance("forces_abs_N"));
  EXPECT_NEAR(strung.clearance_mm(), 1000 * Get(expected(), "min_clearance_m"), 1000 * Tolerance("clearance_abs_m"));
}

TEST_P(ReferenceCase, RingByRing) {
  const StrungDesign design = DesignOf(given()["input"]);
  const v1::StrungRod strung = Reported(design);
  const double mm = 1000 * Tolerance("lengths_abs_m"), deg = kDeg * Tolerance("angles_abs_rad");
  const double newton = Tolerance("forces_abs_N");
  const double sense = Get(expected(), "root_moment_Nm") < 0 ? -1 : 1;
  const auto guides = expected()["guides"].GetArray();
  ASSERT_EQ(strung.rings_size(), static_cast<int>(guides.Size()));
  for (int k = 0; k < strung.rings_size(); ++k) {
    const v1::RingUnderLine& ring = strung.rings(k);
    const Value& guide = guides[k];
    EXPECT_NEAR(ring.from_butt_mm(), 1000 * (kClampM + Get(guide, "s_m")), 1e-6);
    EXPECT_NEAR(ring.forward_mm(), 1000 * Get(guide, "ring_x_m"), mm);
    EXPECT_NEAR(ring.up_mm(), 1000 * Get(guide, "ring_y_m"), mm);
    EXPECT_NEAR(ring.blank_angle_deg(), kDeg * Get(guide, "theta_rad"), deg);
    EXPECT_NEAR(ring.turn_deg(), sense * kDeg * Get(guide, "line_deflection_angle_rad"), deg);
    EXPECT_NEAR(std::remainder(ring.line_in_deg() - kDeg * Get(guide, "line_in_angle_rad"), 360), 0, deg);
    EXPECT_NEAR(std::remainder(ring.line_out_deg() - kDeg * Get(guide, "line_out_angle_rad"), 360), 0, deg);
    EXPECT_NEAR(ring.force_n(), Get(guide, "force_magnitude_N"), newton);
    EXPECT_NEAR(ring.force_along_n(), Get(guide, "force_tangential_N"), newton);
    EXPECT_NEAR(ring.force_across_n(), -design.side * Get(guide, "force_normal_N"), newton);
    EXPECT_NEAR(ring.tension_in_n(), Get(guide, "tension_in_N"), newton);
  }
}

// The moment of the line beside the blank: in section k the pull T_k along u_k at the ring behind it, taken off.
TEST_P(ReferenceCase, GuidesShareOfTheMoment) {
  const v1::StrungRod strung = Reported(DesignOf(given()["input"]));
  for (int i = 0; i < strung.at_mm_size(); ++i) {
    int behind = -1;
    for (int k = 0; k < strung.rings_size(); ++k) {
      if (strung.rings(k).from_butt_mm() <= strung.at_mm(i) + 1e-6) behind = k;
    }
    const bool reel = behind < 0;
    const double x = reel ? strung.reel_forward_mm() : strung.rings(behind).forward_mm();
    const double y = reel ? strung.reel_up_mm() : strung.rings(behind).up_mm();
    const double pull = reel ? strung.rings(0).tension_in_n() : strung.rings(behind).tension_out_n();
    const double angle = (reel ? strung.rings(0).line_in_deg() : strung.rings(behind).line_out_deg()) / kDeg;
    const double moment =
        ((x - strung.forward_mm(i)) * std::sin(angle) - (y - strung.up_mm(i)) * std::cos(angle)) * pull / 1000;
    EXPECT_NEAR(strung.guides_moment_n_m(i), -moment, Tolerance("moments_abs_Nm")) << strung.at_mm(i);
  }
}

std::vector<int> CasesThatCanBeDesigns() {
  std::vector<int> numbers;
  const auto cases = FamilyG()["cases"].GetArray();
  for (int i = 0; i < static_cast<int>(cases.Size()); ++i) {
    if (CanBeADesign(cases[i]["input"])) numbers.push_back(i);
  }
  return numbers;
}

INSTANTIATE_TEST_SUITE_P(FamilyG, ReferenceCase, ::testing::ValuesIn(CasesThatCanBeDesigns()));

TEST(ReferenceCases, MostOfTheFamilyCanBeDesigns) {
  EXPECT_GE(CasesThatCanBeDesigns().size(), 7u);
}

// Turned by a right angle, clockwise seen from the butt, a ring above stands out of the picture, towards who looks at it;
// the line, which runs in the picture on both sides, draws it back to the blank.
TEST(TurnedGuide, StandsOutOfThePicture) {
  StrungDesign design;
  const std::string turned = "guides { id: 'side' model: 'm1' from_tip { mm: 1000 } angle { deg: 90 } }\n";
  const ReadResult read = ReadDesign("turned.txtpb", "format: \"withy/1\"\n" + TextOf(design) + turned);
  ASSERT_TRUE(read.document.has_value());
  const v1::Report report = ReviewDesign(read).report;
  const v1::StrungRod& strung = report.line_load().cases(0);
  ASSERT_EQ(strung.state(), "bent");
  EXPECT_EQ(strung.rings_stand(), "around");
  int met = 0;
  for (const v1::RingUnderLine& ring : strung.rings()) {
    if (ring.id() != "side") {
      EXPECT_EQ(ring.aside_mm(), 0);
      continue;
    }
    ++met;
    EXPECT_NEAR(ring.aside_mm(), ring.offset_mm(), 1e-9);
    EXPECT_GT(ring.force_across_n(), 0);
  }
  EXPECT_EQ(met, 1);
}

// Where the column of tests/faulty/line_load/folds.txtpb branches, worked there by hand: 2.057929 EI / L^2 = 59.774 N of 100.
TEST(FoldedRod, IsReportedUpToWhereItFolds) {
  const auto reviewed =
      ReviewFile(std::filesystem::path(WITHY_SOURCE_DIR) / "tests/faulty/line_load/folds.txtpb").review;
  const v1::StrungRod& strung = reviewed.report.line_load().cases(0);
  EXPECT_EQ(strung.state(), "several");
  EXPECT_NEAR(strung.reached(), 0.59774, 1e-5);
  EXPECT_NEAR(strung.tension_n(), 100, 1e-9);
  EXPECT_NEAR(strung.peak_strain_millistrain(), 0, 1e-6);
  EXPECT_FALSE(strung.has_tip_drop_plus_minus_mm());
}

class LineLoadOfExample : public ::testing::TestWithParam<std::string> {
 protected:
  const v1::Report report_ =
      ReviewFile(std::filesystem::path(WITHY_SOURCE_DIR) / "examples/designs" / GetParam()).review.report;
};

// Datum, rings and lists as those of the other concerns; the turns add up to the way from the reel to the far line.
TEST_P(LineLoadOfExample, AgreesWithTheRestOfTheReport) {
  ASSERT_EQ(report_.line_load().cases_size(), 1);
  const v1::StrungRod& strung = report_.line_load().cases(0);
  ASSERT_EQ(strung.state(), "bent");
  EXPECT_EQ(strung.reached(), 1);
  ASSERT_EQ(strung.rings_size(), report_.guides().guides_size() + 1);
  ASSERT_EQ(strung.spans_size(), strung.rings_size());
  for (int k = 0; k + 1 < strung.rings_size(); ++k) {
    const v1::PlacedGuide& guide = report_.guides().guides(k);
    EXPECT_EQ(strung.rings(k).id(), guide.id());
    EXPECT_NEAR(strung.rings(k).from_butt_mm(), guide.from_butt_mm(), 1e-6);
    EXPECT_NEAR(strung.rings(k).offset_mm(), guide.ring_height_mm() + guide.blank_diameter_mm() / 2, 1e-6);
    EXPECT_EQ(strung.spans(k).to_ring(), guide.id());
  }
  EXPECT_NEAR(strung.at_mm(0), strung.clamp_mm(), 1e-6);
  EXPECT_NEAR(strung.at_mm(strung.at_mm_size() - 1), report_.fit().tip_ring_mm(), 1e-6);
  EXPECT_NEAR(strung.moment_n_m(strung.at_mm_size() - 1), 0, 1e-6);
  double turns = 0, force_up = 0, least = 1e9;
  for (const v1::RingUnderLine& ring : strung.rings()) turns += ring.turn_deg();
  for (const v1::LineSpan& span : strung.spans()) least = std::min(least, span.clearance_mm());
  EXPECT_NEAR(turns, strung.rings(0).line_in_deg() - strung.line_angle_deg(), 1e-6);
  EXPECT_EQ(strung.clearance_mm(), least);
  // Without friction all forces on the rings together are the pull at the far end less that at the reel.
  for (const v1::RingUnderLine& ring : strung.rings()) {
    const double blank = ring.blank_angle_deg() / kDeg, side = strung.rings_stand() == "above" ? -1 : 1;
    force_up += ring.force_along_n() * std::sin(blank) + side * ring.force_across_n() * std::cos(blank);
  }
  const double at_reel = strung.rings(0).line_in_deg() / kDeg, far = strung.line_angle_deg() / kDeg;
  EXPECT_NEAR(force_up, strung.tension_n() * (std::sin(far) - std::sin(at_reel)), 1e-6);
}

// Bending with the whole load on the tip-top's ring and the rod's own weight is another question, of the same size.
TEST_P(LineLoadOfExample, IsOfTheSizeOfBending) {
  const v1::StrungRod& strung = report_.line_load().cases(0);
  const v1::BentShape& bent = report_.bending().finished().cases(0);
  EXPECT_NEAR(strung.clamp_moment_n_m() / bent.clamp_moment_n_m(), 1, 0.25);
  EXPECT_NEAR(strung.peak_strain_millistrain() / bent.peak_strain_millistrain(), 1, 0.25);
  EXPECT_GT(strung.tip_drop_plus_minus_mm(), 0);
  EXPECT_LT(strung.error_mm(), 0.001);
}

INSTANTIATE_TEST_SUITE_P(Examples, LineLoadOfExample,
                         ::testing::Values("casting.txtpb", "spinning.txtpb", "surf.txtpb"),
                         [](const auto& info) { return info.param.substr(0, info.param.find('.')); });

}  // namespace
}  // namespace withy::testing
