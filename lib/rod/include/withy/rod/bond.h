// Adhesives and the bench they are mixed at.
#ifndef WITHY_ROD_BOND_H_
#define WITHY_ROD_BOND_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/rod/known.h"

namespace withy {

// Parts of resin and of hardener.
struct Ratio {
  double resin = 0, hardener = 0;
  bool operator==(const Ratio&) const = default;
};

struct Adhesive {
  std::string id;
  FieldPath at;
  std::string kind;                     // a word of the schema, or another
  std::optional<Ratio> by_volume, by_mass;  // both parts known and > 0
  Maybe<double> density_kg_m3;          // cured
  Maybe<double> pot_life_s;
  std::optional<double> pot_life_at_c;  // the temperature it is printed for
  Maybe<Mass> pot_life_mass;
  Maybe<double> set_s, full_cure_s;
  std::optional<double> cure_at_c;
};

// A mix as it was logged, with the parts that were taken where the entry says them. Corrected entries are left out.
struct GlueUp {
  std::string adhesive;                   // id
  std::optional<Ratio> by_volume, by_mass;
  FieldPath at;                           // of the entry
};

// What is true of the bench whatever rod is on it. Unset = not given; defaults are the concerns' and are listed there.
struct Shop {
  Maybe<double> smallest_batch_m3;
  std::optional<double> adhesive_waste;   // factor >= 1
  Maybe<Mass> counterweight_unit;
  Maybe<Length> saw_kerf;
  Maybe<Length> largest_single_cut, last_cut;
  Maybe<double> gluing_time_s;            // from mixing until one joint is closed
  std::optional<double> temperature_c;
  std::vector<Length> winding_check_bores;  // in stock, rising; empty = not given
};

}  // namespace withy

#endif  // WITHY_ROD_BOND_H_
