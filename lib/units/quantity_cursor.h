// Reads numbers and unit words from a short text, left to right. Private to the parser of quantities.
#ifndef WITHY_UNITS_QUANTITY_CURSOR_H_
#define WITHY_UNITS_QUANTITY_CURSOR_H_

#include <cstddef>
#include <string>
#include <string_view>

#include "absl/status/status.h"

namespace withy {

// A number as written.
struct NumberText {
  double value = 0;
  double over_64 = 0;       // the numerator, where `is_over_64`
  bool is_over_64 = false;  // a fraction over 64 without a whole part
  bool is_whole = false;    // digits alone
};

class QuantityCursor {
 public:
  explicit QuantityCursor(std::string_view text) : text_(text) {}

  bool AtEnd() const { return at_ == text_.size(); }
  std::string_view Rest() const { return text_.substr(at_); }
  void SkipSpace();
  // Skips `word` and returns true where it comes next, in either case of letters.
  bool Take(std::string_view word);
  // Skips a sign and returns it as a factor: -1 or 1.
  double TakeSign();
  // Reads an unsigned number: decimal, fraction or mixed.
  absl::Status ReadNumber(NumberText& number);
  // The digits, point and exponent next, or empty.
  std::string_view PeekDecimal() const;
  // InvalidArgument with the column of what comes next.
  absl::Status Fail(std::string_view what) const;

 private:
  absl::Status ReadDecimal(double& value, std::string_view& digits);
  absl::Status ReadFraction(double whole, bool has_whole, NumberText& number);
  bool TakeSlash();
  bool TakeFractionSign(double& value);
  absl::Status RefuseComma() const;

  std::string_view text_;
  std::size_t at_ = 0;
};

}  // namespace withy

#endif  // WITHY_UNITS_QUANTITY_CURSOR_H_
