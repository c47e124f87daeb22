#include <cmath>

#include "absl/strings/str_format.h"
#include "adhesive.h"
#include "rules.h"
#include "withy/bonding/mixing.h"

namespace withy::bonding {
namespace {

FieldPath MixOf(const Adhesive& adhesive, const char* field) {
  return adhesive.at.Field("mix").Field(field);
}

// Hardener to resin.
double HardenerPerResin(const Ratio& ratio) {
  return ratio.hardener / ratio.resin;
}

constexpr Code kRatiosDiffer = {
    .name = "bonding/ratios-differ",
    .severity = Severity::kWarning,
    .summary = "The mixing ratios by volume and by mass cannot both be right",
    .why =
        "Resin and hardener of one epoxy are about equally dense, so the two ratios are near each other. The wrong one "
        "leaves adhesive that never cures.",
    .action = "Copy both ratios from the product's data sheet; mix by the one that the sheet calls its own.",
};

// Density of hardener over that of resin: 0.81 to 0.94 and 1.0 were seen in products; the room beyond is common
// practice, no source.
constexpr double kLightest = 0.7, kHeaviest = 1.4;

void JudgeRatiosDiffer(const View& view, std::vector<Finding>& findings) {
  for (const Adhesive& adhesive : view.rod.adhesives) {
    if (!adhesive.by_volume || !adhesive.by_mass) continue;
    const double densities = HardenerPerResin(*adhesive.by_mass) / HardenerPerResin(*adhesive.by_volume);
    if (!std::isfinite(densities) || (densities >= kLightest && densities <= kHeaviest)) continue;
    findings.push_back(
        MakeFinding(kRatiosDiffer, MixOf(adhesive, "by_mass"),
                    absl::StrFormat("by both ratios the hardener of '%s' would be %.2f times as dense as its resin",
                                    adhesive.id, densities),
                    {{"density_ratio", densities}}));
    findings.back().related.push_back(MixOf(adhesive, "by_volume"));
  }
}

constexpr Code kRatioChanged = {
    .name = "bonding/ratio-changed",
    .severity = Severity::kError,
    .summary = "An adhesive was mixed in another ratio than its own",
    .why =
        "What is left over of either part never cures, and the joint stays soft or brittle. The ratio is never changed "
        "to change the time of cure (FAA AC 43.13-1B, 1-5).",
    .action =
        "Test whether the mix has set hard; if not, take the joint apart while it can be, clean it and glue it again. "
        "Correct the entry if it was only written down wrongly.",
};

// What scales and syringes leave open (common practice, no source).
constexpr double kRatioWithinPercent = 2;

void JudgeRatio(const Adhesive& adhesive, const std::optional<Ratio>& right, const std::optional<Ratio>& mixed,
                const FieldPath& at, std::vector<Finding>& findings) {
  if (!right || !mixed) return;
  const double percent = (HardenerPerResin(*mixed) / HardenerPerResin(*right) - 1) * 100;
  if (!std::isfinite(percent) || std::abs(percent) <= kRatioWithinPercent + 1e-7) return;
  findings.push_back(MakeFinding(kRatioChanged, at,
                                 absl::StrFormat("%.0f in a hundred %s hardener than '%s' takes", std::abs(percent),
                                                 percent > 0 ? "more" : "less", adhesive.id),
                                 {{"hardener_off_percent", percent}}));
}

void JudgeRatioChanged(const View& view, std::vector<Finding>& findings) {
  for (const GlueUp& mix : view.rod.glue_ups) {
    for (const Adhesive& adhesive : view.rod.adhesives) {
      if (adhesive.id.empty() || adhesive.id != mix.adhesive) continue;
      JudgeRatio(adhesive, adhesive.by_volume, mix.by_volume, mix.at.Field("by_volume"), findings);
      JudgeRatio(adhesive, adhesive.by_mass, mix.by_mass, mix.at.Field("by_mass"), findings);
      break;
    }
  }
}

constexpr Code kRatioUnknown = {
    .name = "bonding/ratio-unknown",
    .severity = Severity::kCannotTell,
    .summary = "How an epoxy is mixed is not known",
    .why = "How much of each part to have ready, and whether the mix was right, follow from it.",
    .action =
        "Enter the ratio from the product's data sheet in `mix.by_volume` or `mix.by_mass`: they are not the same.",
};

// An adhesive of which nothing but the kind is written is a name so far, and nothing is asked.
bool IsHalfDescribed(const Adhesive& adhesive) {
  return adhesive.density_kg_m3 || adhesive.pot_life_s || adhesive.set_s || adhesive.full_cure_s;
}

void JudgeRatioUnknown(const View& view, std::vector<Finding>& findings) {
  for (const Adhesive& adhesive : view.rod.adhesives) {
    if (!IsEpoxy(adhesive) || !IsHalfDescribed(adhesive) || adhesive.by_volume || adhesive.by_mass) continue;
    findings.push_back(MakeFinding(kRatioUnknown, adhesive.at.Field("mix"),
                                   absl::StrFormat("in which ratio '%s' is mixed is not known", adhesive.id)));
  }
}

constexpr Code kPotLifeAfterSet = {
    .name = "bonding/pot-life-after-set",
    .severity = Severity::kWarning,
    .summary = "An adhesive is said to be workable for longer than it takes to set",
    .why = "One of the two was misread, and a batch planned by it gels in the joint.",
    .action = "Read both times, and the temperatures they are printed for, from the data sheet again.",
};

void JudgePotLifeAfterSet(const View& view, std::vector<Finding>& findings) {
  for (const Adhesive& adhesive : view.rod.adhesives) {
    const double at_c = adhesive.cure_at_c.value_or(TemperatureOf(view.rod.shop));
    const std::optional<double> pot = TimeAt(adhesive.pot_life_s, adhesive.pot_life_at_c, at_c);
    const std::optional<double> set = TimeAt(adhesive.set_s, adhesive.cure_at_c, at_c);
    if (!pot || !set || *pot <= *set * (1 + 1e-9)) continue;
    findings.push_back(
        MakeFinding(kPotLifeAfterSet, MixOf(adhesive, "pot_life"),
                    absl::StrFormat("'%s' can be worked for %.0f minutes and has set after %.0f, both at %.0f C",
                                    adhesive.id, *pot / 60, *set / 60, at_c),
                    {{"pot_life_minutes", *pot / 60}, {"set_minutes", *set / 60}, {"at_celsius", at_c}}));
    findings.back().related.push_back(MixOf(adhesive, "set"));
  }
}

constexpr Code kSetAfterCure = {
    .name = "bonding/set-after-cure",
    .severity = Severity::kWarning,
    .summary = "An adhesive is said to have set later than it has cured",
    .why = "What has its full strength has long set. One of the two was misread, and the rod is handled, or fished, too soon.",
    .action = "Read both times from the data sheet again; look at hours and minutes.",
};

void JudgeSetAfterCure(const View& view, std::vector<Finding>& findings) {
  for (const Adhesive& adhesive : view.rod.adhesives) {
    if (!adhesive.set_s || !adhesive.full_cure_s || adhesive.set_s->value <= adhesive.full_cure_s->value * (1 + 1e-9)) {
      continue;
    }
    const double set_h = adhesive.set_s->value / 3600, cure_h = adhesive.full_cure_s->value / 3600;
    findings.push_back(MakeFinding(
        kSetAfterCure, MixOf(adhesive, "set"),
        absl::StrFormat("'%s' has set after %.4g h and has its full strength after %.4g h", adhesive.id, set_h, cure_h),
        {{"set_hours", set_h}, {"full_cure_hours", cure_h}}));
    findings.back().related.push_back(MixOf(adhesive, "full_cure"));
  }
}

}  // namespace

std::vector<Rule<View>> AdhesiveRules() {
  return {{&kRatiosDiffer, JudgeRatiosDiffer},
          {&kRatioChanged, JudgeRatioChanged},
          {&kRatioUnknown, JudgeRatioUnknown},
          {&kPotLifeAfterSet, JudgePotLifeAfterSet},
          {&kSetAfterCure, JudgeSetAfterCure}};
}

}  // namespace withy::bonding
