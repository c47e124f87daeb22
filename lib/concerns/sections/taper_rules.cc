#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::sections {
namespace {

constexpr Code kNoTaper = {
    .name = "sections/no-taper",
    .severity = Severity::kCannotTell,
    .summary = "Nothing is known of a section's diameters",
    .why = "Bores, arbors, the tip-top's tube, wraps, stiffness and mass all start from the blank's diameters.",
    .action =
        "Measure the outer diameter at the butt, at the tip and every 75 to 150 mm between, and enter the rows "
        "in `taper`. Butt and tip alone are a beginning.",
};

void JudgeNoTaper(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (!section.taper.stations.empty()) continue;
    findings.push_back(MakeFinding(kNoTaper, section.at, "the section's diameters are not known"));
  }
}

constexpr Code kTaperOrder = {
    .name = "sections/taper-order",
    .severity = Severity::kError,
    .summary = "The rows of a taper table do not run from the butt upwards",
    .why =
        "Between two rows the diameter is read off a straight line; with a row out of place there is no line to "
        "read, and every diameter of the section is in doubt.",
    .action = "Put the rows in order, or correct the place of this one. Two rows at one place are a step.",
};

void JudgeTaperOrder(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    std::optional<Length> before;
    for (const Station& station : section.taper.stations) {
      if (!station.at) continue;
      if (before && *station.at < *before) {
        findings.push_back(
            AtRow(view, kTaperOrder, section, station, "at",
                  absl::StrFormat("the row at %.1f mm comes after one at %.1f mm", station.at->mm(), before->mm()),
                  {{"at_mm", station.at->mm()}, {"before_mm", before->mm()}}));
      }
      before = station.at;
    }
  }
}

constexpr Code kTaperOutside = {
    .name = "sections/taper-outside",
    .severity = Severity::kError,
    .summary = "A row of a taper table lies beyond the section",
    .why =
        "A row that is not on the section was read from another piece or another end, or the section's length is "
        "wrong: either way the table does not fit the blank.",
    .action = "Measure the section's length again, and the row's place from its butt end as supplied.",
};

void JudgeTaperOutside(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (!section.length || section.length->source == Source::kAssumed) continue;
    // half a millimetre: what a tape laid along a blank is read to (common practice, no source)
    const double slack_m =
        std::max(0.0005, section.length->plus_minus.value_or(0) + section.taper.at_plus_minus_m.value_or(0));
    for (const Station& station : section.taper.stations) {
      if (!station.at || station.at->meters() <= section.length->value.meters() + slack_m) continue;
      findings.push_back(AtRow(view, kTaperOutside, section, station, "at",
                               absl::StrFormat("the row at %.1f mm lies beyond the section's %.1f mm", station.at->mm(),
                                               section.length->value.mm()),
                               {{"at_mm", station.at->mm()}, {"length_mm", section.length->value.mm()}}));
    }
  }
}

constexpr Code kTaperShort = {
    .name = "sections/taper-short",
    .severity = Severity::kWarning,
    .summary = "A taper table covers too little of its section",
    .why =
        "Beyond its last row the blank is taken to stay as thick as it is there, so bores, tip-top and stiffness "
        "come out wrong where no row was read.",
    .action = "Measure the outer diameter at both ends of the section and add the rows.",
};

// Share of the length that a table must reach over (common practice, no source).
constexpr double kCovered = 0.9;

void JudgeTaperShort(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (!section.length || section.outer.empty()) continue;
    const double covered_m = section.outer.end() - section.outer.begin();
    if (covered_m >= kCovered * section.length->value.meters()) continue;
    findings.push_back(MakeFinding(
        kTaperShort, section.taper.at,
        absl::StrFormat("the rows cover %.0f of the section's %.0f mm", covered_m * 1000, section.length->value.mm()),
        {{"covered_mm", covered_m * 1000}, {"length_mm", section.length->value.mm()}}));
  }
}

constexpr Code kTaperFallsTowardButt = {
    .name = "sections/taper-falls-toward-butt",
    .severity = Severity::kWarning,
    .summary = "A section is thicker at its tip than at its butt",
    .why =
        "Rows are counted from the butt end. A table taken from the tip turns the blank round, and every bore, "
        "arbor and tip-top with it. A swell or a parallel butt is no such case: what counts is the trend.",
    .action =
        "Look at the blank: was the table taken from the tip? If so, replace each place by the length less "
        "that place, and reverse the rows.",
};

// Mean of a profile over a stretch of it.
double MeanOf(const Profile& profile, double a, double b) {
  const Profile part = profile.Slice(a, b);
  double area = 0;
  for (std::size_t i = 1; i < part.knots().size(); ++i) {
    area += (part.knots()[i].x - part.knots()[i - 1].x) * (part.knots()[i].y + part.knots()[i - 1].y) / 2;
  }
  return area / (b - a);
}

void JudgeTaperFallsTowardButt(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (section.outer.empty() || section.outer.end() <= section.outer.begin()) continue;
    const double begin = section.outer.begin(), end = section.outer.end(), middle = (begin + end) / 2;
    const double butt = section.outer.At(begin), tip = section.outer.At(end, Profile::Limit::kLeft);
    // 5 in a hundred: less is a parallel section with the noise of a calliper (common practice, no source)
    const bool falls = tip > 1.05 * butt && MeanOf(section.outer, middle, end) > MeanOf(section.outer, begin, middle);
    if (!falls) continue;
    findings.push_back(
        MakeFinding(kTaperFallsTowardButt, section.taper.at,
                    absl::StrFormat("%.2f mm at the butt, %.2f mm at the tip: was this taken from the tip?",
                                    butt * 1000, tip * 1000),
                    {{"butt_mm", butt * 1000}, {"tip_mm", tip * 1000}}));
  }
}

constexpr Code kTaperSlip = {
    .name = "sections/taper-slip",
    .severity = Severity::kWarning,
    .summary = "One row is off its neighbours by a factor that a slip of unit or decimal point explains",
    .why = "A single wrong diameter makes a bore seem not to go on, or go on where it does not.",
    .action = "Measure the blank again at this row.",
};

// What the row should say if its author slipped by a factor; unset where no slip explains it. An inch typed as a
// millimetre is 25.4 too small, a point put wrong 10 times too small or too large.
std::optional<double> SuspectedValue(double value, double expected) {
  for (const double factor : {25.4, 10.0, 1 / 25.4, 1 / 10.0}) {
    const double ratio = value * factor / expected;
    if (ratio > 0.85 && ratio < 1 / 0.85) return value * factor;
  }
  return std::nullopt;
}

void JudgeTaperSlip(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    std::vector<const Station*> rows;
    for (const Station& station : section.taper.stations) {
      if (station.at && station.outer && station.outer->meters() > 0) rows.push_back(&station);
    }
    for (std::size_t i = 1; i + 1 < rows.size(); ++i) {
      const Station &before = *rows[i - 1], &row = *rows[i], &after = *rows[i + 1];
      const double ratio = before.outer->meters() / after.outer->meters();
      if (ratio > 3 || ratio < 1 / 3.0) continue;  // one of the neighbours is the doubtful one
      const double expected =
          Between(before.at->mm(), before.outer->mm(), after.at->mm(), after.outer->mm(), row.at->mm());
      const std::optional<double> suspected = SuspectedValue(row.outer->mm(), expected);
      if (!suspected) continue;
      findings.push_back(AtRow(view, kTaperSlip, section, row, "outer",
                               absl::StrFormat("%.2f mm between %.2f mm and %.2f mm; %.2f mm would fit",
                                               row.outer->mm(), before.outer->mm(), after.outer->mm(), *suspected),
                               {{"outer_mm", row.outer->mm()}, {"suspected_mm", *suspected}}));
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
    const Station* before = nullptr;
    for (const Station& station : section.taper.stations) {
      if (!station.at || !station.outer) continue;
      if (before != nullptr) {
        const double along = station.at->mm() - before->at->mm();
        const double change = station.outer->mm() - before->outer->mm();
        if (along > 0 && std::abs(change) > kStepMm && std::abs(change) > kStepSlope * along) {
          findings.push_back(
              AtRow(view, kStep, section, station, "outer",
                    absl::StrFormat("the diameter changes from %.2f to %.2f mm within %.1f mm", before->outer->mm(),
                                    station.outer->mm(), along),
                    {{"before_mm", before->outer->mm()}, {"outer_mm", station.outer->mm()}, {"within_mm", along}}));
        }
      }
      before = &station;
    }
  }
}

}  // namespace

std::vector<Rule<View>> TaperRules() {
  return {{&kNoTaper, JudgeNoTaper},
          {&kTaperOrder, JudgeTaperOrder},
          {&kTaperOutside, JudgeTaperOutside},
          {&kTaperShort, JudgeTaperShort},
          {&kTaperFallsTowardButt, JudgeTaperFallsTowardButt},
          {&kTaperSlip, JudgeTaperSlip},
          {&kStep, JudgeStep}};
}

}  // namespace withy::sections
