// Bending: how does the blank bend under a load, how fast does it ring, and where does it work hardest?
//
// The rod is a plane inextensible elastica clamped at a point of its handle (withy/numerics/elastica.h), its stiffness that of
// the blank's sections joined end to end; what sits on it weighs and does not stiffen. Small oscillations about the straight
// rod for the frequencies. Uncertainty to first order, of stiffness per section, load, angle and masses.
#ifndef WITHY_BENDING_BENDING_H_
#define WITHY_BENDING_BENDING_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/numerics/beam.h"
#include "withy/numerics/elastica.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

// Something on the blank that weighs: a guide, wrap, finish, grip; the concerns that follow work it out. Metres from the
// butt end of the finished rod.
struct OnTheBlank {
  std::string id;
  FieldPath at;
  double center_m = 0;
  double length_m = 0;       // 0 = a point; else spread evenly about the centre
  Uncertain mass_kg;
  bool in_guide_train = false;  // a guide, its wraps and finish, or the tip-top
};

// How one load bends the rod. Places along the rod from the datum of the report (see bending.proto), metres.
struct BentRod {
  std::string id;            // of the load case
  FieldPath at;
  double butt_angle = 0;     // radians above the horizontal
  double load_angle = 0;     // of the force, above the horizontal
  Uncertain load_n;
  Elastica shape;            // from the clamp; state says whether it holds the load
  std::vector<double> strain;  // of the outermost fibre at shape.points, >= 0
  // Unset where shape.state is not kSolved.
  std::optional<Uncertain> tip_drop_m, clamp_moment_n_m, peak_strain;
  double peak_at_m = 0;      // along the beam, from the clamp
};

// The weight that drops the tip by a third of the free length, clamped level.
struct Power {
  Uncertain load_kg;
  double coins = 0;          // of 2.50 g
  double tip_angle = 0;      // radians below the horizontal
  std::optional<double> line_number;  // within the published points only
};

struct BendingOf {
  double clamp_m = 0;        // from the datum
  Beam beam;                 // from the clamp to the end
  std::vector<double> outer_m;  // outer diameter at the ends of beam.pieces: two for each piece
  std::vector<BentRod> cases;   // as Rod::load_cases
  std::optional<Power> power;   // unset where no load does it
  std::vector<double> frequency_hz;  // three, lowest first
  std::optional<Uncertain> first_frequency_hz;
};

struct FrequencyLoss {
  std::string id;
  FieldPath at;
  double hz = 0;
};

struct BendingAnswers {
  std::optional<BendingOf> bare, finished;  // unset = cannot be told
  std::vector<FrequencyLoss> losses;
  std::optional<double> train_costs_hz;
  Source modulus_from = Source::kPlan;
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

// `on_blank` is unset where something's mass or place is not known: the finished rod then cannot be told.
BendingAnswers ComputeBending(const Rod& rod, const SectionsAnswers& sections,
                              const std::optional<std::vector<OnTheBlank>>& on_blank, Inputs& inputs);

void CheckBending(const Rod& rod, const SectionsAnswers& sections, const BendingAnswers& answers,
                  std::vector<Finding>& findings);
std::vector<Code> BendingCodes();
std::vector<Figure> BendingFigures();

}  // namespace withy

#endif  // WITHY_BENDING_BENDING_H_
