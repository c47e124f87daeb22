// Findings in the Static Analysis Results Interchange Format (SARIF), version 2.1.0 (OASIS Standard, 27 March 2020),
// which code hosts read to show findings beside the lines of a change.
//
//   severity      kind   level      section of the standard
//   error         fail   error      3.27.9, 3.27.10
//   warning       fail   warning
//   advice        fail   note
//   cannot tell   open   none       "open": not enough information to decide
//
// Waived findings are results with a suppression (3.35). What kept the run from being complete is a notification of the
// invocation (3.20.21), which is then not successful. Columns count code points (3.14.17).
#ifndef WITHY_REVIEW_FINDINGS_SARIF_H_
#define WITHY_REVIEW_FINDINGS_SARIF_H_

#include <string>
#include <string_view>

#include "withy/v1/check.pb.h"

namespace withy {

// The whole log as indented JSON with a line end. `version` is that of the program. Rules are those of the catalogue
// that have a result, in the order met; the code of a plugin is a rule with its name alone.
std::string FindingsSarif(const v1::CheckReport& report, std::string_view version);

}  // namespace withy

#endif  // WITHY_REVIEW_FINDINGS_SARIF_H_
