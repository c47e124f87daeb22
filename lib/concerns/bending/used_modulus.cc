#include "used_modulus.h"

#include <map>
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

// Of the sections of one rod.
class Moduli {
 public:
  Moduli(Inputs& inputs, BendingAnswers& answers) : inputs_(inputs), answers_(answers) {}

  // As written, else of the material.
  std::optional<UsedModulus> For(const Maybe<double>& written, const std::string& material, const FieldPath& at) {
    const auto used = written && written->value > 0 ? std::optional(Written(*written)) : Assumed(material, at);
    if (used && RankOf(used->source) > RankOf(least_sure_)) least_sure_ = used->source;
    return used;
  }
  Source least_sure() const { return least_sure_; }

 private:
  UsedModulus Written(const Known<double>& written) {
    const double plus_minus = ModulusPlusMinus(written);
    if (!written.plus_minus) {
      answers_.assumptions.push_back({written.at, absl::StrFormat("+/- %.1f GPa", plus_minus / 1e9),
                                      "no plus_minus is written: measured 3 %, catalogue 10 %, else 20 %"});
    }
    return {written.value, inputs_.Add(0, plus_minus / written.value, written.at.ToString()), written.source};
  }

  // What a table does not know of a material it does not know of any section of it: one doubt for all.
  std::optional<UsedModulus> Assumed(const std::string& material, const FieldPath& at) {
    const auto table = ModulusOfMaterial(material);
    if (!table) return std::nullopt;
    answers_.assumptions.push_back(
        {at, absl::StrFormat("%.1f +/- %.1f GPa", table->pa / 1e9, table->plus_minus_pa / 1e9), table->why});
    const auto [change, added] = of_material_.try_emplace(material);
    if (added) {
      change->second = inputs_.Add(0, table->plus_minus_pa / table->pa, absl::StrCat(at.ToString(), " (assumed)"));
    }
    return UsedModulus{table->pa, change->second, Source::kAssumed};
  }

  Inputs& inputs_;
  BendingAnswers& answers_;
  std::map<std::string, Uncertain> of_material_;
  Source least_sure_ = Source::kMeasured;
};

}  // namespace

std::optional<std::vector<ModuliOfSection>> ModuliOf(const Rod& rod, const SectionsAnswers& sections, Inputs& inputs,
                                                     BendingAnswers& answers) {
  Moduli moduli(inputs, answers);
  std::vector<ModuliOfSection> all;
  for (const SectionAnswer& answer : sections.sections) {
    const Section& section = rod.blank.sections[answer.section];
    const auto own = moduli.For(section.modulus_pa, section.material, section.at.Field("modulus"));
    if (!own) {
      answers.unknowns.push_back({"bending", absl::StrCat("give section ", section.id, " a modulus or a material")});
      return std::nullopt;
    }
    all.push_back({*own, std::nullopt});
    if (!section.splice_at) continue;
    // A solid tip that says nothing of itself is taken as the section it is in.
    all.back().splice =
        moduli.For(section.splice_modulus_pa, section.splice_material, section.at.Field("splice").Field("modulus"));
    if (!all.back().splice) all.back().splice = own;
  }
  answers.modulus_from = moduli.least_sure();
  return all;
}

}  // namespace withy::bending
