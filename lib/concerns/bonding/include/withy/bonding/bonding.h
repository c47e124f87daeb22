// Bonding: how much adhesive goes into each joint, and in which batches is it mixed?
//
//   BondingAnswers answers = ComputeBonding(rod, sections, fit, inputs);
//   answers.joints[0].volume_m3     // 1.9e-6, or unset and `measure` says what would settle it
//   answers.batches[0].mixed_m3     // with waste, at least the smallest batch
//
// A joint is a glued part, arbor, tip-top, section joint or potted weights with the adhesive it names. Its volume is the
// room between bore and blank less what the arbors take, plus a small fillet at each end that shows (joint_volume.h). Of a
// part that is pulled or shrunk on it is a film, of one that is to be reamed the room that the reaming leaves. It is known
// as well as the diameters are (0.05 mm each where no uncertainty is written) and within a tenth, for what is wiped away or
// not filled (common practice, no source).
//
// Work is done in sessions with a cure between them: section joints and arbors; weights that are potted first; the parts,
// butt to tip, and the tip-top; weights that are potted last. In a session the joints of one adhesive are mixed together in
// consecutive batches that fit its pot life at the shop's temperature (mixing.h). What needs no mixing has no batch.
#ifndef WITHY_BONDING_BONDING_H_
#define WITHY_BONDING_BONDING_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/fit/fit.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

enum class Glued { kSectionJoint, kArbor, kPart, kTipTop, kWeights };

struct GluedJoint {
  Glued kind = Glued::kPart;
  int session = 0;                     // 0 section joints and arbors, 1 potted first, 2 parts and tip-top, 3 potted last
  std::string what;                    // id of what is glued; of potted weights the id of their part
  FieldPath at;                        // of the thing
  std::string adhesive;                // id
  int adhesive_index = -1;             // in Rod::adhesives; -1 = not described
  bool potting = false;                // counterweights in their cavity
  std::optional<double> from_m, to_m;  // of the bond, from the butt end of the finished rod
  std::optional<double> area_m2;       // of the bonded surface on the blank (or inner thing)
  std::optional<double> gap_m;         // smallest radial gap, arbors not counted
  std::optional<double> arbor_gap_m;   // smallest radial gap left between an arbor and the bore
  std::optional<double> gross_m3, arbors_m3, fillets_m3;
  std::optional<double> proposed_m3;   // that proposed arbors (fit.h) would take of the volume; not taken off
  std::optional<double> volume_m3;     // that stays in the joint, fillets included; unset = cannot be told
  std::optional<Uncertain> mass_kg;    // of volume_m3, cured
  std::optional<double> center_m;      // of that mass, from the butt end of the finished rod
  double working_s = 0;                // from mixing to closed
  std::optional<double> pot_life_s;    // at the shop's temperature; unset = it is not mixed, or not known
  bool done = false;                   // the log says it is glued
  std::string measure;                 // where volume or mass cannot be told: what would settle it
};

// Joints of which the volume cannot be told are in none.
struct MixedBatch {
  std::string adhesive;
  int adhesive_index = -1;
  std::vector<int> joints;             // in BondingAnswers::joints, in the order of work
  double need_m3 = 0, mixed_m3 = 0;    // with waste, at least the smallest batch
  bool set_by_minimum = false;
  std::optional<double> resin_m3, hardener_m3;  // by the ratio by volume
  std::optional<double> resin_kg, hardener_kg;  // by the ratio by mass
  std::optional<double> mixed_kg;
  double working_s = 0;
  double at_c = 0;                     // the shop's temperature
  std::optional<double> pot_life_s;    // at that temperature
  std::optional<double> set_s;         // at that temperature: may be let go of
};

struct AdhesiveUse {
  std::string adhesive;
  double mixed_m3 = 0;                 // all its batches
  std::optional<double> mixed_kg;
};

struct BondingAnswers {
  std::vector<GluedJoint> joints;      // in the order of work
  std::vector<MixedBatch> batches;     // of what is still open
  std::vector<AdhesiveUse> totals;     // of the batches, by adhesive in the order of work
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

BondingAnswers ComputeBonding(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& fit, Inputs& inputs);

// What is mixed where the joints take so much: with the shop's waste, at least its smallest batch.
double MixFor(double need_m3, const Shop& shop);

void CheckBonding(const Rod& rod, const FitAnswers& fit, const BondingAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> BondingCodes();
std::vector<Figure> BondingFigures();

}  // namespace withy

#endif  // WITHY_BONDING_BONDING_H_
