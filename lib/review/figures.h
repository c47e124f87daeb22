// Setting figures of a message from SI values that may be unknown.
//
//   Put(rod.overall_m, kMm, [&](double mm) { fit.set_overall_length_mm(mm); });
//   PutWithPlusMinus(rod.overall_m, kMm, set_value, set_plus_minus);
#ifndef WITHY_REVIEW_FIGURES_H_
#define WITHY_REVIEW_FIGURES_H_

#include <cmath>
#include <optional>

#include "withy/numerics/uncertain.h"
#include "withy/rod/known.h"

namespace withy {

// From SI to the unit of a figure.
inline constexpr double kMm = 1000;
inline constexpr double kGrams = 1000;
inline constexpr double kMl = 1e6;
inline constexpr double kAsIs = 1;

inline double SiOf(double value) { return value; }
inline double SiOf(const Uncertain& value) { return value.value(); }
inline double SiOf(Length value) { return value.meters(); }
inline double SiOf(Mass value) { return value.kilograms(); }
template <typename T>
double SiOf(const Known<T>& known) {
  return SiOf(known.value);
}

// Not set where it is not known, or not finite.
template <typename T, typename Set>
void Put(const std::optional<T>& known, double scale, Set set) {
  if (known && std::isfinite(SiOf(*known) * scale)) set(SiOf(*known) * scale);
}

// An uncertainty of nothing means that none was stated: it is left unset.
template <typename Set, typename SetPlusMinus>
void PutWithPlusMinus(const std::optional<Uncertain>& known, double scale, Set set, SetPlusMinus set_plus_minus) {
  if (!known || !std::isfinite(known->value() * scale)) return;
  set(known->value() * scale);
  const double plus_minus = known->plus_minus() * scale;
  if (plus_minus > 0 && std::isfinite(plus_minus)) set_plus_minus(plus_minus);
}

}  // namespace withy

#endif  // WITHY_REVIEW_FIGURES_H_
