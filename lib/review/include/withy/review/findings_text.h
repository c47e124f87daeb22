// Findings for people, as a good compiler tells them:
//
//   rod.txtpb:41:3: warning[guides/spacing]: guide g5 stands 20 mm behind g4
//      41 |   from_tip { mm: 1200 }
//         |   ^~~~~~~~ 1200 mm from the tip
//     at: guides[g5].from_tip
//     help: Measure again, or move one of the two.
//
// The first line is one line whatever its length, for editors and grep. Nothing from the file reaches the terminal raw.
#ifndef WITHY_REVIEW_FINDINGS_TEXT_H_
#define WITHY_REVIEW_FINDINGS_TEXT_H_

#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/review/checked_design.h"
#include "withy/review/terminal_text.h"

namespace withy {

// One finding in `checked`. Ends with a line end.
std::string FindingText(const CheckedDesign& checked, const Finding& finding, const TextStyle& style);

// All findings of a file and its failures, an empty line behind each; then the verdict. `fail_on` as in OutcomeOf.
// `verbose` adds what the design waives.
std::string FindingsText(const CheckedDesign& checked, Severity fail_on, bool verbose, const TextStyle& style);

// One line: "rod.txtpb: findings (2 errors, 1 warning)".
std::string VerdictText(const CheckedDesign& checked, Severity fail_on, const TextStyle& style);

// One line for several files: "3 files: 1 clean, 1 with findings, 1 unreadable".
std::string OverallText(const std::vector<Outcome>& outcomes, const TextStyle& style);

}  // namespace withy

#endif  // WITHY_REVIEW_FINDINGS_TEXT_H_
