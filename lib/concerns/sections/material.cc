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
