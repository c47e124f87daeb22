#include <algorithm>
#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"

namespace withy::sections {
namespace {

bool IsSolid(const Section& section) {
  return section.shape == Shape::kSolidRound || section.shape == Shape::kSolidHexagon;
}

constexpr Code kWallTooThick = {
    .name = "sections/wall-too-thick",
    .severity = Severity::kError,
    .summary = "Two walls do not fit into the outer diameter",
    .why =
        "A wall is at most half the outer diameter; a solid tip has exactly that. More is a slip of unit or "
        "column, and mass and stiffness follow from it.",
    .action =
        "Measure the wall where the blank is open, and enter the thickness of one wall. Of a solid piece give "
        "no wall and say so in `shape`.",
};

void JudgeWallTooThick(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (IsSolid(section)) continue;
    const double slack_mm = 1000 * section.taper.diameter_plus_minus_m.value_or(0) + 1e-6;
    for (const Station& station : section.taper.stations) {
      if (!station.outer || !station.wall || 2 * station.wall->mm() <= station.outer->mm() + slack_mm) continue;
      const double wall_mm = station.wall->mm(), outer_mm = station.outer->mm();
      std::string message = absl::StrFormat("two walls of %.2f mm do not fit into %.2f mm", wall_mm, outer_mm);
      if (wall_mm < outer_mm) message += "; is that the inner diameter?";
      findings.push_back(AtRow(view, kWallTooThick, section, station, "wall", std::move(message),
                               {{"wall_mm", wall_mm}, {"outer_mm", outer_mm}}));
    }
  }
}

constexpr Code kInnerNotLess = {
    .name = "sections/inner-not-less",
    .severity = Severity::kError,
    .summary = "The inner diameter is not less than the outer one",
    .why =
        "A tube has a wall. With the two diameters interchanged or equal there is none, and mass and stiffness "
        "cannot be computed.",
    .action = "Measure both diameters at this place again; `outer` is the larger.",
};

void JudgeInnerNotLess(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    for (const Station& station : section.taper.stations) {
      if (!station.outer || !station.inner || station.inner->mm() < station.outer->mm()) continue;
      findings.push_back(AtRow(view, kInnerNotLess, section, station, "inner",
                               absl::StrFormat("an inner diameter of %.2f mm in an outer one of %.2f mm",
                                               station.inner->mm(), station.outer->mm()),
                               {{"inner_mm", station.inner->mm()}, {"outer_mm", station.outer->mm()}}));
    }
  }
}

constexpr Code kBoreNarrow = {
    .name = "sections/bore-narrow",
    .severity = Severity::kWarning,
    .summary = "A section would be all but solid where it is thick",
    .why =
        "A rolled blank has a thin wall where it is thick; a bore of less than a third of it is mostly the wall, "
        "entered as the inner diameter, and the blank then weighs and bends as a solid does.",
    .action = "Look which of the two was measured: `wall` is the thickness of one wall, `inner` the diameter inside.",
};

// A third of the outer diameter, and only from 5 mm on: fine tips are rolled on wires (common practice, no source).
constexpr double kNarrowest = 1 / 3.0;
constexpr double kThick_mm = 5;

bool BoreIsNarrow(const Station& station) {
  if (!station.outer || station.outer->mm() < kThick_mm) return false;
  const double outer_mm = station.outer->mm();
  const double inner_mm = station.inner ? station.inner->mm() : station.wall ? outer_mm - 2 * station.wall->mm() : -1;
  return inner_mm > 0 && inner_mm < kNarrowest * outer_mm;
}

void JudgeBoreNarrow(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (IsSolid(section)) continue;
    for (const Station& station : section.taper.stations) {
      if (!BoreIsNarrow(station)) continue;
      const double outer_mm = station.outer->mm();
      const double given_mm = station.inner ? station.inner->mm() : station.wall->mm();
      findings.push_back(AtRow(
          view, kBoreNarrow, section, station, station.inner ? "inner" : "wall",
          station.inner ? absl::StrFormat("%.2f mm inside %.2f mm of blank; is that the wall?", given_mm, outer_mm)
                        : absl::StrFormat("a wall of %.2f mm in %.2f mm of blank; is that the inner diameter?",
                                          given_mm, outer_mm),
          {{station.inner ? "inner_mm" : "wall_mm", given_mm}, {"outer_mm", outer_mm}}));
    }
  }
}

constexpr Code kWallVaries = {
    .name = "sections/wall-varies",
    .severity = Severity::kWarning,
    .summary = "One wall is less than half or more than twice what the rows beside it say",
    .why =
        "A rolled blank's wall changes slowly. One row that jumps is a misreading, and the mass, the balance "
        "point and the stiffness bend with it.",
    .action = "Measure the wall again at this row, or leave it out: a wall is drawn through the rows that know it.",
};

void JudgeWallVaries(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    struct Row {
      const Station* station;
      double wall_mm;
    };
    std::vector<Row> rows;
    for (const Station& station : section.taper.stations) {
      if (!station.at || IsSolid(section) || BoreIsNarrow(station)) continue;
      const double wall_mm = station.wall                     ? station.wall->mm()
                             : station.inner && station.outer ? (station.outer->mm() - station.inner->mm()) / 2
                                                              : 0;
      if (wall_mm > 0) rows.push_back({&station, wall_mm});
    }
    for (std::size_t i = 1; i + 1 < rows.size(); ++i) {
      const double expected = Between(rows[i - 1].station->at->mm(), rows[i - 1].wall_mm, rows[i + 1].station->at->mm(),
                                      rows[i + 1].wall_mm, rows[i].station->at->mm());
      const double wall = rows[i].wall_mm;
      // twice: common practice, no source
      if (!(expected > 0) || (wall <= 2 * expected && wall >= expected / 2)) continue;
      findings.push_back(
          AtRow(view, kWallVaries, section, *rows[i].station, "",
                absl::StrFormat("a wall of %.2f mm where the rows beside it say %.2f mm", wall, expected),
                {{"wall_mm", wall}, {"expected_mm", expected}}));
    }
  }
}

constexpr Code kSolidWithWall = {
    .name = "sections/solid-with-wall",
    .severity = Severity::kWarning,
    .summary = "A solid section is given a wall or an inner diameter",
    .why = "One of the two is wrong, and a solid weighs and bends quite differently from a tube.",
    .action = "Take the wall out of the rows, or say `shape: \"tube\"`.",
};

void JudgeSolidWithWall(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    if (!IsSolid(section)) continue;
    for (const Station& station : section.taper.stations) {
      if (!station.wall && !station.inner) continue;
      findings.push_back(AtRow(view, kSolidWithWall, section, station, station.wall ? "wall" : "inner",
                               "a wall in a section that is said to be solid"));
      break;  // once for each table
    }
  }
}

constexpr Code kOutOfRound = {
    .name = "sections/out-of-round",
    .severity = Severity::kWarning,
    .summary = "Two readings across the blank differ by more than a round blank's do",
    .why =
        "A flat spot sits badly in a bore and leaves a thick glue line on one side; a misread calliper looks the "
        "same.",
    .action = "Measure both diameters again, with the calliper square to the blank. Ream or build up to the larger.",
};

// More than 3 in a hundred and more than 0.1 mm (common practice, no source).
constexpr double kRoundShare = 0.03;
constexpr double kRoundMm = 0.1;

void JudgeOutOfRound(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    for (const Station& station : section.taper.stations) {
      if (!station.outer || !station.outer_across) continue;
      const double outer = station.outer->mm(), across = station.outer_across->mm();
      const double slack = 1000 * section.taper.diameter_plus_minus_m.value_or(0) * std::sqrt(2.0);
      if (std::abs(outer - across) <= std::max({kRoundMm, slack, kRoundShare * std::max(outer, across)})) continue;
      findings.push_back(AtRow(view, kOutOfRound, section, station, "outer_across",
                               absl::StrFormat("%.2f mm one way and %.2f mm across", outer, across),
                               {{"outer_mm", outer}, {"across_mm", across}}));
    }
  }
}

}  // namespace

std::vector<Rule<View>> WallRules() {
  return {{&kWallTooThick, JudgeWallTooThick}, {&kInnerNotLess, JudgeInnerNotLess},   {&kBoreNarrow, JudgeBoreNarrow},
          {&kWallVaries, JudgeWallVaries},     {&kSolidWithWall, JudgeSolidWithWall}, {&kOutOfRound, JudgeOutOfRound}};
}

}  // namespace withy::sections
