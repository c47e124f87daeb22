#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/sections/slip.h"

namespace withy::sections {
namespace {

// A row that says where it is and how thick the blank is there.
struct Row {
  const Station* station = nullptr;
  double at_mm = 0, outer_mm = 0;
  // What it should say, where it is in doubt.
  std::optional<double> slip_mm, expected_mm;

  bool doubtful() const { return slip_mm || expected_mm; }
};

// The straight line through two rows, at a third.
double On(const Row& a, const Row& b, const Row& at) {
  return Between(a.at_mm, a.outer_mm, b.at_mm, b.outer_mm, at.at_mm);
}

// Rows [first, last) without a step between them.
void MarkSlips(std::vector<Row>& rows, std::size_t first, std::size_t last) {
  for (std::size_t i = first + 1; i + 1 < last; ++i) {
    const double ratio = rows[i - 1].outer_mm / rows[i + 1].outer_mm;
    if (ratio > 3 || ratio < 1 / 3.0) continue;  // one of the neighbours is the doubtful one
    rows[i].slip_mm = SlipOf(rows[i].outer_mm, On(rows[i - 1], rows[i + 1], rows[i]));
  }
}

// How far a row is off the line of its neighbours before it is asked about: 0.2 mm, and 2 in a hundred of the
// diameter, and twice what two readings of the instrument may differ by (common practice, no source).
double LeastOff(const Section& section, double outer_mm) {
  return std::max({0.2, 0.02 * outer_mm, 4000 * section.taper.diameter_plus_minus_m.value_or(0)});
}

// A wrong row is a bump: without it the rows beside it run on smoothly. Where the blank itself changes its slope (a
// swell, the end of a parallel butt, a fine tip) the change is still there when one row is left out, only elsewhere.
void MarkBumps(const Section& section, std::vector<Row>& rows, std::size_t first, std::size_t last) {
  if (last - first < 5) return;
  for (std::size_t i = first + 1; i + 1 < last; ++i) {
    const double expected = On(rows[i - 1], rows[i + 1], rows[i]);
    const double off = std::abs(rows[i].outer_mm - expected);
    if (off <= LeastOff(section, rows[i].outer_mm)) continue;
    // how far each row up to two away is off its own neighbours, this one left out
    bool smooth = true;
    for (std::size_t k = std::max(first + 1, i < 2 ? 0 : i - 2); k + 1 < last && k <= i + 2; ++k) {
      if (k == i) continue;
      const Row &before = rows[k - 1 == i ? i - 1 : k - 1], &after = rows[k + 1 == i ? i + 1 : k + 1];
      smooth = smooth && std::abs(rows[k].outer_mm - On(before, after, rows[k])) <= off / 3;
    }
    if (smooth) rows[i].expected_mm = expected;
  }
}

// The table's rows, those in doubt marked; empty where they do not run from the butt upwards.
std::vector<Row> JudgedRows(const Section& section) {
  std::vector<Row> rows;
  for (const Station& station : section.taper.stations) {
    if (!station.at || !station.outer || station.outer->meters() <= 0) continue;
    if (!rows.empty() && station.at->mm() < rows.back().at_mm) return {};
    rows.push_back({&station, station.at->mm(), station.outer->mm(), {}, {}});
  }
  for (std::size_t first = 0, i = 1; i <= rows.size(); ++i) {
    if (i < rows.size() && rows[i].at_mm > rows[i - 1].at_mm) continue;
    MarkSlips(rows, first, i);
    const bool slipped = std::any_of(rows.begin() + first, rows.begin() + i, [](const Row& r) { return r.doubtful(); });
    if (!slipped) MarkBumps(section, rows, first, i);
    first = i;
  }
  return rows;
}

constexpr Code kTaperSlip = {
    .name = "sections/taper-slip",
    .severity = Severity::kWarning,
    .summary = "One row is off its neighbours by a factor that a slip of unit or decimal point explains",
    .why = "A single wrong diameter makes a bore seem not to go on, or go on where it does not.",
    .action = "Measure the blank again at this row.",
};

void JudgeTaperSlip(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    const std::vector<Row> rows = JudgedRows(section);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (!rows[i].slip_mm) continue;
      findings.push_back(
          AtRow(view, kTaperSlip, section, *rows[i].station, "outer",
                absl::StrFormat("%.2f mm between %.2f mm and %.2f mm; %.2f mm would fit", rows[i].outer_mm,
                                rows[i - 1].outer_mm, rows[i + 1].outer_mm, *rows[i].slip_mm),
                {{"outer_mm", rows[i].outer_mm}, {"suspected_mm", *rows[i].slip_mm}}));
    }
  }
}

constexpr Code kTaperBump = {
    .name = "sections/taper-bump",
    .severity = Severity::kWarning,
    .summary = "One row stands out of the line that the rows beside it make",
    .why =
        "A blank tapers smoothly, and where it does not, more than one row shows it. One that stands out alone is "
        "mostly a misread diameter, or one that belongs at another place; a bore is then fitted to a blank that "
        "is not there.",
    .action = "Measure the blank again at this row, its place and its diameter.",
};

// Where between its neighbours the row's diameter is met; unset where it is not.
std::optional<double> PlaceOf(const Row& before, const Row& row, const Row& after) {
  const double share = (row.outer_mm - before.outer_mm) / (after.outer_mm - before.outer_mm);
  if (!(share >= 0 && share <= 1)) return std::nullopt;
  return before.at_mm + share * (after.at_mm - before.at_mm);
}

void JudgeTaperBump(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    const std::vector<Row> rows = JudgedRows(section);
    for (std::size_t i = 0; i < rows.size(); ++i) {
      if (!rows[i].expected_mm) continue;
      std::string message = absl::StrFormat("%.2f mm at %.1f mm, where the rows beside it say %.2f mm",
                                            rows[i].outer_mm, rows[i].at_mm, *rows[i].expected_mm);
      std::vector<Number> numbers = {{"outer_mm", rows[i].outer_mm}, {"expected_mm", *rows[i].expected_mm}};
      if (const std::optional<double> place = PlaceOf(rows[i - 1], rows[i], rows[i + 1])) {
        message += absl::StrFormat("; %.2f mm would be at %.0f mm", rows[i].outer_mm, *place);
        numbers.push_back({"place_mm", *place});
      }
      findings.push_back(
          AtRow(view, kTaperBump, section, *rows[i].station, "", std::move(message), std::move(numbers)));
    }
  }
}

constexpr Code kStep = {
    .name = "sections/step",
    .severity = Severity::kWarning,
    .summary = "The blank changes its diameter suddenly between two rows",
    .why =
        "A blank tapers gently; a real step (the end of a ferrule, a spliced tip) has to be written as two rows "
        "at one place, or the diameters beside it are wrong.",
    .action =
        "Measure around the step. Where it is real, give the same place twice, with the diameter on its butt "
        "side first.",
};

// More than 0.5 mm, and by more than 1 mm in 10 mm of blank (common practice, no source).
constexpr double kStepMm = 0.5;
constexpr double kStepSlope = 0.1;

void JudgeStep(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    const std::vector<Row> rows = JudgedRows(section);
    for (std::size_t i = 1; i < rows.size(); ++i) {
      const Row &before = rows[i - 1], &row = rows[i];
      const double along = row.at_mm - before.at_mm, change = std::abs(row.outer_mm - before.outer_mm);
      // beside a row that is in doubt the step is that row's
      if (before.doubtful() || row.doubtful() || !(along > 0)) continue;
      if (change <= kStepMm || change <= kStepSlope * along) continue;
      findings.push_back(AtRow(view, kStep, section, *row.station, "outer",
                               absl::StrFormat("the diameter changes from %.2f to %.2f mm within %.1f mm",
                                               before.outer_mm, row.outer_mm, along),
                               {{"before_mm", before.outer_mm}, {"outer_mm", row.outer_mm}, {"within_mm", along}}));
    }
  }
}

}  // namespace

std::vector<Rule<View>> RowRules() {
  return {{&kTaperSlip, JudgeTaperSlip}, {&kTaperBump, JudgeTaperBump}, {&kStep, JudgeStep}};
}

}  // namespace withy::sections
