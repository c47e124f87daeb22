#include "withy/document/upgrade.h"

#include <charconv>

namespace withy {
namespace {

constexpr std::size_t kMostDigits = 6;

}  // namespace

std::optional<int> FormatVersion(std::string_view format) {
  if (!format.starts_with(kFormatPrefix)) return std::nullopt;
  const std::string_view digits = format.substr(kFormatPrefix.size());
  if (digits.empty() || digits.size() > kMostDigits || (digits.size() > 1 && digits[0] == '0') || digits[0] == '-') {
    return std::nullopt;
  }
  int version = 0;
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), version);
  if (error != std::errc() || end != digits.data() + digits.size()) return std::nullopt;
  return version;
}

std::string_view CurrentFormat() {
  static_assert(kCurrent == 1);
  return "withy/1";
}

}  // namespace withy
