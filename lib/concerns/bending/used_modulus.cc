#include "used_modulus.h"

#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "withy/sections/material.h"

namespace withy::bending {
namespace {

// From the surest to the least sure.
int RankOf(Source source) {
  switch (source) {
    case Source::kMeasured:
      return 0;
    case Source::kComputed:
      return 1;
    case Source::kCatalogue:
      return 2;
    case Source::kPlan:
      return 3;
    case Source::kEstimated:
      return 4;
    case Source::kAssumed:
      return 5;
  }
  return 5;
}

Uncertain ChangeOf(double pa, double plus_minus_pa, std::string name, Inputs& inputs) {
  return inputs.Add(0, plus_minus_pa / pa, std::move(name));
}

std::optional<UsedModulus> ModulusFor(const Maybe<double>& written, const std::string& material, const FieldPath& at,
                                      Inputs& inputs, BendingAnswers& answers) {
  if (written && written->value > 0) {
    if (!written->plus_minus) {
      answers.assumptions.push_back({at, absl::StrFormat("+/- %.1f GPa", ModulusPlusMinus(*written) / 1e9),
                                     "no plus_minus is written: measured 3 %, catalogue 10 %, else 20 %"});
    }
    return UsedModulus{written->value,
                       ChangeOf(written->value, ModulusPlusMinus(*written), written->at.ToString(), inputs),
                       written->source};
  }
  const auto table = ModulusOfMaterial(material);
  if (!table) return std::nullopt;
  answers.assumptions.push_back(
      {at, absl::StrFormat("%.1f +/- %.1f GPa", table->pa / 1e9, table->plus_minus_pa / 1e9), table->why});
  return UsedModulus{table->pa,
                     ChangeOf(table->pa, table->plus_minus_pa, absl::StrCat(at.ToString(), " (assumed)"), inputs),
                     Source::kAssumed};
}

}  // namespace

std::optional<std::vector<ModuliOfSection>> ModuliOf(const Rod& rod, const SectionsAnswers& sections, Inputs& inputs,
                                                     BendingAnswers& answers) {
  std::vector<ModuliOfSection> all;
  Source least_sure = Source::kMeasured;
  const auto use = [&](const Maybe<double>& written, const std::string& material,
                       const FieldPath& at) -> std::optional<UsedModulus> {
    const auto used = ModulusFor(written, material, at, inputs, answers);
    if (used && RankOf(used->source) > RankOf(least_sure)) least_sure = used->source;
    return used;
  };
  for (const SectionAnswer& answer : sections.sections) {
    const Section& section = rod.blank.sections[answer.section];
    const auto own = use(section.modulus_pa, section.material, section.at.Field("modulus"));
    if (!own) {
      answers.unknowns.push_back({"bending", absl::StrCat("give section ", section.id, " a modulus or a material")});
      return std::nullopt;
    }
    ModuliOfSection moduli{*own, std::nullopt};
    // A splice that says nothing of itself is taken as the section it is in.
    if (section.splice_at) {
      moduli.splice =
          use(section.splice_modulus_pa, section.splice_material.empty() ? section.material : section.splice_material,
              section.at.Field("splice").Field("modulus"));
      if (!moduli.splice) moduli.splice = own;
    }
    all.push_back(std::move(moduli));
  }
  answers.modulus_from = least_sure;
  return all;
}

}  // namespace withy::bending
