#include "elastica_shape.h"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace withy {
namespace {

constexpr int kNodes = LobattoTable::kNodes, kIntervals = LobattoTable::kIntervals;
static_assert(kIntervals == Elastica::kArc);

// Moments from angles and angles from moments: each time the error within an element falls by the square of its length.
constexpr int kPasses = 2;

// Integral from 0 to the k-th node of the polynomial through the values at all.
double Integral(const LobattoTable& lobatto, int k, const double (&values)[kNodes]) {
  double sum = 0;
  for (int j = 0; j < kNodes; ++j) sum += lobatto.integral[k][j] * values[j];
  return sum;
}

// Angles and moments, from the free end to the clamp.
void Bend(const Beam& beam, const ElasticaLoad& load, const std::vector<BeamElement>& mesh, const ChainFunction& angle,
          int degree, double share, Elastica& shape) {
  const LobattoTable& lobatto = Lobatto();
  const double turned = angle.end + load.follower_angle;
  const double follower_x = load.follower * std::cos(turned), follower_y = load.follower * std::sin(turned);
  double right = angle.end, moment = share * load.moment;
  for (std::size_t e = mesh.size(); e-- > 0;) {
    const double* value = angle.of(e);
    const double h = mesh[e].length(), left = right - value[0];
    BeamPoint* point = &shape.points[e * kIntervals];
    double stiffness[kNodes], force_x[kNodes], force_y[kNodes], shear[kNodes], curvature[kNodes];
    for (int k = 0; k < kNodes; ++k) {
      const BeamSection section = SectionAt(beam, load, mesh[e], lobatto.t[k]);
      stiffness[k] = section.stiffness;
      force_x[k] = share * (section.force_x + follower_x);
      force_y[k] = share * (section.force_y + follower_y);
      point[k].s = k == kIntervals ? mesh[e].s1 : mesh[e].s0 + lobatto.t[k] * h;
      point[k].angle = left + value[0] * lobatto.t[k];
      for (int i = 1; i < degree; ++i) point[k].angle += value[i] * lobatto.bubble[k][i];
    }
    for (int pass = 0; pass < kPasses; ++pass) {
      for (int k = 0; k < kNodes; ++k) {
        shear[k] = force_y[k] * std::cos(point[k].angle) - force_x[k] * std::sin(point[k].angle);
      }
      const double whole = Integral(lobatto, kIntervals, shear);
      for (int k = 0; k < kNodes; ++k) {
        point[k].moment = moment + h * (whole - Integral(lobatto, k, shear));
        curvature[k] = point[k].moment / stiffness[k];
      }
      const double rise = h * Integral(lobatto, kIntervals, curvature);
      for (int k = 0; k < kNodes; ++k) {
        point[k].angle = left + h * Integral(lobatto, k, curvature) + lobatto.t[k] * (value[0] - rise);
      }
    }
    for (int k = 0; k < kNodes; ++k) {
      shape.strain_energy += lobatto.Weight(k) * h * point[k].moment * curvature[k] / 2;
    }
    moment = point[0].moment;
    right = left;
  }
}

// Coordinates, from the clamp to the free end.
void Place(const std::vector<BeamElement>& mesh, std::vector<BeamPoint>& points) {
  const LobattoTable& lobatto = Lobatto();
  for (std::size_t e = 0; e < mesh.size(); ++e) {
    BeamPoint* point = &points[e * kIntervals];
    double x[kNodes], y[kNodes];
    for (int k = 0; k < kNodes; ++k) {
      x[k] = std::cos(point[k].angle);
      y[k] = std::sin(point[k].angle);
    }
    for (int k = 1; k < kNodes; ++k) {
      point[k].x = point[0].x + mesh[e].length() * Integral(lobatto, k, x);
      point[k].y = point[0].y + mesh[e].length() * Integral(lobatto, k, y);
    }
  }
}

}  // namespace

void Trace(const Beam& beam, const ElasticaLoad& load, const std::vector<BeamElement>& mesh, const ChainFunction& angle,
           int degree, double share, Elastica& shape) {
  shape.points.assign(mesh.size() * kIntervals + 1, {});
  shape.strain_energy = 0;
  Bend(beam, load, mesh, angle, degree, share, shape);
  Place(mesh, shape.points);
}

// Through the points of the arc that s lies in (Berrut and Trefethen 2004, the barycentric formula).
BeamPoint Elastica::At(double s) const {
  const LobattoTable& lobatto = Lobatto();
  if (!(s > points.front().s)) return points.front();
  if (!(s < points.back().s)) return points.back();
  const auto next = std::upper_bound(points.begin(), points.end(), s,
                                     [](double value, const BeamPoint& point) { return value < point.s; });
  const auto first = (next - points.begin() - 1) / kIntervals * kIntervals;
  const BeamPoint* arc = &points[static_cast<std::size_t>(first)];
  BeamPoint at{.s = s};
  double total = 0;
  for (int k = 0; k < kNodes; ++k) {
    if (s == arc[k].s) return arc[k];
    const double weight = lobatto.barycentric[k] / (s - arc[k].s);
    total += weight;
    at.x += weight * arc[k].x;
    at.y += weight * arc[k].y;
    at.angle += weight * arc[k].angle;
    at.moment += weight * arc[k].moment;
  }
  at.x /= total;
  at.y /= total;
  at.angle /= total;
  at.moment /= total;
  return at;
}

}  // namespace withy
