// Where the figures of `balance` come from.
#include "withy/balance/balance.h"

namespace withy {
namespace {

constexpr std::string_view kStatics = "statics: sums of mass and of mass x place";
constexpr std::string_view kSteiner = "parallel-axis theorem";
constexpr std::string_view kDefinition = "own definition";
// Where it is held: as ordered, else the middle of the reel foot.
constexpr std::string_view kHold =
    "intent.holding_point_from_butt|intent.reel.foot_center_from_butt|handle.parts[].seat.foot_center";
constexpr std::string_view kAim = "balance.aim_from_butt_mm";
constexpr std::string_view kOnThen = "log[weighed.what=none].weighed.weights";
constexpr std::string_view kOffThen = "log[weighed.what=none].weighed.missing";
constexpr std::string_view kWhole = "own derivation: whole stock units, the potting's own mass counted";

std::vector<Figure> WholeRod() {
  return {
      {"balance.mass_g",
       "sum of all parts; of a weighed whole what the scales read",
       kStatics,
       {"balance.parts[].mass_g", "log[weighed.what=none].weighed.mass", "balance.remainder_g", kOnThen, kOffThen}},
      {"balance.balance_from_butt_mm",
       "sum of mass x centre / mass",
       kStatics,
       {"balance.parts[].mass_g", "balance.parts[].center_mm", "log[weighed.what=none].weighed.balance_from_butt",
        kOnThen, kOffThen}},
      {"balance.mass_with_reel_g", "rod + reel", kStatics, {"balance.mass_g", "intent.reel.mass"}},
      {"balance.balance_with_reel_mm",
       "(rod x its balance point + reel x its foot's place) / mass of both",
       kStatics,
       {"balance.mass_g", "balance.balance_from_butt_mm", "intent.reel.mass",
        "intent.reel.foot_center_from_butt|handle.parts[].seat.foot_center"}},
      {"balance.moment_about_hold_n_m",
       "g x mass with reel x (balance point with reel - hold), g = 9.80665 m/s2; hold: as ordered, else the middle of "
       "the reel foot",
       "statics; standard gravity, 3rd CGPM 1901",
       {"balance.mass_with_reel_g", "balance.balance_with_reel_mm", kHold}},
      {kAim,
       "the balance point ordered; else where it is held: as ordered, else the middle of the reel foot",
       kDefinition,
       {"intent.balance_from_butt|intent.holding_point_from_butt|intent.reel.foot_center_from_butt|handle.parts[].seat."
        "foot_center"}},
      {"balance.aim", "which of those", kDefinition, {kAim}},
      {"balance.inertia_about_hold_kg_m2",
       "sum of own inertia + mass x (centre - hold)^2, no reel; hold: as ordered, else the middle of the reel foot",
       kSteiner,
       {"balance.parts[].mass_g", "balance.parts[].center_mm", kHold, "sections.sections[].inertia_at_balance_kg_m2"}},
      {"balance.swing_inertia_kg_m2",
       "the same + reel x (its foot's place - hold)^2",
       kSteiner,
       {"balance.inertia_about_hold_kg_m2", "intent.reel.mass",
        "intent.reel.foot_center_from_butt|handle.parts[].seat.foot_center", kHold}},
      {"balance.remainder_g",
       "weighed whole less the sum of what was on it, before that gave way",
       kStatics,
       {"log[weighed.what=none].weighed.mass", "balance.parts[].mass_g", kOnThen, kOffThen}},
      {"balance.rests_on",
       "a weighing of the whole, of a half-built rod, or the parts",
       kDefinition,
       {"log[weighed.what=none].weighed.mass", kOnThen, kOffThen}},
      {"balance.parts[].start_mm",
       "its butt-side end",
       "plane geometry",
       {"fit.parts[=].start_mm", "fit.parts[].arbors[=].start_mm", "wraps.wraps[=].start_mm",
        "bonding.joints[at+.bond=.at].from_mm"}},
      {"balance.parts[].length_mm",
       "along the rod",
       "plane geometry",
       {"sections.sections[=].length_mm|@Part.length|@Arbor.length", "wraps.wraps[=].length_mm",
        "bonding.joints[at+.bond=.at].to_mm", "bonding.joints[at+.bond=.at].from_mm"}},
      {"balance.parts[].mass_g",
       "as weighed, else as written, else density x volume; of weights count x unit; of what was weighed together the "
       "misfit is shared by the squares of the uncertainties",
       "statics; closed forms of conical frusta; least squares with the sum exact",
       {"bonding.joints[at+.bond=.at].mass_g|sections.sections[=].mass_g|@Weights.unit_mass|guides.guides[=].mass_g|"
        "wraps.wraps[=].mass_g|log[weighed.what=].weighed.mass|@Part.mass|@Arbor.mass|@TipTop.mass|@Joint.mass|@Spigot."
        "mass|@Part.density|@Arbor.density",
        "@Weights.count", "@Part.mass|@Part.outer", "@Part.mass|@Part.bore", "@Arbor.mass|@Arbor.outer"}},
      {"balance.parts[].center_mm",
       "its start + its own balance point; else that of its shape; else its middle",
       kStatics,
       {"sections.sections[=].balance_from_butt_mm", "@Part.balance_from_own_butt|@Part.outer",
        "guides.guides[=].from_butt_mm", "balance.parts[=].start_mm", "balance.parts[=].length_mm", "fit.blank_butt_mm",
        "fit.blank_tip_mm"}},
      {"balance.parts[].mass_from",
       "what the mass is known by",
       kDefinition,
       {"sections.sections[=].mass_from", "@Part.mass"}},
  };
}

std::vector<Figure> Counterweights() {
  return {
      {"balance.counterweights.status",
       "what ends the count",
       kWhole,
       {"balance.counterweights.moment_without_n_m", "balance.counterweights.fit"}},
      {"balance.counterweights.count",
       "largest number that fits behind the aim with a moment about it >= 0 after potting",
       kWhole,
       {"balance.counterweights.fit", "balance.counterweights.unit_mass_g", "balance.counterweights.moment_without_n_m",
        kAim, "handle.parts[=].cavity.at", "handle.parts[=].weights.bond"}},
      {"balance.counterweights.count_planned",
       "potted by the log, else as the design says",
       kDefinition,
       {"log[potted.part=].potted.count", "handle.parts[=].weights.count"}},
      {"balance.counterweights.fit",
       "layers in the room less the cover x side by side; the room ends at the blank or at the cavity's end",
       "plane geometry",
       {"balance.counterweights.side_by_side", "handle.parts[=].cavity.length", "handle.parts[=].weights.unit_length",
        "handle.parts[=].weights.cover", "fit.blank_butt_mm"}},
      {"balance.counterweights.side_by_side",
       "equal circles in a circle",
       "smallest circles around n equal ones: packing",
       {"handle.parts[=].cavity.diameter", "handle.parts[=].weights.unit_diameter"}},
      {"balance.counterweights.unit_mass_g",
       "of the part; else the shop's stock unit; else 0.25 oz",
       kDefinition,
       {"handle.parts[=].weights.unit_mass|shop.counterweight_unit"}},
      {"balance.counterweights.mass_g",
       "count x unit",
       kStatics,
       {"balance.counterweights.count", "balance.counterweights.unit_mass_g"}},
      {"balance.counterweights.potting_g",
       "volume x density of the cured mix (1.15 g/cm3 where it is not known)",
       kWhole,
       {"balance.counterweights.potting_ml", "handle.parts[=].weights.bond"}},
      {"balance.counterweights.potting_ml",
       "cavity as far as the cover reaches less the units",
       "plane geometry",
       {"balance.counterweights.count", "handle.parts[=].cavity.diameter", "handle.parts[=].weights.unit_length",
        "handle.parts[=].weights.unit_diameter", "handle.parts[=].weights.cover"}},
      {"balance.counterweights.moment_without_n_m",
       "moment about the aim of everything else, reel on",
       kStatics,
       {"balance.parts[weights_of=none].mass_g", "balance.parts[weights_of=none].center_mm", "intent.reel.mass", kAim}},
      {"balance.counterweights.moment_before_potting_n_m",
       "that without + g x units x (their centre - aim)",
       kStatics,
       {"balance.counterweights.moment_without_n_m", "balance.counterweights.mass_g", "handle.parts[=].cavity.at",
        kAim}},
      {"balance.counterweights.moment_after_n_m",
       "that before + g x potting x (its centre - aim)",
       kStatics,
       {"balance.counterweights.moment_before_potting_n_m", "balance.counterweights.potting_g",
        "handle.parts[=].cavity.at", kAim}},
      {"balance.counterweights.moment_with_one_more_n_m",
       "the same with one unit more",
       kWhole,
       {"balance.counterweights.moment_after_n_m", "balance.counterweights.unit_mass_g"}},
      {"balance.counterweights.count_if_potting_ignored",
       "the count without the potting's mass",
       kWhole,
       {"balance.counterweights.moment_without_n_m", "balance.counterweights.unit_mass_g"}},
      {"balance.counterweights.stop_short_at_tip_g",
       "moment before potting / (g x (tip-top's ring - aim))",
       kStatics,
       {"balance.counterweights.moment_before_potting_n_m", "fit.tip_ring_mm", kAim}},
      {"balance.counterweights.added_mass_g",
       "units + potting",
       kStatics,
       {"balance.counterweights.mass_g", "balance.counterweights.potting_g"}},
      {"balance.counterweights.added_inertia_kg_m2",
       "of units and potting about the hold",
       kSteiner,
       {"balance.counterweights.added_mass_g", "handle.parts[=].cavity.at", kHold}},
      {"balance.counterweights.confidence",
       "the count at both ends of the moment's uncertainty",
       kWhole,
       {"balance.counterweights.moment_without_n_m", "balance.counterweights.count"}},
      {"balance.counterweights.potted",
       "as planned, and what then rests on calculation",
       kDefinition,
       {"handle.parts[=].weights.potted"}},
      {"balance.counterweights.balance_after_mm",
       "first moment / mass with units, potting and reel",
       kStatics,
       {"balance.counterweights.moment_after_n_m", "balance.counterweights.added_mass_g", "balance.parts[].mass_g",
        "intent.reel.mass"}},
  };
}

std::vector<Figure> Instead() {
  constexpr std::string_view kSolved = "own derivation: the moment about the aim set to nothing";
  return {
      {"balance.instead[].kind", "what is changed", kDefinition, {}},
      {"balance.instead[].mass_g",
       "mass at its place for which the moment is nothing",
       kSolved,
       {"balance.counterweights.moment_without_n_m|balance.balance_with_reel_mm", kAim,
        "intent.reel.foot_center_from_butt|handle.parts[].seat.foot_center", "balance.parts[=].center_mm"}},
      {"balance.instead[].longer_mm",
       "length of butt for which the moment is nothing",
       kSolved,
       {"balance.counterweights.moment_without_n_m|balance.balance_with_reel_mm", "balance.mass_with_reel_g", kAim}},
      {"balance.instead[].text",
       "what to do, in words",
       kDefinition,
       {"balance.instead[=].mass_g", "balance.instead[=].longer_mm"}},
  };
}

}  // namespace

std::vector<Figure> BalanceFigures() {
  std::vector<Figure> all;
  for (const auto& figures : {WholeRod(), Counterweights(), Instead()})
    all.insert(all.end(), figures.begin(), figures.end());
  return all;
}

}  // namespace withy
