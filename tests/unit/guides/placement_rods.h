// Rods to place guides on.
#ifndef WITHY_TESTS_UNIT_GUIDES_PLACEMENT_RODS_H_
#define WITHY_TESTS_UNIT_GUIDES_PLACEMENT_RODS_H_

#include <cstddef>
#include <numbers>

#include "support/tube_beam.h"
#include "withy/guides/placement.h"

namespace withy::testing {

// A tube of 2.1 m from 11.8 to 1.8 mm, guides underneath, rings from 20 mm down to 6 mm off the axis; invented.
inline PlacementProblem Underneath(std::size_t guides) {
  PlacementProblem problem;
  problem.beam = TubeBeam({0, 0.0118, 0.0100}, {2.1, 0.0018, 0.00096}, 1.25e11, 0);
  problem.outer_m = {0.0118, 0.0018};
  problem.side = -1;
  problem.reel_s_m = -0.15;
  problem.reel_offset_m = 0.04;
  for (std::size_t k = 0; k < guides; ++k) {
    problem.offsets_m.push_back(guides < 2 ? 0.02
                                           : 0.020 - 0.014 * static_cast<double>(k) / static_cast<double>(guides - 1));
  }
  problem.tip_offset_m = 0.005;
  problem.first_low_m = 0.4;
  problem.first_high_m = 0.9;
  problem.last_high_m = 2.05;
  problem.least_gaps_m.assign(guides, 0.05);
  problem.gaps_never_grow = false;
  const double across = std::numbers::pi / 2;
  problem.cases = {{"light", 4, across, 0, 1, 0.0}, {"heavy", 14, across, 0, 1, 0.0}};
  return problem;
}

// The same rod with its guides on top.
inline PlacementProblem OnTop(std::size_t guides) {
  PlacementProblem problem = Underneath(guides);
  problem.side = 1;
  return problem;
}

}  // namespace withy::testing

#endif  // WITHY_TESTS_UNIT_GUIDES_PLACEMENT_RODS_H_
