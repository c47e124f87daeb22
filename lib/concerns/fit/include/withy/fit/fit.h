// Fit: how long does the rod come out, and does every part go where it is to go?
#ifndef WITHY_FIT_FIT_H_
#define WITHY_FIT_FIT_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/findings/finding.h"
#include "withy/fit/cut_plan.h"
#include "withy/fit/mouth_play.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"
#include "withy/sections/sections.h"

namespace withy {

// Metres. An arbor of the design, or one that is proposed where a part takes the blank loosely and names none.
struct ArborFit {
  enum class Place { kGiven, kScrewThread, kStraight, kNeck, kRear };
  Place place = Place::kGiven;
  std::optional<double> start_m, length_m;  // butt-side edge from the butt end of the finished rod
  std::optional<double> blank_m;            // largest blank diameter under it
  std::optional<double> bore_m;             // smallest bore diameter of the host around it
  std::optional<double> outer_m;            // to build or turn to; as the design says where it does
  std::optional<int> turns;                 // of tape, whole
  std::optional<double> tape_length_m;      // of those turns
  std::optional<double> gap_m;              // left between it and the bore, on the radius
  // Where the part's bore, on the way over the arbor, is first too narrow for it: from the part's own butt end, and how
  // far from home the arbor is then. Unset = it passes, or the way is not known.
  std::optional<double> binds_at_m, held_out_m;
};

struct PartFit {
  std::optional<double> blank_at_start_m;     // blank diameter under its butt-side face
  std::optional<double> blank_at_tip_side_m;  // under its tip-side face
  // Smallest bore less blank diameter along the part, where bore and blank are known over it; negative = tighter than
  // the blank. Of a bore of which only the mouth is known: at the mouth. Both sides together.
  std::optional<double> clearance_m;
  std::optional<double> clearance_at_m;       // where that is, from the butt end of the finished rod
  // Largest and smallest blank / bore over the part, for stretched and shrunk parts.
  std::optional<double> most_stretch, least_stretch;
  std::vector<ArborFit> arbors;               // as Part::arbors
  std::vector<ArborFit> proposed;             // where it names none
};

// A bore to ream, from the part's own butt end; both ends and every inch between.
struct ReamTable {
  struct Row {
    double at_m = 0, blank_m = 0, ream_m = 0;
    std::optional<double> bore_m;  // as received
  };
  int part = 0;  // in Rod::handle.parts
  std::vector<Row> rows;
};

// A winding check slid from the tip down to the face it lies on.
struct WindingCheckFit {
  int part = 0;
  double blank_m = 0;            // at its butt-side face
  std::optional<double> bore_m;  // smallest in stock that is not under the blank; unset = none
  std::optional<double> next_bore_m;  // the next one down
  std::optional<double> next_stops_ahead_m;  // how far towards the tip from its place that one stops
  std::optional<double> ream_m;              // what would have to come off it
};

struct FitAnswers {
  std::optional<Uncertain> overall_m;
  std::optional<Uncertain> short_of_target_m;  // wanted less had
  std::vector<PartFit> parts;                  // as Rod::handle.parts
  // Thickest blank that the tip-top's tube goes over: at the tube's mouth, at the tip where its length is not known.
  std::optional<Uncertain> under_tip_tube_m;
  std::optional<Uncertain> tip_tube_clearance_m;  // tube bore less that
  std::optional<int> pieces;
  std::optional<Uncertain> packed_length_m;    // longest piece, with handle or tip-top where they are on it
  std::optional<LengthVerdict> verdict;        // on the length ordered; unset = none is
  std::string measure;                         // what would settle it; empty = nothing is open
  std::optional<CutPlan> cut;
  std::optional<MouthPlay> play;
  std::vector<ReamTable> reaming;
  std::vector<WindingCheckFit> winding_checks;
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

FitAnswers ComputeFit(const Rod& rod, const SectionsAnswers& sections);

void CheckFit(const Rod& rod, const SectionsAnswers& sections, const FitAnswers& answers,
              std::vector<Finding>& findings);
std::vector<Code> FitCodes();
std::vector<Figure> FitFigures();

}  // namespace withy

#endif  // WITHY_FIT_FIT_H_
