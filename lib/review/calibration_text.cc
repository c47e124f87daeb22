#include "withy/review/calibration_text.h"

#include <algorithm>

#include "absl/strings/str_cat.h"
#include "figure_text.h"
#include "text_parts.h"
#include "text_table.h"
#include "withy/units/format.h"

namespace withy {
namespace {

using Align = TextTable::Align;

Ink InkOf(std::string_view state) {
  if (state == "found") return Ink::kGood;
  return state == "contradictory" ? Ink::kError : Ink::kCannotTell;
}

int DecimalsOf(std::string_view unit) {
  if (unit == "mm" || unit == "g/cm3" || unit == "Hz") return 3;
  return 1;
}

std::string VerdictText(const v1::Calibration& calibration, const TextStyle& style) {
  std::string text;
  bool first = true;
  for (const std::string& line : Wrapped(calibration.verdict(), style.width - 2)) {
    absl::StrAppend(&text, "  ", first ? Painted(line, InkOf(calibration.state()), style) : line, "\n");
    first = false;
  }
  return text;
}

std::string FiguresTable(const v1::Calibration& calibration, const TextStyle& style) {
  TextTable table({{"", Align::kLeft},
                   {"section", Align::kLeft},
                   {"found"},
                   {"±"},
                   {"", Align::kLeft},
                   {"± %"},
                   {"said"},
                   {"", Align::kLeft}});
  for (const v1::CalibratedFigure& figure : calibration.figures()) {
    const int decimals = DecimalsOf(figure.unit());
    const auto doubt = WITHY_FIGURE(figure, plus_minus);
    std::optional<double> percent;
    if (doubt && figure.value() > 0) percent = *doubt / figure.value() * 100;
    table.AddRow({figure.kind(), figure.section().empty() ? "all" : figure.section(),
                  FigureText(WITHY_FIGURE(figure, value), decimals), FigureText(doubt, decimals),
                  figure.has_value() || figure.has_said() ? figure.unit() : "", FigureText(percent, 1),
                  FigureText(WITHY_FIGURE(figure, said), decimals),
                  figure.held()        ? "measured: held"
                  : figure.has_value() ? ""
                                       : "not told"});
  }
  return table.ToText(style);
}

// "hang-250" of "blank.bench[hang-250].drop".
std::string ItemOf(const std::string& path) {
  const std::size_t end = path.rfind(']'), begin = path.rfind('[', end);
  return end == std::string::npos || begin == std::string::npos ? path : path.substr(begin + 1, end - begin - 1);
}

std::string ReadingsTable(const v1::Calibration& calibration, const TextStyle& style) {
  TextTable table({{"", Align::kLeft},
                   {"read"},
                   {"±"},
                   {"it would be"},
                   {"", Align::kLeft},
                   {"off by sd"},
                   {"", Align::kLeft},
                   {"of", Align::kLeft}});
  std::string remarks;
  for (const v1::CalibrationReading& reading : calibration.readings()) {
    const int decimals = reading.unit() == "Hz" ? 3 : 1;
    table.AddRow({reading.kind(), FigureText(WITHY_FIGURE(reading, measured), decimals),
                  FigureText(WITHY_FIGURE(reading, plus_minus), decimals),
                  FigureText(WITHY_FIGURE(reading, fitted), decimals), reading.unit(),
                  FigureText(WITHY_FIGURE(reading, deviation), 1), reading.rejected() ? "WRONG" : "",
                  ItemOf(reading.at())});
    if (!reading.remark().empty()) remarks += ItemText(reading.at(), reading.remark(), style);
  }
  const std::string text = table.ToText(style);
  if (text.empty()) return remarks;
  std::string misfit;
  if (calibration.has_misfit()) {
    misfit =
        LineText("misfit", FormatFixed(calibration.misfit(), 2) + ": about 1 where readings and their ± agree", style);
  }
  return text + misfit + remarks;
}

std::string OpenLines(const v1::Calibration& calibration, const TextStyle& style) {
  std::string lines;
  for (const v1::OpenCombination& open : calibration.open()) {
    lines += BulletText(
        absl::StrCat(open.text(), open.has_doubt_percent()
                                      ? absl::StrCat(" (known to ", FormatFixed(open.doubt_percent(), 0), " %)")
                                      : " (no reading sees it)"),
        style);
  }
  return lines;
}

std::string NextLines(const v1::Calibration& calibration, const TextStyle& style) {
  std::string lines;
  for (const v1::NextReading& next : calibration.next()) {
    const std::string of = next.section().empty() ? "" : " of " + next.section();
    lines += BulletText(absl::StrCat(next.text(), " It divides the doubt of the ", next.kind(), of, " by ",
                                     FormatFixed(next.narrows(), 1), "."),
                        style);
  }
  return lines;
}

std::string AssumedLines(const v1::Calibration& calibration, const TextStyle& style) {
  std::string lines;
  for (const v1::CalibrationAssumption& assumed : calibration.assumptions()) {
    lines += ItemText(assumed.at(), absl::StrCat(assumed.used(), ": ", assumed.why()), style);
  }
  return lines;
}

}  // namespace

std::string CalibrationText(std::string_view file, const v1::Design& design, const v1::Calibration& calibration,
                            const TextStyle& style) {
  v1::Report report;
  report.set_design_digest(calibration.design_digest());
  return absl::StrCat(
      TitleText(file, design, report, style), SectionText("Verdict", VerdictText(calibration, style), style),
      SectionText("What the readings say of the blank; ± is two standard deviations", FiguresTable(calibration, style),
                  style),
      SectionText("The readings, and what that blank would read", ReadingsTable(calibration, style), style),
      SectionText("What they do not tell apart", OpenLines(calibration, style), style),
      SectionText("What to read next", NextLines(calibration, style), style),
      SectionText("Assumed", AssumedLines(calibration, style), style));
}

}  // namespace withy
