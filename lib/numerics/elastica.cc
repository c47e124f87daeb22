#include "withy/numerics/elastica.h"

#include <algorithm>
#include <cmath>
#include <sstream>
#include <utility>

#include "elastica_elements.h"
#include "elastica_path.h"
#include "elastica_shape.h"

namespace withy {
namespace {

// The way up needs no more than to stay on its path; where it ends is told more finely.
constexpr int kDegreeOfWay = 1, kDegreeOfEnd = 6;
constexpr int kLeastDegree = 3, kMostRefinement = 4;
// Rounding keeps the error from being seen below this share of the length.
constexpr double kLeastTolerance = 1e-13;

bool AllFinite(std::initializer_list<double> values) {
  return std::all_of(values.begin(), values.end(), [](double value) { return std::isfinite(value); });
}

std::string WhatIsWrongWith(const Beam& beam, const ElasticaLoad& load, const ElasticaOptions& options) {
  std::string wrong = WhatIsWrongWith(beam);
  if (!wrong.empty()) return wrong;
  if (!AllFinite({load.clamp_angle, load.force_x, load.force_y, load.follower, load.follower_angle, load.moment,
                  load.gravity_x, load.gravity_y})) {
    return "a load is not a number";
  }
  for (const BeamForce& force : load.forces) {
    if (!AllFinite({force.s, force.x, force.y})) return "a force is not a number";
    if (force.s < -1e-9 * beam.length() || force.s > (1 + 1e-9) * beam.length()) return "a force acts beyond the beam";
  }
  if (!(options.tolerance > 0)) return "the tolerance is not above zero";
  return "";
}

// From nearby, raises the degree until one more changes nothing that matters. False where the shape is lost on the way.
bool Polish(ElasticaElements& elements, const Beam& beam, const ElasticaLoad& load, double allowed, Elastica& shape) {
  ChainFunction correction(elements.mesh().size());
  elements.SetDegree(std::max(elements.degree(), kLeastDegree));
  for (;;) {
    if (!Settle(elements, 1)) return false;
    const int degree = elements.degree();
    const ElasticaElements::Place tip = elements.Tip();
    const ChainFunction angle = elements.angle();
    elements.SetDegree(degree + 1);
    elements.Factor(1);
    elements.Solve(ElasticaElements::kResidual, correction);
    elements.angle().Add(correction, 1);
    const ElasticaElements::Place finer = elements.Tip();
    const bool last = degree + 1 == kMostDegree;
    if (!last && std::hypot(finer.x - tip.x, finer.y - tip.y) > allowed) continue;
    Trace(beam, load, elements.mesh(), angle, degree, 1, shape);
    shape.error = std::hypot(shape.tip().x - finer.x, shape.tip().y - finer.y);
    if (last || shape.error <= allowed) return true;
  }
}

bool Sound(const Elastica& shape) {
  return std::all_of(shape.points.begin(), shape.points.end(),
                     [](const BeamPoint& point) {
                       return AllFinite({point.x, point.y, point.angle, point.moment});
                     }) &&
         AllFinite({shape.strain_energy, shape.error});
}

// Where the path ended.
Elastica Unsolved(const ElasticaElements& elements, const Beam& beam, const ElasticaLoad& load, const PathEnd& end) {
  Elastica shape;
  Trace(beam, load, elements.mesh(), elements.angle(), elements.degree(), end.share, shape);
  if (!Sound(shape)) return {};
  shape.reached = end.share;
  if (end.state != ElasticaState::kSolved) shape.state = end.state;
  return shape;
}

}  // namespace

Elastica SolveElastica(const Beam& beam, const ElasticaLoad& load, const ElasticaOptions& options) {
  Elastica shape;
  shape.why = WhatIsWrongWith(beam, load, options);
  if (!shape.why.empty()) {
    shape.state = ElasticaState::kBadInput;
    return shape;
  }
  const double allowed = std::max(options.tolerance, kLeastTolerance) * beam.length();
  for (int fineness = 1; fineness <= kMostRefinement; fineness *= 2) {
    auto mesh = MeshOf(beam, load, fineness);
    if (!mesh) {
      shape.state = ElasticaState::kBadInput;
      shape.why = "the load is out of all proportion to the stiffness of the beam";
      return shape;
    }
    ElasticaElements quick(beam, load, *mesh, kDegreeOfWay);
    const PathEnd found = RaiseLoad(quick, options.most_steps);
    if (found.state != ElasticaState::kSolved || !Polish(quick, beam, load, allowed, shape)) {
      ElasticaElements careful(beam, load, std::move(*mesh), kDegreeOfEnd);
      const PathEnd end = RaiseLoad(careful, options.most_steps);
      if (end.state != ElasticaState::kSolved || !Polish(careful, beam, load, allowed, shape)) {
        return Unsolved(careful, beam, load, end);
      }
    }
    shape.reached = 1;
    if (shape.error <= allowed) {
      shape.state = ElasticaState::kSolved;
      break;
    }
  }
  return Sound(shape) ? shape : Elastica{};
}

}  // namespace withy
