// Where the figures of `line_load` come from.
#include "withy/line_load/line_load.h"

namespace withy {
namespace {

constexpr std::string_view kStrung =
    "the plane inextensible elastica, EI theta' = M, with a massless line straight from ring to ring: own derivation";
constexpr std::string_view kPlane = "plane geometry";
constexpr std::string_view kDefinition = "own definition";
constexpr std::string_view kBending = "bending of beams: Euler and Bernoulli";

std::vector<Figure> OfLoad() {
  return {
      {"line_load.cases[].state",
       "the shape reached by raising the pull from nothing: all of it, or up to where it branches or turns back",
       "stability of equilibria along a path",
       {"line_load.cases[=].tension_n", "line_load.cases[=].line_angle_deg", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].reached",
       "share of the pull up to there",
       "stability of equilibria along a path",
       {"line_load.cases[=].tension_n", "line_load.cases[=].line_angle_deg", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].tension_n",
       "mass x 9.80665, or the pull as written",
       "standard gravity, 3rd CGPM 1901",
       {"load_cases[=].lifted", "load_cases[=].tension"}},
      {"line_load.cases[].line_angle_deg",
       "butt angle - line angle; -90 where no line angle is written",
       kDefinition,
       {"load_cases[=].line_angle", "line_load.cases[=].butt_angle_deg"}},
      {"line_load.cases[].butt_angle_deg", "as written; 0 where it is not", kDefinition, {"load_cases[=].butt_angle"}},
      {"line_load.cases[].clamp_mm",
       "as the load case says, else where the rod is held; not behind the blank's butt face",
       kDefinition,
       {"load_cases[=].clamp_from_butt", "intent.holding_point_from_butt", "bending.finished.clamp_mm",
        "fit.blank_butt_mm"}},
  };
}

std::vector<Figure> OfReel() {
  return {
      {"line_load.cases[].rings_stand",
       "the reel's side: above for casting and conventional, else below, unless written; around where a guide is "
       "turned",
       "custom of the trade",
       {"intent.reel.side", "intent.technique", "guides[].angle"}},
      {"line_load.cases[].reel_mm",
       "middle of the reel foot + spool lip from it",
       kPlane,
       {"intent.reel.foot_center_from_butt", "handle.parts[].seat.foot_center",
        "intent.reel.spool_lip_from_foot_center"}},
      {"line_load.cases[].reel_height_mm",
       "height of the spool's axis - spool lip x tan(tilt)",
       kPlane,
       {"intent.reel.spool_axis_height", "intent.reel.spool_lip_from_foot_center", "intent.reel.spool_axis_angle"}},
      {"line_load.cases[].reel_forward_mm",
       "that point turned with the butt",
       kPlane,
       {"line_load.cases[=].reel_mm", "line_load.cases[=].reel_height_mm", "line_load.cases[=].clamp_mm",
        "line_load.cases[=].butt_angle_deg"}},
      {"line_load.cases[].reel_up_mm",
       "that point turned with the butt",
       kPlane,
       {"line_load.cases[=].reel_mm", "line_load.cases[=].reel_height_mm", "line_load.cases[=].clamp_mm",
        "line_load.cases[=].butt_angle_deg"}},
  };
}

std::vector<Figure> OfShape() {
  return {
      {"line_load.cases[].at_mm",
       "48 even distances, the rings, and where the strain peaks",
       kDefinition,
       {"line_load.cases[=].clamp_mm", "fit.tip_ring_mm", "line_load.cases[=].rings[].from_butt_mm",
        "line_load.cases[=].peak_at_mm"}},
      {"line_load.cases[].forward_mm",
       "integral of cos(theta) ds from the clamp",
       kStrung,
       {"line_load.cases[=].at_mm", "line_load.cases[=].moment_n_m", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].up_mm",
       "integral of sin(theta) ds from the clamp",
       kStrung,
       {"line_load.cases[=].at_mm", "line_load.cases[=].moment_n_m", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].moment_n_m",
       "sum over the rings beyond s of (axis under the ring - r(s)) x F + (ring's centre - axis) x F; above a ring "
       "where it steps",
       kStrung,
       {"line_load.cases[=].tension_n", "line_load.cases[=].line_angle_deg", "line_load.cases[=].butt_angle_deg",
        "line_load.cases[=].rings[].offset_mm", "line_load.cases[=].reel_height_mm", "bending.finished.ei_n_m2",
        "intent.line.friction"}},
      {"line_load.cases[].guides_moment_n_m",
       "moment - (tip-top's ring - r(s)) x pull: of the line beside the blank, -(ring behind s - r(s)) x its pull "
       "there",
       kStrung,
       {"line_load.cases[=].moment_n_m", "line_load.cases[=].tension_n", "line_load.cases[=].rings[].offset_mm"}},
      {"line_load.cases[].strain_millistrain",
       "M D / (2 EI)",
       kBending,
       {"line_load.cases[=].moment_n_m", "sections.sections[].outer_mm", "bending.finished.ei_n_m2"}},
  };
}

std::vector<Figure> OfRings() {
  return {
      {"line_load.cases[].rings[].from_butt_mm",
       "the ring's plane; of the tip-top its ring's centre",
       kPlane,
       {"guides.guides[=].from_butt_mm", "fit.tip_ring_mm"}},
      {"line_load.cases[].rings[].offset_mm",
       "ring height + half the blank's diameter under it; of the tip-top, tube's axis to ring's centre",
       kPlane,
       {"guides.guides[=].ring_height_mm", "guides.guides[=].blank_diameter_mm", "tip_top[=].ring_height"}},
      {"line_load.cases[].rings[].forward_mm",
       "axis of the blank + offset across it, by the ring's angle about the blank",
       kStrung,
       {"line_load.cases[=].forward_mm", "line_load.cases[=].rings[=].offset_mm", "guides[=].angle"}},
      {"line_load.cases[].rings[].up_mm",
       "axis of the blank + offset across it, by the ring's angle about the blank",
       kStrung,
       {"line_load.cases[=].up_mm", "line_load.cases[=].rings[=].offset_mm", "guides[=].angle"}},
      {"line_load.cases[].rings[].aside_mm",
       "offset x sin of the ring's angle about the blank",
       kPlane,
       {"line_load.cases[=].rings[=].offset_mm", "guides[=].angle"}},
      {"line_load.cases[].rings[].blank_angle_deg",
       "butt angle + integral of M / EI ds",
       kStrung,
       {"line_load.cases[=].butt_angle_deg", "line_load.cases[=].moment_n_m", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].rings[].line_in_deg",
       "direction from the ring before (the reel) to this one",
       kPlane,
       {"line_load.cases[=].rings[].forward_mm", "line_load.cases[=].rings[].up_mm"}},
      {"line_load.cases[].rings[].line_out_deg",
       "direction from this ring to the next; beyond the tip-top that of the pull",
       kPlane,
       {"line_load.cases[=].rings[].forward_mm", "line_load.cases[=].rings[].up_mm",
        "line_load.cases[=].line_angle_deg"}},
      {"line_load.cases[].rings[].turn_deg",
       "angle between the two, in space where guides are turned; positive as the rod bends",
       kPlane,
       {"line_load.cases[=].rings[=].line_in_deg", "line_load.cases[=].rings[=].line_out_deg"}},
      {"line_load.cases[].rings[].force_n",
       "pull out - pull in, as vectors; without friction 2 T sin(turn / 2)",
       kStrung,
       {"line_load.cases[=].rings[=].tension_in_n", "line_load.cases[=].rings[=].tension_out_n",
        "line_load.cases[=].rings[=].turn_deg"}},
      {"line_load.cases[].rings[].force_along_n",
       "its part along the blank there",
       kPlane,
       {"line_load.cases[=].rings[=].force_n", "line_load.cases[=].rings[=].blank_angle_deg"}},
      {"line_load.cases[].rings[].force_across_n",
       "its part from the ring's centre to the blank's axis",
       kPlane,
       {"line_load.cases[=].rings[=].force_n", "line_load.cases[=].rings[=].blank_angle_deg"}},
      {"line_load.cases[].rings[].tension_in_n",
       "pull out x exp(-friction x turn): the line runs out; without friction the same",
       "belt friction: Euler and Eytelwein",
       {"line_load.cases[=].rings[=].tension_out_n", "line_load.cases[=].rings[=].turn_deg", "intent.line.friction"}},
      {"line_load.cases[].rings[].tension_out_n",
       "the pull, less what the rings beyond take",
       "belt friction: Euler and Eytelwein",
       {"line_load.cases[=].tension_n", "intent.line.friction"}},
  };
}

std::vector<Figure> OfSpans() {
  return {
      {"line_load.cases[].spans[].from_ring",
       "the ring behind; empty = the reel",
       kDefinition,
       {"line_load.cases[=].at_mm"}},
      {"line_load.cases[].spans[].to_ring", "the ring ahead", kDefinition, {"line_load.cases[=].at_mm"}},
      {"line_load.cases[].spans[].length_mm",
       "distance between the centres of its two rings",
       kPlane,
       {"line_load.cases[=].rings[].forward_mm", "line_load.cases[=].rings[].up_mm",
        "line_load.cases[=].rings[].aside_mm"}},
      {"line_load.cases[].spans[].direction_deg",
       "direction from one centre to the other",
       kPlane,
       {"line_load.cases[=].rings[].forward_mm", "line_load.cases[=].rings[].up_mm"}},
      {"line_load.cases[].spans[].tension_n",
       "the pull, less what the rings beyond take",
       "belt friction: Euler and Eytelwein",
       {"line_load.cases[=].tension_n", "line_load.cases[=].rings[].turn_deg", "intent.line.friction"}},
      {"line_load.cases[].spans[].clearance_mm",
       "least distance, square to the line, of the blank's surface on the rings' side; of a span in space line to axis "
       "less "
       "half a diameter",
       kPlane,
       {"line_load.cases[=].forward_mm", "line_load.cases[=].up_mm", "sections.sections[].outer_mm",
        "line_load.cases[=].rings[].offset_mm"}},
      {"line_load.cases[].spans[].clearance_at_mm",
       "where that is",
       kPlane,
       {"line_load.cases[=].forward_mm", "line_load.cases[=].up_mm", "sections.sections[].outer_mm"}},
  };
}

std::vector<Figure> OfTip() {
  return {
      {"line_load.cases[].tip_angle_deg",
       "butt angle + integral of M / EI ds",
       kStrung,
       {"line_load.cases[=].butt_angle_deg", "line_load.cases[=].moment_n_m", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].tip_to_line_deg",
       "angle between the two",
       kPlane,
       {"line_load.cases[=].tip_angle_deg", "line_load.cases[=].line_angle_deg"}},
      {"line_load.cases[].tip_drop_mm",
       "distance of the tip from the line straight on from the butt, square to it",
       kPlane,
       {"line_load.cases[=].forward_mm", "line_load.cases[=].up_mm", "line_load.cases[=].butt_angle_deg",
        "line_load.cases[=].tension_n", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].clamp_moment_n_m", "|M| at the clamp", kStrung, {"line_load.cases[=].moment_n_m"}},
      {"line_load.cases[].peak_strain_millistrain",
       "largest M D / (2 EI), looked for along the whole of it",
       kBending,
       {"line_load.cases[=].moment_n_m", "sections.sections[].outer_mm", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].peak_at_mm",
       "where that is",
       kBending,
       {"line_load.cases[=].moment_n_m", "sections.sections[].outer_mm", "bending.finished.ei_n_m2"}},
      {"line_load.cases[].strain_energy_j",
       "integral of M^2 / (2 EI) ds",
       kStrung,
       {"line_load.cases[=].moment_n_m", "bending.finished.ei_n_m2"}},
  };
}

std::vector<Figure> OfLine() {
  return {
      {"line_load.cases[].tension_at_reel_n",
       "pull in at the butt guide",
       "belt friction: Euler and Eytelwein",
       {"line_load.cases[=].rings[].tension_in_n"}},
      {"line_load.cases[].friction_loss_percent",
       "100 (1 - smaller / larger) of the pull beyond the tip-top and at the reel",
       "belt friction: Euler and Eytelwein",
       {"line_load.cases[=].tension_n", "line_load.cases[=].tension_at_reel_n"}},
      {"line_load.cases[].clearance_mm", "the least of all spans", kPlane, {"line_load.cases[=].spans[].clearance_mm"}},
      {"line_load.cases[].clearance_at_mm", "where that is", kPlane, {"line_load.cases[=].spans[].clearance_at_mm"}},
      {"line_load.cases[].most_turned",
       "the guide with the largest turn, the tip-top left out",
       kDefinition,
       {"line_load.cases[=].rings[].turn_deg"}},
      {"line_load.cases[].most_turn_deg", "its turn", kDefinition, {"line_load.cases[=].rings[].turn_deg"}},
      {"line_load.cases[].line_path_mm",
       "sum of the lengths of all spans",
       kPlane,
       {"line_load.cases[=].spans[].length_mm"}},
      {"line_load.cases[].error_mm",
       "how far the tip moves between two accuracies of the same computation",
       "a-posteriori estimate of the discretisation",
       {"line_load.cases[=].moment_n_m"}},
  };
}

}  // namespace

std::vector<Figure> LineLoadFigures() {
  std::vector<Figure> all;
  for (const auto& more : {OfLoad(), OfReel(), OfShape(), OfRings(), OfSpans(), OfTip(), OfLine()}) {
    all.insert(all.end(), more.begin(), more.end());
  }
  return all;
}

}  // namespace withy
