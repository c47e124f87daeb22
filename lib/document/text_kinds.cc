#include "text_kinds.h"

#include <algorithm>
#include <cstddef>
#include <string>

#include "absl/strings/str_cat.h"
#include "consistency_codes.h"

namespace withy {
namespace {

bool IsDigit(char c) {
  return c >= '0' && c <= '9';
}
bool IsLowerHex(char c) {
  return IsDigit(c) || (c >= 'a' && c <= 'f');
}
bool IsCapital(char c) {
  return c >= 'A' && c <= 'Z';
}

// True where `text` has the shape of `pattern`, in which '#' stands for a decimal digit and 'h' for a hexadecimal one.
bool Matches(std::string_view text, std::string_view pattern) {
  return std::equal(text.begin(), text.end(), pattern.begin(), pattern.end(), [](char c, char shape) {
    return shape == '#' ? IsDigit(c) : shape == 'h' ? IsLowerHex(c) : c == shape;
  });
}

int NumberAt(std::string_view text, std::size_t from, std::size_t count) {
  int number = 0;
  for (char c : text.substr(from, count)) number = 10 * number + (c - '0');
  return number;
}

int DaysIn(int year, int month) {
  constexpr int kDays[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
  const bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
  return month == 2 && leap ? 29 : kDays[month - 1];
}

bool IsIdString(std::string_view text) {
  return !text.empty() && std::all_of(text.begin(), text.end(), [](char c) {
    return IsDigit(c) || IsCapital(c) || (c >= 'a' && c <= 'z') || c == '-' || c == '.';
  });
}

// An identifier with an optional '+', or "DocumentRef-a:LicenseRef-b".
bool IsSimpleLicense(std::string_view text) {
  if (text.ends_with('+')) text.remove_suffix(1);
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos) return IsIdString(text);
  const std::string_view document = text.substr(0, colon), license = text.substr(colon + 1);
  return document.starts_with("DocumentRef-") && license.starts_with("LicenseRef-") && IsIdString(document) &&
         IsIdString(license);
}

// The next token of a licence expression: a parenthesis or a run of other characters; empty at the end.
std::string_view NextToken(std::string_view& rest) {
  rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
  const bool parenthesis = !rest.empty() && (rest[0] == '(' || rest[0] == ')');
  const std::size_t size = parenthesis ? 1 : std::min(rest.find_first_of(" ()"), rest.size());
  const std::string_view token = rest.substr(0, size);
  rest.remove_prefix(size);
  return token;
}

struct TextRule {
  bool (*fits)(std::string_view);
  const Code* code;
  const char* expected;
};

TextRule RuleFor(v1::TextKind::Value kind) {
  switch (kind) {
    case v1::TextKind::DATE:
      return {IsDate, &kBadDate, "a date such as 2026-03-14"};
    case v1::TextKind::UUID:
      return {IsUuid, &kBadUuid, "a UUID in lower case with hyphens"};
    case v1::TextKind::CURRENCY:
      return {IsCurrency, &kBadCurrency, "an ISO 4217 code such as EUR"};
    case v1::TextKind::DECIMAL:
      return {IsDecimal, &kBadMoney, "decimal text such as 12.50"};
    case v1::TextKind::SPDX:
      return {IsLicenseExpression, &kBadLicense, "an SPDX expression such as CC-BY-4.0"};
    case v1::TextKind::DIGEST:
      return {IsDigest, &kBadDigest, "sha256: and 64 hexadecimal digits"};
    default:
      return {[](std::string_view) { return true; }, nullptr, ""};
  }
}

}  // namespace

bool IsDate(std::string_view text) {
  const std::string_view time = text.substr(std::min<std::size_t>(10, text.size()));
  if (!Matches(text.substr(0, 10), "####-##-##")) return false;
  const int month = NumberAt(text, 5, 2), day = NumberAt(text, 8, 2);
  if (month < 1 || month > 12 || day < 1 || day > DaysIn(NumberAt(text, 0, 4), month)) return false;
  if (time.empty()) return true;
  if (!Matches(time, "T##:##") && !Matches(time, "T##:##:##")) return false;
  return NumberAt(time, 1, 2) < 24 && NumberAt(time, 4, 2) < 60 && (time.size() == 6 || NumberAt(time, 7, 2) < 60);
}

bool IsUuid(std::string_view text) {
  return Matches(text, "hhhhhhhh-hhhh-hhhh-hhhh-hhhhhhhhhhhh");
}

bool IsCurrency(std::string_view text) {
  return text.size() == 3 && std::all_of(text.begin(), text.end(), IsCapital);
}

bool IsDecimal(std::string_view text) {
  if (text.starts_with('-')) text.remove_prefix(1);
  const std::size_t point = text.find('.');
  const auto digits = [](std::string_view part) {
    return !part.empty() && std::all_of(part.begin(), part.end(), IsDigit);
  };
  if (point == std::string_view::npos) return digits(text);
  return digits(text.substr(0, point)) && digits(text.substr(point + 1));
}

bool IsDigest(std::string_view text) {
  if (!text.starts_with("sha256:")) return false;
  text.remove_prefix(7);
  return text.size() == 64 && std::all_of(text.begin(), text.end(), IsLowerHex);
}

// Read without recursion, so that no depth of parentheses can exhaust the stack.
bool IsLicenseExpression(std::string_view text) {
  bool operand_next = true;
  std::size_t open = 0;
  for (std::string_view token = NextToken(text); !token.empty(); token = NextToken(text)) {
    if (operand_next) {
      if (token == "(") {
        ++open;
      } else if (token == "AND" || token == "OR" || token == "WITH" || !IsSimpleLicense(token)) {
        return false;
      } else {
        operand_next = false;
      }
    } else if (token == ")") {
      if (open-- == 0) return false;
    } else if (token == "AND" || token == "OR") {
      operand_next = true;
    } else if (token != "WITH" || !IsIdString(NextToken(text))) {
      return false;
    }
  }
  return !operand_next && open == 0;
}

void CheckText(std::string_view text, v1::TextKind::Value kind, const Spot& spot, std::vector<Finding>& findings) {
  const TextRule rule = RuleFor(kind);
  if (rule.fits(text)) return;
  findings.push_back(
      MakeFinding(*rule.code, spot.Path(), absl::StrCat("`", std::string(text), "` is not ", rule.expected)));
}

}  // namespace withy
