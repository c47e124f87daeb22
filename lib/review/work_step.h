// Adding to a step of the plan.
#ifndef WITHY_REVIEW_WORK_STEP_H_
#define WITHY_REVIEW_WORK_STEP_H_

#include <string>
#include <string_view>

#include "withy/v1/plan.pb.h"
#include "withy/v1/report.pb.h"

namespace withy {

v1::WorkStep& AddStep(v1::WorkPlan& plan, std::string_view kind, const std::string& title);

// `sentence` unless it is empty.
void Detail(v1::WorkStep& step, const std::string& sentence);

// `sentence` unless an earlier step has it: told once, at the first time it matters.
void CautionOnce(v1::WorkPlan& plan, v1::WorkStep& step, std::string_view sentence);

// Whether the log has closed that.
bool IsClosed(const v1::Report& report, std::string_view kind, const std::string& what);

}  // namespace withy

#endif  // WITHY_REVIEW_WORK_STEP_H_
