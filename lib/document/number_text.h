// Numbers as they stand in a file.
#ifndef WITHY_DOCUMENT_NUMBER_TEXT_H_
#define WITHY_DOCUMENT_NUMBER_TEXT_H_

#include <cstdint>
#include <optional>
#include <string_view>

namespace withy {

enum class NumberProblem { kNone, kNotANumber, kTooLarge, kTooSmall };

// The double nearest to decimal `text` ("12", "1.5", ".5", "2e-3"; no sign, no leading zeros, no trailing unit). An
// overflow is kTooLarge, a value other than zero that would become zero kTooSmall; then `value` is left alone.
NumberProblem ParseDecimal(std::string_view text, double* value);

// A whole number: decimal, and in the text form hexadecimal (0x1F) or octal (017). Unset where it is none or does not
// fit 64 bits.
std::optional<std::uint64_t> ParseWhole(std::string_view text, bool decimal_only);

}  // namespace withy

#endif  // WITHY_DOCUMENT_NUMBER_TEXT_H_
