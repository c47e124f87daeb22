#include "quantity_cursor.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <system_error>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

bool IsDigit(char c) {
  return c >= '0' && c <= '9';
}
char Lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

struct FractionSign {
  std::string_view text;
  double value;
};
constexpr FractionSign kFractionSigns[] = {{"½", 0.5},   {"¼", 0.25},  {"¾", 0.75}, {"⅛", 0.125},
                                           {"⅜", 0.375}, {"⅝", 0.625}, {"⅞", 0.875}};
// Plain, no-break, thin and narrow no-break space.
constexpr std::string_view kSpaces[] = {" ", "\t", "\u00a0", "\u2009", "\u202f"};

std::size_t CountDigits(std::string_view text, std::size_t from) {
  std::size_t at = from;
  while (at < text.size() && IsDigit(text[at])) ++at;
  return at - from;
}

}  // namespace

void QuantityCursor::SkipSpace() {
  for (bool again = true; again;) {
    again = false;
    for (std::string_view space : kSpaces) again |= Take(space);
  }
}

bool QuantityCursor::Take(std::string_view word) {
  const std::string_view next = Rest().substr(0, word.size());
  if (!std::equal(next.begin(), next.end(), word.begin(), word.end(),
                  [](char a, char b) { return Lower(a) == Lower(b); })) {
    return false;
  }
  at_ += word.size();
  return true;
}

double QuantityCursor::TakeSign() {
  if (Take("-") || Take("\u2212")) return -1;
  Take("+");
  return 1;
}

absl::Status QuantityCursor::Fail(std::string_view what) const {
  const auto is_first_byte = [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; };
  const auto column = std::count_if(text_.begin(), text_.begin() + static_cast<std::ptrdiff_t>(at_), is_first_byte) + 1;
  return absl::InvalidArgumentError(absl::StrCat("column ", column, ": ", std::string(what)));
}

std::string_view QuantityCursor::PeekDecimal() const {
  const std::string_view rest = Rest();
  std::size_t size = CountDigits(rest, 0);
  std::size_t digits = size;
  if (size < rest.size() && rest[size] == '.') {
    const std::size_t after = CountDigits(rest, size + 1);
    digits += after;
    size += 1 + after;
  }
  if (digits == 0) return {};
  // An exponent only where digits follow: "5 e" is left to the unit.
  if (size < rest.size() && Lower(rest[size]) == 'e') {
    const std::size_t sign = size + 1 < rest.size() && (rest[size + 1] == '-' || rest[size + 1] == '+') ? 1 : 0;
    const std::size_t exponent = CountDigits(rest, size + 1 + sign);
    if (exponent > 0) size += 1 + sign + exponent;
  }
  return rest.substr(0, size);
}

absl::Status QuantityCursor::RefuseComma() const {
  const std::string_view rest = Rest().substr(1);
  if (rest.empty() || !IsDigit(rest[0])) return Fail("a comma does not belong here");
  std::size_t begin = at_;
  while (begin > 0 && (IsDigit(text_[begin - 1]) || text_[begin - 1] == '.')) --begin;
  const std::string before(text_.substr(begin, at_ - begin));
  const std::string after(rest.substr(0, CountDigits(rest, 0)));
  const std::string thousands = after.size() == 3 ? absl::StrCat(" (or ", before, after, ")") : "";
  return Fail(
      absl::StrCat("a comma is not a decimal point: write ", before.empty() ? "0" : before, ".", after, thousands));
}

absl::Status QuantityCursor::ReadDecimal(double& value, std::string_view& digits) {
  digits = PeekDecimal();
  if (digits.empty()) {
    if (Rest().starts_with(',')) return RefuseComma();
    return Fail("a number was expected, such as 2.5 or 3 1/2");
  }
  if (Rest().starts_with("0x") || Rest().starts_with("0X"))
    return Fail("hexadecimal numbers are not read: write it in decimal");
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), value);
  if (error != std::errc()) return Fail("the number is too large or too small to hold");
  at_ += digits.size();
  if (Rest().starts_with(',')) return RefuseComma();
  return absl::OkStatus();
}

bool QuantityCursor::TakeSlash() {
  return Take("/") || Take("\u2044");
}

bool QuantityCursor::TakeFractionSign(double& value) {
  for (const FractionSign& sign : kFractionSigns) {
    if (!Take(sign.text)) continue;
    value = sign.value;
    return true;
  }
  return false;
}

absl::Status QuantityCursor::ReadFraction(double whole, bool has_whole, NumberText& number) {
  double numerator = 0, denominator = 0;
  std::string_view digits;
  if (absl::Status status = ReadDecimal(numerator, digits); !status.ok()) return status;
  if (!TakeSlash()) return Fail("a fraction was expected, such as 3 1/2");
  if (absl::Status status = ReadDecimal(denominator, digits); !status.ok()) return status;
  if (denominator == 0) return Fail("the fraction is over zero");
  number.value = whole + numerator / denominator;
  number.is_over_64 = !has_whole && denominator == 64;
  number.over_64 = numerator;
  return absl::OkStatus();
}

absl::Status QuantityCursor::ReadNumber(NumberText& number) {
  number = {};
  if (TakeFractionSign(number.value)) return absl::OkStatus();
  const QuantityCursor start = *this;
  std::string_view digits;
  if (absl::Status status = ReadDecimal(number.value, digits); !status.ok()) return status;
  number.is_whole = digits.find_first_not_of("0123456789") == std::string_view::npos;
  if (Rest().starts_with('/') || Rest().starts_with("\u2044")) {
    *this = start;
    return ReadFraction(0, false, number);
  }
  if (!number.is_whole) return absl::OkStatus();
  if (double part = 0; TakeFractionSign(part)) {
    number = {.value = number.value + part};
    return absl::OkStatus();
  }
  // "3 1/2" and "3-1/2": only where a fraction does follow.
  QuantityCursor ahead = *this;
  if (!ahead.Take("-")) ahead.SkipSpace();
  const std::string_view next = ahead.PeekDecimal();
  QuantityCursor after = ahead;
  if (next.empty() || !after.Take(next) || !after.TakeSlash()) return absl::OkStatus();
  *this = ahead;
  const double whole = number.value;
  number.is_whole = false;
  return ReadFraction(whole, true, number);
}

}  // namespace withy
