// What the inputs of a bent rod may move, to first order: stiffness of each piece, the load, the weight as one (by its
// moment about the clamp), the angle of the butt.
#ifndef WITHY_BENDING_FIRST_ORDER_H_
#define WITHY_BENDING_FIRST_ORDER_H_

#include "loaded_beam.h"

namespace withy::bending {

// What pulls, with its uncertainty.
struct Pull {
  Uncertain load_n;
  double load_angle = 0;  // radians above the horizontal
  Uncertain butt_angle;   // likewise
};

// Under its own weight and the pull, or under its own weight alone where that is 0.
ElasticaLoad LoadOf(const Pull& pull);

// Changes about 0: of the free end, and of the moment at the clamp (relative; of the weight's part of it by the lever
// of the free end).
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
