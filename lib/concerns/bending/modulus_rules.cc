#include <cmath>
#include <map>
#include <string>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"
#include "rules.h"
#include "withy/sections/material.h"
#include "withy/units/quantity.h"

namespace withy::bending {
namespace {

// A modulus that a section or its solid tip may have.
struct Place {
  const Maybe<double>& modulus_pa;
  const std::string& material;
  FieldPath at;
};

std::vector<Place> PlacesOf(const Section& section) {
  std::vector<Place> places = {{section.modulus_pa, section.material, section.at.Field("modulus")}};
  if (section.splice_at) {
    places.push_back({section.splice_modulus_pa, section.splice_material, section.at.Field("splice").Field("modulus")});
  }
  return places;
}

constexpr Code kModulusAssumed = {
    .name = "bending/modulus-assumed",
    .severity = Severity::kAdvice,
    .summary = "How the rod bends rests on a modulus that is only assumed",
    .why =
        "Blanks of one material differ by half in stiffness, and no table knows yours. Every figure of bending then "
        "carries "
        "that doubt.",
    .action =
        "Hang a known weight from the bare blank, read the drop, note both under `blank.bench`, and let `withy "
        "calibrate` work "
        "out the modulus.",
};

// Of several sections of one material it is said once.
void JudgeModulusAssumed(const View& view, std::vector<Finding>& findings) {
  if (!view.answers.bare || view.rod.load_cases.empty()) return;
  std::map<std::string, std::size_t> told;  // by material: in `findings`
  for (const SectionAnswer& answer : view.sections.sections) {
    for (const Place& place : PlacesOf(view.rod.blank.sections[answer.section])) {
      const auto table = ModulusOfMaterial(place.material);
      if ((place.modulus_pa && place.modulus_pa->value > 0) || !table) continue;
      const auto [first, added] = told.emplace(place.material, findings.size());
      if (!added) {
        findings[first->second].related.push_back(place.at);
        continue;
      }
      findings.push_back(
          MakeFinding(kModulusAssumed, place.at,
                      absl::StrFormat("taken as %.1f GPa, give or take %.1f GPa: all that is known of %s",
                                      table->pa / 1e9, table->plus_minus_pa / 1e9, place.material),
                      {{"assumed_gpa", table->pa / 1e9}, {"plus_minus_gpa", table->plus_minus_pa / 1e9}}));
    }
  }
}

constexpr Code kModulusSlip = {
    .name = "bending/modulus-slip",
    .severity = Severity::kWarning,
    .summary = "A modulus is off by the factor of a slip of unit or point",
    .why =
        "A million psi is 6.895 GPa. A modulus under the wrong unit, or with its point moved, makes the rod that many "
        "times too "
        "soft or too stiff.",
    .action = "Look the modulus up again with its unit: `gpa` or `msi`.",
};

constexpr double kGpaPerMsi = Modulus::Msi(1).pascals() / 1e9;

struct Slip {
  double factor;
  const char* what;
};
// The likelier first.
constexpr Slip kSlips[] = {{kGpaPerMsi, "is that in msi?"},
                           {1 / kGpaPerMsi, "is that in GPa?"},
                           {10, "is the point wrong?"},
                           {0.1, "is the point wrong?"}};

void JudgeModulusSlip(const View& view, std::vector<Finding>& findings) {
  for (const Section& section : view.rod.blank.sections) {
    for (const Place& place : PlacesOf(section)) {
      const auto table = ModulusOfMaterial(place.material);
      if (!table || !place.modulus_pa || !(place.modulus_pa->value > 0)) continue;
      const double written = place.modulus_pa->value;
      const auto plausible = [&table](double pa) { return std::abs(pa - table->pa) <= table->plus_minus_pa; };
      // Between the range and its slips lies what a builder may well have measured.
      if (written > 0.5 * (table->pa - table->plus_minus_pa) && written < 1.5 * (table->pa + table->plus_minus_pa))
        continue;
      for (const Slip& slip : kSlips) {
        if (!plausible(written * slip.factor)) continue;
        findings.push_back(
            MakeFinding(kModulusSlip, place.modulus_pa->at,
                        absl::StrFormat("%.4g GPa for %s, of which %.4g GPa would be usual; %s", written / 1e9,
                                        place.material, written * slip.factor / 1e9, slip.what),
                        {{"modulus_gpa", written / 1e9}, {"likely_gpa", written * slip.factor / 1e9}}));
        break;
      }
    }
  }
}

}  // namespace

std::vector<Rule<View>> ModulusRules() {
  return {{&kModulusAssumed, JudgeModulusAssumed}, {&kModulusSlip, JudgeModulusSlip}};
}

}  // namespace withy::bending
