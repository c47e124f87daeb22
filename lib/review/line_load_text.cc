#include "line_load_text.h"

#include <cmath>
#include <optional>

#include "absl/strings/str_cat.h"
#include "bent_words.h"
#include "cautions.h"
#include "figure_text.h"
#include "text_parts.h"
#include "text_table.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

using Align = TextTable::Align;
constexpr int kEighths = 8;
constexpr double kNoStrain = 5e-4;  // thousandths; what would be printed as 0.00
constexpr double kNoLoss = 0.05;    // percent; what would be printed as 0.0

double TipTopMm(const v1::StrungRod& strung) {
  return strung.at_mm(strung.at_mm_size() - 1);
}

// "197 mm from the tip-top"
std::string FromTipTop(const v1::StrungRod& strung, double at_mm, LengthUnits units) {
  return AlongText(TipTopMm(strung) - at_mm, std::nullopt, units) + " from the tip-top";
}

std::string LoadWords(const v1::StrungRod& strung) {
  return absl::StrCat(PullText(strung.tension_n(), strung.line_angle_deg(), ""), "; butt ",
                      DirectionText(strung.butt_angle_deg()));
}

std::string HardestWords(const v1::StrungRod& strung, LengthUnits units) {
  if (strung.peak_strain_millistrain() < kNoStrain) return "nowhere: it is straight";
  return absl::StrCat(FromTipTop(strung, strung.peak_at_mm(), units), ": strain ",
                      FormatFixed(strung.peak_strain_millistrain(), 2), " thousandths");
}

const v1::LineSpan* ClosestSpan(const v1::StrungRod& strung) {
  const v1::LineSpan* closest = nullptr;
  for (const v1::LineSpan& span : strung.spans()) {
    if (span.has_clearance_mm() && (!closest || span.clearance_mm() < closest->clearance_mm())) closest = &span;
  }
  return closest;
}

// "1.4 mm, 310.0 mm from the tip-top, between g7 and g8"
std::string ClearanceWords(const v1::StrungRod& strung, const v1::LineSpan& span, LengthUnits units) {
  const std::string between = absl::StrCat(
      "between ", span.from_ring().empty() ? "the reel" : Visible(span.from_ring()), " and ", Visible(span.to_ring()));
  const std::string where = FromTipTop(strung, span.clearance_at_mm(), units);
  if (span.clearance_mm() >= 0) return absl::StrCat(FormatFixed(span.clearance_mm(), 2), " mm, ", where, ", ", between);
  return absl::StrCat("none: kept straight it would cut ", FormatFixed(-span.clearance_mm(), 2), " mm into the blank, ",
                      where, ", ", between);
}

// "12.3 % of the pull: 4.41 N beyond the tip-top, 3.87 N at the reel"
std::string FrictionWords(const v1::StrungRod& strung) {
  if (strung.friction_loss_percent() < kNoLoss) return "none is written: none counted";
  return absl::StrCat(FormatFixed(strung.friction_loss_percent(), 1), " % of the pull; ",
                      FormatFixed(strung.tension_at_reel_n(), 2), " N are left at the reel");
}

// "g5, 12.3 ± 0.8 deg"
std::string MostWords(const v1::StrungRod& strung) {
  return absl::StrCat(Visible(strung.most_turned()), ", ",
                      UncertainText(strung.most_turn_deg(), WITHY_FIGURE(strung, most_turn_plus_minus_deg), 1), " deg");
}

std::string RingsTable(const v1::StrungRod& strung, const ShowOptions& options) {
  TextTable table({{"ring", Align::kLeft},
                   {"from tip-top mm"},
                   {"in"},
                   {"blank deg"},
                   {"line out deg"},
                   {"turn deg"},
                   {"force N"}});
  for (const v1::RingUnderLine& ring : strung.rings()) {
    const double from_tip_mm = TipTopMm(strung) - ring.from_butt_mm();
    table.AddRow({ring.id(), FormatFixed(from_tip_mm, 1), FormatInches(Length::Mm(from_tip_mm), kEighths),
                  FormatFixed(ring.blank_angle_deg(), 1), FormatFixed(ring.line_out_deg(), 1),
                  FormatFixed(ring.turn_deg(), 1), FormatFixed(ring.force_n(), 2)});
  }
  return table.ToText(options.style);
}

std::string TipWords(const v1::StrungRod& strung, LengthUnits units) {
  const bool above = strung.tip_drop_mm() < 0;
  return absl::StrCat(AlongText(std::abs(strung.tip_drop_mm()), WITHY_FIGURE(strung, tip_drop_plus_minus_mm), units),
                      above ? " above" : " below", " the line straight on from the butt; ",
                      TipDirectionText(strung.tip_angle_deg()), ", ", DegreesText(strung.tip_to_line_deg()),
                      " from the line beyond it");
}

std::string CaseText(const v1::StrungRod& strung, const ShowOptions& options) {
  const TextStyle& style = options.style;
  const std::string label = "load " + Visible(strung.id());
  const std::string state = FoldedText(strung.state(), strung.reached());
  if (strung.at_mm_size() == 0) return LineText(label, state, style);
  std::string text = LineText(label, LoadWords(strung), style);
  if (!state.empty()) text += LineText("", state, style);
  text += LineText("  tip", TipWords(strung, options.units), style);
  text +=
      LineText("  moment at clamp",
               UncertainText(strung.clamp_moment_n_m(), WITHY_FIGURE(strung, clamp_moment_plus_minus_n_m), 2) + " N m");
  text += LineText("  works hardest", HardestWords(strung, options.units), style);
  if (!strung.most_turned().empty()) text += LineText("  turns most at", MostWords(strung), style);
  if (const v1::LineSpan* span = ClosestSpan(strung)) {
    text += LineText("  line to blank", ClearanceWords(strung, *span, options.units), style);
  }
  text += LineText("  friction", FrictionWords(strung), style);
  return absl::StrCat(text, "\n", RingsTable(strung, options));
}

// Rings below: the line lifts off as the rod bends, and what the number says is only where it comes nearest.
bool AnyBelow(const v1::LineLoadReport& line_load) {
  for (const v1::StrungRod& strung : line_load.cases()) {
    if (strung.rings_stand() == "below") return true;
  }
  return false;
}

std::string Told(const v1::LineLoadReport& line_load, const ShowOptions& options) {
  std::string text;
  for (const v1::StrungRod& strung : line_load.cases()) {
    if (!text.empty()) text += "\n";
    text += CaseText(strung, options);
  }
  if (text.empty()) return text;
  text += BulletText("the rod's own weight is not in it; blank and line: degrees above the horizontal", options.style);
  if (AnyBelow(line_load)) {
    text += BulletText("rings below: bent, the blank draws away from the line", options.style);
  }
  return text + BulletText(caution::kLoadedRod, options.style);
}

std::string CannotBeTold(const v1::Report& report, const TextStyle& style) {
  std::string lines;
  for (const v1::Unknown& unknown : report.unknown()) {
    if (unknown.figure() != "line_load") continue;
    lines += BulletText(absl::StrCat("cannot be told: ", Visible(unknown.measure())), style);
  }
  return lines;
}

}  // namespace

std::string LineLoadText(const v1::Report& report, const ShowOptions& options) {
  return SectionText("How the line bends it through its rings",
                     Told(report.line_load(), options) + CannotBeTold(report, options.style), options.style);
}

}  // namespace withy
