// Placement in the report.
#ifndef WITHY_REVIEW_REPORT_PLACEMENT_H_
#define WITHY_REVIEW_REPORT_PLACEMENT_H_

#include <optional>

#include "withy/guides/train_plan.h"
#include "withy/rod/rod.h"
#include "withy/v1/placement.pb.h"

namespace withy {

// A train that was placed: of the design, or with another number of guides or other models; and the design's own.
struct PlacedTrain {
  Rod as_designed, rod;
  TrainProposal proposal;
  TrainPlan plan_as_designed;
  std::optional<JudgedLayout> now;
};

// All but the drawn shapes. `grid_m` is the grid that was asked for.
void ReportPlacement(const PlacedTrain& train, double grid_m, v1::PlacementReport& report);

}  // namespace withy

#endif  // WITHY_REVIEW_REPORT_PLACEMENT_H_
