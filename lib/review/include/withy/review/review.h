// A review: everything withy can say about one design. Runs resolve and then the concerns in their fixed order.
//
//   Review review = ReviewDesign(*read.document);
//   review.report.fit().overall_length_mm()
//   review.findings                        // of reading, consistency, resolve and every concern
//   VerdictOf(review.findings, Severity::kError)
#ifndef WITHY_REVIEW_REVIEW_H_
#define WITHY_REVIEW_REVIEW_H_

#include <string>
#include <vector>

#include "withy/document/document.h"
#include "withy/findings/finding.h"
#include "withy/guides/practice.h"
#include "withy/v1/report.pb.h"
#include "withy/v1/rod.pb.h"

namespace withy {

struct Review {
  v1::Report report;
  v1::Rod rod;                     // what plugins see as ctx.rod
  std::vector<Finding> findings;   // waived ones taken out; in the order of the file, then of the catalogue
  std::vector<Finding> waived;     // each with the waiver's path as its first `related`; see ApplyWaivers
};

// What a design is looked at with.
struct ReviewOptions {
  std::vector<Practice> practices;  // of plugins: what is usual for guides, in place of withy's own
};

// Reviews a design that was read. Never throws. The findings of reading are passed through. What the design waives is
// sorted out already; that a waiver is unused is found by ApplyWaivers.
Review ReviewDesign(const ReadResult& read, const ReviewOptions& options = {});

// Applies the design's waivers to more findings (those of plugins), appending to `review`. Called once, after all
// findings are known: only then is an unused waiver known (code review/unused-waiver).
//
// Never waived, so that no verdict hides them: what is 'cannot tell', the findings of reading, errors of document/, and
// review/not-waivable, which tells of a waiver for one of these.
void ApplyWaivers(const Document& document, std::vector<Finding> more, Review& review);

// Every code withy can give, in catalogue order: document, rod, the concerns, review.
const std::vector<Code>& Catalogue();

// The code of that name, or null. `nearest` (may be null) receives the closest name for a misspelt one.
const Code* FindCode(std::string_view name, std::string* nearest);

struct Verdict {
  enum class Kind { kClean, kFindings, kCannotTell };
  Kind kind = Kind::kClean;
  int errors = 0, warnings = 0, advice = 0, cannot_tell = 0, waived = 0;
};
// `fail_on`: kError, kWarning or kAdvice; findings at or above it make the verdict kFindings. A rule that could not be
// judged makes it kCannotTell, unless there are such findings.
Verdict VerdictOf(const Review& review, Severity fail_on);

}  // namespace withy

#endif  // WITHY_REVIEW_REVIEW_H_
