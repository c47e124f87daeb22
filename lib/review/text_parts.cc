#include "text_parts.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "figure_text.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr int kLabelWidth = 20;
constexpr int kMargin = 2;

// `first` before the first line of `text`, blanks of the same width before the others.
std::string Hanging(std::string_view first, std::string_view text, const TextStyle& style) {
  const int width = DisplayWidth(first);
  std::string lines(first);
  for (const std::string& line : Wrapped(text, style.width - width)) {
    if (lines.size() > first.size()) lines.append(static_cast<std::size_t>(width), ' ');
    absl::StrAppend(&lines, line, "\n");
  }
  return lines;
}

}  // namespace

std::string TitleText(std::string_view file, const v1::Design& design, const v1::Report& report,
                      const TextStyle& style) {
  const v1::Identity& identity = design.identity();
  std::string name = identity.name().empty() ? "A rod without a name" : Visible(identity.name());
  std::vector<std::string> parts = {file == "-" ? "standard input" : Visible(file)};
  if (!design.intent().technique().empty()) parts.push_back(Visible(design.intent().technique()) + " rod");
  if (identity.has_revision()) parts.push_back(absl::StrCat("revision ", identity.revision()));
  if (!identity.serial().empty()) parts.push_back("serial " + Visible(identity.serial()));
  if (identity.authors_size() > 0) parts.push_back("by " + Visible(identity.authors(0).name()));
  std::string title = absl::StrCat(Painted(name, Ink::kStrong, style), "\n");
  for (const std::string& line : Wrapped(absl::StrJoin(parts, ", "), style.width)) absl::StrAppend(&title, line, "\n");
  if (!report.design_digest().empty()) {
    absl::StrAppend(&title, Painted(report.design_digest(), Ink::kFaint, style), "\n");
  }
  return title;
}

std::string HeadingText(std::string_view text, const TextStyle& style) {
  return absl::StrCat("\n", Painted(text, Ink::kStrong, style), "\n");
}

std::string SectionText(std::string_view heading, const std::string& body, const TextStyle& style) {
  return body.empty() ? "" : HeadingText(heading, style) + body;
}

std::string LineText(std::string_view label, std::string_view text, const TextStyle& style) {
  return Hanging(absl::StrCat("  ", PaddedRight(label, kLabelWidth), "  "), text, style);
}

std::string ItemText(std::string_view at, std::string_view text, const TextStyle& style) {
  return absl::StrCat("  ", Visible(at), "\n", Hanging(std::string(3 * kMargin, ' '), text, style));
}

std::string BulletText(std::string_view text, const TextStyle& style) {
  return Hanging("  - ", text, style);
}

std::string AgainstOrder(double short_mm, LengthUnits units) {
  if (std::abs(short_mm) < 0.05) return "as ordered";
  // Less than half a sixteenth would read as no difference.
  if (std::abs(short_mm) < Length::Inches(1.0 / 32).mm()) units = LengthUnits::kMm;
  std::string amount = AlongText(std::abs(short_mm), std::nullopt, units);
  return amount + (short_mm > 0 ? " shorter than ordered" : " longer than ordered");
}

}  // namespace withy
