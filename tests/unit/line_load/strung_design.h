// A rod of one conical tube under a line, as a design: what the reference cases of family G speak of.
#ifndef WITHY_TESTS_UNIT_LINE_LOAD_STRUNG_DESIGN_H_
#define WITHY_TESTS_UNIT_LINE_LOAD_STRUNG_DESIGN_H_

#include <string>
#include <utility>
#include <vector>

#include "absl/strings/str_format.h"

namespace withy::testing {

struct StrungDesign {
  double length_m = 2.1;  // ahead of the clamp
  double outer_butt_m = 0.0125, outer_tip_m = 0.002;
  double wall_butt_m = 0.001, wall_tip_m = 0.00045;
  double modulus_pa = 110e9, modulus_plus_minus_gpa = 0;
  int side = 1;
  double reel_s_m = -0.12, reel_offset_m = 0.034;
  std::vector<std::pair<double, double>> rings = {  // from the clamp, off the axis; the tip-top last
      {0.5, 0.015}, {0.9, 0.012}, {1.25, 0.009}, {1.55, 0.008}, {1.8, 0.008}, {2.1, 0.007}};
  double tension_n = 20, tension_plus_minus_n = 0;
  double line_deg = 90, butt_deg = 0;
  double friction = 0;  // 0 = none is written
};

constexpr double kClampM = 0.2;  // from the butt end; the tube is straight up to there

inline double OuterAt(const StrungDesign& of, double s_m) {
  return of.outer_butt_m + (of.outer_tip_m - of.outer_butt_m) * s_m / of.length_m;
}

inline std::string BlankText(const StrungDesign& of) {
  const auto station = [](double at_m, double outer_m, double wall_m) {
    return absl::StrFormat("stations { at { mm: %.17g } outer { mm: %.17g } wall { mm: %.17g } }\n", at_m * 1000,
                           outer_m * 1000, wall_m * 1000);
  };
  return absl::StrFormat(
      "blank { sections { id: 's' shape: 'tube' length { mm: %.17g } density { g_per_cm3: 1.5 } mass { g: 1e-9 }\n"
      "modulus { gpa: %.17g plus_minus: %.17g } taper {\n%s%s%s} } }\n",
      (kClampM + of.length_m) * 1000, of.modulus_pa / 1e9, of.modulus_plus_minus_gpa,
      station(0, of.outer_butt_m, of.wall_butt_m), station(kClampM, of.outer_butt_m, of.wall_butt_m),
      station(kClampM + of.length_m, of.outer_tip_m, of.wall_tip_m));
}

inline std::string TrainText(const StrungDesign& of) {
  std::string text;
  for (std::size_t k = 0; k + 1 < of.rings.size(); ++k) {
    const auto& [s_m, offset_m] = of.rings[k];
    text += absl::StrFormat(
        "guide_models { id: 'm%d' form: 'single_foot' ring_height { mm: %.17g } }\n"
        "guides { id: 'g%d' model: 'm%d' from_tip { mm: %.17g } }\n",
        k + 1, (offset_m - OuterAt(of, s_m) / 2) * 1000, k + 1, k + 1, (of.length_m - s_m) * 1000);
  }
  return text + absl::StrFormat("tip_top { id: 'tip' ring_height { mm: %.17g } ring_center_beyond_tube { mm: 0 } }\n",
                                of.rings.back().second * 1000);
}

inline std::string OrderText(const StrungDesign& of) {
  return absl::StrFormat(
      "intent { holding_point_from_butt { mm: %.17g } reel { side: %s foot_center_from_butt { mm: %.17g } "
      "spool_axis_height { mm: %.17g } } %s }\n",
      kClampM * 1000, of.side > 0 ? "ABOVE" : "BELOW", (kClampM + of.reel_s_m) * 1000, of.reel_offset_m * 1000,
      of.friction > 0 ? absl::StrFormat("line { friction: %.17g }", of.friction) : "");
}

inline std::string LoadText(const StrungDesign& of) {
  return absl::StrFormat(
      "load_cases { id: 'l' tension { n: %.17g plus_minus: %.17g } butt_angle { deg: %.17g } line_angle { deg: %.17g } "
      "}\n",
      of.tension_n, of.tension_plus_minus_n, of.butt_deg, of.line_deg);
}

inline std::string TextOf(const StrungDesign& of) {
  return OrderText(of) + LoadText(of) + BlankText(of) + TrainText(of);
}

}  // namespace withy::testing

#endif  // WITHY_TESTS_UNIT_LINE_LOAD_STRUNG_DESIGN_H_
