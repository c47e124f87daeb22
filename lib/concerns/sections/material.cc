#include "withy/sections/material.h"

namespace withy {

std::optional<MaterialDensity> DensityOfMaterial(std::string_view material) {
  struct Row {
    std::string_view material;
    MaterialDensity density;
  };
  static constexpr Row kRows[] = {
      {"carbon", {1570, 100, "carbon and epoxy, 1536 at 60 % fibre to 1600 at 70 %: composite property tables"}},
      {"glass", {1800, 200, "E-glass and epoxy, 45 % fibre: Tsai and Hahn 1980, from memory"}},
      {"carbon_glass", {1680, 200, "between carbon and glass laminate"}},
      {"cane", {1150, 100, "Tonkin bamboo, 0.665 oz/in3: published by rod makers"}},
      {"cork", {190, 50, "natural cork, air-dry, 120 to 200: Anjos, Pereira and Rosa 2008"}},
      {"eva", {175, 75, "grip foam, 100 to 250, from memory"}},
      {"aluminium", {2700, 30, "alloy 6061-T6: public material tables"}},
      {"nickel_silver", {8730, 250, "18 % alloy: public material tables"}},
      {"stainless_steel", {8000, 300, "grade 304: public material tables"}},
  };
  for (const Row& row : kRows) {
    if (row.material == material) return row.density;
  }
  return std::nullopt;
}

std::optional<MaterialModulus> ModulusOfMaterial(std::string_view material) {
  struct Row {
    std::string_view material;
    MaterialModulus modulus;
  };
  static constexpr Row kRows[] = {
      {"carbon",
       {139e9, 70e9, "carbon and epoxy with all fibre along, 139 at 60 % fibre by the rule of mixtures; cloth across the "
                     "blank takes up to half of it: common practice, no source"}},
      {"glass",
       {39e9, 16e9, "E-glass and epoxy, 38.6 at 45 % fibre: Tsai and Hahn 1980, S-glass up to 55, both from memory"}},
      {"carbon_glass", {89e9, 55e9, "between glass and carbon laminate"}},
      {"cane", {58.5e9, 44.5e9, "Tonkin bamboo, 14 to 103 claimed: what has been published contradicts itself"}},
  };
  for (const Row& row : kRows) {
    if (row.material == material) return row.modulus;
  }
  return std::nullopt;
}

double ModulusPlusMinus(const Known<double>& modulus_pa) {
  if (modulus_pa.plus_minus) return *modulus_pa.plus_minus;
  switch (modulus_pa.source) {
    case Source::kMeasured: return 0.03 * modulus_pa.value;
    case Source::kCatalogue: return 0.10 * modulus_pa.value;
    default: return 0.20 * modulus_pa.value;
  }
}

double MassPlusMinus(const Known<Mass>& mass, bool& unstated) {
  if (mass.plus_minus) return *mass.plus_minus;
  unstated = true;
  switch (mass.source) {
    case Source::kMeasured: return 0.005 * mass.value.kilograms();
    case Source::kCatalogue: return 0.05 * mass.value.kilograms();
    default: return 0.10 * mass.value.kilograms();
  }
}

Assumption UnstatedMassAssumption() {
  return {FieldPath(), "masses without plus_minus: measured 0.5 %, catalogue 5 %, planned or estimated 10 %",
          "common practice, no source"};
}

}  // namespace withy
