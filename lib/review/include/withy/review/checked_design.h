// One file as `check` sees it: what was read, what was found, what kept the run from being complete.
//
//   CheckedDesign checked{.name = "rod.txtpb", .bytes = bytes, .read = ReadDesign("rod.txtpb", bytes)};
//   checked.review = ReviewDesign(checked.read);
//   OutcomeOf(checked, Severity::kError)          // Outcome::kClean
//
// The renderings of findings (findings_text.h, findings_json.h, findings_sarif.h) all start from this.
#ifndef WITHY_REVIEW_CHECKED_DESIGN_H_
#define WITHY_REVIEW_CHECKED_DESIGN_H_

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "withy/document/document.h"
#include "withy/findings/finding.h"
#include "withy/review/review.h"

namespace withy {

struct CheckedDesign {
  std::string name;                   // as given; "-" is standard input
  std::string bytes;                  // as read, also where they are not a design
  ReadResult read;                    // document unset = unreadable, for the reasons in its findings or in `failures`
  Review review;                      // of a readable design, the findings of plugins included
  std::vector<std::string> failures;  // one line each: a plugin that failed, a file that could not be opened
};

// Worst last. kCannotTell and kFindings depend on what one wants to fail on; the others do not.
enum class Outcome { kClean, kCannotTell, kFindings, kIncomplete, kUnreadable };
Outcome OutcomeOf(const CheckedDesign& checked, Severity fail_on);

// "clean", "cannot tell", "findings", "incomplete", "unreadable": the words of `verdict` in check.proto.
std::string_view OutcomeName(Outcome outcome);

// The findings to show: those of the review, or those of reading where there is no design.
const std::vector<Finding>& FindingsOf(const CheckedDesign& checked);

// How many findings of each severity there are in FindingsOf, and how many are waived.
Verdict CountsOf(const CheckedDesign& checked, Severity fail_on);

// Where in the file a path is written: its own place or that of the nearest field around it. Unset where the file has
// no places to tell (an upgraded design).
std::optional<Position> PlaceOf(const CheckedDesign& checked, const FieldPath& path);

// The same for a finding; a position that came with the finding is kept.
std::optional<Position> PlaceOf(const CheckedDesign& checked, const Finding& finding);

}  // namespace withy

#endif  // WITHY_REVIEW_CHECKED_DESIGN_H_
