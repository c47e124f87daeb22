// A value with what is known about it, and the two lists that keep a figure honest: what was assumed for it, and what
// would have to be measured to tell it.
//
//   std::optional<Known<Length>> length = section.length;
//   if (!length) ...                     // not known, never zero
//   length->value.mm()                   // 2209.8
//   length->plus_minus                   // in SI (metres); unset = not known
//   length->at.ToString()                // blank.sections[butt].length: where the value stands, also when that is the log
#ifndef WITHY_ROD_KNOWN_H_
#define WITHY_ROD_KNOWN_H_

#include <optional>
#include <string>

#include "withy/findings/field_path.h"
#include "withy/units/quantity.h"

namespace withy {

// How a value is known. A measured one beats a planned one beats a catalogue one beats an assumed one.
enum class Source {
  kPlan,       // the author wrote it and says no more
  kMeasured,   // read from an instrument
  kCatalogue,  // printed by the maker or seller
  kEstimated,  // judged by eye
  kComputed,   // worked out by withy from other values
  kAssumed,    // a default that is listed in `Rod::assumptions`
};

// T is a quantity (Length, Mass), or double where the field's name ends in its SI unit (`density_kg_m3`).
template <typename T>
struct Known {
  T value{};
  std::optional<double> plus_minus;  // expanded uncertainty or tolerance in the SI unit, >= 0; unset = not known
  Source source = Source::kPlan;
  FieldPath at;                      // the field it was read from
};

template <typename T>
using Maybe = std::optional<Known<T>>;

// A value that was used because the design does not give it.
struct Assumption {
  FieldPath at;      // the field that would settle it
  std::string used;  // "1570 kg/m3"
  std::string why;   // the source of the value
};

// A figure that could not be told.
struct Unknown {
  std::string figure;   // path in the report: "fit.overall_length_mm"
  std::string measure;  // what would settle it, at the bench: "dry fit the handle again"
};

}  // namespace withy

#endif  // WITHY_ROD_KNOWN_H_
