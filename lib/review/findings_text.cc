#include "withy/review/findings_text.h"

#include <algorithm>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "excerpt.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

Ink InkOf(Severity severity) {
  switch (severity) {
    case Severity::kError:
      return Ink::kError;
    case Severity::kWarning:
      return Ink::kWarning;
    case Severity::kCannotTell:
      return Ink::kCannotTell;
    case Severity::kAdvice:
      return Ink::kAdvice;
  }
  return Ink::kPlain;
}

Ink InkOf(Outcome outcome) {
  switch (outcome) {
    case Outcome::kClean:
      return Ink::kGood;
    case Outcome::kCannotTell:
      return Ink::kCannotTell;
    case Outcome::kFindings:
    case Outcome::kIncomplete:
    case Outcome::kUnreadable:
      return Ink::kError;
  }
  return Ink::kPlain;
}

std::string ShownName(const CheckedDesign& checked) {
  return checked.name == "-" ? "standard input" : Visible(checked.name);
}

std::string Headline(const CheckedDesign& checked, const Finding& finding, const std::optional<Position>& place,
                     const TextStyle& style) {
  std::string where = ShownName(checked);
  if (place && place->line > 0) absl::StrAppend(&where, ":", place->line, ":", place->column);
  std::string kind = absl::StrCat(std::string(SeverityName(finding.severity)), "[", finding.code, "]");
  return absl::StrCat(Painted(where, Ink::kStrong, style), ": ", Painted(Visible(kind), InkOf(finding.severity), style),
                      ": ", Painted(Visible(finding.message), Ink::kStrong, style), "\n");
}

// "  help: ..." in lines of the style's width, the later ones under the first.
std::string Labelled(std::string_view label, std::string_view text, const TextStyle& style) {
  std::string lines;
  std::string margin = absl::StrCat("  ", std::string(label), ": ");
  int room = style.width - static_cast<int>(margin.size());
  for (const std::string& line : Wrapped(text, room)) {
    std::string shown = lines.empty() ? Painted(margin, Ink::kFaint, style) : std::string(margin.size(), ' ');
    absl::StrAppend(&lines, shown, line, "\n");
  }
  return lines;
}

// "1200 mm from the tip", `47 1/4" from the tip`.
std::string OnTheRod(const Finding& finding, LengthUnits units) {
  if (!finding.from_tip_mm) return "";
  Length length = Length::Mm(*finding.from_tip_mm);
  return (units == LengthUnits::kMm ? FormatMm(length, 0) : FormatInches(length, 16)) + " from the tip";
}

std::string AtText(const Finding& finding, const std::optional<Position>& place, const std::string& on_the_rod) {
  std::vector<std::string> parts;
  if (std::string at = finding.at.ToString(); !at.empty()) parts.push_back(at);
  if (place && place->line == 0) parts.push_back(absl::StrCat("byte ", place->offset));
  if (!on_the_rod.empty()) parts.push_back(on_the_rod);
  return absl::StrJoin(parts, ", ");
}

std::string RelatedText(const CheckedDesign& checked, const FieldPath& path) {
  std::string text = path.ToString();
  std::optional<Position> place = PlaceOf(checked, path);
  if (place && place->line > 0) absl::StrAppend(&text, " (line ", place->line, ")");
  return text;
}

void AddCount(std::vector<std::string>& parts, int count, std::string_view one, std::string_view many = "") {
  if (count > 0) parts.push_back(Counted(count, one, many));
}

// What passed is called clean only where nothing stands.
std::string_view OutcomeWords(Outcome outcome, const Verdict& counts) {
  if (outcome != Outcome::kClean || counts.warnings + counts.advice == 0) return OutcomeName(outcome);
  return counts.warnings > 0 ? "no errors" : "no errors or warnings";
}

std::string FailuresText(const CheckedDesign& checked, const TextStyle& style) {
  std::string text;
  for (const std::string& failure : checked.failures) {
    absl::StrAppend(&text, Painted(ShownName(checked), Ink::kStrong, style), ": ",
                    Painted(checked.read.document ? "incomplete" : "unreadable", Ink::kError, style), ": ",
                    Visible(failure), "\n\n");
  }
  return text;
}

}  // namespace

std::string FindingText(const CheckedDesign& checked, const Finding& finding, LengthUnits units,
                        const TextStyle& style) {
  std::optional<Position> place = PlaceOf(checked, finding);
  std::string text = Headline(checked, finding, place, style);
  std::string on_the_rod = OnTheRod(finding, units);
  std::string excerpt = place ? Excerpt(checked.bytes, *place, on_the_rod, InkOf(finding.severity), style) : "";
  text += excerpt;
  std::string at = AtText(finding, place, excerpt.empty() ? on_the_rod : "");
  if (!at.empty()) text += Labelled("at", at, style);
  for (const FieldPath& path : finding.related) text += Labelled("see", RelatedText(checked, path), style);
  if (!finding.help.empty()) text += Labelled("help", finding.help, style);
  return text;
}

std::string FindingsText(const CheckedDesign& checked, const FindingsOptions& options) {
  std::string text;
  auto add = [&](const Finding& finding) {
    absl::StrAppend(&text, FindingText(checked, finding, options.units, options.style), "\n");
  };
  for (const Finding& finding : FindingsOf(checked)) add(finding);
  if (options.verbose) {
    for (Finding finding : checked.review.waived) {
      finding.message += " (waived)";
      add(finding);
    }
  }
  return text + FailuresText(checked, options.style) + VerdictText(checked, options.fail_on, options.style);
}

std::string VerdictText(const CheckedDesign& checked, Severity fail_on, const TextStyle& style) {
  Outcome outcome = OutcomeOf(checked, fail_on);
  Verdict counts = CountsOf(checked, fail_on);
  std::vector<std::string> parts;
  if (outcome == Outcome::kIncomplete) AddCount(parts, static_cast<int>(checked.failures.size()), "plugin failure");
  AddCount(parts, counts.errors, "error");
  AddCount(parts, counts.warnings, "warning");
  AddCount(parts, counts.cannot_tell, "rule not judged", "rules not judged");
  AddCount(parts, counts.advice, "piece of advice", "pieces of advice");
  AddCount(parts, counts.waived, "waived", "waived");
  std::string line = absl::StrCat(Painted(ShownName(checked), Ink::kStrong, style), ": ",
                                  Painted(OutcomeWords(outcome, counts), InkOf(outcome), style));
  if (!parts.empty()) absl::StrAppend(&line, " (", absl::StrJoin(parts, ", "), ")");
  return line + "\n";
}

std::string OverallText(const std::vector<Outcome>& outcomes, const TextStyle& style) {
  std::vector<std::string> parts;
  for (Outcome outcome :
       {Outcome::kClean, Outcome::kFindings, Outcome::kCannotTell, Outcome::kIncomplete, Outcome::kUnreadable}) {
    auto count = std::count(outcomes.begin(), outcomes.end(), outcome);
    if (count == 0) continue;
    std::string_view name = outcome == Outcome::kClean      ? "passed"
                            : outcome == Outcome::kFindings ? "with findings"
                                                            : OutcomeName(outcome);
    parts.push_back(absl::StrCat(count, " ", Painted(name, InkOf(outcome), style)));
  }
  return absl::StrCat(Counted(static_cast<int>(outcomes.size()), "file"), ": ", absl::StrJoin(parts, ", "), "\n");
}

}  // namespace withy
