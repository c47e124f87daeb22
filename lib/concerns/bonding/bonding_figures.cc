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
       "butt-side end of what is glued",
       "plane geometry",
       {"fit.parts[=].start_mm", "fit.parts[].arbors[=].start_mm", "fit.blank_tip_mm"}},
      {"bonding.joints[].to_mm",
       "tip-side end of what is glued, no further than the blank",
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
       {"handle.parts[=].bore", "fit.parts[].arbors[=].gap_mm", "tip_top[=].tube_bore",
        "sections.sections[].outer_mm"}},
      {"bonding.joints[].volume_ml",
       "bore less inner along the bond, less arbors, plus fillets",
       kFrusta,
       {"bonding.joints[=].from_mm", "bonding.joints[=].to_mm", "handle.parts[=].bore", "sections.sections[].outer_mm",
        "bonding.joints[=].arbors_ml", "bonding.joints[=].fillets_ml", "tip_top[=].tube_bore"}},
      {"bonding.joints[].arbors_ml",
       "pi/4 integral of (outer^2 - blank^2) over the arbors inside the bond",
       kFrusta,
       {"fit.parts[=].arbors[].outer_mm", "fit.parts[=].arbors[].length_mm", "fit.parts[=].arbors[].blank_mm"}},
      {"bonding.joints[].fillets_ml",
       "pi b h (d/2 + h/3), in a bore pi b h (d/2 - h/3)",
       "Pappus' theorem",
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
       "as the shop says; assumed where it does not",
       "common practice, no source",
       {"shop.gluing_time"}},
  };
}

std::vector<Figure> Batches() {
  constexpr std::string_view kPartition =
      "own derivation: the partition of consecutive joints that mixes least, by dynamic programming";
  return {
      {"bonding.batches[].need_ml", "sum over its joints", kPartition, {"bonding.joints[what=.joints].volume_ml"}},
      {"bonding.batches[].mix_ml",
       "the larger of waste x need and the smallest batch",
       kPartition,
       {"bonding.batches[=].need_ml", "shop.adhesive_waste", "shop.smallest_batch"}},
      {"bonding.batches[].smallest_decides",
       "waste x need is below the smallest batch",
       kPartition,
       {"bonding.batches[=].need_ml", "shop.adhesive_waste", "shop.smallest_batch"}},
      {"bonding.batches[].resin_ml",
       "mix x resin / (resin + hardener) by volume",
       kMixing,
       {"bonding.batches[=].mix_ml", "adhesives[id=.adhesive].mix.by_volume", "adhesives[id=.adhesive].mix.by_mass"}},
      {"bonding.batches[].hardener_ml",
       "mix less resin",
       kMixing,
       {"bonding.batches[=].mix_ml", "bonding.batches[=].resin_ml"}},
      {"bonding.batches[].resin_g",
       "density x mix x resin / (resin + hardener) by mass",
       kMixing,
       {"bonding.batches[=].mix_ml", "adhesives[id=.adhesive].mix.by_mass", "adhesives[id=.adhesive].mix.by_volume",
        "adhesives[id=.adhesive].mix.density"}},
      {"bonding.batches[].hardener_g",
       "density x mix less resin",
       kMixing,
       {"bonding.batches[=].mix_ml", "bonding.batches[=].resin_g", "adhesives[id=.adhesive].mix.density"}},
      {"bonding.batches[].working_minutes",
       "sum over its joints",
       kPartition,
       {"bonding.joints[what=.joints].working_minutes"}},
      {"bonding.batches[].pot_life_minutes",
       "pot life x 2^((temperature it is printed for - shop's) / 10 C)",
       "rule of thumb of three makers: halved by every 10 C",
       {"adhesives[id=.adhesive].mix.pot_life", "adhesives[id=.adhesive].mix.pot_life_at",
        "bonding.batches[=].at_celsius"}},
      {"bonding.batches[].at_celsius",
       "as the shop says; assumed where it does not",
       kDefinition,
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
