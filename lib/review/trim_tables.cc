#include "trim_tables.h"

#include "absl/strings/str_cat.h"
#include "bench_text.h"
#include "figure_text.h"
#include "text_table.h"

namespace withy {
namespace {

using Align = TextTable::Align;

std::string Signed(std::optional<double> mm, int decimals) {
  const std::string text = FigureText(mm, decimals);
  return mm && text[0] != '-' ? "+" + text : text;
}

std::optional<double> Less(std::optional<double> a, std::optional<double> b) {
  return a && b ? std::optional<double>(*a - *b) : std::nullopt;
}

}  // namespace

std::string ClosedText(const v1::ClosedFact& fact, LengthUnits units) {
  if (fact.kind() == "cut") {
    return absl::StrCat(BenchText(WITHY_FIGURE(fact, amount_mm), units), " cut off",
                        fact.at_end().empty() ? "" : " the " + fact.at_end());
  }
  if (fact.kind() == "potted" && fact.has_count()) {
    return "potted: " + Counted(static_cast<int>(fact.count()), "counterweight");
  }
  if (fact.kind() == "coated" && fact.count() > 0) return "coated: " + Counted(static_cast<int>(fact.count()), "coat");
  return fact.kind();
}

std::string ClosedTable(const v1::Report& report, const ShowOptions& options) {
  TextTable table({{"what", Align::kLeft}, {"is", Align::kLeft}, {"by", Align::kLeft}});
  for (const v1::ClosedFact& fact : report.closed()) {
    table.AddRow({fact.what(), ClosedText(fact, options.units), EntryOf(fact.at())});
  }
  return table.ToText(options.style);
}

std::string DryFitTable(const v1::FitReport& fit, const ShowOptions& options) {
  TextTable table({{"dry fit", Align::kLeft},
                   {"cut"},
                   {"read " + UnitName(options.units)},
                   {"expected"},
                   {"off by mm"},
                   {"tighter mm"},
                   {"bore there mm"}});
  for (const v1::DryFitSeen& seen : fit.cut_plan().dry_fits()) {
    const std::optional<double> read = WITHY_FIGURE(seen, read_mm), expected = WITHY_FIGURE(seen, expected_mm);
    table.AddRow({EntryOf(seen.at()), AlongText(WITHY_FIGURE(seen, cut_mm), options.units),
                  AlongText(read, options.units), AlongText(expected, options.units), Signed(Less(read, expected), 1),
                  Signed(WITHY_FIGURE(seen, tighter_mm), 3), FigureText(WITHY_FIGURE(seen, bore_mm), 2)});
  }
  return table.ToText(options.style);
}

std::string ArborTable(const v1::FitReport& fit, const ShowOptions& options) {
  std::string text;
  for (const v1::FittedPart& part : fit.parts()) {
    TextTable table({{"in " + part.id(), Align::kLeft},
                     {"from " + UnitName(options.units)},
                     {"long"},
                     {"blank"},
                     {"bore"},
                     {"build to"},
                     {"turns"},
                     {"tape"},
                     {"gap"}});
    for (const v1::FittedArbor& arbor : part.arbors()) {
      table.AddRow({arbor.proposed() ? "new, " + arbor.place() : arbor.id(),
                    AlongText(WITHY_FIGURE(arbor, start_mm), options.units),
                    FigureText(WITHY_FIGURE(arbor, length_mm), 0), FigureText(WITHY_FIGURE(arbor, blank_mm), 2),
                    FigureText(WITHY_FIGURE(arbor, bore_mm), 2), FigureText(WITHY_FIGURE(arbor, outer_mm), 2),
                    arbor.has_turns() ? absl::StrCat(arbor.turns()) : kNotKnown,
                    FigureText(WITHY_FIGURE(arbor, tape_length_mm), 0), FigureText(WITHY_FIGURE(arbor, gap_mm), 2)});
    }
    text += table.ToText(options.style);
  }
  return text;
}

std::string ReamingTables(const v1::FitReport& fit, const ShowOptions& options) {
  TextTable table({{"grip", Align::kLeft},
                   {"from its butt end " + UnitName(options.units)},
                   {"blank mm"},
                   {"ream to mm"},
                   {"bore mm"}});
  for (const v1::ReamTable& part : fit.reaming()) {
    for (const v1::ReamRow& row : part.rows()) {
      table.AddRow({&row == &part.rows(0) ? part.part() : "", AlongText(row.at_mm(), options.units),
                    FigureText(row.blank_mm(), 2), FigureText(row.ream_mm(), 2),
                    FigureText(WITHY_FIGURE(row, bore_mm), 2)});
    }
  }
  return table.ToText(options.style);
}

std::string WindingCheckTable(const v1::FitReport& fit, const ShowOptions& options) {
  TextTable table(
      {{"winding check", Align::kLeft}, {"blank"}, {"take bore"}, {"gap"}, {"next down"}, {"stops ahead"}, {"or ream by"}});
  for (const v1::WindingCheckFit& check : fit.winding_checks()) {
    table.AddRow(
        {check.part(), FigureText(WITHY_FIGURE(check, blank_mm), 2),
         check.has_bore_mm() ? FigureText(check.bore_mm(), 2) : "none in stock",
         FigureText(WITHY_FIGURE(check, gap_mm), 2), FigureText(WITHY_FIGURE(check, next_bore_mm), 2),
         FigureText(WITHY_FIGURE(check, next_stops_ahead_mm), 1), FigureText(WITHY_FIGURE(check, ream_mm), 2)});
  }
  return table.ToText(options.style);
}

}  // namespace withy
