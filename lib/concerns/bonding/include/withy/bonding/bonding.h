// Bonding: how much adhesive goes into each joint, and in which batches is it mixed?
//
// A joint is a glued part, arbor, tip-top, section joint or potted weights with the adhesive it names. Its volume is the
// room between bore and blank less what the arbors take, plus fillets (joint_volume.h); joints of one adhesive are mixed
// together in consecutive batches that fit its pot life at the shop's temperature (mixing.h).
#ifndef WITHY_BONDING_BONDING_H_
#define WITHY_BONDING_BONDING_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/fit/fit.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

struct GluedJoint {
  std::string what;                    // id of what is glued; of potted weights the id of their part
  FieldPath at;                        // of the thing
  std::string adhesive;                // id
  int adhesive_index = -1;             // in Rod::adhesives; -1 = not described
  bool potting = false;                // counterweights in their cavity
  std::optional<double> from_m, to_m;  // of the bond, from the butt end of the finished rod
  std::optional<double> area_m2;       // of the bonded surface on the blank (or inner thing)
  std::optional<double> gap_m;         // smallest radial gap
  std::optional<double> gross_m3, arbors_m3, fillets_m3;
  std::optional<double> volume_m3;     // that stays in the joint; unset = cannot be told
  std::optional<Uncertain> mass_kg;    // of volume_m3, cured
  std::optional<double> center_m;      // of that mass, from the butt end of the finished rod
  double working_s = 0;                // from mixing to closed
  bool done = false;                   // the log says it is glued
  std::string measure;                 // where the volume cannot be told: what would settle it
};

struct MixedBatch {
  std::string adhesive;
  int adhesive_index = -1;
  std::vector<int> joints;             // in BondingAnswers::joints, in the order of work
  double need_m3 = 0, mixed_m3 = 0;    // with waste, at least the smallest batch
  bool set_by_minimum = false;
  std::optional<double> resin_m3, hardener_m3, resin_kg, hardener_kg;
  double working_s = 0;
  std::optional<double> pot_life_s;    // at the shop's temperature
};

struct BondingAnswers {
  std::vector<GluedJoint> joints;      // in the order of work
  std::vector<MixedBatch> batches;     // of what is still open
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

BondingAnswers ComputeBonding(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& fit, Inputs& inputs);

void CheckBonding(const Rod& rod, const FitAnswers& fit, const BondingAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> BondingCodes();

}  // namespace withy

#endif  // WITHY_BONDING_BONDING_H_
