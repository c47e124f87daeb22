#include "withy/review/show_text.h"

#include <cmath>
#include <optional>

#include "absl/strings/str_cat.h"
#include "bench_cuts.h"
#include "bending_text.h"
#include "figure_text.h"
#include "line_load_text.h"
#include "show_tables.h"
#include "text_parts.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr int kSixteenths = 16;

// Both units, whichever is asked for: the order is in feet, the bench in mm.
std::string OverallLength(const v1::FitReport& fit) {
  std::optional<double> plus_minus = WITHY_FIGURE(fit, overall_length_plus_minus_mm);
  return absl::StrCat(AlongText(fit.overall_length_mm(), plus_minus, LengthUnits::kMm), ", ",
                      FormatFeetInches(Length::Mm(fit.overall_length_mm()), kSixteenths));
}

std::string Pieces(const v1::SectionsReport& sections, LengthUnits units) {
  std::string text = Counted(static_cast<int>(sections.pieces()), "piece");
  if (sections.pieces() == 1 || !sections.has_packed_length_mm()) return text;
  return absl::StrCat(text, ", the longest ", AlongText(sections.packed_length_mm(), std::nullopt, units));
}

std::string TubeText(double clearance_mm) {
  return absl::StrCat(FormatFixed(std::abs(clearance_mm), 2), " mm ", clearance_mm < 0 ? "smaller" : "wider",
                      " than the blank at its mouth");
}

// One place on the rod; empty where it is not known.
std::string FromButt(std::string_view label, std::optional<double> mm, LengthUnits units) {
  return mm ? LineText(label, AlongText(mm, std::nullopt, units) + " from the butt end") : "";
}

// "cannot tell: dry fit the handle on the uncut blank"
std::string Verdict(const v1::CutPlan& plan) {
  return plan.measure().empty() ? plan.verdict() : absl::StrCat(plan.verdict(), ": ", plan.measure());
}

std::string Lengths(const v1::Report& report, const ShowOptions& options) {
  const v1::FitReport& fit = report.fit();
  const v1::SectionsReport& sections = report.sections();
  std::string lines;
  if (fit.has_overall_length_mm()) lines += LineText("overall length", OverallLength(fit));
  if (fit.has_short_of_target_mm())
    lines += LineText("against the order", AgainstOrder(fit.short_of_target_mm(), options.units));
  if (!fit.cut_plan().verdict().empty()) lines += LineText("verdict", Verdict(fit.cut_plan()), options.style);
  if (fit.cut_plan().now().has_shorter_per_mm()) {
    lines += LineText("1 mm off the butt",
                      absl::StrCat("takes ", FormatFixed(fit.cut_plan().now().shorter_per_mm(), 2), " mm off the rod"));
  }
  if (sections.has_blank_length_mm()) {
    lines += LineText("blank after cuts", AlongText(sections.blank_length_mm(),
                                                    WITHY_FIGURE(sections, blank_length_plus_minus_mm), options.units));
  }
  if (sections.sections_size() > 0) {
    lines += FromButt("blank's butt face", WITHY_FIGURE(fit, blank_butt_mm), options.units);
  }
  lines += FromButt("tip-top's ring", WITHY_FIGURE(fit, tip_ring_mm), options.units);
  if (sections.has_pieces()) lines += LineText("taken down", Pieces(sections, options.units));
  if (sections.has_butt_diameter_mm())
    lines += LineText("butt diameter", FormatFixed(sections.butt_diameter_mm(), 2) + " mm");
  if (sections.has_tip_diameter_mm()) {
    Length tip = Length::Mm(sections.tip_diameter_mm());
    lines += LineText("tip diameter", absl::StrCat(FormatMm(tip, 2), ", ", FormatFixed(tip.in64(), 2), "/64 in"));
  }
  if (fit.has_tip_tube_clearance_mm()) lines += LineText("tip-top tube", TubeText(fit.tip_tube_clearance_mm()));
  return lines.empty() ? "" : HeadingText("Lengths", options.style) + lines;
}

// "15 of 7.09 g, potted with 23.9 ml; planned are 3"
std::string Counterweights(const v1::CounterweightPlan& plan) {
  std::string text = absl::StrCat(plan.count());
  if (plan.has_unit_mass_g()) absl::StrAppend(&text, " of ", FormatFixed(plan.unit_mass_g(), 2), " g");
  if (plan.count() > 0 && plan.has_potting_ml()) {
    absl::StrAppend(&text, ", potted with ", FormatFixed(plan.potting_ml(), 1), " ml");
  }
  if (plan.has_count_planned() && plan.count_planned() != plan.count()) {
    absl::StrAppend(&text, "; planned are ", plan.count_planned());
  }
  return text;
}

// Of all batches of an adhesive; unset where one cannot be told.
std::optional<double> MixAfterCuts(const v1::BondingReport& bonding, const std::string& adhesive) {
  double ml = 0;
  for (const v1::MixedBatch& batch : bonding.batches()) {
    if (batch.adhesive() != adhesive) continue;
    if (!batch.has_mix_after_cuts_ml()) return std::nullopt;
    ml += batch.mix_after_cuts_ml();
  }
  return ml;
}

std::string Adhesive(const v1::Report& report) {
  const bool cuts = CutsAreToCome(report.fit().cut_plan());
  std::string lines;
  for (const v1::AdhesiveTotal& total : report.bonding().totals()) {
    if (!total.has_mix_ml()) continue;
    std::string text = FormatFixed(total.mix_ml(), 1) + " ml to mix";
    if (total.has_mix_g()) absl::StrAppend(&text, ", ", FormatFixed(total.mix_g(), 1), " g");
    const auto after = cuts ? MixAfterCuts(report.bonding(), total.adhesive()) : std::nullopt;
    if (cuts) text += ", as it is cut now; after the cuts to come ";
    if (cuts) text += after ? absl::StrCat("about ", FormatFixed(*after, 1), " ml") : "another amount";
    lines += LineText(Visible(total.adhesive()), text);
  }
  return lines;
}

std::string Balance(const v1::BalanceReport& balance, const ShowOptions& options) {
  std::string lines;
  auto along = [&](double mm, std::optional<double> plus_minus) {
    return AlongText(mm, plus_minus, options.units) + " from the butt end";
  };
  if (balance.has_mass_g()) {
    lines += LineText("rod", UncertainText(balance.mass_g(), WITHY_FIGURE(balance, mass_plus_minus_g), 1) + " g");
  }
  if (balance.has_balance_from_butt_mm()) {
    lines += LineText("balances at",
                      along(balance.balance_from_butt_mm(), WITHY_FIGURE(balance, balance_from_butt_plus_minus_mm)));
  }
  if (balance.has_mass_with_reel_g())
    lines += LineText("with the reel", FormatFixed(balance.mass_with_reel_g(), 1) + " g");
  if (balance.has_balance_with_reel_mm()) {
    lines += LineText("balances at",
                      along(balance.balance_with_reel_mm(), WITHY_FIGURE(balance, balance_with_reel_plus_minus_mm)));
  }
  if (balance.has_moment_about_hold_n_m()) {
    double moment = balance.moment_about_hold_n_m();
    lines += LineText("about the hold", absl::StrCat(FormatFixed(std::abs(moment), 3), " N m, ",
                                                     moment >= 0 ? "tip-heavy" : "butt-heavy"));
  }
  if (balance.counterweights().has_count()) {
    lines += LineText("counterweights", Counterweights(balance.counterweights()), options.style);
  }
  if (balance.has_remainder_g())
    lines += LineText("weighed beyond parts", FormatFixed(balance.remainder_g(), 1) + " g");
  return lines;
}

std::string Assumed(const v1::Report& report, const TextStyle& style) {
  std::string items;
  for (const v1::Assumption& assumption : report.assumptions()) {
    items += ItemText(assumption.at().empty() ? "the design" : assumption.at(),
                      absl::StrCat(assumption.used(), ": ", assumption.why()), style);
  }
  return items.empty() ? "" : HeadingText("Assumed", style) + items;
}

std::string NotKnown(const v1::Report& report, const TextStyle& style) {
  std::string items;
  for (const v1::Unknown& unknown : report.unknown()) items += ItemText(unknown.figure(), unknown.measure(), style);
  return items.empty() ? "" : HeadingText("Cannot be told yet, and what would settle it", style) + items;
}

}  // namespace

LengthUnits UnitsOf(const v1::Design& design) {
  return design.identity().units() == v1::UnitSystem::INCH ? LengthUnits::kInch : LengthUnits::kMm;
}

std::string ShowText(std::string_view file, const v1::Design& design, const v1::Report& report,
                     const ShowOptions& options) {
  const TextStyle& style = options.style;
  std::string text = TitleText(file, design, report, style) + Lengths(report, options);
  text += SectionText("Sections, from the butt end of each as supplied", SectionsTable(report, options), style);
  text += SectionText("Handle, from the butt end of the finished rod", HandleTable(design, report, options), style);
  text +=
      SectionText("Guides, from the tip-top's ring centre to the ring's centre", GuidesTable(report, options), style);
  text += SectionText("Wraps, from the butt end of the finished rod", WrapsTable(report, options), style);
  text += SectionText("Adhesive", Adhesive(report), style);
  std::string balance = Balance(report.balance(), options);
  std::string masses = MassTable(report, options);
  if (!balance.empty() && !masses.empty()) balance += "\n";
  text += SectionText("Mass and balance, from the butt end of the finished rod", balance + masses, style);
  text += BendingText(report, options) + LineLoadText(report, options);
  return text + Assumed(report, style) + NotKnown(report, style);
}

}  // namespace withy
