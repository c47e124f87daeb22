#include "finding_record.h"

#include <cmath>
#include <string>

namespace withy {

v1::FindingRecord RecordOf(const Finding& finding) {
  v1::FindingRecord record;
  record.set_code(finding.code);
  record.set_severity(std::string(SeverityName(finding.severity)));
  record.set_at(finding.at.ToString());
  for (const FieldPath& path : finding.related) record.add_related(path.ToString());
  for (const Number& number : finding.numbers) {
    v1::NamedNumber& named = *record.add_numbers();
    named.set_name(number.name);
    if (std::isfinite(number.value)) named.set_value(number.value);
  }
  record.set_message(finding.message);
  record.set_help(finding.help);
  if (finding.from_tip_mm) record.set_from_tip_mm(*finding.from_tip_mm);
  return record;
}

}  // namespace withy
