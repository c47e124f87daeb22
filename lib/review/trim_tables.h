// The tables of TrimText, one function each; empty where the report has no row for it.
#ifndef WITHY_REVIEW_TRIM_TABLES_H_
#define WITHY_REVIEW_TRIM_TABLES_H_

#include <string>

#include "withy/review/show_text.h"

namespace withy {

std::string ClosedTable(const v1::Report& report, const ShowOptions& options);
std::string DryFitTable(const v1::FitReport& fit, const ShowOptions& options);
std::string ArborTable(const v1::FitReport& fit, const ShowOptions& options);
std::string ReamingTables(const v1::FitReport& fit, const ShowOptions& options);
std::string WindingCheckTable(const v1::FitReport& fit, const ShowOptions& options);

// "glued", "cut 6 3/4\" (171.5 mm) off the butt": one closed fact in words, without what it is of.
std::string ClosedText(const v1::ClosedFact& fact, LengthUnits units);

}  // namespace withy

#endif  // WITHY_REVIEW_TRIM_TABLES_H_
