// The part of a bent rod beyond one of its points, as a rod of its own: clamped there at the angle that the rod has
// there.
#ifndef WITHY_BENDING_BEYOND_H_
#define WITHY_BENDING_BEYOND_H_

#include <cstddef>

#include "loaded_beam.h"

namespace withy::bending {

struct Beyond {
  LoadedBeam rod;
  Elastica shape;               // solved, from the new clamp
  std::size_t first_piece = 0;  // of the whole rod, that the first of its pieces is (part of)
};

// Beyond the end of an arc of the shape (see Elastica::points) that is nearest to `s_m`, the free end left out.
Beyond BeyondPoint(const LoadedBeam& rod, const Elastica& shape, double s_m);

}  // namespace withy::bending

#endif  // WITHY_BENDING_BEYOND_H_
