// Findings as data: the messages of check.proto, which `withy check --json` prints as JSON.
//
//   v1::CheckReport report = EmptyCheckReport();
//   *report.add_files() = CheckedFileOf(checked, Severity::kError);
#ifndef WITHY_REVIEW_FINDINGS_JSON_H_
#define WITHY_REVIEW_FINDINGS_JSON_H_

#include "withy/review/checked_design.h"
#include "withy/v1/check.pb.h"

namespace withy {

// A report with its `format` and no file.
v1::CheckReport EmptyCheckReport();

// One file with its verdict, counts, findings, waived findings and failures. Text stays as it is (nothing is made
// printable; JSON escapes it). `fail_on` as in OutcomeOf.
v1::CheckedFile CheckedFileOf(const CheckedDesign& checked, Severity fail_on);

}  // namespace withy

#endif  // WITHY_REVIEW_FINDINGS_JSON_H_
