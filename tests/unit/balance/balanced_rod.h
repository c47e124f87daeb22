// A rod whose moments are round numbers. About the hold at 300 mm, in g mm: blank 100 x (200 + 500 - 300) = 40000, handle
// m x (150 - 300), reel nothing. Its cavity begins at 20 mm, is 120 mm long and 20 mm wide, and takes 6 units of 20 g, 20 mm
// long, 15 mm across, one behind the other; n of them have their centre at 20 + 10 n. Potting of 1.15 g/cm3 without cover
// puts pi/4 (20^2 - 15^2) x 20 mm3 = 3.1612 g round each.
#ifndef WITHY_TESTS_UNIT_BALANCE_BALANCED_ROD_H_
#define WITHY_TESTS_UNIT_BALANCE_BALANCED_ROD_H_

#include <cmath>
#include <string>

#include "support/rod_of.h"
#include "withy/balance/balance.h"

namespace withy::testing {

inline const double kUnitAndPottingG = 20 + M_PI / 4 * (400 - 225) * 20 * 1.15e-3;

struct BalancedRod {
  std::string module_g = "130";
  std::string blank_plus_minus_g = "0";
  std::string module_plus_minus_g = "0";
  std::string foot_mm = "300";
  std::string count = "count: 3";
  std::string order;  // more of `intent`
  std::string log;
  std::string more;     // of the design
  std::string parts;    // more of them, behind
  bool before = false;  // or before the module
};

inline Rod MakeRod(const BalancedRod& of) {
  return RodOf(R"(
    intent { holding_point_from_butt { mm: 300 } reel { mass { g: 200 plus_minus: 0 } foot_center_from_butt { mm: )" +
               of.foot_mm + " } } " + of.order + R"( }
    blank { sections { id: "b" shape: "solid_round" material: "glass" length { mm: 1000 plus_minus: 0 }
      taper { stations { at { mm: 0 } outer { mm: 12 } } stations { at { mm: 1000 } outer { mm: 11 } } }
      mass { g: 100 source: MEASURED plus_minus: )" +
               of.blank_plus_minus_g + R"( } balance_from_butt { mm: 500 plus_minus: 0 } } }
    handle { blank_butt_from_butt { mm: 200 plus_minus: 0 } )" +
               (of.before ? of.parts : "") + R"( parts { id: "module" kind: "one_piece_handle" length { mm: 300 }
      mass { g: )" +
               of.module_g + " plus_minus: " + of.module_plus_minus_g + R"( } balance_from_own_butt { mm: 150 }
      cavity { at { mm: 20 } length { mm: 120 } diameter { mm: 20 } }
      weights { unit_mass { g: 20 plus_minus: 0 } unit_length { mm: 20 } unit_diameter { mm: 15 } cover { mm: 0 } )" +
               of.count + "} } " + (of.before ? "" : of.parts) + "}" + of.more + of.log);
}

inline BalanceAnswers BalanceOf(const Rod& rod, const BondingAnswers& bonding = {}) {
  Inputs inputs = rod.inputs;
  const SectionsAnswers sections = ComputeSections(rod, inputs);
  const FitAnswers fit = ComputeFit(rod, sections);
  return ComputeBalance(rod, sections, fit, bonding, ComputeWraps(rod), inputs);
}

}  // namespace withy::testing

#endif  // WITHY_TESTS_UNIT_BALANCE_BALANCED_ROD_H_
