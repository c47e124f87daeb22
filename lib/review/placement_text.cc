#include "withy/review/placement_text.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "cautions.h"
#include "figure_text.h"
#include "text_parts.h"
#include "text_table.h"
#include "withy/document/document.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr double kAsItWasMm = 0.05;  // what would be printed as no change

std::string Degrees(std::optional<double> deg) {
  return FigureText(deg, 1);
}

// "+3.4", "-0.2", "0.0": with its sign.
std::string Signed(double value, int decimals) {
  const std::string text = FormatFixed(value, decimals);
  return text.front() != '-' && text.find_first_not_of("0.") != std::string::npos ? "+" + text : text;
}

std::string VerdictText(const v1::PlacementReport& placement, const TextStyle& style) {
  std::string verdict = placement.state();
  Ink ink = Ink::kCannotTell;
  if (placement.state() == "placed") {
    verdict = absl::StrCat("placed: the largest angle of the line is ",
                           Degrees(WITHY_FIGURE(placement.proposed(), turn_deg)), " deg");
    if (placement.now().has_turn_deg()) {
      absl::StrAppend(&verdict, "; as it is ", Degrees(placement.now().turn_deg()), " deg");
    }
    ink = Ink::kGood;
  } else if (placement.state() == "not possible") {
    verdict = absl::StrCat("not possible within all limits", placement.has_proposed() ? ", this comes nearest: " : ": ",
                           Visible(placement.why()));
    ink = Ink::kError;
  } else {
    absl::StrAppend(&verdict, ": ", Visible(placement.why()));
  }
  std::string text;
  for (const std::string& line : Wrapped(verdict, style.width - 2))
    absl::StrAppend(&text, "  ", Painted(line, ink, style), "\n");
  return text;
}

std::string LoadsTable(const v1::PlacementReport& placement, const TextStyle& style) {
  using Align = TextTable::Align;
  TextTable table({{"load", Align::kLeft},
                   {"pull N"},
                   {"as a weight g"},
                   {"line deg"},
                   {"counts"},
                   {"off the blank", Align::kLeft},
                   {"from", Align::kLeft}});
  for (const v1::PlacementLoad& load : placement.loads()) {
    table.AddRow({load.id(), FormatFixed(load.tension_n(), 2),
                  FormatFixed(load.tension_n() / kStandardGravity * 1000, 0), FormatFixed(load.line_angle_deg(), 0),
                  load.weight() == 1 ? "once" : FormatShortest(load.weight()) + " times",
                  load.has_clearance_mm() ? "asked for" : "-", load.at().empty() ? "added" : "the design"});
  }
  return table.ToText(style);
}

std::string ChangeText(const v1::PlacedFor& guide, LengthUnits units) {
  if (!guide.has_from_tip_mm() || !guide.has_from_tip_was_mm()) return kNotKnown;
  const double change_mm = guide.from_tip_mm() - guide.from_tip_was_mm();
  if (std::abs(change_mm) < kAsItWasMm) return "0";
  const std::string text = AlongText(change_mm, units);
  return change_mm > 0 ? "+" + text : text;
}

std::string GuidesTable(const v1::PlacementReport& placement, const ShowOptions& options) {
  using Align = TextTable::Align;
  TextTable table({{"guide", Align::kLeft},
                   {"model", Align::kLeft},
                   {"now"},
                   {"proposed"},
                   {"change"},
                   {"turn deg"},
                   {"under", Align::kLeft},
                   {"3 mm off %"},
                   {"held by", Align::kLeft}});
  for (const v1::PlacedFor& guide : placement.guides()) {
    table.AddRow({guide.id(), guide.model(), AlongText(WITHY_FIGURE(guide, from_tip_was_mm), options.units),
                  AlongText(WITHY_FIGURE(guide, from_tip_mm), options.units), ChangeText(guide, options.units),
                  Degrees(WITHY_FIGURE(guide, turn_deg)), guide.under().empty() ? kNotKnown : guide.under(),
                  guide.has_off_by_3_mm_percent() ? Signed(guide.off_by_3_mm_percent(), 1) : kNotKnown,
                  guide.bound_by().empty() ? "-" : guide.bound_by()});
  }
  return table.ToText(options.style);
}

std::string ModelsTable(const v1::PlacementReport& placement, const TextStyle& style) {
  TextTable table(
      {{"guide", TextTable::Align::kLeft}, {"model", TextTable::Align::kLeft}, {"was", TextTable::Align::kLeft}});
  for (const v1::PlacedFor& guide : placement.guides()) {
    if (!guide.model_was().empty()) table.AddRow({guide.id(), guide.model(), guide.model_was()});
  }
  return table.ToText(style);
}

std::string NameOf(const v1::GuideLayout& layout, const v1::PlacementReport& placement) {
  if (layout.name() == "free") return "proposed, gaps may grow";
  if (layout.name() == "gaps never grow") return "proposed, gaps never grow";
  const int guides = placement.guides_size();
  if (layout.name() == "one fewer") return Counted(guides - 1, "guide");
  if (layout.name() == "one more") return Counted(guides + 1, "guide");
  return layout.name();
}

std::string LayoutsTable(const v1::PlacementReport& placement, const TextStyle& style) {
  using Align = TextTable::Align;
  TextTable table({{"layout", Align::kLeft},
                   {"deg"},
                   {"against proposed %"},
                   {"at", Align::kLeft},
                   {"under", Align::kLeft},
                   {"limits", Align::kLeft}});
  const auto add = [&](const v1::GuideLayout& layout) {
    if (layout.name().empty()) return;
    const double best = placement.proposed().turn_deg();
    const bool told = layout.has_turn_deg();
    table.AddRow({NameOf(layout, placement), Degrees(WITHY_FIGURE(layout, turn_deg)),
                  told && best > 0 ? Signed((layout.turn_deg() / best - 1) * 100, 1) : kNotKnown,
                  told ? layout.at_guide() : kNotKnown, told ? layout.under() : kNotKnown,
                  layout.keeps_limits() ? "kept"
                  : told                ? "not kept"
                                        : "cannot tell"});
  };
  add(placement.now());
  add(placement.proposed());
  for (const v1::GuideLayout& layout : placement.classics()) add(layout);
  add(placement.other_rule());
  add(placement.one_fewer());
  add(placement.one_more());
  return table.ToText(style);
}

// What is counted, and what a layout that somebody may want does not keep.
std::string LayoutsNote(const v1::PlacementReport& placement, const TextStyle& style) {
  std::string text = BulletText(
      "The turn of the line at a guide, or at the tip-top twice its angle to the blank's tip; by the times that its "
      "load counts.",
      style);
  for (const v1::GuideLayout* layout : {&placement.now(), &placement.proposed()}) {
    if (!layout->breaks().empty())
      text += BulletText(absl::StrCat(layout->name(), ": ", Visible(layout->breaks())), style);
  }
  return text;
}

std::string NotesText(const v1::PlacementReport& placement, const TextStyle& style) {
  std::string text;
  for (const std::string& note : placement.notes()) text += BulletText(Visible(note), style);
  return text;
}

std::string MindText(const TextStyle& style) {
  constexpr std::string_view kLastWord =
      "The bench's own static test and test casts stay the last word: tape the guides on at these places, load the rod "
      "through the "
      "line in stages, look, and record what you saw with --lifted. How the line runs off the spool in a cast is not "
      "in the model.";
  std::string text;
  for (const std::string_view caution : {kLastWord, caution::kLoadedRod, caution::kHighAngle})
    text += BulletText(caution, style);
  return text;
}

std::string GuidesHeading(const v1::PlacementReport& placement, LengthUnits units) {
  std::string text = absl::StrCat("Guides, ", UnitName(units), " from the tip-top's ring");
  if (placement.has_grid_mm()) {
    const double per_inch = 25.4 / placement.grid_mm();
    const bool inch = std::abs(per_inch - std::round(per_inch)) < 1e-9;
    absl::StrAppend(&text, inch ? "; to 1/" + FormatFixed(per_inch, 0) + " in"
                                : "; to " + FormatShortest(placement.grid_mm()) + " mm");
  }
  return text + (placement.gaps_never_grow() ? "; gaps never grow towards the tip" : "; gaps may grow towards the tip");
}

}  // namespace

std::string PlacementText(std::string_view file, const v1::Design& design, const v1::PlacementReport& placement,
                          const ShowOptions& options) {
  const TextStyle& style = options.style;
  v1::Report report;
  report.set_design_digest(DesignDigest(design));
  std::string text = TitleText(file, design, report, style);
  text += SectionText("Verdict", VerdictText(placement, style), style);
  text += SectionText("The loads; line from the butt's forward axis, 90 = square to it", LoadsTable(placement, style),
                      style);
  text += SectionText(GuidesHeading(placement, options.units), GuidesTable(placement, options), style);
  text += SectionText("Other models, from the stock", ModelsTable(placement, style), style);
  const std::string layouts = LayoutsTable(placement, style);
  if (!layouts.empty()) {
    text += SectionText("The largest angle of the line, by layout", layouts + LayoutsNote(placement, style), style);
  }
  text += SectionText("Taken for granted", NotesText(placement, style), style);
  return placement.guides_size() > 0 ? text + SectionText("Mind", MindText(style), style) : text;
}

}  // namespace withy
