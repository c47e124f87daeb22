// From angles in finite elements to the points of the shape.
#ifndef WITHY_LIB_NUMERICS_ELASTICA_SHAPE_H_
#define WITHY_LIB_NUMERICS_ELASTICA_SHAPE_H_

#include <vector>

#include "elastica_elements.h"

namespace withy {

// Sets points and strain energy. At the nodes of elements the angles are far better than between them. So moments are
// taken from statics, M' = -F x t integrated from the free end, and the angles between nodes anew from M / EI: then all
// is about as good as the nodes are.
void Trace(const Beam& beam, const ElasticaLoad& load, const std::vector<BeamElement>& mesh, const ChainFunction& angle,
           int degree, double share, Elastica& shape);

}  // namespace withy

#endif  // WITHY_LIB_NUMERICS_ELASTICA_SHAPE_H_
