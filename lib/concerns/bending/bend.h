// One beam under one load: its shape, and the figures of it with their uncertainty.
#ifndef WITHY_BENDING_BEND_H_
#define WITHY_BENDING_BEND_H_

#include "first_order.h"

namespace withy::bending {

// Everything of BentRod but id, places, angles of butt and load, and datum.
BentRod Bend(const LoadedBeam& rod, const Pull& pull);

}  // namespace withy::bending

#endif  // WITHY_BENDING_BEND_H_
