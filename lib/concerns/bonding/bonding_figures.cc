// Where the figures of `bonding` come from.
#include "withy/bonding/bonding.h"

namespace withy {
namespace {

constexpr std::string_view kFrusta = "own derivation: exact frusta, pi/12 l (a^2 + a b + b^2)";
constexpr std::string_view kDefinition = "own definition";
constexpr std::string_view kMixing = "own derivation: volumes add, mass = density x volume";

std::vector<Figure> Joints() {
  return {
      {"bonding.joints[].potting", "counterweights in their cavity", kDefinition, {"handle.parts[=].weights.bond"}},
      {"bonding.joints[].from_mm",
       "where the bond begins: no further back than the inner one; of counterweights the cavity's butt-side end",
       "plane geometry",
       {"@Weights.count|fit.parts[=].start_mm", "fit.parts[].arbors[=].start_mm", "fit.blank_butt_mm",
        "fit.blank_tip_mm", "handle.parts[=].cavity.at"}},
      {"bonding.joints[].to_mm",
       "where it ends: no further than the inner one; of counterweights the end of their potting",
       "plane geometry",
       {"bonding.joints[=].from_mm", "fit.parts[=].length_mm", "fit.parts[].arbors[=].length_mm",
        "tip_top[=].tube_length"}},
      {"bonding.joints[].area_cm2",
       "lateral surface of the inner one along the bond",
       kFrusta,
       {"bonding.joints[=].from_mm", "bonding.joints[=].to_mm", "sections.sections[].outer_mm"}},
      {"bonding.joints[].gap_mm",
       "smallest (bore - inner) / 2 along the bond",
       "plane geometry",
       {"handle.parts[=].bore", "handle.parts[=].fitting.glue_clearance", "fit.cut_plan.tighter_than_read_mm",
        "tip_top[=].tube_bore", "sections.sections[].outer_mm"}},
      {"bonding.joints[].volume_ml",
       "bore less inner along the bond, less arbors, plus fillets; a reamed bore is the blank + glue clearance, a "
       "stretched one the blank + a film of 0.05 mm; of counterweights the cavity they fill less the units",
       kFrusta,
       {"bonding.joints[=].from_mm", "bonding.joints[=].to_mm", "@Part.bore", "@Part.fitting.glue_clearance",
        "@Arbor.bore", "@TipTop.tube_bore", "@Joint.overlap", "@Weights.count", "@Weights.unit_diameter",
        "@Weights.unit_length", "sections.sections[].outer_mm", "bonding.joints[=].arbors_ml",
        "bonding.joints[=].fillets_ml"}},
      {"bonding.joints[].arbors_ml",
       "pi/4 integral of (outer^2 - blank^2) over the arbors inside the bond",
       kFrusta,
       {"fit.parts[=].arbors[].outer_mm", "fit.parts[=].arbors[].length_mm", "fit.parts[=].arbors[].blank_mm"}},
      {"bonding.joints[].proposed_arbors_ml",
       "pi/4 integral of (outer^2 - blank^2) over the proposed arbors inside the bond; not taken off the volume",
       kFrusta,
       {"fit.parts[=].arbors[].outer_mm", "fit.parts[=].arbors[].length_mm", "fit.parts[=].arbors[].blank_mm"}},
      {"bonding.joints[].volume_after_cuts_ml",
       "the volume worked out anew, with all cuts of the last stage off the butt",
       kFrusta,
       {"bonding.joints[=].volume_ml", "fit.cut_plan.stages[].total_mm"}},
      {"bonding.joints[].pot_life_minutes",
       "pot life x 2^((temperature it is printed for - shop's) / 10 C)",
       "rule of thumb of three makers: halved by every 10 C",
       {"adhesives[id=.adhesive].mix.pot_life", "adhesives[id=.adhesive].mix.pot_life_at", "shop.temperature"}},
      {"bonding.joints[].fillets_ml",
       "pi b h (d/2 + h/3) at each end on bare blank, b and h 1 mm",
       "Pappus' theorem; common practice of the size, no source",
       {"bonding.joints[=].from_mm", "sections.sections[].outer_mm"}},
      {"bonding.joints[].mass_g",
       "volume x density of the cured mix",
       kMixing,
       {"bonding.joints[=].volume_ml", "adhesives[id=.adhesive].mix.density"}},
      {"bonding.joints[].done",
       "the log has a glue-up of it, or its weights potted",
       kDefinition,
       {"log[glued.what=].glued.bond", "log[potted.part=].potted.count"}},
      {"bonding.joints[].working_minutes",
       "as the shop says; 10 minutes where it does not",
       "common practice, no source",
       {"shop.gluing_time"}},
  };
}

std::vector<Figure> Batches() {
  constexpr std::string_view kPartition =
      "own derivation: the partition of consecutive joints that mixes least, by dynamic programming";
  return {
      {"bonding.batches[].potting",
       "counterweights in their cavity",
       kDefinition,
       {"bonding.joints[at=.joint_at].potting"}},
      {"bonding.batches[].need_ml", "sum over its joints", kPartition, {"bonding.joints[at=.joint_at].volume_ml"}},
      {"bonding.batches[].mix_ml",
       "the larger of waste x need and the smallest batch (6 ml where the shop says none)",
       kPartition,
       {"bonding.batches[=].need_ml", "shop.adhesive_waste", "shop.smallest_batch"}},
      {"bonding.batches[].mix_after_cuts_ml",
       "the larger of waste x need after the cuts to come and the smallest batch",
       kPartition,
       {"bonding.joints[at=.joint_at].volume_after_cuts_ml", "shop.adhesive_waste", "shop.smallest_batch"}},
      {"bonding.batches[].smallest_decides",
       "waste x need is below the smallest batch",
       kPartition,
       {"bonding.batches[=].need_ml", "shop.adhesive_waste", "shop.smallest_batch"}},
      {"bonding.batches[].resin_ml",
       "mix x resin / (resin + hardener), where the ratio by volume is known",
       kMixing,
       {"bonding.batches[=].mix_ml", "adhesives[id=.adhesive].mix.by_volume"}},
      {"bonding.batches[].hardener_ml",
       "mix x hardener / (resin + hardener), where the ratio by volume is known",
       kMixing,
       {"bonding.batches[=].mix_ml", "adhesives[id=.adhesive].mix.by_volume"}},
      {"bonding.batches[].resin_g",
       "density x mix x resin / (resin + hardener), where the ratio by mass is known",
       kMixing,
       {"bonding.batches[=].mix_ml", "adhesives[id=.adhesive].mix.by_mass", "adhesives[id=.adhesive].mix.density"}},
      {"bonding.batches[].hardener_g",
       "density x mix x hardener / (resin + hardener), where the ratio by mass is known",
       kMixing,
       {"bonding.batches[=].mix_ml", "adhesives[id=.adhesive].mix.by_mass", "adhesives[id=.adhesive].mix.density"}},
      {"bonding.batches[].working_minutes",
       "sum over its joints",
       kPartition,
       {"bonding.joints[at=.joint_at].working_minutes"}},
      {"bonding.batches[].pot_life_minutes",
       "pot life x 2^((temperature it is printed for - shop's) / 10 C)",
       "rule of thumb of three makers: halved by every 10 C",
       {"adhesives[id=.adhesive].mix.pot_life", "adhesives[id=.adhesive].mix.pot_life_at",
        "bonding.batches[=].at_celsius"}},
      {"bonding.batches[].at_celsius",
       "as the shop says; 21 C where it does not",
       "common practice, no source",
       {"shop.temperature"}},
      {"bonding.batches[].set_minutes",
       "set time x 2^((temperature it is printed for - shop's) / 10 C)",
       "rule of thumb of three makers: halved by every 10 C",
       {"adhesives[id=.adhesive].mix.set", "adhesives[id=.adhesive].mix.cure_at", "bonding.batches[=].at_celsius"}},
      {"bonding.totals[].mix_ml",
       "sum over the batches of this adhesive",
       kMixing,
       {"bonding.batches[adhesive=.adhesive].mix_ml"}},
      {"bonding.totals[].mix_g",
       "density x volume",
       kMixing,
       {"bonding.totals[=].mix_ml", "adhesives[id=.adhesive].mix.density"}},
  };
}

}  // namespace

std::vector<Figure> BondingFigures() {
  std::vector<Figure> all = Joints();
  const std::vector<Figure> batches = Batches();
  all.insert(all.end(), batches.begin(), batches.end());
  return all;
}

}  // namespace withy
