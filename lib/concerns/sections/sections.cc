#include "withy/sections/sections.h"

#include <cmath>
#include <utility>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "draft.h"
#include "withy/sections/material.h"

namespace withy {
namespace {

// Wall over diameter that gives a mass: of a tube of one ratio k the share of the solid rod's mass is 1 - (1 - 2k)^2.
std::optional<double> WallRatioFor(double mass, double solid_mass) {
  const double share = mass / solid_mass;
  if (!(share > 0) || !(share < 1)) return std::nullopt;
  return (1 - std::sqrt(1 - share)) / 2;
}

bool MassComesFromElsewhere(const Draft& draft) { return draft.stated || draft.fixed_by_total; }

// Where no wall is written: from the mass if there is one, else the assumed ratio stays.
void SettleWall(Draft& draft, SectionAnswer& answer, SectionsAnswers& answers) {
  Distribution& d = *draft.distribution;
  answer.wall_known = d.wall_given();
  answer.wall_from = draft.section->wall_measured ? Source::kMeasured : Source::kPlan;
  if (d.wall_given()) return;
  const FieldPath at = draft.section->taper.at.Field("stations");
  if (MassComesFromElsewhere(draft) && draft.density_known && draft.mass_kg) {
    const double tube = draft.mass_kg->value() - d.SpliceMass(draft.from, draft.to);
    const double solid = d.SolidMass(draft.from, draft.to);
    if (solid > 0) answer.share_of_solid = tube / solid;
    if (const auto ratio = WallRatioFor(tube, solid)) {
      d.SetWallRatio(*ratio);
      answer.wall_known = true;
      answer.wall_from = Source::kComputed;
      answers.assumptions.push_back({at, absl::StrFormat("wall = %.3f x outer diameter", *ratio),
                                     "inferred from the mass: one ratio along the section"});
      return;
    }
  }
  answer.wall_from = Source::kAssumed;
  answers.assumptions.push_back({at, absl::StrFormat("wall = %.1f x outer diameter", kAssumedWallRatio),
                                 MassComesFromElsewhere(draft)
                                     ? "only the way the mass lies along the section uses it"
                                     : "common practice 0.05 to 0.2, no source; weigh the section"});
}

Source MassSource(const Draft& draft) {
  return draft.stated && !draft.fixed_by_total ? draft.section->mass->mass.source : Source::kComputed;
}

SectionAnswer AnswerOf(Draft& draft, int section, SectionsAnswers& answers) {
  SectionAnswer answer;
  answer.section = section;
  answer.mass_from = MassSource(draft);
  answer.density_kg_m3 = draft.density_kg_m3;
  // A computed mass without density is a guess by an unknown factor.
  const bool told = draft.mass_kg && (MassComesFromElsewhere(draft) || draft.density_known);
  if (told) {
    answer.mass_kg = draft.mass_kg;
    answer.moment_kg_m = draft.moment_kg_m;
  } else {
    answers.unknowns.push_back({absl::StrCat("sections.sections[", draft.section->id, "].mass_g"),
                                absl::StrCat("weigh section ", draft.section->id)});
  }
  if (!draft.distribution) return answer;
  SettleWall(draft, answer, answers);
  const Distribution& d = *draft.distribution;
  answer.frusta = d.Frusta(draft.from, draft.to);
  if (answer.wall_known) answer.ei_n_m2 = d.Stiffness(answer.frusta);
  if (draft.density_known && d.wall_given() && draft.section->mass) {
    const SectionMass& mass = *draft.section->mass;
    answer.mass_if_computed_kg = d.Properties(mass.from.meters(), mass.to.meters()).mass_kg;
  }
  if (const auto& before = draft.section->mass_before; before && draft.section->mass) {
    const SectionMass& now = *draft.section->mass;
    const double then_kg = d.Properties(before->from.meters(), before->to.meters()).mass_kg;
    const double left_kg = d.Properties(now.from.meters(), now.to.meters()).mass_kg;
    if (then_kg > 0) answer.mass_if_only_cut_kg = before->mass.value.kilograms() * left_kg / then_kg;
  }
  const MassProperties left = d.Properties(draft.from, draft.to);
  if (told && left.mass_kg > 0) {
    const double scale = draft.mass_kg->value() / left.mass_kg;
    answer.properties = (left * scale).Shifted(-draft.from);
    for (const Frustum& f : answer.frusta) answer.frusta_kg.push_back(d.Weigh({f}).mass_kg * scale);
  }
  return answer;
}

void FillEndDiameters(const Rod& rod, Inputs& inputs, SectionsAnswers& answers) {
  if (rod.blank.assembled.empty()) return;
  const Section& butt = rod.blank.sections[rod.blank.assembled.front()];
  const Section& tip = rod.blank.sections[rod.blank.assembled.back()];
  if (butt.from_m && !butt.outer.empty()) {
    answers.butt_diameter_m =
        inputs.Add(butt.outer.At(butt.from_m->value()), butt.taper.diameter_plus_minus_m.value_or(0),
                   OuterDiametersOf(butt));
  }
  if (tip.to_m && !tip.outer.empty()) {
    answers.tip_diameter_m = inputs.Add(tip.outer.At(tip.to_m->value(), Profile::Limit::kLeft),
                                        tip.taper.diameter_plus_minus_m.value_or(0), OuterDiametersOf(tip));
  }
}

}  // namespace

SectionsAnswers ComputeSections(const Rod& rod, Inputs& inputs) {
  SectionsAnswers answers;
  bool unstated = false;
  std::vector<Draft> drafts;
  for (const int i : rod.blank.assembled) {
    drafts.push_back(DraftSection(rod.blank.sections[i], inputs, answers, unstated));
  }
  ApplyTotals(rod, drafts, inputs, answers, unstated);
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    answers.sections.push_back(AnswerOf(drafts[i], rod.blank.assembled[i], answers));
  }
  if (unstated) answers.assumptions.push_back(UnstatedMassAssumption());
  FillEndDiameters(rod, inputs, answers);
  return answers;
}

}  // namespace withy
