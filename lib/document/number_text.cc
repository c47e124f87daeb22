#include "number_text.h"

#include <charconv>
#include <system_error>

namespace withy {
namespace {

bool IsDigit(char c) {
  return c >= '0' && c <= '9';
}

}  // namespace

NumberProblem ParseDecimal(std::string_view text, double* value) {
  const bool leading_zero = text.size() > 1 && text[0] == '0' && IsDigit(text[1]);
  const bool begins_well = !text.empty() && (IsDigit(text[0]) || text[0] == '.');
  if (!begins_well || leading_zero) return NumberProblem::kNotANumber;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), *value);
  if (end != text.data() + text.size()) return NumberProblem::kNotANumber;
  if (error == std::errc()) return NumberProblem::kNone;
  if (error != std::errc::result_out_of_range) return NumberProblem::kNotANumber;
  // Out of range at either end: the sign of the exponent tells which, and without one only a long number overflows.
  const std::size_t exponent = text.find_first_of("eE");
  const bool small = exponent == std::string_view::npos ? text[0] == '.' || text.starts_with("0.")
                                                        : text.find('-', exponent) != std::string_view::npos;
  return small ? NumberProblem::kTooSmall : NumberProblem::kTooLarge;
}

std::optional<std::uint64_t> ParseWhole(std::string_view text, bool decimal_only) {
  int base = 10;
  if (text.size() > 1 && text[0] == '0') {
    if (decimal_only) return std::nullopt;
    const bool hexadecimal = (text[1] | 0x20) == 'x';
    base = hexadecimal ? 16 : 8;
    text.remove_prefix(hexadecimal ? 2 : 1);
  }
  std::uint64_t value = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value, base);
  if (text.empty() || end != text.data() + text.size() || error != std::errc()) return std::nullopt;
  return value;
}

}  // namespace withy
