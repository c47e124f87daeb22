#include "withy/review/checked_design.h"

namespace withy {

Outcome OutcomeOf(const CheckedDesign& checked, Severity fail_on) {
  if (!checked.read.document) return Outcome::kUnreadable;
  if (!checked.failures.empty()) return Outcome::kIncomplete;
  switch (VerdictOf(checked.review, fail_on).kind) {
    case Verdict::Kind::kClean:
      return Outcome::kClean;
    case Verdict::Kind::kCannotTell:
      return Outcome::kCannotTell;
    case Verdict::Kind::kFindings:
      return Outcome::kFindings;
  }
  return Outcome::kFindings;
}

std::string_view OutcomeName(Outcome outcome) {
  switch (outcome) {
    case Outcome::kClean:
      return "clean";
    case Outcome::kCannotTell:
      return "cannot tell";
    case Outcome::kFindings:
      return "findings";
    case Outcome::kIncomplete:
      return "incomplete";
    case Outcome::kUnreadable:
      return "unreadable";
  }
  return "findings";
}

const std::vector<Finding>& FindingsOf(const CheckedDesign& checked) {
  return checked.read.document ? checked.review.findings : checked.read.findings;
}

Verdict CountsOf(const CheckedDesign& checked, Severity fail_on) {
  if (checked.read.document) return VerdictOf(checked.review, fail_on);
  Review reading;
  reading.findings = checked.read.findings;
  return VerdictOf(reading, fail_on);
}

std::optional<Position> PlaceOf(const CheckedDesign& checked, const FieldPath& path) {
  if (!checked.read.document || path.empty()) return std::nullopt;
  const Document& document = *checked.read.document;
  return document.positions.Find(path, document.design, document.bytes, document.form == Form::kBinary);
}

std::optional<Position> PlaceOf(const CheckedDesign& checked, const Finding& finding) {
  return finding.position ? finding.position : PlaceOf(checked, finding.at);
}

}  // namespace withy
