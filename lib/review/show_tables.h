// The tables of ShowText, one function each; empty where the report has no row for it.
#ifndef WITHY_REVIEW_SHOW_TABLES_H_
#define WITHY_REVIEW_SHOW_TABLES_H_

#include <string>

#include "withy/review/show_text.h"

namespace withy {

std::string SectionsTable(const v1::Report& report, const ShowOptions& options);
std::string HandleTable(const v1::Design& design, const v1::Report& report, const ShowOptions& options);
std::string GuidesTable(const v1::Report& report, const ShowOptions& options);
std::string WrapsTable(const v1::Report& report, const ShowOptions& options);
std::string MassTable(const v1::Report& report, const ShowOptions& options);

}  // namespace withy

#endif  // WITHY_REVIEW_SHOW_TABLES_H_
