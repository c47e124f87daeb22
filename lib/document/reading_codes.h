// Codes of reading: what can be wrong with the bytes before anything is known of the rod.
//
// Except where a code says so, a file with one of these errors is unreadable as a whole: a design of which one value
// was not understood is not a design to cut by.
#ifndef WITHY_DOCUMENT_READING_CODES_H_
#define WITHY_DOCUMENT_READING_CODES_H_

#include <vector>

#include "withy/findings/finding.h"

namespace withy {

// What the file is.
extern const Code kEmptyFile, kNotADesign, kNotUtf8, kTruncated;
// Its version.
extern const Code kFormatMissing, kFormatUnknown, kFormatNewer, kFormatOlder;
// Its grammar.
extern const Code kSyntax, kWireFormat;
// Its fields. An unknown field leaves the rest readable.
extern const Code kUnknownField, kUnknownNumber, kDuplicateField, kDuplicateKey, kTwoOfOne;
// Its values. An unknown number of an enum leaves the rest readable.
extern const Code kBadNumber, kBadValue, kUnknownEnumName, kUnknownEnumNumber;
// Its size.
extern const Code kTooLarge, kTooDeep, kTooMany;

// All of the above.
std::vector<Code> ReadingCodes();

}  // namespace withy

#endif  // WITHY_DOCUMENT_READING_CODES_H_
