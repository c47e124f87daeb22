// Bending in the report of the examples: places, datums and sums against the other concerns' figures of the same
// report.
#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "gtest/gtest.h"
#include "support/design_files.h"

namespace withy::testing {
namespace {

v1::Report ReportOf(const std::string& name) {
  return ReviewFile(std::filesystem::path(WITHY_SOURCE_DIR) / "examples/designs" / name).review.report;
}

class ReportBending : public ::testing::TestWithParam<std::string> {};

TEST_P(ReportBending, PlacesCountFromTheirDatums) {
  const v1::Report report = ReportOf(GetParam());
  ASSERT_TRUE(report.bending().has_bare() && report.bending().has_finished());
  const v1::BendingOf &bare = report.bending().bare(), &finished = report.bending().finished();
  EXPECT_NEAR(finished.clamp_mm() - bare.clamp_mm(), report.fit().blank_butt_mm(), 1e-6);
  EXPECT_NEAR(finished.clamp_mm() + finished.free_length_mm(), report.fit().tip_ring_mm(), 1e-6);
  EXPECT_NEAR(bare.clamp_mm() + bare.free_length_mm(), report.sections().blank_length_mm(), 1e-6);
  for (const v1::BendingOf* of : {&bare, &finished}) {
    ASSERT_GT(of->at_mm_size(), 2);
    EXPECT_LE(of->at_mm_size(), 60);
    EXPECT_EQ(of->at_mm_size(), of->ei_n_m2_size());
    EXPECT_NEAR(of->at_mm(0), of->clamp_mm(), 1e-6);
    EXPECT_NEAR(*of->at_mm().rbegin(), of->clamp_mm() + of->free_length_mm(), 1e-6);
    EXPECT_EQ(of->frequency_hz_size(), 3);
  }
}

// A chord is no longer than its arc, the tip carries no moment, and no strain is above its peak.
TEST_P(ReportBending, AShapeIsOne) {
  const v1::Report report = ReportOf(GetParam());
  for (const v1::BendingOf* of : {&report.bending().bare(), &report.bending().finished()}) {
    for (const v1::BentShape& bent : of->cases()) {
      ASSERT_EQ(bent.state(), "bent");
      const int count = bent.at_mm_size();
      ASSERT_GT(count, 10);
      EXPECT_LE(count, 60);
      for (int i = 1; i < count; ++i) {
        const double arc = bent.at_mm(i) - bent.at_mm(i - 1);
        const double chord = std::hypot(bent.forward_mm(i) - bent.forward_mm(i - 1), bent.up_mm(i) - bent.up_mm(i - 1));
        EXPECT_LE(chord, arc + 1e-6);
        EXPECT_GE(chord, 0.98 * arc);
      }
      EXPECT_NEAR(bent.moment_n_m(count - 1), 0, 1e-6);
      EXPECT_NEAR(std::abs(bent.moment_n_m(0)), bent.clamp_moment_n_m(), 1e-9);
      const auto& strain = bent.strain_millistrain();
      EXPECT_LE(*std::max_element(strain.begin(), strain.end()), bent.peak_strain_millistrain() * (1 + 1e-9));
      EXPECT_LT(bent.error_mm(), 0.001);
    }
  }
}

// Every guide and the tip-top costs something, one by one about what they cost together with the rest of what is on the
// rod.
TEST_P(ReportBending, EveryGuideCosts) {
  const v1::Report report = ReportOf(GetParam());
  std::set<std::string> ids;
  double sum = 0;
  for (const v1::FrequencyLoss& loss : report.bending().losses()) {
    ids.insert(loss.id());
    EXPECT_GT(loss.hz(), 0);
    sum += loss.hz();
  }
  for (const v1::PlacedGuide& guide : report.guides().guides()) EXPECT_TRUE(ids.contains(guide.id())) << guide.id();
  EXPECT_EQ(static_cast<int>(ids.size()), report.guides().guides_size() + 1);
  EXPECT_GT(report.bending().train_costs_hz(), 0.5 * sum);
}

INSTANTIATE_TEST_SUITE_P(Examples, ReportBending,
                         ::testing::Values("casting.txtpb", "fly.txtpb", "spinning.txtpb", "surf.txtpb"),
                         [](const auto& info) { return info.param.substr(0, info.param.find('.')); });

}  // namespace
}  // namespace withy::testing
