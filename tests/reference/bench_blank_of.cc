#include "reference/fields.h"
#include "reference/identify_answers.h"

namespace withy::reference {

testing::BenchBlank BenchBlankOf(const Value& entry, const char* measurements) {
  const Value& in = entry["input"];
  const Value& read = entry[measurements];
  testing::BenchBlank blank;
  blank.length_m = Get(in, "L_m");
  blank.outer_butt_m = Get(in, "od_butt_m");
  blank.outer_tip_m = Get(in, "od_tip_m");
  blank.mass_kg = Get(read, "mass_kg");
  blank.balance_m = Get(read, "balance_point_from_butt_m");
  for (const Value& load : in["tip_load_masses_kg"].GetArray()) blank.loads_kg.push_back(load.GetDouble());
  for (const Value& drop : read["tip_drop_m"].GetArray()) blank.drops_m.push_back(drop.GetDouble());
  blank.frequency_hz = Get(read, "first_frequency_with_tip_mass_Hz");
  blank.mounted_kg = Get(in, "frequency_tip_mass_kg");
  return blank;
}

}  // namespace withy::reference
