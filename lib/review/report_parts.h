// The report, one concern after another.
#ifndef WITHY_REVIEW_REPORT_PARTS_H_
#define WITHY_REVIEW_REPORT_PARTS_H_

#include "answers.h"

namespace withy {

void ReportSections(const Rod& rod, const Answers& answers, v1::SectionsReport& report);
void ReportFit(const Rod& rod, const FitAnswers& answers, v1::FitReport& report);
void ReportCutPlan(const Rod& rod, const FitAnswers& answers, v1::FitReport& report);
void ReportBonding(const BondingAnswers& answers, v1::BondingReport& report);
void ReportBending(const BendingAnswers& answers, v1::BendingReport& report);
void ReportLineLoad(const Rod& rod, const LineLoadAnswers& answers, v1::LineLoadReport& report);
void ReportBalance(const BalanceAnswers& answers, v1::BalanceReport& report);
void ReportClosed(const Rod& rod, v1::Report& report);

// "bent", "several", "none", "cannot tell".
const char* StateWord(ElasticaState state);
// "measured", "catalogue", "estimated", "plan", "computed".
const char* SourceWord(Source source);

}  // namespace withy

#endif  // WITHY_REVIEW_REPORT_PARTS_H_
