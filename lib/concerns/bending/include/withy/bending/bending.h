// Bending: how does the blank bend under a load, how fast does it ring, and where does it work hardest?
//
// The rod is a plane inextensible elastica clamped at a point of its handle (withy/numerics/elastica.h), its stiffness that of
// the blank's sections joined end to end; what sits on it weighs and does not stiffen. Where one section sits in another their
// stiffness adds. Loads act at the tip-top's ring, of the bare blank at its tip. Small oscillations about the straight rod for
// the frequencies. Uncertainty to first order, of stiffness per section (modulus, walls, diameters), load, angle and masses.
//
// Strain is that of the outermost fibre, curvature x D / 2; of a hexagon that of its flats, D across them.
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
  std::optional<double> center_m;    // unset = its place is not known
  double length_m = 0;               // 0 = a point; else spread evenly about the centre
  std::optional<Uncertain> mass_kg;  // unset = not known
  // Id of the guide or the tip-top that it is, or is on: with it makes up the guide train. Empty = not of the train.
  std::string train;
};

// A point of a bent rod, from the clamp.
struct BentPoint {
  BeamPoint at;
  double strain = 0;         // of the outermost fibre, >= 0; where the diameter jumps, the larger
};

// How one load bends the rod. Lengths from the clamp.
struct BentRod {
  std::string id;            // of the load case
  FieldPath at;
  double clamp_m = 0;        // from the datum of the report (see bending.proto)
  double butt_angle = 0;     // radians above the horizontal
  double load_angle = 0;     // of the force, above the horizontal
  std::optional<Uncertain> load_n;
  Elastica shape;            // from the clamp; state says whether it holds the load
  std::vector<BentPoint> points;  // some dozens at even distances, and where the strain peaks
  // Of the share of the load that was reached; with uncertainty only where the state is kSolved. Unset = cannot be told.
  std::optional<Uncertain> tip_drop_m, clamp_moment_n_m, peak_strain;
  double peak_at_m = 0;
};

// The weight that drops the tip by a third of the free length, clamped level.
struct Power {
  Uncertain load_kg;
  double coins = 0;          // of 2.50 g
  double tip_angle = 0;      // radians below the horizontal
  std::optional<double> line_number;  // within the published points only
};

// Number on the scale of fly lines for that weight: AFFTA target grains between whole numbers, and of them g = -12.085 +
// 0.80194 x grains, a straight line through 20 published points of the coin method that meets each within 0.08 of a number.
// A fit, not the author's formula; unset outside 39 to 173 g, where the points reach.
std::optional<double> LineNumberFor(double load_kg);
// "slow" below 59 degrees, "moderate" to 63, "moderate fast" to 66, "fast": the method's classes of that angle.
const char* ActionFor(double tip_angle);

struct BendingOf {
  double clamp_m = 0;        // from the datum
  Beam beam;                 // from the clamp to the end
  std::vector<double> outer_m;  // outer diameter at the ends of beam.pieces: two for each piece
  std::vector<BentRod> cases;   // as Rod::load_cases
  std::optional<Power> power;   // unset where no load does it
  std::vector<double> frequency_hz;  // three, lowest first
  std::optional<Uncertain> first_frequency_hz;
};

// What one guide or the tip-top, with its wraps and finish, costs of the first frequency of the finished rod.
struct FrequencyLoss {
  std::string id;
  FieldPath at;
  double hz = 0;
};

// What of the finished rod bends: the blank from its butt face to the tip-top's ring, without weight. For what bends it
// otherwise than by a weight at the tip.
struct StiffBlank {
  double butt_m = 0;            // where it begins, from the butt end of the finished rod
  Beam beam;                    // from there; no masses
  std::vector<double> outer_m;  // as BendingOf::outer_m
  std::vector<Uncertain> stiffness_change;  // of each piece: what its stiffness may be off by, relative, about 0
};
// What is left of it ahead of `from_m`, counted as butt_m is; all of it where that is behind its beginning. REQUIRES: from_m
// is behind its end.
StiffBlank StiffAheadOf(const StiffBlank& blank, double from_m);
// Strain of its outermost fibre where the bending moment is that, `s` from its beginning: where the diameter jumps, the larger.
double StrainAt(const StiffBlank& blank, double s, double moment);

struct BendingAnswers {
  std::optional<double> held_m;             // where the rod is held where a load says no other place, from its butt end
  std::optional<StiffBlank> stiff;          // unset = cannot be told
  std::optional<BendingOf> bare, finished;  // unset = cannot be told
  std::vector<FrequencyLoss> losses;        // each by itself, butt first
  std::optional<double> train_costs_hz;
  Source modulus_from = Source::kPlan;      // the least sure of all sections
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

// Never fails. What of `on_blank` is ahead of the clamp must say its mass and place: else the finished rod cannot be told.
// Cost: some dozens of solutions of the elastica, each linear in the number of stations.
BendingAnswers ComputeBending(const Rod& rod, const SectionsAnswers& sections, const std::vector<OnTheBlank>& on_blank,
                              Inputs& inputs);

void CheckBending(const Rod& rod, const SectionsAnswers& sections, const BendingAnswers& answers,
                  std::vector<Finding>& findings);
std::vector<Code> BendingCodes();
std::vector<Figure> BendingFigures();

}  // namespace withy

#endif  // WITHY_BENDING_BENDING_H_
