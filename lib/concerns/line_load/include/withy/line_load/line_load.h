// Line load: how does the line bend the rod through its rings, and what does it do to each of them?
//
// The model is that of withy/numerics/strung_beam.h: a weightless rod clamped at its handle, a line from the reel through the
// ring of each guide and the tip-top to a far point. The reel is fixed to the butt; where it is ahead of the clamp, the handle
// under it counts as rigid. Only load cases that pull through the line are judged here (bending has the others), and what the
// static tests of the log should have shown.
//
// Uncertainty to first order, of the pull and of the stiffness of the blank as a whole: a stiffness that is off by the same
// factor everywhere acts as a pull that is off by the inverse of it. What the pieces may be off by is averaged with their share
// of the strain energy. Angles, places and heights of rings count as exact.
#ifndef WITHY_LINE_LOAD_LINE_LOAD_H_
#define WITHY_LINE_LOAD_LINE_LOAD_H_

#include <optional>
#include <string>
#include <vector>

#include "withy/bending/bending.h"
#include "withy/findings/finding.h"
#include "withy/numerics/strung_beam.h"
#include "withy/numerics/uncertain.h"
#include "withy/rod/figure.h"
#include "withy/rod/rod.h"

namespace withy {

// What stands along the blank for the line, whatever pulls: places from the butt end of the finished rod.
struct LineTrain {
  int side = 0;                  // +1 rings above, -1 below
  double reel_m = 0, reel_height_m = 0;  // where the line leaves the reel: along the rod, and from the blank's axis
  std::vector<int> guides;       // in Rod::guides, butt first
  std::vector<double> ring_m;    // of those, and of the tip-top last
  std::vector<double> offset_m;  // likewise: axis of the blank to the ring's centre
  std::vector<double> turned;    // likewise: as BeamRing::turned; a guide's angle counts clockwise seen from the butt
};

// One load through the line. Lengths from the clamp, in the frame of the butt (x along the butt's forward axis).
struct StrungRod {
  std::string id;                // of the load case
  FieldPath at;
  std::size_t load_case = 0;     // in Rod::load_cases; of a static test in Rod::static_tests
  double clamp_m = 0;            // from the butt end of the finished rod
  StiffBlank blank;              // ahead of the clamp
  std::vector<BeamRing> rings;   // of the train
  StrungLoad load;
  StrungBeam bent;
  std::vector<Clearance> clearances;  // of each span; empty where not solved
  StrungPeaks peaks;
  // Of the whole pull; unset where not solved.
  // Without sign the moment; the drop from the line straight on from the butt, square to it; the turn positive in the way in
  // which the rod bends.
  std::optional<Uncertain> tension_n, tip_angle, tip_drop_m, clamp_moment_n_m, most_turn;
  int most_turned = -1;          // guide (in the train) at which the line turns most, the tip-top left out; -1 = none
  double sense = -1;             // the way in which the rod bends: +1 anticlockwise, -1 clockwise
  // Of a static test: how far the tip of the rod drops, as tip_drop_m, by its own weight alone; unset = not known.
  std::optional<double> own_drop_m;
  bool solved() const { return bent.state == ElasticaState::kSolved; }
  // Some shape to speak of: all of the pull, or that part of it that the rod holds.
  bool told() const {
    const bool stands = solved() || bent.state == ElasticaState::kSeveral || bent.state == ElasticaState::kNone;
    return stands && !bent.rings.empty() && !bent.points.empty();
  }
};

struct LineLoadAnswers {
  std::optional<LineTrain> train;  // unset = cannot be told
  std::vector<StrungRod> cases;    // those of Rod::load_cases that pull through the line
  std::vector<StrungRod> tests;    // what should have been seen in those of Rod::static_tests that hold for the rod as it is
  std::vector<Assumption> assumptions;
  std::vector<Unknown> unknowns;
};

// Never fails. Cost: some ten solutions of the strung beam for each load case.
LineLoadAnswers ComputeLineLoad(const Rod& rod, const BendingAnswers& bending, Inputs& inputs);

// Where rings and reel stand; unset where that cannot be told, and `unknowns` (may be null) then says what to measure.
// Guides without a place are left out of it where `places_of` (may be null; metres from the tip-top's ring centre, as
// Rod::guides) does not give them one. What had to be assumed goes into `assumptions` (may be null).
std::optional<LineTrain> TrainOf(const Rod& rod, const std::vector<double>* places_of, std::vector<Assumption>* assumptions,
                                 std::vector<Unknown>* unknowns);

// Of load cases through the line the first whose pull was refused or is not written: what to correct. Empty = none.
std::string WhatIsWrongWithPulls(const Rod& rod);
// Of the direction of the line, likewise: within half a turn of the butt's forward axis. NaN is refused in reading.
std::string WhatIsWrongWithDirection(const LoadCase& load);

void CheckLineLoad(const Rod& rod, const LineLoadAnswers& answers, std::vector<Finding>& findings);
std::vector<Code> LineLoadCodes();
std::vector<Figure> LineLoadFigures();

}  // namespace withy

#endif  // WITHY_LINE_LOAD_LINE_LOAD_H_
