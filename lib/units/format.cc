#include "withy/units/format.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdint>
#include <numeric>

#include "absl/strings/str_cat.h"

namespace withy {
namespace {

constexpr char kNotFinite[] = "?";
// Beyond this many steps a double does not hold every step, and no rod is that long.
constexpr double kMostSteps = 1e15;

// Whole and fraction of `steps`/`denominator` inches, without the mark: "3 1/2", "7", "3/16", "0".
std::string MixedNumber(std::int64_t steps, std::int64_t denominator) {
  const std::int64_t whole = steps / denominator;
  const std::int64_t rest = steps % denominator;
  if (rest == 0) return absl::StrCat(whole);
  const std::int64_t common = std::gcd(rest, denominator);
  const std::string fraction = absl::StrCat(rest / common, "/", denominator / common);
  return whole == 0 ? fraction : absl::StrCat(whole, " ", fraction);
}

std::string InchText(Length length, int denominator, bool with_feet) {
  const double steps = std::round(length.inches() * denominator);
  if (!std::isfinite(steps)) return kNotFinite;
  if (std::abs(steps) > kMostSteps) return FormatFixed(length.inches(), 0) + "\"";
  const auto count = static_cast<std::int64_t>(std::abs(steps));
  std::string out = steps < 0 ? "-" : "";
  const std::int64_t foot = 12 * static_cast<std::int64_t>(denominator);
  if (with_feet && count >= foot) {
    absl::StrAppend(&out, count / foot, "' ", MixedNumber(count % foot, denominator), "\"");
  } else {
    absl::StrAppend(&out, MixedNumber(count, denominator), "\"");
  }
  return out;
}

}  // namespace

std::string FormatShortest(double number) {
  if (!std::isfinite(number)) return kNotFinite;
  if (number == 0) return "0";
  char buffer[32];  // the longest is "-2.2250738585072014e-308"
  const auto [end, error] = std::to_chars(buffer, buffer + sizeof buffer, number);
  return std::string(buffer, end);
}

std::string FormatFixed(double number, int decimals) {
  if (!std::isfinite(number)) return kNotFinite;
  char buffer[352];  // sign, 309 digits, point, 17 digits
  const auto [end, error] =
      std::to_chars(buffer, buffer + sizeof buffer, number, std::chars_format::fixed, std::clamp(decimals, 0, 17));
  std::string out(buffer, end);
  if (out[0] == '-' && out.find_first_not_of("-0.") == std::string::npos) out.erase(0, 1);
  return out;
}

std::string FormatMm(Length length, int decimals) {
  return FormatFixed(length.mm(), decimals) + " mm";
}

std::string FormatGrams(Mass mass, int decimals) {
  return FormatFixed(mass.grams(), decimals) + " g";
}

std::string FormatInches(Length length, int denominator) {
  return InchText(length, denominator, false);
}

std::string FormatFeetInches(Length length, int denominator) {
  return InchText(length, denominator, true);
}

std::string FormatIn64(Length length) {
  const double halves = std::round(length.in64() * 2);
  if (!std::isfinite(halves)) return kNotFinite;
  return FormatShortest(halves / 2) + "/64";
}

}  // namespace withy
