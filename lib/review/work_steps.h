// The steps of a WorkPlan, one function for each kind of work; each adds none where there is nothing to do.
#ifndef WITHY_REVIEW_WORK_STEPS_H_
#define WITHY_REVIEW_WORK_STEPS_H_

#include "withy/review/length_units.h"
#include "withy/v1/design.pb.h"
#include "withy/v1/plan.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {

struct PlanInput {
  const v1::Design& design;
  const v1::Report& report;
  LengthUnits units;
};

void AddMeasuring(const PlanInput& input, v1::WorkPlan& plan);
void AddCuts(const PlanInput& input, v1::WorkPlan& plan);
void AddArbors(const PlanInput& input, v1::WorkPlan& plan);
void AddReaming(const PlanInput& input, v1::WorkPlan& plan);
// What the log says is glued.
void AddGlued(const PlanInput& input, v1::WorkPlan& plan);
void AddPreparation(const PlanInput& input, v1::WorkPlan& plan);
// Each batch and its cure, those in which counterweights are potted before the blank goes in first.
void AddGlueUps(const PlanInput& input, v1::WorkPlan& plan);
void AddGuides(const PlanInput& input, v1::WorkPlan& plan);
// Trial weights, then what is potted last.
void AddBalancing(const PlanInput& input, v1::WorkPlan& plan);

// How a batch is mixed: volumes, masses, time to work, set. A sentence each.
std::vector<std::string> MixSentences(const v1::MixedBatch& batch);

}  // namespace withy

#endif  // WITHY_REVIEW_WORK_STEPS_H_
