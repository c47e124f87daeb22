// A rod of one section without a handle, held at its butt: what textbooks speak of.
#ifndef WITHY_TESTS_UNIT_BENDING_BENCH_ROD_H_
#define WITHY_TESTS_UNIT_BENDING_BENCH_ROD_H_

#include <string>
#include <vector>

#include "absl/strings/str_format.h"
#include "support/rod_of.h"
#include "withy/bending/bending.h"

namespace withy::testing {

struct Cone {
  double length_m = 2, butt_m = 0.01, tip_m = 0.01;
  double wall_butt_m = 0, wall_tip_m = 0;  // 0 = solid
  double modulus_pa = 100e9;
  const char* solid = "solid_round";
  double mass_g = 1e-9;  // as good as weightless
  // Expanded uncertainties as written.
  double modulus_plus_minus_gpa = 0, mass_plus_minus_g = 0, diameter_plus_minus_mm = 0, wall_plus_minus_mm = 0;
};

// Held `clamp_mm` from its butt end.
inline std::string DesignOf(const Cone& cone, const std::string& load_cases, double clamp_mm = 0) {
  const bool tube = cone.wall_butt_m > 0;
  const auto station = [&](double at, double outer, double wall) {
    const std::string inside =
        tube ? absl::StrFormat(" wall { mm: %.17g plus_minus: %.17g }", wall * 1000, cone.wall_plus_minus_mm) : "";
    return absl::StrFormat("stations { at { mm: %.17g } outer { mm: %.17g }%s }\n", at * 1000, outer * 1000, inside);
  };
  return absl::StrFormat(
             "intent { holding_point_from_butt { mm: %.17g } }\n"
             "blank { sections { id: 's' shape: '%s' length { mm: %.17g } density { g_per_cm3: 1.5 } mass { g: %.17g "
             "plus_minus: %.17g } "
             "modulus { gpa: %.17g plus_minus: %.17g } taper { reading { diameter_plus_minus { mm: %.17g } }\n%s%s} } "
             "}\n",
             clamp_mm, tube ? "tube" : cone.solid, cone.length_m * 1000, cone.mass_g, cone.mass_plus_minus_g,
             cone.modulus_pa / 1e9, cone.modulus_plus_minus_gpa, cone.diameter_plus_minus_mm,
             station(0, cone.butt_m, cone.wall_butt_m), station(cone.length_m, cone.tip_m, cone.wall_tip_m)) +
         load_cases;
}

// Line angles count clockwise from the butt's forward axis.
inline std::string LoadCaseOf(double load_n, double butt_deg = 0, double direction_deg = -90, double plus_minus_n = 0,
                              double plus_minus_deg = 0) {
  return absl::StrFormat(
      "load_cases { id: 'l' tension { n: %.17g plus_minus: %.17g } at_tip: true "
      "butt_angle { deg: %.17g plus_minus: %.17g } line_angle { deg: %.17g } }\n",
      load_n, plus_minus_n, butt_deg, plus_minus_deg, butt_deg - direction_deg);
}

inline BendingAnswers BendingAnswersOf(const Rod& rod, const std::vector<OnTheBlank>& things = {}) {
  Inputs inputs = rod.inputs;
  const SectionsAnswers sections = ComputeSections(rod, inputs);
  return ComputeBending(rod, sections, things, inputs);
}
inline BendingAnswers BendingAnswersOf(const std::string& design, const std::vector<OnTheBlank>& things = {}) {
  return BendingAnswersOf(RodOf(design), things);
}

}  // namespace withy::testing

#endif  // WITHY_TESTS_UNIT_BENDING_BENCH_ROD_H_
