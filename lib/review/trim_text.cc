#include "withy/review/trim_text.h"

#include <cmath>

#include "absl/strings/str_cat.h"
#include "bench_cuts.h"
#include "bench_text.h"
#include "cautions.h"
#include "figure_text.h"
#include "text_parts.h"
#include "trim_tables.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr double kAnotherRod = 2;  // times as stiff at the tip: more than a step of power (common practice, no source)

// More is to come off by the design than is off by the log: what is planned and what there is now are two.
bool CutIsPlanned(const v1::CutPlan& plan) {
  constexpr double kAsPlanned_mm = 0.05;  // cuts that differ by less are one cut
  return plan.cut_planned_mm() - plan.cut_done_mm() > kAsPlanned_mm;
}

Ink InkOf(std::string_view verdict) {
  if (verdict == "meets") return Ink::kGood;
  return verdict == "misses" ? Ink::kError : Ink::kCannotTell;
}

std::string Ordered(const v1::Design& design, LengthUnits units) {
  const std::optional<double> wanted = MmOf(design.intent().overall_length());
  return wanted ? BenchText(*wanted, PlusMinusMmOf(design.intent().overall_length()), units) : "no length is ordered";
}

std::string LengthLines(const v1::Design& design, const v1::FitReport& fit, const ShowOptions& options) {
  const v1::CutPlan& plan = fit.cut_plan();
  std::string lines = LineText("ordered", Ordered(design, options.units));
  const std::optional<double> now = OverallAt(plan, plan.cut_done_mm());
  if (now && CutIsPlanned(plan)) {
    lines += LineText("as it is cut now", BenchText(now, options.units));
  }
  if (fit.has_overall_length_mm()) {
    lines += LineText("as planned", BenchText(fit.overall_length_mm(), WITHY_FIGURE(fit, overall_length_plus_minus_mm),
                                              options.units));
  }
  if (fit.has_short_of_target_mm()) {
    lines += LineText("against the order", AgainstOrder(fit.short_of_target_mm(), options.units));
  }
  if (!plan.verdict().empty()) {
    const std::string painted = Painted(plan.verdict(), InkOf(plan.verdict()), options.style);
    const std::string line = LineText("verdict", plan.verdict());
    lines += line.substr(0, line.size() - plan.verdict().size() - 1) + painted + "\n";
  }
  if (!plan.measure().empty()) lines += LineText("to settle it", plan.measure(), options.style);
  return lines;
}

std::string RestFrom(std::string_view word) {
  if (word == "given") return "given in the design";
  if (word == "dry fit") return "read in the latest dry fit";
  if (word == "contact") return "worked out: bore against taper";
  if (word == "dry fits") return "drawn on from dry fits";
  if (word == "cap") return "it runs through to the butt cap";
  return "not known yet";
}

std::string ContactText(const v1::Contact& contact, LengthUnits units) {
  const std::string kind = contact.kind() == "step"    ? "butt face on a shoulder"
                           : contact.kind() == "stop"  ? "butt face on the stop"
                           : contact.kind() == "arbor" ? "an arbor binds"
                                                       : "blank in the narrowing bore";
  std::string text = kind;
  if (contact.has_from_mm() && contact.has_to_mm()) {
    absl::StrAppend(&text, ", ", BenchText(contact.from_mm(), units), " to ", BenchText(contact.to_mm(), units),
                    " from the butt end");
  } else if (contact.has_from_mm()) {
    absl::StrAppend(&text, ", ", BenchText(contact.from_mm(), units), " from the butt end");
  }
  if (contact.has_bore_mm()) absl::StrAppend(&text, ", bore ", FormatFixed(contact.bore_mm(), 2), " mm");
  return text;
}

// Of one state; `butt` names it.
std::string RestingLines(const v1::Resting& resting, std::string_view butt, const ShowOptions& options) {
  const LengthUnits units = options.units;
  std::string lines;
  if (resting.has_butt_mm()) {
    lines += LineText(butt, BenchText(resting.butt_mm(), units) + " from the butt end", options.style);
  }
  for (const v1::Contact& contact : resting.contacts()) {
    const bool first = &contact == &resting.contacts(0);
    lines += LineText(first ? "  stopped by" : "  and by", ContactText(contact, units), options.style);
  }
  if (resting.has_depth_mm()) {
    lines += LineText("  depth in handle", BenchText(resting.depth_mm(), units) + " from its mouth");
  }
  if (resting.has_shorter_per_mm()) {
    lines += LineText("  1 mm more off",
                      absl::StrCat("takes ", FormatFixed(resting.shorter_per_mm(), 2), " mm off the rod"));
  }
  return lines;
}

// ": the tip can point 17 mm off the axis"; empty where that is not known.
std::string OffAxis(std::optional<double> mm) {
  return mm ? absl::StrCat(": the tip can point ", FormatFixed(*mm, 0), " mm off the axis") : "";
}

std::string RestLines(const v1::FitReport& fit, const ShowOptions& options) {
  const v1::CutPlan& plan = fit.cut_plan();
  std::string lines;
  if (!plan.host().empty()) lines += LineText("rests in", Visible(plan.host()));
  lines += LineText("known from", RestFrom(fit.rest_from()));
  if (CutIsPlanned(plan)) {
    lines += RestingLines(plan.now(), "butt face now", options);
    lines += RestingLines(plan.planned(), "butt face as planned", options);
  } else if (plan.has_planned()) {
    lines += RestingLines(plan.planned(), "butt face", options);
  } else if (fit.has_blank_butt_mm()) {
    lines += LineText("butt face", BenchText(fit.blank_butt_mm(), options.units) + " from the butt end");
  }
  if (plan.jump_near()) {
    lines +=
        LineText("",
                 "A jump of the length is near: a little more off, or a diameter read a little wrong, and it falls at "
                 "once.",
                 options.style);
  }
  if (std::abs(plan.tighter_than_read_mm()) >= 0.0005) {
    const double tighter = plan.tighter_than_read_mm();
    lines += LineText("dry fits say", absl::StrCat("blank and bore are ", FormatFixed(std::abs(tighter), 3), " mm ",
                                                   tighter < 0 ? "looser" : "tighter", " than read"));
  }
  if (fit.has_mouth_play_mm()) {
    lines += LineText("play at the mouth", FormatFixed(fit.mouth_play_mm(), 2) + " mm without arbors" +
                                               OffAxis(WITHY_FIGURE(fit, tip_off_axis_mm)));
  }
  if (plan.bore_from() == "dry fits" && !fit.has_mouth_play_mm()) {
    lines += LineText("play and arbors", "cannot be told: measure the bore at its mouth, or with plugs from there inwards",
                      options.style);
  }
  if (fit.has_tip_off_axis_with_arbors_mm()) {
    lines += LineText("  with its arbors", OffAxis(fit.tip_off_axis_with_arbors_mm()).substr(2));
  }
  return lines;
}

// Take, leave, depth mark, dry fit, what to type then. A blank that runs through needs no dry fit.
std::string CutText(std::string_view file, int number, const v1::StagedCut& cut, bool dry_fit,
                    const ShowOptions& options) {
  const LengthUnits units = options.units;
  const TextStyle& style = options.style;
  std::string text =
      absl::StrCat("  ", number, ". ", Painted("take " + BenchText(cut.take_mm(), units), Ink::kStrong, style),
                   cut.has_leave_mm() ? ", leave " + BenchText(cut.leave_mm(), units) + " of blank" : "", "\n");
  const auto line = [&](const std::string& what) {
    for (const std::string& part : Wrapped(what, style.width - 5)) absl::StrAppend(&text, "     ", part, "\n");
  };
  if (dry_fit && cut.has_depth_mark_mm()) {
    line("tape the depth mark at " + BenchText(cut.depth_mark_mm(), units) + " from the new butt face");
  }
  if (dry_fit && cut.has_expect_from_mm() && cut.has_expect_to_mm()) {
    line("dry fit: expect " + BenchRange(cut.expect_from_mm(), cut.expect_to_mm(), units));
  } else if (dry_fit && cut.has_expect_mm()) {
    line("dry fit: expect " + BenchText(cut.expect_mm(), units));
  }
  if (cut.has_overall_mm()) line("the rod is then " + BenchText(cut.overall_mm(), units));
  if (dry_fit && cut.decides()) line("this dry fit decides what comes after it");
  // To be copied: never broken.
  absl::StrAppend(&text, "     withy trim ", Visible(file), " --cut '", TypedLength(cut.take_mm(), units), "'",
                  dry_fit ? " --overall 'what you read'" : "", "\n");
  return text;
}

// What is said where no cut is to come.
std::string NothingToCut(const v1::CutPlan& plan, const v1::Design& design, const ShowOptions& options) {
  const std::string why = NoCutBecause(plan, design);
  if (why.empty()) return "";
  std::string text;
  for (const std::string& line : Wrapped("none: " + why, options.style.width - 2)) absl::StrAppend(&text, "  ", line, "\n");
  return text;
}

std::string Cuts(std::string_view file, const v1::CutPlan& plan, const v1::Design& design,
                 const std::vector<BenchCut>& cuts, const ShowOptions& options) {
  if (cuts.empty()) return NothingToCut(plan, design, options);
  const bool dry_fit = !plan.host().empty();
  std::string text;
  if (plan.verdict() == "meets") {
    text += BulletText("The rod meets the order as planned: this would bring it to the figure itself.", options.style);
  }
  if (dry_fit) {
    text += BulletText(
        "Lengths of a dry fit run from the handle's own butt end (no cap) to the blank's tip end (no tip-top).",
        options.style);
  }
  if (!design.has_tip_top()) {
    text += BulletText("No tip-top is described: the lengths of the rod run to the blank's tip, and it comes out longer by "
                       "what the tip-top adds.", options.style);
  }
  text += BulletText("Cuts are rounded down and include the kerf: the mark is the new edge.", options.style);
  const std::size_t shown = ShownCuts(cuts.size());
  for (std::size_t i = 0; i < shown; ++i) text += CutText(file, static_cast<int>(i) + 1, cuts[i].cut, dry_fit, options);
  if (shown < cuts.size()) text += absl::StrCat("  and ", MoreCuts(cuts.size() - shown), "\n");
  if (plan.has_cut_for_target_mm()) {
    text += LineText(
        "in all",
        absl::StrCat(BenchText(cuts.back().cut.total_mm(), options.units), " off the butt as supplied, of ",
                     UncertainText(plan.cut_for_target_mm(), WITHY_FIGURE(plan, cut_for_target_plus_minus_mm), 1),
                     " mm that would bring it to the figure"),
        options.style);
  }
  return text;
}

// " (log[g1])": the entry that stands in the way, of all remedies the same.
std::string ClosedBy(const v1::CutPlan& plan) {
  for (const v1::Remedy& remedy : plan.remedies()) {
    if (!remedy.blocked_by().empty()) return " (" + EntryOf(remedy.blocked_by()) + ")";
  }
  return "";
}

std::string CannotBeHad(const v1::CutPlan& plan, const ShowOptions& options) {
  const bool had = plan.outcome().empty() || plan.outcome() == "reached";
  std::string text;
  if (!had) {
    const std::string why = plan.outcome() == "jump"                 ? "no cut gives it: the length jumps past"
                            : plan.outcome() == "too long a target"  ? "it is longer than what is left gives"
                            : plan.outcome() == "too short a target" ? "more would have to come off than can"
                            : plan.outcome() == "does not enter"     ? "the butt does not go into its handle"
                                                                     : "the blank is glued in";
    text += LineText("why", why + ClosedBy(plan), options.style);
  }
  if (plan.has_nearest_above_mm())
    text += LineText("nearest longer", BenchText(plan.nearest_above_mm(), options.units));
  if (plan.has_nearest_below_mm())
    text += LineText("nearest shorter", BenchText(plan.nearest_below_mm(), options.units));
  for (const v1::Remedy& remedy : plan.remedies()) text += BulletText(remedy.text(), options.style);
  return text;
}

std::string TipLines(const v1::TipLever& tip, const ShowOptions& options) {
  std::string text;
  if (tip.has_cut_mm())
    text += LineText("off the tip", BenchText(tip.cut_mm(), options.units) + " would give the length");
  if (tip.has_tip_diameter_mm()) {
    text += LineText(
        "tip then",
        absl::StrCat(
            FormatFixed(tip.tip_diameter_mm(), 2), " mm",
            tip.has_tube_in64() ? absl::StrCat(", tip-top tube ", FormatShortest(tip.tube_in64()), "/64 in") : ""));
  }
  if (tip.has_stiffer())
    text += LineText("stiffer there",
                     FormatFixed(tip.stiffer(), 2) + (tip.stiffer() < kAnotherRod ? " times" : " times: another rod"));
  return text;
}

std::string Cautions(const v1::FitReport& fit, bool cuts, const ShowOptions& options) {
  std::string text;
  if (cuts && fit.cut_plan().cut_done_mm() == 0) text += BulletText(caution::kWarranty, options.style);
  if (cuts) text += BulletText(caution::kSaw, options.style);
  if (cuts || fit.reaming_size() > 0) text += BulletText(caution::kDust, options.style);
  return text;
}

}  // namespace

std::string TrimText(std::string_view file, const v1::Design& design, const v1::Report& report,
                     const ShowOptions& options) {
  const v1::FitReport& fit = report.fit();
  const v1::CutPlan& plan = fit.cut_plan();
  const std::vector<BenchCut> cuts = BenchCuts(plan, options.units, CutLimitsOf(design));
  const TextStyle& style = options.style;
  std::string text = TitleText(file, design, report, style);
  text += SectionText("Length", LengthLines(design, fit, options), style);
  if (report.sections().sections_size() > 0) {
    text += SectionText("Where the blank comes to rest", RestLines(fit, options), style);
  }
  text += SectionText("Closed: no plan alters it", ClosedTable(report, options), style);
  text += SectionText("Dry fits against what bore and taper as read let expect", DryFitTable(fit, options), style);
  text += SectionText("Cuts to come", Cuts(file, plan, design, cuts, options), style);
  if (plan.verdict() != "meets") {
    text += SectionText("The length ordered cannot be had like this", CannotBeHad(plan, options), style);
    text += SectionText("The other lever: the tip", TipLines(plan.tip(), options), style);
  }
  const std::string when = CutsAreToCome(plan) ? ", before the cuts to come" : "";
  text += SectionText("Arbors" + when + "; mm but for the place", ArborTable(fit, options), style);
  text += SectionText("To ream" + when, ReamingTables(fit, options), style);
  text += SectionText("Winding checks" + when + "; mm", WindingCheckTable(fit, options), style);
  return text + SectionText("Mind", Cautions(fit, !cuts.empty(), options), style);
}

}  // namespace withy
