// Codes of consistency: what can be wrong with a design that was read without error, before its rod is worked out.
#ifndef WITHY_DOCUMENT_CONSISTENCY_CODES_H_
#define WITHY_DOCUMENT_CONSISTENCY_CODES_H_

#include <vector>

#include "withy/findings/finding.h"

namespace withy {

// Ids and references.
extern const Code kMissingId, kBadId, kDuplicateId, kUnknownId, kWrongReference;
// Words and texts.
extern const Code kUnknownWord, kBadDate, kBadUuid, kBadDigest, kBadLicense, kBadMoney, kBadCurrency;
// Quantities and numbers; one that is not finite is kBadNumber, as in reading (reading_codes.h).
extern const Code kNoUnit, kNegative, kUnitSlip, kImplausible, kAbsurd, kPlusMinus, kRangeOrder;
// Things that hang together.
extern const Code kPlaceWithoutOrigin, kSectionWithPlace, kUnsetOneof, kLogOrder, kWaiverWithoutReason, kPersonalData;

// All of the above.
std::vector<Code> ConsistencyCodes();

}  // namespace withy

#endif  // WITHY_DOCUMENT_CONSISTENCY_CODES_H_
