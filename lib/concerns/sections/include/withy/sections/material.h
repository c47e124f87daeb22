// What is taken for a material or a weighing that says no more: each with its source, each listed as an assumption where
// it is used.
#ifndef WITHY_SECTIONS_MATERIAL_H_
#define WITHY_SECTIONS_MATERIAL_H_

#include <optional>
#include <string_view>

#include "withy/rod/known.h"

namespace withy {

// Of the laminate or the solid, not of the fibre.
struct MaterialDensity {
  double kg_m3 = 0;
  double plus_minus_kg_m3 = 0;
  const char* why = "";
};
// Unset for a material without a figure worth using.
std::optional<MaterialDensity> DensityOfMaterial(std::string_view material);

// Uncertainty of a mass in kg. Where none is written: measured 0.5 %, catalogue 5 %, planned or estimated 10 % (common
// practice, no source), and `unstated` becomes true.
double MassPlusMinus(const Known<Mass>& mass, bool& unstated);
// What to list when that happened.
Assumption UnstatedMassAssumption();

}  // namespace withy

#endif  // WITHY_SECTIONS_MATERIAL_H_
