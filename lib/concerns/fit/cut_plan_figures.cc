// Where the figures of `fit.cut_plan` come from.
#include "cut_plan_figures.h"

namespace withy {
namespace {

constexpr std::string_view kGeometry = "plane geometry";
constexpr std::string_view kDefinition = "own definition";
constexpr std::string_view kPiecewise = "own definition: piecewise linear";
constexpr std::string_view kContact = "own derivation: exact contact of two piecewise linear profiles";

std::vector<Figure> Cut() {
  return {
      {"fit.cut_plan.bore_from",
       "what is known of the bore",
       kDefinition,
       {"handle.parts[=].bore_known", "handle.parts[=].bore|handle.parts[=].plugs", "log[fit.part=].fit.overall"}},
      {"fit.cut_plan.cut_done_mm",
       "logged cuts off the butt end, added up",
       kDefinition,
       {"log[cut.at_end!=TIP].cut.amount"}},
      {"fit.cut_plan.cut_planned_mm",
       "planned or logged cuts off the butt end, whichever is more",
       kDefinition,
       {"blank.cuts[at_end!=TIP].amount", "fit.cut_plan.cut_done_mm"}},
      {"fit.cut_plan.cut_for_target_mm",
       "least cut c, no less than is off, with l(c) <= length ordered; l(c) = rest of the butt face + blank - c + "
       "tip-top; what is off where that is within the tolerance",
       kContact,
       {"intent.overall_length", "handle.parts[=].bore|handle.parts[=].plugs", "handle.parts[=].fitting.glue_clearance",
        "handle.parts[=].fitting.stop", "fit.cut_plan.tighter_than_read_mm", "fit.cut_plan.cut_done_mm",
        "blank.sections[].taper.stations", "blank.sections[].length", "tip_top.end_beyond_tube"}},
      {"fit.cut_plan.outcome",
       "whether some cut gives the length ordered",
       kContact,
       {"fit.cut_plan.cut_for_target_mm", "intent.overall_length", "fit.cut_plan.cut_done_mm"}},
      {"fit.cut_plan.nearest_below_mm",
       "where no cut gives the length ordered: l at the least cut that gives less",
       kContact,
       {"fit.cut_plan.outcome", "intent.overall_length"}},
      {"fit.cut_plan.nearest_above_mm",
       "where no cut gives the length ordered: l just before that cut, or where cutting ends",
       kContact,
       {"fit.cut_plan.outcome", "intent.overall_length"}},
      {"fit.cut_plan.verdict",
       "with d = |length - ordered|: meets if d + its uncertainty <= tolerance (1/8 in where none is ordered), misses "
       "if d - that > tolerance, else cannot tell; a jump within the uncertainty refuses 'meets'",
       "own definition: guarded acceptance, after JCGM 106:2012",
       {"fit.overall_length_mm", "intent.overall_length", "fit.cut_plan.jump_near", "fit.rest_from"}},
      {"fit.cut_plan.measure", "what narrows the length most", kDefinition, {"fit.cut_plan.verdict"}},
      {"fit.cut_plan.jump_near",
       "l falls by more than 0.1 mm at once for some diameter within the uncertainty",
       kContact,
       {"handle.parts[=].bore|handle.parts[=].plugs", "blank.sections[].taper.reading.diameter_plus_minus",
        "fit.cut_plan.tighter_than_read_mm", "fit.cut_plan.cut_planned_mm"}},
      {"fit.cut_plan.tighter_than_read_mm",
       "difference of diameters at which the latest dry fit is met exactly",
       kContact,
       {"fit.cut_plan.dry_fits[].tighter_mm"}},
      {"fit.cut_plan.lengths[].cut_mm",
       "what is off by now, every bend and jump of the length from there on, each whole inch, half the butt section",
       kContact,
       {"fit.cut_plan.cut_done_mm", "handle.parts[=].bore|handle.parts[=].plugs", "blank.sections[].taper.stations"}},
      {"fit.cut_plan.lengths[].overall_mm",
       "rest of the butt face + blank - cut + tip-top",
       kContact,
       {"fit.cut_plan.lengths[=].cut_mm", "handle.parts[=].bore|handle.parts[=].plugs",
        "fit.cut_plan.tighter_than_read_mm", "tip_top.end_beyond_tube"}},
      {"fit.cut_plan.lengths[].overall_before_mm",
       "the same just below a cut at which the butt passes a shoulder",
       kContact,
       {"fit.cut_plan.lengths[=].cut_mm", "handle.parts[=].bore|handle.parts[=].plugs"}},
      {"fit.cut_plan.lengths[].shorter_per_mm",
       "slope of the length from this cut on",
       kContact,
       {"fit.cut_plan.lengths[=].cut_mm", "handle.parts[=].bore|handle.parts[=].plugs",
        "blank.sections[].taper.stations"}},
  };
}

std::vector<Figure> Stages() {
  constexpr std::string_view kStages = "own derivation: fewest cuts within the largest, the last one small";
  return {
      {"fit.cut_plan.stages[].take_mm",
       "the first of the fewest cuts within the largest, the last one small, that reach the target; no more than "
       "leaves the low end of the band at the target less its tolerance; each taken as dry fitted as expected before "
       "the next; 'withy trim' and 'withy plan' round it down to 1/16 in or 1 mm and leave the rest for the next",
       kStages,
       {"fit.cut_plan.cut_for_target_mm", "fit.cut_plan.cut_done_mm", "intent.overall_length",
        "shop.largest_single_cut", "shop.last_cut", "shop.saw_kerf"}},
      {"fit.cut_plan.stages[].total_mm",
       "off by now + this stage and those before it",
       kGeometry,
       {"fit.cut_plan.cut_done_mm", "fit.cut_plan.stages[].take_mm"}},
      {"fit.cut_plan.stages[].leave_mm",
       "assembled blank uncut at the butt less the total",
       kGeometry,
       {"sections.blank_length_mm", "fit.cut_plan.stages[=].total_mm"}},
      {"fit.cut_plan.stages[].expect_mm",
       "rest of the butt face + blank - total",
       kContact,
       {"fit.cut_plan.stages[=].total_mm", "handle.parts[=].bore|handle.parts[=].plugs",
        "fit.cut_plan.tighter_than_read_mm"}},
      {"fit.cut_plan.stages[].expect_from_mm",
       "the same at the low end of what the diameters leave open",
       kContact,
       {"fit.cut_plan.stages[=].expect_mm", "blank.sections[].taper.reading.diameter_plus_minus"}},
      {"fit.cut_plan.stages[].expect_to_mm",
       "the same at the high end of what the diameters leave open",
       kContact,
       {"fit.cut_plan.stages[=].expect_mm", "blank.sections[].taper.reading.diameter_plus_minus"}},
      {"fit.cut_plan.stages[].overall_mm",
       "what the dry fit reads + what lies behind the handle + tip-top",
       kGeometry,
       {"fit.cut_plan.stages[=].expect_mm", "handle.parts[].length", "tip_top.end_beyond_tube"}},
      {"fit.cut_plan.stages[].depth_mark_mm",
       "length of the handle part less rest of the butt face",
       kGeometry,
       {"fit.cut_plan.stages[=].expect_mm", "handle.parts[=].length"}},
      {"fit.cut_plan.stages[].decides",
       "the length does not fall evenly with the cut: its dry fit makes the plan anew",
       kDefinition,
       {"fit.cut_plan.bore_from"}},
  };
}

std::vector<Figure> DryFitsAndRemedies() {
  constexpr std::string_view kRemedy = "own definition: what is still open, cheapest first";
  return {
      {"fit.cut_plan.dry_fits[].cut_mm", "logged cuts off the butt end up to then", kDefinition, {"log[].cut.amount"}},
      {"fit.cut_plan.dry_fits[].read_mm",
       "as logged",
       kDefinition,
       {"log[fit.part=].fit.overall"}},
      {"fit.cut_plan.dry_fits[].expected_mm",
       "rest of the butt face + blank as it then was, bore and taper as read",
       kContact,
       {"fit.cut_plan.dry_fits[=].cut_mm", "handle.parts[=].bore|handle.parts[=].plugs",
        "blank.sections[].taper.stations"}},
      {"fit.cut_plan.dry_fits[].tighter_mm",
       "added to the blank's diameter so that the length read comes out",
       kContact,
       {"fit.cut_plan.dry_fits[=].read_mm", "fit.cut_plan.dry_fits[=].expected_mm"}},
      {"fit.cut_plan.dry_fits[].rest_mm",
       "length read less what was left of the blank then",
       kGeometry,
       {"fit.cut_plan.dry_fits[=].read_mm", "fit.cut_plan.dry_fits[=].cut_mm", "blank.sections[].length"}},
      {"fit.cut_plan.dry_fits[].bore_mm",
       "diameter of the butt edge + glue clearance",
       kContact,
       {"fit.cut_plan.dry_fits[=].cut_mm", "blank.sections[].taper.stations",
        "handle.parts[=].fitting.glue_clearance"}},
      {"fit.cut_plan.remedies[].kind", "what is changed", kRemedy, {"fit.cut_plan.outcome"}},
      {"fit.cut_plan.remedies[].text", "what to do, in words", kRemedy, {"fit.cut_plan.remedies[=].overall_mm"}},
      {"fit.cut_plan.remedies[].overall_mm",
       "overall length with the remedy",
       kGeometry,
       {"fit.cut_plan.nearest_below_mm", "fit.cut_plan.nearest_above_mm", "fit.overall_length_mm"}},
      {"fit.cut_plan.tip.cut_mm",
       "length with what is off by now less the length ordered",
       kGeometry,
       {"fit.cut_plan.cut_done_mm", "intent.overall_length", "fit.cut_plan.lengths[].overall_mm"}},
      {"fit.cut_plan.tip.tip_diameter_mm",
       "outer diameter of the assembled blank at its tip less that cut",
       kPiecewise,
       {"fit.cut_plan.tip.cut_mm", "sections.sections[].outer_mm"}},
      {"fit.cut_plan.tip.tube_in64",
       "thickest blank under the tube, up to the next half of 1/64 in",
       "custom of the trade: tubes in sixty-fourths",
       {"fit.cut_plan.tip.tip_diameter_mm"}},
      {"fit.cut_plan.tip.stiffer",
       "(diameter then / now)^3",
       "second moment of a thin tube: pi/8 D^3 w",
       {"fit.cut_plan.tip.tip_diameter_mm", "sections.tip_diameter_mm"}},
  };
}

}  // namespace

std::vector<Figure> CutPlanFigures() {
  std::vector<Figure> all;
  for (const auto& figures : {Cut(), RestingFigures(), Stages(), DryFitsAndRemedies()}) {
    all.insert(all.end(), figures.begin(), figures.end());
  }
  return all;
}

}  // namespace withy
