// A design of one conical tube and what was read of it at a bench, as text.
//
//   BenchBlank blank;
//   blank.length_m = 1.95, blank.outer_butt_m = 0.012, blank.outer_tip_m = 0.002;
//   blank.loads_kg = {0.05}, blank.drops_m = {0.098};
//   blank.density_kg_m3 = 1560;                     // measured
//   ReadDesign("test", blank.Text())
//
// Clamped level at its butt end, weights hung and drops read at its tip, a mass fixed there while counting. Every
// reading to `relative` of itself, k = 2. What is not set is not known.
#ifndef WITHY_TESTS_SUPPORT_BENCH_BLANK_H_
#define WITHY_TESTS_SUPPORT_BENCH_BLANK_H_

#include <optional>
#include <string>
#include <vector>

#include "absl/strings/str_cat.h"
#include "absl/strings/str_format.h"

namespace withy::testing {

struct BenchBlank {
  double length_m = 0, outer_butt_m = 0, outer_tip_m = 0;
  std::optional<double> modulus_pa, density_kg_m3, wall_butt_m, wall_tip_m;  // measured, exact
  std::optional<double> mass_kg, balance_m;
  std::vector<double> loads_kg, drops_m;
  std::optional<double> frequency_hz;
  double mounted_kg = 0;
  double relative = 0.01;
  std::string more_in_section;

  std::string Text() const {
    std::string text = absl::StrCat("format: \"withy/1\" blank { sections { id: \"b\" material: \"carbon\" length { ",
                                    Mm(length_m), " } taper { ", Station(0, outer_butt_m, wall_butt_m),
                                    Station(length_m, outer_tip_m, wall_tip_m), "} ");
    if (modulus_pa) absl::StrAppend(&text, "modulus { gpa: ", Exact(*modulus_pa / 1e9), kMeasured);
    if (density_kg_m3) absl::StrAppend(&text, "density { g_per_cm3: ", Exact(*density_kg_m3 / 1e3), kMeasured);
    if (mass_kg) absl::StrAppend(&text, "mass { g: ", WithDoubt(*mass_kg * 1e3), kMeasured);
    if (balance_m) absl::StrAppend(&text, "balance_from_butt { mm: ", WithDoubt(*balance_m * 1e3), kMeasured);
    absl::StrAppend(&text, more_in_section, " } ");
    for (std::size_t i = 0; i < loads_kg.size(); ++i) {
      absl::StrAppend(&text, "bench { id: \"drop", i + 1,
                      "\" clamp { mm: 0 } drop { load { g: ", Exact(loads_kg[i] * 1e3), " } load_at { ", Mm(length_m),
                      " } read_at { ", Mm(length_m), " } drop { mm: ", WithDoubt(drops_m[i] * 1e3), kMeasured, "} } ");
    }
    if (frequency_hz) {
      absl::StrAppend(&text, "bench { id: \"beat\" clamp { mm: 0 } beat { cycles: 20 time { seconds: ",
                      WithDoubt(20 / *frequency_hz), " } mounted { g: ", Exact(mounted_kg * 1e3), " } mounted_at { ",
                      Mm(length_m), " } } } ");
    }
    return text + "}\n";
  }

 private:
  static constexpr char kMeasured[] = " source: MEASURED } ";
  static std::string Exact(double value) { return absl::StrFormat("%.17g", value); }
  static std::string Mm(double meters) { return absl::StrCat("mm: ", Exact(meters * 1e3)); }
  std::string WithDoubt(double value) const {
    return absl::StrCat(Exact(value), " plus_minus: ", Exact(value * relative));
  }
  static std::string Station(double at, double outer, const std::optional<double>& wall) {
    return absl::StrCat("stations { at { ", Mm(at), " } outer { ", Mm(outer), " } ",
                        wall ? absl::StrCat("wall { ", Mm(*wall), kMeasured) : "", "} ");
  }
};

}  // namespace withy::testing

#endif  // WITHY_TESTS_SUPPORT_BENCH_BLANK_H_
