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
    table.AddRow({fact.what(), ClosedText(fact, options.units), fact.at()});
  }
  return table.ToText(options.style);
}

std::string DryFitTable(const v1::FitReport& fit, const ShowOptions& options) {
  const std::string unit = UnitName(options.units);
  TextTable table({{"dry fit", Align::kLeft},
                   {"off butt"},
                   {"read " + unit},
                   {"expected " + unit},
                   {"off by mm"},
                   {"tighter mm"},
                   {"bore there mm"}});
  for (const v1::DryFitSeen& seen : fit.cut_plan().dry_fits()) {
    const std::optional<double> read = WITHY_FIGURE(seen, read_mm), expected = WITHY_FIGURE(seen, expected_mm);
    table.AddRow({seen.at(), AlongText(WITHY_FIGURE(seen, cut_mm), options.units), AlongText(read, options.units),
                  AlongText(expected, options.units), Signed(Less(read, expected), 1),
                  Signed(WITHY_FIGURE(seen, tighter_mm), 3), FigureText(WITHY_FIGURE(seen, bore_mm), 2)});
  }
  return table.ToText(options.style);
}

std::string ArborTable(const v1::FitReport& fit, const ShowOptions& options) {
  TextTable table({{"arbor", Align::kLeft},
                   {"in", Align::kLeft},
                   {"from " + UnitName(options.units)},
                   {"long mm"},
                   {"blank mm"},
                   {"bore mm"},
                   {"build to mm"},
                   {"turns"},
                   {"tape mm"},
                   {"gap mm"},
                   {"place", Align::kLeft}});
  for (const v1::FittedPart& part : fit.parts()) {
    for (const v1::FittedArbor& arbor : part.arbors()) {
      table.AddRow({arbor.id().empty() ? "(proposed)" : arbor.id(), part.id(),
                    AlongText(WITHY_FIGURE(arbor, start_mm), options.units),
                    FigureText(WITHY_FIGURE(arbor, length_mm), 0), FigureText(WITHY_FIGURE(arbor, blank_mm), 2),
                    FigureText(WITHY_FIGURE(arbor, bore_mm), 2), FigureText(WITHY_FIGURE(arbor, outer_mm), 2),
                    arbor.has_turns() ? absl::StrCat(arbor.turns()) : kNotKnown,
                    FigureText(WITHY_FIGURE(arbor, tape_length_mm), 0), FigureText(WITHY_FIGURE(arbor, gap_mm), 2),
                    arbor.place()});
    }
  }
  return table.ToText(options.style);
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
  TextTable table({{"check", Align::kLeft},
                   {"blank mm"},
                   {"bore mm"},
                   {"gap mm"},
                   {"next down mm"},
                   {"stops ahead mm"},
                   {"or ream it by mm"}});
  for (const v1::WindingCheckFit& check : fit.winding_checks()) {
    table.AddRow(
        {check.part(), FigureText(WITHY_FIGURE(check, blank_mm), 2), FigureText(WITHY_FIGURE(check, bore_mm), 2),
         FigureText(WITHY_FIGURE(check, gap_mm), 2), FigureText(WITHY_FIGURE(check, next_bore_mm), 2),
         FigureText(WITHY_FIGURE(check, next_stops_ahead_mm), 1), FigureText(WITHY_FIGURE(check, ream_mm), 2)});
  }
  return table.ToText(options.style);
}

}  // namespace withy
