#include <algorithm>
#include <functional>

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

// Rows that have a place, those that stand in a longest run of never falling places marked.
struct Ordered {
  std::vector<const Station*> rows;
  std::vector<bool> in_order;
};

Ordered OrderedRows(const Section& section) {
  Ordered all;
  for (const Station& station : section.taper.stations) {
    if (station.at) all.rows.push_back(&station);
  }
  // From the tip, so that of two that contradict each other the one nearer to the butt is believed. tails[k]: the row
  // that ends the run of k + 1 rows whose last place is greatest.
  std::vector<int> tails, next(all.rows.size(), -1);
  for (int i = static_cast<int>(all.rows.size()) - 1; i >= 0; --i) {
    const auto longer = std::upper_bound(tails.begin(), tails.end(), *all.rows[i]->at,
                                         [&](Length at, int row) { return *all.rows[row]->at < at; });
    if (longer != tails.begin()) next[i] = *(longer - 1);
    longer == tails.end() ? tails.push_back(i) : void(*longer = i);
  }
  all.in_order.resize(all.rows.size());
  for (int i = tails.empty() ? -1 : tails.back(); i >= 0; i = next[i]) all.in_order[i] = true;
  return all;
}

// A table whose places fall from row to row, once: which of two ways it was taken shows in its diameters.
bool JudgeTurnedTable(const Section& section, const Ordered& all, std::vector<Finding>& findings) {
  const auto falls = [](const Station* a, const Station* b) { return *b->at < *a->at; };
  const std::vector<const Station*>& rows = all.rows;
  if (rows.size() < 3 || std::adjacent_find(rows.begin(), rows.end(), std::not_fn(falls)) != rows.end()) return false;
  const std::optional<Length> first = rows.front()->outer, last = rows.back()->outer;
  const bool tip_first = first && last && *first < *last;
  findings.push_back(MakeFinding(
      kTaperOrder, section.taper.at,
      absl::StrFormat("the places fall from %.1f to %.1f mm: %s", rows.front()->at->mm(), rows.back()->at->mm(),
                      tip_first ? "were the rows listed tip first?" : "were the places taken from the tip?"),
      {{"at_mm", rows.back()->at->mm()}, {"before_mm", rows.front()->at->mm()}},
      tip_first ? "List the same rows the other way round, the butt first."
                : "Replace each place by the section's length less that place."));
  return true;
}

// Blames the rows that are out of place, not those that follow them.
void JudgeTaperOrder(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    const Ordered all = OrderedRows(section);
    if (JudgeTurnedTable(section, all, findings)) continue;
    const Station* below = nullptr;  // the last row in order
    for (std::size_t i = 0; i < all.rows.size(); ++i) {
      if (all.in_order[i]) {
        below = all.rows[i];
        continue;
      }
      const bool after = below != nullptr && *all.rows[i]->at < *below->at;
      const auto above = std::find(all.in_order.begin() + i, all.in_order.end(), true) - all.in_order.begin();
      const Length row = *all.rows[i]->at, other = *(after ? below : all.rows[above])->at;
      findings.push_back(AtRow(view, kTaperOrder, section, *all.rows[i], "at",
                               absl::StrFormat("the row at %.1f mm comes %s one at %.1f mm", row.mm(),
                                               after ? "after" : "before", other.mm()),
                               {{"at_mm", row.mm()}, {"other_mm", other.mm()}}));
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

}  // namespace

std::vector<Rule<View>> TaperRules() {
  return {{&kNoTaper, JudgeNoTaper},
          {&kTaperOrder, JudgeTaperOrder},
          {&kTaperOutside, JudgeTaperOutside},
          {&kTaperShort, JudgeTaperShort},
          {&kTaperFallsTowardButt, JudgeTaperFallsTowardButt}};
}

}  // namespace withy::sections
