#include "bench_value.h"

#include <algorithm>
#include <optional>
#include <span>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "utf8.h"
#include "withy/units/parse.h"
#include "withy/units/unit.h"

namespace withy {
namespace {

constexpr std::size_t kLongest = 100;  // of a value that anyone writes, in bytes

bool IsNameCharacter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_';
}

std::string_view WithoutSpaceAtTheEnd(std::string_view text) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t' || text.back() == '\r')) text.remove_suffix(1);
  return text;
}

// "36 -7/8" and "4.5 /64" without the spaces that stand beside a stroke.
std::string Tidied(std::string_view text) {
  std::string tidy;
  for (const char c : text) {
    const bool stroke = c == '/' || (c == '-' && !tidy.empty());
    if (stroke && tidy.ends_with(' ')) tidy.pop_back();
    if (c == ' ' && (tidy.ends_with('/') || tidy.ends_with('-'))) continue;
    tidy += c;
  }
  return tidy;
}

std::optional<WrittenNumber> Meaning(std::string_view kind, std::string_view text, std::string_view unit) {
  const std::string tidy = Tidied(text);
  if (const auto parsed = ParseQuantity(kind, tidy); parsed.ok()) return *parsed;
  if (unit.empty()) {
    // A fraction without a unit is one of an inch.
    if (kind != "Length" || text.find('/') == std::string_view::npos) return std::nullopt;
    unit = "in";
  }
  // 6/64 under `in64` are six of them.
  const bool of_64 = unit == "in64" && text.find('/') != std::string_view::npos;
  const auto parsed = ParseQuantity(kind, absl::StrCat(tidy, " ", of_64 ? "in" : std::string(unit)));
  if (!parsed.ok()) return std::nullopt;
  if (of_64 && parsed->unit == "inch") return WrittenNumber{parsed->number * 64, "in64"};
  return *parsed;
}

// Enough digits for any value of a bench, and none that come from a conversion.
std::string Digits(double number) {
  return absl::StrFormat("%.10g", number);
}

// "inch: 36.875", or empty.
std::string FieldOf(const std::optional<WrittenNumber>& value) {
  return value ? absl::StrCat(std::string(value->unit), ": ", Digits(value->number)) : "";
}

// "36.875" for a number that has no unit, or empty.
std::string NumberOf(std::string_view text) {
  const std::optional<WrittenNumber> value = Meaning("Length", text, "mm");
  return value && value->unit == "mm" ? Digits(value->number) : "";
}

std::string Write(std::string_view what) {
  return what.empty() ? "" : absl::StrCat("Write `", std::string(what), "`.");
}

}  // namespace

std::string_view BenchText(std::string_view rest) {
  rest = rest.substr(0, kLongest);
  rest = rest.substr(0, ValidUtf8Prefix(rest));
  const std::size_t end = std::min(rest.find_first_of("{}<>[],;#:=\n"), rest.size());
  std::string_view text = rest.substr(0, end);
  // What stands before a colon or a brace is the next field's name.
  const bool names_a_field = end < rest.size() && std::string_view("{<:=").find(rest[end]) != std::string_view::npos;
  text = WithoutSpaceAtTheEnd(text);
  const std::string_view whole = text;
  while (names_a_field && !text.empty() && IsNameCharacter(text.back())) text.remove_suffix(1);
  return text.empty() ? whole : WithoutSpaceAtTheEnd(text);
}

std::string HowToWriteNumber(std::string_view kind, std::string_view field, std::string_view text) {
  const std::string name(field);
  if (FindUnit(kind, field) == nullptr) {
    const std::string number = NumberOf(text);
    return number.empty() ? "" : Write(absl::StrCat(name, ": ", number));
  }
  const std::optional<WrittenNumber> meant = Meaning(kind, text, field);
  if (!meant || meant->unit == field) return Write(FieldOf(meant));
  return absl::StrCat("Write `", FieldOf(meant), "`, or the number alone if it was read in `", name, "`.");
}

std::string HowToWriteQuantity(std::string_view name, std::string_view kind, std::string_view text) {
  const std::string field(name);
  if (const auto meant = Meaning(kind, text, "")) return Write(absl::StrCat(field, " { ", FieldOf(meant), " }"));
  const std::string number = NumberOf(text);
  if (number.empty()) return "";
  return absl::StrCat("Write it under the unit it was read in, ", UnitsInWords(kind), ": `", field, " { ",
                      std::string(UnitsOf(kind).front().name), ": ", number, " }`.");
}

std::string HowToWriteNameless(std::string_view kind, std::string_view text) {
  if (const auto meant = Meaning(kind, text, "")) return Write(FieldOf(meant));
  return absl::StrCat("Put the unit it was read in before it: ", UnitsInWords(kind), ", and a colon.");
}

std::string HowToWriteUnit(std::string_view kind, std::string_view word, std::string_view text) {
  if (UnitsOf(kind).empty()) return "";
  const std::string unit(word);
  if (const auto one = Meaning(kind, "1", word)) {
    if (text.empty()) return absl::StrCat("1 ", unit, " is `", FieldOf(one), "`.");
    return Write(FieldOf(Meaning(kind, text, word)));
  }
  for (const std::string_view other : KindsInWords()) {
    if (!Meaning(other, "1", word)) continue;
    return absl::StrCat("`", unit, "` is a unit of ", std::string(other), "; ", std::string(kind), " takes ",
                        UnitsInWords(kind), ".");
  }
  return "";
}

std::string UnitsInWords(std::string_view kind) {
  const std::span<const Unit> units = UnitsOf(kind);
  std::string list;
  for (std::size_t i = 0; i < units.size(); ++i) {
    absl::StrAppend(&list, i == 0 ? "" : i + 1 == units.size() ? " or " : ", ", "`", std::string(units[i].name), "`");
  }
  return list;
}

}  // namespace withy
