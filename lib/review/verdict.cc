#include "withy/review/review.h"

namespace withy {

Verdict VerdictOf(const Review& review, Severity fail_on) {
  Verdict verdict;
  for (const Finding& finding : review.findings) {
    switch (finding.severity) {
      case Severity::kError: ++verdict.errors; break;
      case Severity::kWarning: ++verdict.warnings; break;
      case Severity::kAdvice: ++verdict.advice; break;
      case Severity::kCannotTell: ++verdict.cannot_tell; break;
    }
  }
  verdict.waived = static_cast<int>(review.waived.size());
  int failing = verdict.errors;
  if (fail_on != Severity::kError) failing += verdict.warnings;
  if (fail_on == Severity::kAdvice) failing += verdict.advice;
  if (failing > 0) {
    verdict.kind = Verdict::Kind::kFindings;
  } else if (verdict.cannot_tell > 0) {
    verdict.kind = Verdict::Kind::kCannotTell;
  }
  return verdict;
}

}  // namespace withy
