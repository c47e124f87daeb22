#include "work_step.h"

#include <algorithm>

namespace withy {
namespace {

bool IsTold(const v1::WorkPlan& plan, std::string_view sentence) {
  return std::any_of(plan.steps().begin(), plan.steps().end(), [&](const v1::WorkStep& step) {
    return std::find(step.cautions().begin(), step.cautions().end(), sentence) != step.cautions().end();
  });
}

}  // namespace

v1::WorkStep& AddStep(v1::WorkPlan& plan, std::string_view kind, const std::string& title) {
  v1::WorkStep& step = *plan.add_steps();
  step.set_kind(std::string(kind));
  step.set_title(title);
  return step;
}

void Detail(v1::WorkStep& step, const std::string& sentence) {
  if (!sentence.empty()) step.add_details(sentence);
}

void CautionOnce(v1::WorkPlan& plan, v1::WorkStep& step, std::string_view sentence) {
  if (!IsTold(plan, sentence)) step.add_cautions(std::string(sentence));
}

bool IsClosed(const v1::Report& report, std::string_view kind, const std::string& what) {
  return std::any_of(report.closed().begin(), report.closed().end(),
                     [&](const v1::ClosedFact& fact) { return fact.kind() == kind && fact.what() == what; });
}

}  // namespace withy
