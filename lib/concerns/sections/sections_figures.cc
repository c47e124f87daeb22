// Where the figures of `sections` come from.
#include "withy/sections/sections.h"

namespace withy {
namespace {

constexpr std::string_view kGeometry = "plane geometry";
constexpr std::string_view kFrusta = "own derivation: closed forms of conical frusta";
constexpr std::string_view kDefinition = "own definition";

std::vector<Figure> FiguresOfOne() {
  return {
      {"sections.sections[].cut_butt_mm",
       "planned cuts added up, or logged ones, whichever is more",
       "own definition: what is off stays off",
       {"blank.cuts[section=&at_end!=TIP].amount", "log[cut.section=&cut.at_end!=TIP].cut.amount"}},
      {"sections.sections[].cut_tip_mm",
       "planned cuts added up, or logged ones, whichever is more",
       "own definition: what is off stays off",
       {"blank.cuts[section=&at_end=TIP].amount", "log[cut.section=&cut.at_end=TIP].cut.amount"}},
      {"sections.sections[].length_mm",
       "length as supplied less both cuts",
       kGeometry,
       {"blank.sections[=].length", "sections.sections[=].cut_butt_mm", "sections.sections[=].cut_tip_mm"}},
      {"sections.sections[].mass_g",
       "the latest weighing, less what was cut off since by its share; not weighed: density x sum of pi w (D - w) ds; "
       "weighed together with others: these give way to the total by the squares of their uncertainties",
       "own derivation: closed forms of conical frusta; least squares with the sum exact",
       {"log[weighed.what=].weighed.mass", "blank.sections[=].mass", "blank.mass", "blank.sections[=].density",
        "blank.sections[=].taper.stations", "sections.sections[=].length_mm"}},
      {"sections.sections[].balance_from_butt_mm",
       "first moment / mass of what is left: as measured before the cuts, less what came off; not measured: of pi w (D "
       "- w) along it",
       "statics; closed forms of conical frusta",
       {"log[weighed.what=].weighed.balance_from_butt", "blank.sections[=].balance_from_butt",
        "sections.sections[=].outer_mm", "sections.sections[=].wall_mm", "sections.sections[=].cut_butt_mm",
        "sections.sections[=].cut_tip_mm"}},
      {"sections.sections[].mass_from",
       "what the mass is known by",
       kDefinition,
       {"blank.sections[=].mass", "log[weighed.what=].weighed.mass"}},
      {"sections.sections[].at_mm",
       "stations of the taper table between the cuts, and both ends",
       kDefinition,
       {"blank.sections[=].taper.stations", "log[calipered.section=].calipered.taper.stations",
        "sections.sections[=].cut_butt_mm", "sections.sections[=].cut_tip_mm"}},
      {"sections.sections[].outer_mm",
       "linear between stations; of two readings across, their mean",
       "own definition: piecewise linear",
       {"blank.sections[=].taper.stations", "log[calipered.section=].calipered.taper.stations",
        "sections.sections[=].at_mm"}},
      {"sections.sections[].wall_mm",
       "linear between stations that know it; none does: one ratio k of wall to diameter so that solid mass x (1 - (1 "
       "- 2k)^2) is the weighed mass",
       kFrusta,
       {"blank.sections[=].taper.stations", "blank.sections[=].mass", "blank.sections[=].density",
        "sections.sections[=].outer_mm"}},
      {"sections.sections[].ei_n_m2",
       "E x pi/64 (D^4 - d^4); of a hexagon E x 5 sqrt(3)/144 D^4",
       "second moments of plane figures",
       {"blank.sections[=].modulus", "sections.sections[=].outer_mm", "sections.sections[=].wall_mm"}},
      {"sections.sections[].inertia_at_balance_kg_m2",
       "integral of density x (A (s - balance)^2 + I) ds, scaled to the mass",
       kFrusta,
       {"sections.sections[=].mass_g", "sections.sections[=].outer_mm", "sections.sections[=].wall_mm"}},
  };
}

std::vector<Figure> FiguresOfBlank() {
  return {
      {"sections.pieces", "number of sections that are not spares", kDefinition, {"blank.sections[].spare_for"}},
      {"sections.packed_length_mm",
       "the longest piece: what is left of a section and its spigot, with the handle behind the first and the tip-top "
       "beyond the last",
       kGeometry,
       {"sections.sections[].length_mm", "blank.joints[].spigot.standing_out", "fit.blank_butt_mm",
        "fit.overall_length_mm", "fit.blank_tip_mm"}},
      {"sections.blank_length_mm",
       "sections after their cuts, less overlaps, plus gaps",
       kGeometry,
       {"sections.sections[].length_mm", "blank.joints[].overlap", "blank.joints[].gap"}},
      {"sections.tip_diameter_mm",
       "taper table of the tip section at its tip-side cut, linear between stations",
       "own definition: piecewise linear",
       {"blank.sections[].taper.stations", "sections.sections[].cut_tip_mm"}},
      {"sections.butt_diameter_mm",
       "taper table of the butt section at its butt-side cut, linear between stations",
       "own definition: piecewise linear",
       {"blank.sections[].taper.stations", "sections.sections[].cut_butt_mm"}},
  };
}

}  // namespace

std::vector<Figure> SectionsFigures() {
  std::vector<Figure> all = FiguresOfOne();
  const std::vector<Figure> blank = FiguresOfBlank();
  all.insert(all.end(), blank.begin(), blank.end());
  return all;
}

}  // namespace withy
