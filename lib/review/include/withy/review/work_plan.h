// The work on one rod in order, as far as it follows from its report: measure, staged cuts with dry fits, arbors, reaming,
// preparation, glue-ups, cure, guides and finish, balance, potting.
//
//   v1::WorkPlan plan = PlanWork(design, review.report, LengthUnits::kInch);
//   std::cout << PlanText("rod.txtpb", design, review.report, options);
//
// What the log has closed is told as done, what is open in the order in which it can be done: each step says what can no
// longer be changed after it. The order of guides, wraps and coats among themselves is not told here.
#ifndef WITHY_REVIEW_WORK_PLAN_H_
#define WITHY_REVIEW_WORK_PLAN_H_

#include <string>
#include <string_view>

#include "withy/review/show_text.h"
#include "withy/v1/plan.pb.h"

namespace withy {

v1::WorkPlan PlanWork(const v1::Design& design, const v1::Report& report, LengthUnits units);

// The same for people, in 80 columns, with what is mixed for each glue-up.
std::string PlanText(std::string_view file, const v1::Design& design, const v1::Report& report,
                     const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_WORK_PLAN_H_
