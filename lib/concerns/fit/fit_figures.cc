// Where the figures of `fit` come from.
#include "cut_plan_figures.h"
#include "withy/fit/fit.h"

namespace withy {
namespace {

constexpr std::string_view kGeometry = "plane geometry";
constexpr std::string_view kDefinition = "own definition";
constexpr std::string_view kPiecewise = "own definition: piecewise linear";
constexpr std::string_view kSpiral = "own derivation: arc of an Archimedean spiral";
constexpr std::string_view kCommonPractice = "common practice, no source";

std::vector<Figure> Lengths() {
  return {
      {"fit.overall_length_mm",
       "blank's tip end + what the tip-top reaches beyond its tube",
       kGeometry,
       {"fit.blank_tip_mm", "tip_top.end_beyond_tube|tip_top.ring_center_beyond_tube",
        "tip_top.end_beyond_tube|tip_top.ring_outer"}},
      {"fit.short_of_target_mm",
       "length ordered less overall length",
       kGeometry,
       {"intent.overall_length", "fit.overall_length_mm"}},
      {"fit.rest_from",
       "the first that is there: given, a dry fit at this cut, bore against taper, drawn on from dry fits, butt cap",
       "own definition: measured beats computed beats assumed",
       {"handle.blank_butt_from_butt", "log[].fit.overall",
        "handle.parts[id=.fit.cut_plan.host].bore|handle.parts[id=.fit.cut_plan.host].plugs"}},
      {"fit.blank_tip_mm",
       "by a dry fit: butt end of the part + what was read, less what came off elsewhere since; else butt face, as "
       "given, by contact or at the butt cap, + blank",
       kGeometry,
       {"log[fit.part=.fit.cut_plan.host].fit.overall|handle.blank_butt_from_butt|handle.parts[id=.fit.cut_plan.host]."
        "bore|handle.parts[id=.fit.cut_plan.host].plugs",
        "fit.parts[id=.fit.cut_plan.host].start_mm|handle.parts[].length", "sections.blank_length_mm"}},
      {"fit.blank_butt_mm",
       "blank's tip end less its length",
       kGeometry,
       {"fit.blank_tip_mm", "sections.blank_length_mm"}},
      {"fit.tip_ring_mm",
       "blank's tip end + ring centre beyond the tube",
       kGeometry,
       {"fit.blank_tip_mm", "tip_top.ring_center_beyond_tube|tip_top.end_beyond_tube",
        "tip_top.ring_center_beyond_tube|tip_top.ring_outer"}},
      {"fit.tip_tube_clearance_mm",
       "tube bore less the thickest blank that the tube goes over",
       kPiecewise,
       {"tip_top.tube_bore", "tip_top.tube_length", "sections.tip_diameter_mm"}},
      {"fit.mouth_play_mm",
       "bore at the front mouth less blank there, corrected by the latest dry fit",
       kPiecewise,
       {"handle.parts[id=.fit.cut_plan.host].bore", "handle.parts[id=.fit.cut_plan.host].plugs", "fit.blank_butt_mm",
        "sections.sections[].outer_mm", "fit.cut_plan.tighter_than_read_mm"}},
      {"fit.tip_off_axis_mm",
       "of all pairs of places in the bore the least of a + (a + b) x (tip - ahead) / (ahead - behind), a and b half "
       "the gap ahead and behind",
       "own derivation: a straight blank leans on two places",
       {"fit.mouth_play_mm", "handle.parts[id=.fit.cut_plan.host].bore", "fit.cut_plan.planned.depth_mm", "fit.blank_tip_mm",
        "fit.cut_plan.tighter_than_read_mm"}},
      {"fit.tip_off_axis_with_arbors_mm",
       "the same, half the gap at both ends of an arbor being (bore - outer) / 2",
       "own derivation: a straight blank leans on two places",
       {"fit.tip_off_axis_mm", "fit.parts[id=.fit.cut_plan.host].arbors[].outer_mm",
        "fit.parts[id=.fit.cut_plan.host].arbors[].start_mm"}},
  };
}

std::vector<Figure> Parts() {
  return {
      {"fit.parts[].start_mm",
       "as placed; else at the end of the part behind it",
       kGeometry,
       {"handle.parts[=].place", "log[placed.what=].placed.place", "handle.parts[].length"}},
      {"fit.parts[].length_mm", "as written", kDefinition, {"handle.parts[=].length"}},
      {"fit.parts[].blank_at_start_mm",
       "outer diameter of the blank under its butt-side face",
       kPiecewise,
       {"fit.parts[=].start_mm", "fit.blank_butt_mm", "sections.sections[].outer_mm"}},
      {"fit.parts[].blank_at_tip_side_mm",
       "outer diameter of the blank under its tip-side face",
       kPiecewise,
       {"fit.parts[=].start_mm", "fit.parts[=].length_mm", "fit.blank_butt_mm", "sections.sections[].outer_mm"}},
      {"fit.parts[].clearance_mm",
       "smallest bore less blank along it; at the mouth where only that is known",
       kPiecewise,
       {"handle.parts[=].bore|handle.parts[=].plugs", "fit.parts[=].start_mm", "fit.blank_butt_mm",
        "sections.sections[].outer_mm"}},
      {"fit.parts[].arbors[].start_mm",
       "start of the part + place in it as written; proposed: up to three along the longest straight of the bore, one "
       "at the neck, one at the rear",
       kCommonPractice,
       {"handle.parts[].arbors[=].at", "fit.parts[=].start_mm", "handle.parts[=].seat.thread_length",
        "handle.parts[=].seat.neck"}},
      {"fit.parts[].arbors[].length_mm",
       "as written; proposed: 12 mm",
       kCommonPractice,
       {"handle.parts[].arbors[=].length"}},
      {"fit.parts[].arbors[].blank_mm",
       "largest outer diameter of the blank under it",
       kPiecewise,
       {"fit.parts[=].arbors[=].start_mm", "fit.parts[=].arbors[=].length_mm", "fit.blank_butt_mm",
        "sections.sections[].outer_mm"}},
      {"fit.parts[].arbors[].bore_mm",
       "smallest bore diameter around it",
       kPiecewise,
       {"fit.parts[=].arbors[=].start_mm", "fit.parts[=].arbors[=].length_mm",
        "handle.parts[=].bore|handle.parts[=].plugs", "handle.parts[=].plugs"}},
      {"fit.parts[].arbors[].outer_mm",
       "as written; of tape blank + 2 x turns x thickness; else bore less the gap on both sides (0.1 mm where the part "
       "says none)",
       kGeometry,
       {"handle.parts[].arbors[=].outer|fit.parts[=].arbors[=].turns",
        "handle.parts[].arbors[=].outer|fit.parts[=].arbors[=].blank_mm",
        "handle.parts[].arbors[=].outer|fit.parts[=].arbors[=].bore_mm",
        "handle.parts[].arbors[=].outer|handle.parts[].arbors[=].tape_thickness",
        "handle.parts[].arbors[=].outer|handle.parts[=].fitting.glue_clearance"}},
      {"fit.parts[].arbors[].turns",
       "whole turns in (bore - blank - 2 gap) / (2 x thickness), in (outer - blank) / (2 x thickness) where that is "
       "written",
       kGeometry,
       {"handle.parts[].arbors[=].outer|fit.parts[=].arbors[=].bore_mm", "fit.parts[=].arbors[=].blank_mm",
        "handle.parts[].arbors[=].tape_thickness", "handle.parts[=].fitting.glue_clearance"}},
      {"fit.parts[].arbors[].tape_length_mm",
       "arc of r = blank / 2 + thickness x theta / (2 pi) over all turns",
       kSpiral,
       {"fit.parts[=].arbors[=].turns", "fit.parts[=].arbors[=].blank_mm", "handle.parts[].arbors[=].tape_thickness"}},
      {"fit.parts[].arbors[].gap_mm",
       "(bore - outer) / 2",
       kGeometry,
       {"fit.parts[=].arbors[=].bore_mm", "fit.parts[=].arbors[=].outer_mm"}},
      {"fit.parts[].arbors[].place",
       "as given, or what of the part needs one there",
       kCommonPractice,
       {"handle.parts[].arbors[=].at", "handle.parts[=].seat.thread_length", "handle.parts[=].seat.neck"}},
      {"fit.parts[].arbors[].proposed", "the design has no arbor there", kDefinition, {"handle.parts[].arbors[=].at"}},
  };
}

std::vector<Figure> Reaming() {
  return {
      {"fit.reaming[].rows[].at_mm", "both ends and every inch", kDefinition, {"handle.parts[=].length"}},
      {"fit.reaming[].rows[].blank_mm",
       "outer diameter of the blank there",
       kPiecewise,
       {"fit.parts[=].start_mm", "fit.blank_butt_mm", "sections.sections[].outer_mm"}},
      {"fit.reaming[].rows[].ream_mm",
       "blank + glue clearance (0.1 mm of a one-piece handle, 0.3 mm of others where the part says none)",
       kGeometry,
       {"fit.reaming[=].rows[=].blank_mm", "handle.parts[=].fitting.glue_clearance"}},
      {"fit.reaming[].rows[].bore_mm",
       "bore profile there",
       kPiecewise,
       {"handle.parts[=].bore|handle.parts[=].plugs"}},
      {"fit.winding_checks[].blank_mm",
       "outer diameter of the blank at its butt-side face",
       kPiecewise,
       {"fit.parts[=].blank_at_start_mm"}},
      {"fit.winding_checks[].bore_mm",
       "smallest stock bore not under the blank; without a stock list the next half millimetre",
       kDefinition,
       {"fit.winding_checks[=].blank_mm", "shop.winding_check_bores"}},
      {"fit.winding_checks[].gap_mm",
       "bore less blank",
       kGeometry,
       {"fit.winding_checks[=].bore_mm", "fit.winding_checks[=].blank_mm"}},
      {"fit.winding_checks[].next_bore_mm",
       "next stock bore down; without a stock list half a millimetre less",
       kDefinition,
       {"fit.winding_checks[=].bore_mm", "shop.winding_check_bores"}},
      {"fit.winding_checks[].next_stops_ahead_mm",
       "where the blank, from its tip, is first thicker than that, less its place",
       kPiecewise,
       {"fit.winding_checks[=].next_bore_mm", "fit.parts[=].start_mm", "sections.sections[].outer_mm"}},
      {"fit.winding_checks[].ream_mm",
       "blank less the next bore down",
       kGeometry,
       {"fit.winding_checks[=].blank_mm", "fit.winding_checks[=].next_bore_mm"}},
  };
}

}  // namespace

std::vector<Figure> FitFigures() {
  std::vector<Figure> all;
  for (const auto& figures : {Lengths(), CutPlanFigures(), Parts(), Reaming()}) {
    all.insert(all.end(), figures.begin(), figures.end());
  }
  return all;
}

}  // namespace withy
