#include <cmath>

#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/sections/material.h"

namespace withy::sections {
namespace {

constexpr Code kMassAgainstVolume = {
    .name = "sections/mass-against-volume",
    .severity = Severity::kWarning,
    .summary = "What a section weighs does not go with its wall and density",
    .why =
        "Weight, wall and density of a tube say the same thing twice; when they differ by half, one of them is of "
        "another piece, another unit or a guess.",
    .action = "Weigh the bare section again, and measure the wall at both ends.",
};

// A factor of 1.5 either way: wider than any honest wall reading leaves open (common practice, no source).
constexpr double kMassFactor = 1.5;

void JudgeMassAgainstVolume(const View& view, std::vector<Finding>& findings) {
  for (const SectionAnswer& answer : view.answers.sections) {
    const Section& section = view.rod.blank.sections[answer.section];
    if (!answer.mass_if_computed_kg || !section.mass) continue;
    const double weighed = section.mass->mass.value.grams(), computed = *answer.mass_if_computed_kg * 1000;
    if (!(weighed > 0) || !(computed > 0)) continue;
    if (weighed <= kMassFactor * computed && computed <= kMassFactor * weighed) continue;
    findings.push_back(MakeFinding(kMassAgainstVolume, section.mass->mass.at,
                                   absl::StrFormat("%.1f g, where wall and density make %.1f g", weighed, computed),
                                   {{"mass_g", weighed}, {"computed_g", computed}}));
  }
}

constexpr Code kMassAfterCut = {
    .name = "sections/mass-after-cut",
    .severity = Severity::kWarning,
    .summary = "What a section weighs after a cut does not go with what it weighed before",
    .why =
        "What came off had its share of the mass. A weighing that does not show it was made before the cut, or the cut "
        "is not the one in the log, and the next one would be reckoned from it.",
    .action = "Weigh the bare section as it now is, and look at the amount of the cut in the log.",
};

// How well the mass of an off-cut is known from the taper alone: a fifth (common practice, no source).
constexpr double kOffCutShare = 0.2;

void JudgeMassAfterCut(const View& view, std::vector<Finding>& findings) {
  for (const SectionAnswer& answer : view.answers.sections) {
    const Section& section = view.rod.blank.sections[answer.section];
    if (!answer.mass_if_only_cut_kg) continue;
    bool unstated = false;
    const Known<Mass>&now = section.mass->mass, &before = section.mass_before->mass;
    const double weighed = now.value.grams(), expected = *answer.mass_if_only_cut_kg * 1000;
    const double allowed = 1000 * std::hypot(MassPlusMinus(now, unstated), MassPlusMinus(before, unstated)) +
                           kOffCutShare * std::abs(before.value.grams() - expected);
    if (std::abs(weighed - expected) <= allowed) continue;
    findings.push_back(
        MakeFinding(kMassAfterCut, now.at,
                    absl::StrFormat("%.1f g; of the %.1f g before the cut %.1f g are left by the taper", weighed,
                                    before.value.grams(), expected),
                    {{"mass_g", weighed}, {"before_g", before.value.grams()}, {"expected_g", expected}}));
    findings.back().related.push_back(before.at);
  }
}

constexpr Code kWallImplausible = {
    .name = "sections/wall-implausible",
    .severity = Severity::kWarning,
    .summary = "The wall that the mass leaves is none that a blank has",
    .why =
        "Where no wall is given it follows from the mass. A wall as thin as paper or a blank that is all but solid "
        "means "
        "that mass, diameters or density are wrong, and the balance is with them.",
    .action = "Weigh the bare section again, look at the unit, and measure the wall where the blank is open.",
};

// Shares of a solid's mass, 1 - (1 - 2k)^2 of walls of k = 0.015 and k = 0.35 of the diameter: rolled blanks lie well
// between (common practice, no source).
constexpr double kThinnestShare = 0.0591;
constexpr double kThickestShare = 0.91;

void JudgeWallImplausible(const View& view, std::vector<Finding>& findings) {
  for (const SectionAnswer& answer : view.answers.sections) {
    const Section& section = view.rod.blank.sections[answer.section];
    if (!answer.share_of_solid) continue;
    const double share = *answer.share_of_solid;
    // a printed mass that is too small is held against the lightest tube where it is read
    const bool thin = share < kThinnestShare && section.mass && !section.mass->mass.at.IsWithin(view.rod.blank.at);
    if (!thin && share <= kThickestShare) continue;
    const FieldPath at = section.mass ? section.mass->mass.at : section.at;
    findings.push_back(MakeFinding(
        kWallImplausible, at, absl::StrFormat("the mass is %.3g of what a solid of these diameters would weigh", share),
        {{"share_of_solid", share}}));
  }
}

}  // namespace

std::vector<Rule<View>> MassRules() {
  return {{&kMassAgainstVolume, JudgeMassAgainstVolume},
          {&kMassAfterCut, JudgeMassAfterCut},
          {&kWallImplausible, JudgeWallImplausible}};
}

}  // namespace withy::sections
