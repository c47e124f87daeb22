// Kinds of text whose shape can be checked. None of these knows more than the shape: that a date is past or a licence
// is on the SPDX list is not asked.
#ifndef WITHY_DOCUMENT_TEXT_KINDS_H_
#define WITHY_DOCUMENT_TEXT_KINDS_H_

#include <string_view>
#include <vector>

#include "spot.h"
#include "withy/findings/finding.h"
#include "withy/v1/words.pb.h"

namespace withy {

// ISO 8601: "2026-03-14", "2026-03-14T18:30", "2026-03-14T18:30:15"; a day that the (Gregorian) calendar has.
bool IsDate(std::string_view text);
// RFC 4122, section 3, in lower case.
bool IsUuid(std::string_view text);
// ISO 4217: three capital letters.
bool IsCurrency(std::string_view text);
// "12", "-12.50": digits on both sides of the point.
bool IsDecimal(std::string_view text);
// "sha256:" and 64 lower-case hexadecimal digits.
bool IsDigest(std::string_view text);
// The grammar of SPDX 2.3, annex D: identifiers joined by AND, OR, WITH and parentheses.
bool IsLicenseExpression(std::string_view text);

// Checks a text that is not empty.
void CheckText(std::string_view text, v1::TextKind::Value kind, const Spot& spot, std::vector<Finding>& findings);

}  // namespace withy

#endif  // WITHY_DOCUMENT_TEXT_KINDS_H_
