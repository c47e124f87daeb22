// Quantities as written become SI values that know where they stood.
#ifndef WITHY_ROD_READ_QUANTITY_H_
#define WITHY_ROD_READ_QUANTITY_H_

#include <string_view>

#include "withy/rod/known.h"
#include "withy/v1/quantity.pb.h"

namespace withy {

// A quantity larger than this says nothing that a rod could use, and would overflow what is made from it. It is taken
// as not known here; the check of plausible ranges speaks of it.
inline constexpr double kLargestMetersOrKilograms = 1e6;
inline constexpr double kLargestOther = 1e15;

Source SourceOf(v1::Source::Value source);

// Each reads the field `name` of the thing at `owner`. Unset where the field is absent, has no unit, or is beyond any use;
// a quantity that says no source takes `otherwise`.
Maybe<Length> ReadLength(const v1::Length& q, const FieldPath& owner, std::string_view name,
                         Source otherwise = Source::kPlan);
Maybe<Mass> ReadMass(const v1::Mass& q, const FieldPath& owner, std::string_view name);
Maybe<double> ReadDensity(const v1::Density& q, const FieldPath& owner, std::string_view name);  // kg/m3
Maybe<double> ReadModulus(const v1::Modulus& q, const FieldPath& owner, std::string_view name);  // Pa
Maybe<double> ReadAngle(const v1::Angle& q, const FieldPath& owner, std::string_view name);      // degrees
Maybe<double> ReadForce(const v1::Force& q, const FieldPath& owner, std::string_view name);      // N
Maybe<double> ReadVolume(const v1::Volume& q, const FieldPath& owner, std::string_view name);    // m3
Maybe<double> ReadTime(const v1::Time& q, const FieldPath& owner, std::string_view name);        // s

// The bare values, for tables of thousands of rows.
std::optional<Length> LengthOf(const v1::Length& q);
std::optional<double> PlusMinusMeters(const v1::Length& q);
std::optional<double> CelsiusOf(const v1::Temperature& q);

// The value where it is known and above zero: what lengths and masses must be before anything is derived from them.
template <typename T>
std::optional<T> Positive(const Maybe<T>& known) {
  if (!known || !(known->value > T{})) return std::nullopt;
  return known->value;
}

}  // namespace withy

#endif  // WITHY_ROD_READ_QUANTITY_H_
