#include "withy/review/findings_text.h"

#include <algorithm>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "absl/strings/str_join.h"
#include "excerpt.h"

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

std::string OnTheRod(const Finding& finding) {
  return finding.from_tip_mm ? absl::StrFormat("%.0f mm from the tip", *finding.from_tip_mm) : "";
}

std::string AtText(const Finding& finding, const std::optional<Position>& place, bool has_excerpt) {
  std::string at = finding.at.ToString();
  if (place && place->line == 0) absl::StrAppend(&at, at.empty() ? "" : ", ", "byte ", place->offset);
  if (!has_excerpt && finding.from_tip_mm) absl::StrAppend(&at, at.empty() ? "" : ", ", OnTheRod(finding));
  return at;
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

std::string FindingText(const CheckedDesign& checked, const Finding& finding, const TextStyle& style) {
  std::optional<Position> place = PlaceOf(checked, finding);
  std::string text = Headline(checked, finding, place, style);
  std::string excerpt = place ? Excerpt(checked.bytes, *place, OnTheRod(finding), InkOf(finding.severity), style) : "";
  text += excerpt;
  std::string at = AtText(finding, place, !excerpt.empty());
  if (!at.empty()) text += Labelled("at", at, style);
  for (const FieldPath& path : finding.related) text += Labelled("see", RelatedText(checked, path), style);
  if (!finding.help.empty()) text += Labelled("help", finding.help, style);
  return text;
}

std::string FindingsText(const CheckedDesign& checked, Severity fail_on, bool verbose, const TextStyle& style) {
  std::string text;
  for (const Finding& finding : FindingsOf(checked)) text += FindingText(checked, finding, style) + "\n";
  if (verbose) {
    for (Finding finding : checked.review.waived) {
      finding.message += " (waived)";
      text += FindingText(checked, finding, style) + "\n";
    }
  }
  return text + FailuresText(checked, style) + VerdictText(checked, fail_on, style);
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
                                  Painted(OutcomeName(outcome), InkOf(outcome), style));
  if (!parts.empty()) absl::StrAppend(&line, " (", absl::StrJoin(parts, ", "), ")");
  return line + "\n";
}

std::string OverallText(const std::vector<Outcome>& outcomes, const TextStyle& style) {
  std::vector<std::string> parts;
  for (Outcome outcome :
       {Outcome::kClean, Outcome::kFindings, Outcome::kCannotTell, Outcome::kIncomplete, Outcome::kUnreadable}) {
    auto count = std::count(outcomes.begin(), outcomes.end(), outcome);
    if (count == 0) continue;
    std::string_view name = outcome == Outcome::kFindings ? "with findings" : OutcomeName(outcome);
    parts.push_back(absl::StrCat(count, " ", Painted(name, InkOf(outcome), style)));
  }
  return absl::StrCat(Counted(static_cast<int>(outcomes.size()), "file"), ": ", absl::StrJoin(parts, ", "), "\n");
}

}  // namespace withy
