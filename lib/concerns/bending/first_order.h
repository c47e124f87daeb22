// What the inputs of a bent rod may move, to first order: stiffness of each piece, the load, the weight as one (by its
// moment about the clamp), the angle of the butt.
#ifndef WITHY_BENDING_FIRST_ORDER_H_
#define WITHY_BENDING_FIRST_ORDER_H_

#include "loaded_beam.h"

namespace withy::bending {

// A direction, exact where it is a multiple of a right angle.
struct Direction {
  double x = 1, y = 0;
};
Direction DirectionOf(double deg);

// What pulls, with its uncertainty.
struct Pull {
  Uncertain load_n;
  double butt_deg = 0;         // above the horizontal
  double from_butt_deg = -90;  // direction of the load, from the butt's forward axis, anticlockwise
  Uncertain turn;              // about 0, radians: what the butt's angle may be off by
};

// Under its own weight and the pull, or under its own weight alone where that is 0. In the frame of the butt, whose
// first axis is the butt's forward one: a load straight against the butt then is exactly that.
ElasticaLoad LoadOf(const Pull& pull);

// Changes about 0: of the free end in the frame of the butt, and of the moment at the clamp (relative; of the weight's
// part of it by the lever of the free end).
struct FirstOrder {
  Uncertain x, y, angle;
  Uncertain clamp_moment;
};
FirstOrder ChangesOf(const LoadedBeam& rod, const Pull& pull, const Elastica& solved);

// Of the moment near a point of the shape, relative. The rod beyond it is one of its own, clamped at an angle that
// moves about so that both agree on the angle of the free end.
Uncertain MomentChangeAt(double s_m, const LoadedBeam& rod, const Pull& pull, const Elastica& solved,
                         const FirstOrder& of_whole);

}  // namespace withy::bending

#endif  // WITHY_BENDING_FIRST_ORDER_H_
