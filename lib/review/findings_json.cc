#include "withy/review/findings_json.h"

#include <string>

#include "finding_record.h"

namespace withy {
namespace {

v1::FindingRecord PlacedRecordOf(const CheckedDesign& checked, const Finding& finding) {
  v1::FindingRecord record = RecordOf(finding);
  if (std::optional<Position> place = PlaceOf(checked, finding)) {
    record.set_offset(static_cast<std::uint32_t>(place->offset));
    if (place->line > 0) {
      record.set_line(static_cast<std::uint32_t>(place->line));
      record.set_column(static_cast<std::uint32_t>(place->column));
    }
  }
  return record;
}

void SetCounts(const Verdict& verdict, v1::Counts& counts) {
  counts.set_error(static_cast<std::uint32_t>(verdict.errors));
  counts.set_warning(static_cast<std::uint32_t>(verdict.warnings));
  counts.set_advice(static_cast<std::uint32_t>(verdict.advice));
  counts.set_cannot_tell(static_cast<std::uint32_t>(verdict.cannot_tell));
  counts.set_waived(static_cast<std::uint32_t>(verdict.waived));
}

}  // namespace

v1::CheckReport EmptyCheckReport() {
  v1::CheckReport report;
  report.set_format("withy-check/1");
  return report;
}

v1::CheckedFile CheckedFileOf(const CheckedDesign& checked, Severity fail_on) {
  v1::CheckedFile file;
  file.set_file(checked.name);
  file.set_digest(checked.review.report.design_digest());
  file.set_verdict(std::string(OutcomeName(OutcomeOf(checked, fail_on))));
  SetCounts(CountsOf(checked, fail_on), *file.mutable_counts());
  for (const Finding& finding : FindingsOf(checked)) *file.add_findings() = PlacedRecordOf(checked, finding);
  for (const Finding& finding : checked.review.waived) *file.add_waived() = PlacedRecordOf(checked, finding);
  for (const std::string& failure : checked.failures) file.add_failures(failure);
  return file;
}

}  // namespace withy
