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

// Along the fibre, of the laminate or the cane as a blank is made of it: what is known of it is a range, and all of it is
// carried. Unset for a material without a figure worth using.
struct MaterialModulus {
  double pa = 0;
  double plus_minus_pa = 0;
  const char* why = "";
};
std::optional<MaterialModulus> ModulusOfMaterial(std::string_view material);

// Uncertainty of a modulus in Pa. Where none is written: measured 3 % (computed deflections of an identified rod: Ekander,
// Perkins and Richards, Sports Engineering 28:2, 2025), catalogue 10 %, planned or estimated 20 % (common practice, no
// source).
double ModulusPlusMinus(const Known<double>& modulus_pa);

// Uncertainty of a mass in kg. Where none is written: measured 0.5 %, catalogue 5 %, planned or estimated 10 % (common
// practice, no source), and `unstated` becomes true.
double MassPlusMinus(const Known<Mass>& mass, bool& unstated);
// What to list when that happened.
Assumption UnstatedMassAssumption();

}  // namespace withy

#endif  // WITHY_SECTIONS_MATERIAL_H_
