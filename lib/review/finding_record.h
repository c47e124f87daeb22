// A finding as data, for check.proto and report.proto.
#ifndef WITHY_REVIEW_FINDING_RECORD_H_
#define WITHY_REVIEW_FINDING_RECORD_H_

#include "withy/findings/finding.h"
#include "withy/v1/check.pb.h"

namespace withy {

// Everything but the place in the file. Numbers that are not finite lose their value, not their name.
v1::FindingRecord RecordOf(const Finding& finding);

}  // namespace withy

#endif  // WITHY_REVIEW_FINDING_RECORD_H_
