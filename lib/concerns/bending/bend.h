// One beam under one load: its shape, and to first order what its inputs may move.
#ifndef WITHY_BENDING_BEND_H_
#define WITHY_BENDING_BEND_H_

#include "loaded_beam.h"

namespace withy::bending {

// What pulls, with its uncertainty.
struct Pull {
  Uncertain load_n;
  double load_angle = 0;     // radians above the horizontal
  Uncertain butt_angle;      // likewise
};

// Under its own weight and the pull, or under its own weight alone where that is 0.
ElasticaLoad LoadOf(const Pull& pull);

// First-order changes of the free end about a solved shape, and of the moment at the clamp (relative). What moves them:
// stiffness of each piece, the load, the weight as one (by its moment about the clamp), the angle of the butt.
struct FirstOrder {
  Uncertain x, y;
  Uncertain clamp_moment;
};
FirstOrder ChangesOf(const LoadedBeam& rod, const Pull& pull, const Elastica& solved);

// Everything of BentRod but id, place and datum.
BentRod Bend(const LoadedBeam& rod, const Pull& pull);

}  // namespace withy::bending

#endif  // WITHY_BENDING_BEND_H_
