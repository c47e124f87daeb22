// A load that the design asks about: what pulls at the tip, which way, and how the rod is held meanwhile.
#ifndef WITHY_ROD_LOAD_CASE_H_
#define WITHY_ROD_LOAD_CASE_H_

#include <string>
#include <vector>

#include "withy/rod/known.h"

namespace withy {

struct LoadCase {
  std::string id;
  FieldPath at;
  Maybe<double> load_n;          // a weight lifted, under standard gravity, or a pull; unset = none is written
  bool at_tip = false;           // hung on the tip itself, not on the line
  Known<double> butt_angle_deg;  // above the horizontal; 0 where none is written
  Maybe<double> line_angle_deg;  // beyond the tip-top, clockwise from the butt's forward axis; unset = straight down
  Maybe<Length> clamp;           // tip-side edge, from the butt end; its own, else the order's holding point

  // Of the line beyond the tip-top, clockwise from the butt's forward axis.
  double LineAngleDeg() const { return line_angle_deg ? line_angle_deg->value : 90 + butt_angle_deg.value; }
  // Direction of the load, above the horizontal: -90 = straight down.
  double LoadAngleDeg() const { return line_angle_deg ? butt_angle_deg.value - line_angle_deg->value : -90; }
};

// A load that was hung from the line at the bench, and what was seen. Those that a correction took back are left out.
struct StaticTest {
  LoadCase load;                           // `at` is that of the entry
  Maybe<Length> tip_drop;                  // below the line straight on from the butt, square to it; unset = not measured
  bool line_touched = false;               // the blank
  std::vector<std::string> touched_after;  // ids of the guides between which and the next ring it did
  bool outdated = false;                   // a guide was placed, or blank cut off, after it
};

}  // namespace withy

#endif  // WITHY_ROD_LOAD_CASE_H_
