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
#include "withy/review/length_units.h"
#include "withy/review/terminal_text.h"

namespace withy {

struct FindingsOptions {
  Severity fail_on = Severity::kError;   // as in OutcomeOf
  bool verbose = false;                  // adds what the design waives
  LengthUnits units = LengthUnits::kMm;  // of the place on the rod; messages say their own
  TextStyle style;
};

// One finding in `checked`. Ends with a line end.
std::string FindingText(const CheckedDesign& checked, const Finding& finding, LengthUnits units,
                        const TextStyle& style);

// All findings of a file and its failures, an empty line behind each; then the verdict.
std::string FindingsText(const CheckedDesign& checked, const FindingsOptions& options);

// One line: "rod.txtpb: findings (2 errors, 1 warning)". "clean" is said only where there is no finding; where there
// are some below `fail_on` it is "no errors (4 warnings)".
std::string VerdictText(const CheckedDesign& checked, Severity fail_on, const TextStyle& style);

// One line for several files: "3 files: 1 passed, 1 with findings, 1 unreadable".
std::string OverallText(const std::vector<Outcome>& outcomes, const TextStyle& style);

}  // namespace withy

#endif  // WITHY_REVIEW_FINDINGS_TEXT_H_
