#include "bending_text.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_join.h"
#include "bent_words.h"
#include "cautions.h"
#include "figure_text.h"
#include "text_parts.h"
#include "text_table.h"
#include "withy/units/format.h"
#include "withy/units/quantity.h"

namespace withy {
namespace {

constexpr double kNoStrain = 5e-4;     // thousandths; what would be printed as 0.00
constexpr double kSamePlaceMm = 0.05;  // what would be printed alike
constexpr std::size_t kDearest = 3;    // of the guide train that are named

// "450 g (4.41 N) straight down at the tip; butt 45 deg above the horizontal"
std::string LoadWords(const v1::BentShape& bent) {
  const std::string pull = bent.has_load_n() ? PullText(bent.load_n(), bent.load_angle_deg(), " at the tip") : "";
  return absl::StrCat(pull, "; butt ", DirectionText(bent.butt_angle_deg()));
}

// "197 mm from the tip: 3.39 ± 0.37 thousandths of strain"
std::string HardestWords(const v1::BentShape& bent, LengthUnits units) {
  if (bent.peak_strain_millistrain() < kNoStrain) return "nowhere: it is straight";
  const double from_tip_mm = bent.at_mm(bent.at_mm_size() - 1) - bent.peak_at_mm();
  return absl::StrCat(AlongText(from_tip_mm, std::nullopt, units), " from the tip: strain ",
                      UncertainText(WITHY_FIGURE(bent, peak_strain_millistrain),
                                    WITHY_FIGURE(bent, peak_strain_plus_minus_millistrain), 2),
                      " thousandths");
}

// `clamp_mm` is where the rod is held unless the load says otherwise.
std::string CaseText(const v1::BentShape& bent, double clamp_mm, const ShowOptions& options) {
  const TextStyle& style = options.style;
  std::string text = LineText("load " + Visible(bent.id()), LoadWords(bent), style);
  if (const std::string state = FoldedText(bent.state(), bent.reached()); !state.empty()) text += LineText("", state, style);
  if (bent.at_mm_size() == 0) return text;
  if (bent.has_clamp_mm() && std::abs(bent.clamp_mm() - clamp_mm) > kSamePlaceMm) {
    text += LineText("  held for this at", AlongText(bent.clamp_mm(), std::nullopt, options.units));
  }
  if (bent.has_tip_drop_mm()) {
    text += LineText("  tip drops",
                     AlongText(bent.tip_drop_mm(), WITHY_FIGURE(bent, tip_drop_plus_minus_mm), options.units) + "; " +
                         TipDirectionText(bent.tip_angle_deg()),
                     style);
  }
  if (bent.has_clamp_moment_n_m()) {
    text +=
        LineText("  moment at clamp",
                 UncertainText(bent.clamp_moment_n_m(), WITHY_FIGURE(bent, clamp_moment_plus_minus_n_m), 2) + " N m");
  }
  if (bent.has_peak_strain_millistrain()) {
    text += LineText("  works hardest", HardestWords(bent, options.units), style);
  }
  if (bent.has_strain_energy_j()) text += LineText("  energy stored", FormatFixed(bent.strain_energy_j(), 2) + " J");
  return text;
}

std::string NumberCell(std::optional<double> figure, int decimals, const char* unit) {
  return figure ? absl::StrCat(FormatFixed(*figure, decimals), unit) : kNotKnown;
}

std::string FrequencyCell(const v1::BendingOf& of, int which) {
  if (which >= of.frequency_hz_size()) return kNotKnown;
  const auto plus_minus = which == 0 ? WITHY_FIGURE(of, frequency_plus_minus_hz) : std::optional<double>();
  return UncertainText(of.frequency_hz(which), plus_minus, 2) + " Hz";
}

std::string WeightCell(const v1::PowerReading& power) {
  if (!power.has_load_g()) return kNotKnown;
  return UncertainText(power.load_g(), WITHY_FIGURE(power, load_plus_minus_g), 0) + " g";
}

bool HasThirdDrop(const v1::BendingReport& bending) {
  return bending.bare().power().has_load_g() || bending.finished().power().has_load_g();
}

bool HasLineNumber(const v1::BendingReport& bending) {
  return bending.bare().power().has_line_number() || bending.finished().power().has_line_number();
}

// Bare blank beside finished rod; what neither has is left out.
std::string Compared(const v1::BendingReport& bending, const TextStyle& style) {
  TextTable table({{"held level", TextTable::Align::kLeft}, {"bare blank"}, {"finished rod"}});
  const v1::BendingOf& bare = bending.bare();
  const v1::BendingOf& finished = bending.finished();
  const auto add = [&](std::string label, std::string one, std::string other) {
    if (one != kNotKnown || other != kNotKnown) table.AddRow({std::move(label), std::move(one), std::move(other)});
  };
  const auto both = [&](std::string label, auto&& cell) {
    add(std::move(label), cell(bare.power()), cell(finished.power()));
  };
  both("weight for a third drop", WeightCell);
  both("in coins of 2.50 g", [](const auto& power) { return NumberCell(WITHY_FIGURE(power, coins), 0, ""); });
  both("tip then points down by",
       [](const auto& power) { return NumberCell(WITHY_FIGURE(power, tip_angle_deg), 0, " deg"); });
  both("action", [](const auto& power) { return power.action().empty() ? std::string(kNotKnown) : power.action(); });
  both("line number", [](const auto& power) { return NumberCell(WITHY_FIGURE(power, line_number), 1, ""); });
  const char* const kNames[] = {"first frequency", "second", "third"};
  for (int i = 0; i < 3; ++i) add(kNames[i], FrequencyCell(bare, i), FrequencyCell(finished, i));
  return table.ToText(style);
}

// "1.20 Hz of the first frequency; the dearest: tip 0.29, g9 0.21, g8 0.15 Hz"
std::string TrainWords(const v1::BendingReport& bending) {
  std::vector<const v1::FrequencyLoss*> losses;
  for (const v1::FrequencyLoss& loss : bending.losses()) losses.push_back(&loss);
  std::stable_sort(losses.begin(), losses.end(), [](const auto* a, const auto* b) { return a->hz() > b->hz(); });
  losses.resize(std::min(losses.size(), kDearest));
  std::string words = FormatFixed(bending.train_costs_hz(), 2) + " Hz of the first frequency";
  return absl::StrCat(words, "; the dearest: ",
                      absl::StrJoin(losses, ", ",
                                    [](std::string* out, const v1::FrequencyLoss* loss) {
                                      absl::StrAppend(out, Visible(loss->id()), " ", FormatFixed(loss->hz(), 2));
                                    }),
                      " Hz");
}

std::string ModulusWords(const std::string& from) {
  if (from == "assumed") return "assumed by the material: hang a known weight from the blank and read its drop";
  if (from == "catalogue") return "as the catalogue says";
  if (from == "planned") return "as planned, not measured";
  return from;
}

std::string CannotBeTold(const v1::Report& report, const TextStyle& style) {
  std::string lines;
  for (const v1::Unknown& unknown : report.unknown()) {
    const std::string& figure = unknown.figure();
    if (figure != "bending" && !figure.starts_with("bending.")) continue;
    const std::string what = figure.starts_with("bending.finished") ? "the finished rod" : "how it bends";
    lines += BulletText(absl::StrCat(what, " cannot be told: ", Visible(unknown.measure())), style);
  }
  return lines;
}

std::string Told(const v1::BendingReport& bending, const ShowOptions& options) {
  const bool finished = bending.has_finished();
  const v1::BendingOf& of = finished ? bending.finished() : bending.bare();
  std::string text;
  if (of.has_clamp_mm() && of.has_free_length_mm()) {
    text += LineText("held at",
                     absl::StrCat(AlongText(of.clamp_mm(), std::nullopt, options.units),
                                  finished ? " from the butt end; " : " from the blank's butt face; ",
                                  AlongText(of.free_length_mm(), std::nullopt, options.units), " bend"),
                     options.style);
  }
  text += LineText("modulus", ModulusWords(bending.modulus_from()), options.style);
  if (!finished && of.cases_size() > 0) text += LineText("these are of", "the bare blank");
  for (const v1::BentShape& bent : of.cases()) text += CaseText(bent, of.clamp_mm(), options);
  text += "\n" + Compared(bending, options.style);
  if (HasThirdDrop(bending)) {
    text += BulletText("third drop: of the free length, from the sag under its own weight", options.style);
  }
  if (HasLineNumber(bending)) {
    text += BulletText("line number: by a straight line through 20 published points", options.style);
  }
  if (bending.has_train_costs_hz() && bending.losses_size() > 0)
    text += LineText("guides cost", TrainWords(bending), options.style);
  if (of.cases_size() > 0) text += BulletText(caution::kHighAngle, options.style);
  return text;
}

}  // namespace

std::string BendingText(const v1::Report& report, const ShowOptions& options) {
  const v1::BendingReport& bending = report.bending();
  std::string text;
  if (bending.has_bare() || bending.has_finished()) text += Told(bending, options);
  return SectionText("How it bends and rings", text + CannotBeTold(report, options.style), options.style);
}

}  // namespace withy
