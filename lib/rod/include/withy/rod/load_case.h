// A load that the design asks about: what pulls at the tip, which way, and how the rod is held meanwhile.
#ifndef WITHY_ROD_LOAD_CASE_H_
#define WITHY_ROD_LOAD_CASE_H_

#include <string>

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

  // Direction of the load, above the horizontal: -90 = straight down.
  double LoadAngleDeg() const { return line_angle_deg ? butt_angle_deg.value - line_angle_deg->value : -90; }
};

}  // namespace withy

#endif  // WITHY_ROD_LOAD_CASE_H_
